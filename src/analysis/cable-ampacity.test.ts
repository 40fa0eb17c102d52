/** Checks the amps that cables carry. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { cableCurrents } from '../data/ampacity.ts'
import { cableAmpacity, leastCableSize } from './cable-ampacity.ts'

describe('source: iec-60364-5-52, method B2 at 30 °C as transcribed — sizes of the table', () => {
  for (const [size, amps] of [
    [1.5, '15'],
    [4, '27'],
    [16, '62'],
    [120, '206'],
  ] as const)
    check(`${size} mm²`, cableAmpacity(size * 1e-6), amps)
})

describe('agrees: heat goes with I²: from 30 °C to 40 °C air the factor is √(30 K/40 K)', () => {
  test.each(cableCurrents)('$crossSection_mm2 mm²', ({ at30degC_A, at40degC_A }) => {
    // both columns are rounded to whole amps
    expect(Math.abs(at40degC_A - Math.sqrt(30 / 40) * at30degC_A)).toBeLessThan(1)
  })
})

describe('law: more copper carries more, in a lower density', () => {
  test('from a hair to a bar', () => {
    let [amps, density] = [0, Number.POSITIVE_INFINITY]
    for (let size = 0.05; size <= 400; size *= 1.07) {
      const here = cableAmpacity(size * 1e-6)
      expect(here).toBeGreaterThan(amps)
      expect(here / size).toBeLessThan(density * (1 + 1e-12))
      amps = here
      density = here / size
    }
    expect(cableAmpacity(0)).toBe(0)
  })
  test('the least size that carries', () => {
    expect(leastCableSize(27)).toBe(4)
    expect(leastCableSize(27.1)).toBe(6)
    expect(leastCableSize(300)).toBeUndefined()
  })
})
