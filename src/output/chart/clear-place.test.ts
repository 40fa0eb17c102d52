/** Checks that words find room beside what is drawn. */
import { describe, expect, test } from 'vitest'
import { clearPlace } from './clear-place.ts'
import { overlap, type WordBox } from './panel.ts'
import type { Point } from './picture.ts'

const within: WordBox = { left: 0, right: 400, top: 0, bottom: 300 }
const text = 'S 751 rpm, 40.0 W'
const covered = ({ left, right, top, bottom }: WordBox, points: readonly Point[]): number =>
  points.filter(([x, y]) => x > left && x < right && y > top && y < bottom).length

describe('law: words stand beside their point, inside the sheet, on as little as possible', () => {
  test('with nothing in the way they stand right of it, no more than a line away', () => {
    const { at, anchor } = clearPlace([200, 150], text, { within, points: [], words: [] })
    expect(at[0]).toBeGreaterThan(200)
    expect(Math.abs(at[1] - 150)).toBeLessThan(20)
    expect(anchor).toBe('start')
  })

  test('near the right border they go to the other side', () => {
    const { anchor, box } = clearPlace([390, 150], text, { within, points: [], words: [] })
    expect(anchor).toBe('end')
    expect(box.right).toBeLessThan(390)
  })

  test('near the foot they stand above', () => {
    const { box } = clearPlace([200, 298], text, { within, points: [], words: [] })
    expect(box.bottom).toBeLessThanOrEqual(300)
  })

  test('signs along a slope through the point are not covered', () => {
    for (const slope of [-2, -1, -0.5, 0.5, 1, 2]) {
      const points = Array.from(
        { length: 81 },
        (_, k): Point => [200 + (k - 40) * 5, 150 + slope * (k - 40) * 5],
      )
      const { box } = clearPlace([200, 150], text, { within, points, words: [] })
      expect(covered(box, points), `slope ${slope}`).toBe(0)
    }
  })

  test('other words are not covered', () => {
    const [first] = [clearPlace([200, 150], text, { within, points: [], words: [] })]
    const second = clearPlace([204, 152], text, { within, points: [], words: [first.box] })
    expect(overlap(first.box, second.box)).toBe(false)
  })
})
