/** Checks the picture of heat's ways: sound, told in words, and the same as its table. */
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import { cellText } from './chart-table.ts'
import { heatWayChart, heatWayTable } from './heat-way.ts'

const ways = (size: number) => [
  { from: 'resin <over> the winding', by: 'film and radiation', power: 8 * size },
  { from: 'magnets', by: 'film and radiation', power: 1.9 * size },
  { from: 'gap air', by: 'air drawn through', power: 0.02 * size },
  { from: 'shaft', by: 'film and radiation', power: -0.01 * size },
]

const widths = [240, 420, 900]
const sizes = [1e-6, 1, 1e5]

/** A number that a picture would show for want of a better one. */
const broken = /NaN|undefined|Infinity/

describe('law: where the heat leaves', () => {
  test.each(widths.flatMap((width) => sizes.map((size) => [width, size] as const)))(
    '%i px, %d W: sound, every bar within, the words within the picture’s shares',
    (width, size) => {
      const svg = heatWayChart({ width, ways: ways(size), wind: 6 })
      expect(markupFaults(svg)).toEqual([])
      expect(svg).not.toMatch(broken)
      const bars = [...svg.matchAll(/<rect class="bar[^>]* width="([\d.]+)"/g)].map((match) =>
        Number(match[1]),
      )
      // the two that carry next to nothing are one
      expect(bars.length).toBe(3)
      for (const bar of bars) expect(bar).toBeLessThanOrEqual(width)
      expect(bars[1]! / bars[0]!).toBeCloseTo(1.9 / 8, 2)
      expect(svg).toContain('81 %')
    },
  )
  test('the table holds every way, and its shares of what leaves sum to all of it', () => {
    const { rows } = heatWayTable({ ways: ways(1) })
    const shares = rows.map((row) => Number(row[3]))
    expect(shares.filter((share) => share > 0).reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 9)
    expect(rows.map((row) => row[2])).toEqual(ways(1).map(({ power }) => power))
  })
  test('nothing leaves a cold machine', () => {
    const cold = ways(0)
    expect(heatWayChart({ width: 400, ways: cold, wind: 2 })).not.toMatch(broken)
    expect(
      heatWayTable({ ways: cold })
        .rows.flat()
        .map((cell) => cellText(cell))
        .join(' '),
    ).not.toMatch(broken)
  })
})
