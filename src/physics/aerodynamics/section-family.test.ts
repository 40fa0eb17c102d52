/** Checks of a section at several Reynolds numbers. */
import { describe, expect, test } from 'vitest'
import { sections } from '../../data/airfoil/index.ts'
import { naca6409 } from '../../data/airfoil/naca6409.ts'
import { extendedPolar, type Polar, polarAtReynolds } from './polar.ts'
import { completedPolars, sectionFamily, zeroLiftAngle } from './section-family.ts'

const rad = Math.PI / 180
const polars = naca6409.map(
  ({ rows, reynolds }): Polar => ({
    angle: Float64Array.from(rows, ([α]) => α * rad),
    lift: Float64Array.from(rows, ([, lift]) => lift),
    drag: Float64Array.from(rows, ([, , drag]) => drag),
    reynolds,
  }),
)
const whole = completedPolars(polars)

describe('law: polars brought to one length', () => {
  test('measured points stay, ends agree, the lent part keeps its distance', () => {
    const ends = whole.map(({ angle }) => angle[angle.length - 1]!)
    expect(new Set(ends.map((end) => end.toFixed(9))).size).toBe(1)
    polars.forEach((polar, j) => {
      expect([...whole[j]!.lift.slice(0, polar.lift.length)]).toEqual([...polar.lift])
      expect([...whole[j]!.drag.slice(0, polar.drag.length)]).toEqual([...polar.drag])
    })
    // 61 000: measured to 5.00° only; lent by 100 700 and, past 9.73°, through it by 200 600
    const [low, middle] = whole
    const n = low!.lift.length
    const m = middle!.lift.length
    expect(low!.lift[n - 1]! - low!.lift[n - 2]!).toBeCloseTo(middle!.lift[m - 1]! - middle!.lift[m - 2]!, 12)
    for (const { drag } of whole) for (const value of drag) expect(value).toBeGreaterThan(0)
  })
  test('a highest Reynolds number that ends early is carried on by the one below', () => {
    const [a, b] = [polars[2]!, polars[0]!]
    const [longer, shorter] = completedPolars([
      { ...a, reynolds: 1e5 },
      { ...b, reynolds: 2e5 },
    ])
    expect(shorter!.angle[shorter!.angle.length - 1]).toBe(longer!.angle[longer!.angle.length - 1])
  })
  test('refuses a falling list and an empty one', () => {
    expect(() => completedPolars([polars[1]!, polars[0]!])).toThrow(/not-increasing/)
    expect(() => completedPolars([])).toThrow(/wrong-length/)
  })
})

describe('agrees: the table of the family against polarAtReynolds carried to the whole circle', () => {
  const family = sectionFamily(whole, { aspectRatio: 10 })
  const out = { lift: 0, drag: 0 }
  test('inside the measured angles: 0.02 of lift, 0.002 of drag', () => {
    for (const reynolds of [20000, 61000, 80000, 150000, 200600, 1e6]) {
      const exact = extendedPolar(polarAtReynolds(whole, reynolds), { aspectRatio: 10 })
      family.choose(reynolds)
      for (let α = -2.5; α <= 11.2; α += 0.137) {
        family.at(α * rad, out)
        const { lift, drag } = exact(α * rad)
        // shape-keeping cubics through one blended polar and blends of two cubics differ between the points
        expect(Math.abs(out.lift - lift)).toBeLessThan(0.02)
        expect(Math.abs(out.drag - drag)).toBeLessThan(0.002)
      }
    }
  })
  test('at the Reynolds number of a polar it is that polar, at every angle', () => {
    for (const polar of whole) {
      const exact = extendedPolar(polar, { aspectRatio: 10 })
      family.choose(polar.reynolds)
      for (let α = -180; α <= 180; α += 0.73) {
        family.at(α * rad, out)
        const { lift, drag } = exact(α * rad)
        expect(Math.abs(out.lift - lift), `${α}°`).toBeLessThan(Math.abs(α) < 23 ? 0.004 : 0.01)
        expect(Math.abs(out.drag - drag), `${α}°`).toBeLessThan(0.002)
      }
    }
  })
  test('finite at any angle and Reynolds number', () => {
    for (const reynolds of [0, 1e-9, 1e5, 1e12])
      for (const α of [-100, -Math.PI, 0, Math.PI, 7, 1e6]) {
        family.choose(reynolds)
        family.at(α, out)
        expect(Number.isFinite(out.lift + out.drag)).toBe(true)
      }
  })
})

describe('law: angle of no lift', () => {
  test('between the points, or along 2π from the lowest', () => {
    const line = (from: number): Polar => ({
      angle: Float64Array.of(from, 0.2),
      lift: Float64Array.of(2 * Math.PI * (from + 0.05), 2 * Math.PI * 0.25),
      drag: Float64Array.of(0.01, 0.01),
      reynolds: 1e5,
    })
    expect(zeroLiftAngle(line(-0.1))).toBeCloseTo(-0.05, 12)
    expect(zeroLiftAngle(line(0.01))).toBeCloseTo(-0.05, 12)
    const circle = sections['NACA 0018'][0]!.rows
    const whole = {
      ...line(0),
      angle: Float64Array.from(circle, ([α]) => α * rad),
      lift: Float64Array.from(circle, ([, lift]) => lift),
    }
    expect(zeroLiftAngle(whole)).toBeCloseTo(0, 9)
  })
})
