/** Checks the resistance of wires against standards. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { conductorResistance, resistanceRatio, resistivityAtTemperature } from './resistance.ts'

const ρ = 1 / 58e6
const α = 0.00393
const celsius = (t: number) => t + 273.15
const round = (d: number) => (Math.PI / 4) * d ** 2

describe('source: iec-60028 — annealed copper, 1/58 Ω·mm²/m and 0.00393 /K at 20 °C (from memory, not opened); ratios worked from them', () => {
  check('80 °C', resistanceRatio({ coefficient: α, temperature: celsius(80) }), '1.236')
  check('120 °C', resistanceRatio({ coefficient: α, temperature: celsius(120) }), '1.393')
  check('resistivity at 20 °C, Ω·mm²/m', 1e6 * ρ, '0.0172414')
  check(
    'resistivity at 80 °C, Ω·mm²/m',
    1e6 * resistivityAtTemperature({ resistivity: ρ, coefficient: α, temperature: celsius(80) }),
    '0.0213069',
  )
  check(
    'resistivity at 100 °C, Ω·mm²/m',
    1e6 * resistivityAtTemperature({ resistivity: ρ, coefficient: α, temperature: celsius(100) }),
    '0.0226621',
  )
})

describe('source: iec-60317-0-1 — resistance per metre at 20 °C, catalogue rows that cite it (a transcription read, not the standard)', () => {
  // The diameters printed are rounded to 1 µm; the resistances agree with 1/58 over π d²/4 to 2.4e-5.
  const rows = [
    [0.28, '0.280005'],
    [0.25, '0.351238'],
    [0.2, '0.548810'],
    [0.32, '0.214374'],
    [0.127, '1.361022'],
  ] as const
  for (const [d, printed] of rows)
    check(`${d} mm`, conductorResistance({ length: 1, area: round(d * 1e-3), resistivity: ρ }), printed, {
      relative: 5e-5,
    })
})

describe('agrees: conductance of thin strips added up over the section', () => {
  test('round wire', () => {
    let conductance = 0
    const strips = 20000
    for (let k = 0; k < strips; k++) {
      const x = -1 + (2 * (k + 0.5)) / strips
      conductance += (58e6 * 2 * Math.sqrt(1 - x * x) * 0.25e-6 * 2) / strips
    }
    const R = conductorResistance({ length: 1, area: round(1e-3), resistivity: ρ })
    expect(R * conductance).toBeCloseTo(1, 5)
  })
})

describe('law: resistance', () => {
  test('in proportion to length, inverse to area', () => {
    const one = conductorResistance({ length: 3, area: 1e-6, resistivity: ρ })
    expect(conductorResistance({ length: 6, area: 2e-6, resistivity: ρ })).toBeCloseTo(one, 15)
    expect(conductorResistance({ length: 0, area: 2e-6, resistivity: ρ })).toBe(0)
  })
  test('ratio 1 at 20 °C; refuses no area and a negative ratio', () => {
    expect(resistanceRatio({ coefficient: α, temperature: 293.15 })).toBe(1)
    expect(() => conductorResistance({ length: 1, area: 0, resistivity: ρ })).toThrow('below-minimum')
    expect(() => resistanceRatio({ coefficient: α, temperature: 1 })).toThrow('below-minimum')
  })
})
