/** Checks of the river of watts: its widths are its watts, and any split of them is a picture. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import { fullScale, type RiverReach, riverBand, riverChart } from './river.ts'

const bed = { reach: 160, fullest: 60, widest: 90, foot: 120, lies: true }

const reaches: readonly RiverReach[] = [
  { label: 'wind', water: 'wind', arriving: 300, losses: [] },
  { label: 'blades', water: 'wind', arriving: 300, losses: [{ label: 'past the blades', watts: 200 }] },
  { label: 'shaft', water: 'shaft', arriving: 100, losses: [] },
  { label: 'winding', water: 'electric', arriving: 100, losses: [{ label: 'copper heat', watts: 50 }] },
  { label: 'store <&>', water: 'electric', arriving: 50, losses: [] },
]

/** Height of a water's outline at its start: the outline runs along the upper edge and back along the lower. */
function widthsAtStart(body: string, className: string): number[] {
  return [...body.matchAll(new RegExp(`class="water ${className}" d="M([^Z]+)Z"`, 'g'))].map(([, path]) => {
    const points = path!.split('L').map((pair) => pair.split(' ').map(Number))
    return points.at(-1)![1]! - points[0]![1]!
  })
}

describe('law: the band is as wide as its watts', () => {
  test('what arrives at the shaft fills the scale, half of it is half as wide, a wider wind is torn', () => {
    const { body, scale, torn } = riverBand({ reaches }, bed)
    const [shaft] = widthsAtStart(body, 'water-shaft')
    const [winding, store] = widthsAtStart(body, 'water-electric')
    expect(shaft).toBeCloseTo(60, 1)
    expect(winding).toBeCloseTo(60, 1)
    expect(store).toBeCloseTo(30, 1)
    expect(scale.width / scale.watts).toBeCloseTo(60 / 100, 9)
    expect(torn).toBe(true)
    expect(widthsAtStart(body, 'water-wind')[0]).toBeCloseTo(90, 1)
  })
  test('down the page the same lengths stand across', () => {
    const lying = riverBand({ reaches }, bed).body
    const standing = riverBand({ reaches }, { ...bed, lies: false }).body
    const numbers = (body: string) => [...body.matchAll(/-?\d+(\.\d+)?/g)].map(([n]) => n).sort()
    expect(numbers(standing)).toEqual(numbers(lying))
  })
  test('the scale goes in steps of 1, 2 and 5 and is never passed', () =>
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (watts) => {
        const full = fullScale(watts)
        expect(full).toBeGreaterThanOrEqual(watts * (1 - 1e-6))
        expect(full).toBeLessThanOrEqual(2.5 * watts * (1 + 1e-6))
      }),
    ))
})

describe('law: any split of the watts gives a picture', () => {
  test('with finite places and sound markup', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        (shares, available) => {
          let arriving = available
          const split = reaches.map((reach, k): RiverReach => {
            const lost = arriving * (shares[k] ?? 0)
            const made = { ...reach, arriving, losses: k === 0 ? [] : [{ label: 'lost', watts: lost }] }
            if (k > 0) arriving -= lost
            return made
          })
          const svg = riverChart({ width: 900, wind: 6, reaches: split })
          expect(svg).not.toMatch(/NaN|Infinity|undefined/)
          expect(markupFaults(svg)).toEqual([])
        },
      ),
      { numRuns: 60 },
    ))
  test('one reach alone is its part of the whole: the same water, and its own side stream', () => {
    const paths = (body: string, name: string) =>
      body.match(new RegExp(`<path class="${name}[^>]*>`, 'g')) ?? []
    const whole = riverBand({ reaches }, bed).body
    const alone = reaches.map((_, k) => riverBand({ reaches }, bed, k).body)
    expect(alone.flatMap((body) => paths(body, 'water '))).toEqual(paths(whole, 'water '))
    for (const stream of paths(whole, 'side-stream')) expect(alone.join('')).toContain(stream)
  })
  test('a still machine has no water', () => {
    const still = reaches.map((reach) => ({ ...reach, arriving: 0, losses: [] }))
    expect(riverBand({ reaches: still }, bed).body).toBe('')
  })
})
