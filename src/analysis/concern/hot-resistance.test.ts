/** Checks the concern of resistances without their temperature. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { resistanceRatio } from '../../physics/electrics/resistance.ts'
import { coldResistance, hotEfficiency, hotResistance } from './hot-resistance.ts'

const coefficient = 0.00393

describe('agrees: copper by hand, 0.393 % for each kelvin', () => {
  const ratio = (degrees: number) => resistanceRatio({ coefficient, temperature: degrees + 273.15 })
  check('80 °C', ratio(80), '1.236')
  check('120 °C', ratio(120), '1.393')
  check(
    'a reading at 80 °C carried to 20 °C',
    coldResistance({ resistance: 0.2472, temperature: 353.15, coefficient }),
    '0.200',
  )
  // of 100 W at the shaft 20 W in cold copper: at 120 °C 7.86 W more
  check(
    '80 % with cold copper at 120 °C',
    hotEfficiency({ efficiency: 0.8, copperShare: 0.2, ratio: ratio(120) }),
    '0.721',
  )
})

describe('law: a resistance without its temperature says little', () => {
  const read = (fields: Record<string, unknown>) =>
    sampleChain({ 'bench.resistances': [{ place: 'phase', ...fields }] })
  test('sound with its temperature, a note without, a warning where it cannot be', () => {
    expect(hotResistance.judge(sampleChain())).toBeUndefined()
    // the sample's phases have 0.2 Ω at 20 °C
    expect(hotResistance.judge(read({ resistance_ohm: 0.2, winding_degC: 20 }))).toBeUndefined()
    expect(hotResistance.judge(read({ resistance_ohm: 0.2472, winding_degC: 80 }))).toBeUndefined()
    expect(hotResistance.judge(read({ resistance_ohm: 0.2 }))?.severity).toBe('note')
    const off = hotResistance.judge(read({ resistance_ohm: 0.2472, winding_degC: 20 }))
    expect(off?.severity).toBe('warning')
    expect(off?.figures).toContain('24 % beside it')
  })
  test('between the lines of a star two phases are read', () => {
    expect(
      hotResistance.judge(read({ resistance_ohm: 0.4, place: 'line to line', winding_degC: 20 })),
    ).toBeUndefined()
  })
  const claimed = (fields: Record<string, unknown>) =>
    hotResistance.judge(
      sampleChain({
        'bench.claims': [
          { power_W: 80, from: 'volts and amps into a load', efficiency_percent: 75, ...fields },
        ],
      }),
    )
  test('an efficiency from cold ohms', () => {
    expect(claimed({ efficiencyFrom: 'watts in and watts out' })).toBeUndefined()
    expect(claimed({ efficiencyFrom: 'resistance when hot' })).toBeUndefined()
    expect(claimed({})?.severity).toBe('warning')
    const cold = claimed({ efficiencyFrom: 'resistance when cold' })
    expect(cold?.severity).toBe('warning')
    expect(cold?.path).toBe('bench.claims[0].efficiencyFrom')
    expect(cold?.figures).toContain('75.0 % claimed')
  })
  test('the measure is on the sound side where the reading is', () => {
    const measure = (winding_degC: number) =>
      hotResistance.measure?.(read({ resistance_ohm: 0.2472, winding_degC }))
    expect(measure(80)!.value).toBeLessThan(0.1)
    expect(measure(20)!.value).toBeGreaterThan(0.1)
    expect(hotResistance.measure?.(sampleChain())).toBeUndefined()
  })
})
