/** Checks of the year's energy by wind against the year itself. */
import { describe, expect, test } from 'vitest'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { energyByWind } from './energy-by-wind.ts'
import { temperatureByWind } from './temperature-by-wind.ts'

describe('agrees: useful energy of each wind, and that of the year', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const { parts, wind, time } = energyByWind(chain)
      const whole = Math.max(1, chain.year.energy)
      parts.useful.forEach((energy, k) => {
        expect(energy / whole).toBeCloseTo(chain.year.byWind[k]! / whole, 9)
      })
      expect(wind).toHaveLength(chain.rows.length)
      // all winds but the calmest quarter metre and those beyond the storm
      const hours = time.reduce((sum, each) => sum + each / 3600, 0)
      expect(hours).toBeLessThan(8767)
      expect(hours).toBeGreaterThan(8400)
    })
})

describe('law: limits stand beside the temperatures', () => {
  test('enamel, what holds the winding, magnets and what holds them', () => {
    const { limits, lines } = temperatureByWind(exampleChain('boathouse-two-disc'))
    expect(limits.map(({ label }) => label)).toEqual([
      'enamel, class H',
      'vinyl ester round the winding',
      'magnets, grade N42H',
      'ASA of the magnets’ wall',
    ])
    const [hottest, mean] = lines
    const air = lines.at(-1)!
    mean!.values.forEach((value, k) => {
      expect(value).toBeGreaterThanOrEqual(air.values[k]! - 1e-9)
      expect(hottest!.values[k]).toBeGreaterThanOrEqual(value - 0.5)
    })
  })
})
