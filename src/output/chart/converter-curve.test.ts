/** Checks the picture of a converter's curve: sound, told in words, and the same as its table. */
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import type { ConverterDuty } from '../../analysis/converter-duty.ts'
import { converterCurveChart, converterCurveTable } from './converter-curve.ts'

const duty = (size: number): ConverterDuty => ({
  curve: [
    { speed: 10, power: 0 },
    { speed: 60, power: 20 * size },
  ],
  winds: [3, 6, 9].map((wind) => ({
    wind,
    speed: 6 * wind,
    asked: wind * size,
    drawn: 0.9 * wind * size,
    shaft: 1.5 * wind * size,
    best: 2 * wind * size,
    bestSpeed: 8 * wind,
  })),
})

const widths = [240, 420, 900]
const sizes = [1e-6, 1, 1e5]

/** A number that a picture would show for want of a better one. */
const broken = /NaN|undefined|Infinity/

describe('law: what the electronics ask for', () => {
  test.each(widths.flatMap((width) => sizes.map((size) => [width, size] as const)))(
    '%i px, %d W: sound, three lines and the wind looked at',
    (width, size) => {
      const svg = converterCurveChart({ width, height: 320, duty: duty(size), chosenWind: 6 })
      expect(markupFaults(svg)).toEqual([])
      expect(svg).not.toMatch(broken)
      expect(svg.match(/class="line /g)?.length).toBe(3)
      expect(svg).toContain('6 m/s')
    },
  )
  test('the table has a row for each wind, in watts and turns a minute', () => {
    const { columns, rows } = converterCurveTable(duty(1))
    expect(columns.map(({ unit }) => unit)).toEqual(['m/s', 'rpm', 'W', 'W', 'W', 'W', 'rpm'])
    expect(rows.map((row) => row[0])).toEqual([3, 6, 9])
    expect(rows[1]![1]).toBeCloseTo((36 * 60) / (2 * Math.PI), 9)
    expect(rows[1]![3]).toBeCloseTo(5.4, 12)
  })
  test('a rotor that never turns leaves the curve alone', () => {
    const still = { ...duty(1), winds: [] }
    const svg = converterCurveChart({ width: 400, height: 320, duty: still, chosenWind: 6 })
    expect(svg).not.toMatch(broken)
    expect(svg).toContain('In no wind of the table')
  })
})
