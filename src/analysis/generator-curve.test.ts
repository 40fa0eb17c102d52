/** Checks of the generator's table against solutions at the very point. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { loadPoint } from './load-point.ts'
import { strengthBesideCopper, weakenedVoltage } from './magnet-strength.ts'
import { wattColumns } from './watts.ts'

describe('agrees: the table and a solution in time at the very speed and temperature, the magnets as warm as beside that copper', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const { machine, voltage, generator, runaway, heat } = exampleChain(name)
      const strength = strengthBesideCopper(machine, heat.magnetShare)
      for (const share of [0.02, 0.07, 0.18, 0.41, 0.83])
        for (const copperTemperature of [270, 310, 400, 480]) {
          const speed = generator.cutIn + share * (runaway.speed - generator.cutIn)
          const table = generator.at(speed, copperTemperature)
          const warm = weakenedVoltage(voltage, strength(copperTemperature))
          const point = loadPoint(machine, warm, { speed, copperTemperature })
          expect(Math.abs(table.dcCurrent / point.dcCurrent - 1)).toBeLessThan(0.02)
          expect(Math.abs(table.phaseCurrent / Math.max(...point.phaseCurrentRms) - 1)).toBeLessThan(0.02)
          expect(Math.abs(table.watts.winding / point.power.winding - 1)).toBeLessThan(0.04)
          expect(Math.abs(table.watts.useful / point.power.load - 1)).toBeLessThan(0.04)
        }
    })
})

describe('law: energy', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(`${name} closes to 0.1 % at every node and in between`, () => {
      const { generator, runaway } = exampleChain(name)
      expect(generator.residual).toBeLessThan(1e-3)
      for (const share of [0.05, 0.3, 0.7]) {
        const speed = generator.cutIn + share * (runaway.speed - generator.cutIn)
        const { watts } = generator.at(speed, 320)
        const sum = wattColumns.reduce((total, column) => total + watts[column], 0)
        expect(Math.abs(generator.shaftPower(speed, 320) / sum - 1)).toBeLessThan(1e-3)
      }
    })
  test('nothing flows below cut-in, and the drag remains', () => {
    const { generator } = exampleChain('boathouse-two-disc')
    const { watts, dcCurrent } = generator.at(0.9 * generator.cutIn, 300)
    expect(dcCurrent).toBe(0)
    expect(watts.useful).toBe(0)
    expect(watts.friction).toBeGreaterThan(0)
    expect(generator.shaftPower(0.9 * generator.cutIn, 300)).toBeCloseTo(watts.friction + watts.eddy, 12)
  })
})
