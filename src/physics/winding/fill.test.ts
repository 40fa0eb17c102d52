/** Checks of packing counts and copper fill bounds. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import type { Packing } from './fill.ts'
import {
  copperFillBound,
  copperFillLimit,
  greatestWire,
  handStripGrowth,
  hexagonalDensity,
  squareDensity,
  stripFill,
  windowFill,
} from './fill.ts'

describe('source: iec-60317-0-1, grade 1 outer diameters as listed by a maker (not opened) — packing bounds times (d/D)²', () => {
  //       d      D      hexagonal square
  const rows = [
    [1.25, 1.316, '0.818', '0.709'],
    [0.28, 0.312, '0.730', '0.633'],
    [0.2, 0.226, '0.710', '0.615'],
  ] as const
  for (const [d, D, hexagonal, square] of rows) {
    const bound = copperFillBound({ bareDiameter: d / 1000, outerDiameter: D / 1000 })
    check(`${d} mm, hexagonal`, bound, hexagonal)
    check(`${d} mm, square`, (bound * squareDensity) / hexagonalDensity, square)
  }
  check('densest packing in the plane', hexagonalDensity, '0.9069')
})

const wire = (D: number, strands = 1) => ({ bareDiameter: 0.9 * D, outerDiameter: D, strands })

describe('law: counts', () => {
  test('square order: rows by columns', () => {
    const fill = windowFill({ width: 0.02, thickness: 0.01, wire: wire(0.001), packing: 'square' })
    expect(fill.turns).toBe(200)
    expect(fill.wireFill).toBeCloseTo(squareDensity, 12)
  })
  test('nested rows: 10, 9, 10 … fit 0.866 of a diameter apart', () => {
    // 10 wide, height for rows 1 + (9.66 − 1)/0.866 = 11: 6·10 + 5·9
    const fill = windowFill({ width: 0.01, thickness: 0.00967, wire: wire(0.001), packing: 'hexagonal' })
    expect(fill.wires).toBe(105)
  })
  test('many thin wires tend to the densest packing', () => {
    const fill = windowFill({ width: 0.1, thickness: 0.1, wire: wire(0.0001), packing: 'hexagonal' })
    expect(fill.wireFill).toBeGreaterThan(0.995 * hexagonalDensity)
  })
  test('never above the bound, however odd the window, and order beats the hand', () => {
    const size = fc.double({ min: 1e-4, max: 0.05, noNaN: true })
    fc.assert(
      fc.property(
        size,
        size,
        fc.double({ min: 5e-5, max: 5e-3, noNaN: true }),
        fc.integer({ min: 1, max: 5 }),
        (a, b, D, strands) => {
          const run = (packing: Packing) =>
            windowFill({ width: a, thickness: b, wire: wire(D, strands), packing })
          const [square, hexagonal, hand] = (['square', 'hexagonal', 'hand-wound'] as const).map(run)
          for (const fill of [square, hexagonal, hand]) {
            expect(fill.copperFill).toBeLessThanOrEqual(fill.bound + 1e-12)
            expect(fill.turns * strands).toBeLessThanOrEqual(fill.wires)
          }
          expect(hexagonal.wires).toBeGreaterThanOrEqual(square.wires)
          expect(hexagonal.wires).toBeGreaterThanOrEqual(hand.wires)
        },
      ),
    )
  })
  test('turns and area scale: half the diameter, four times the turns', () => {
    const at = (D: number) =>
      windowFill({ width: 0.02, thickness: 0.01, wire: wire(D), packing: 'square' }).turns
    expect(at(0.0005)).toBe(4 * at(0.001))
  })
  test('usual hand winding stays between the published limits of random and orderly lay', () => {
    const fill = windowFill({
      width: 0.02,
      thickness: 0.013,
      wire: { bareDiameter: 0.00125, outerDiameter: 0.001316, strands: 1 },
      packing: 'hand-wound',
    })
    expect(fill.copperFill).toBeGreaterThan(copperFillLimit.machineRandom)
    expect(fill.copperFill).toBeLessThan(copperFillLimit.orderly)
  })
  test('wire too thick for the window: no turn', () => {
    const fill = windowFill({ width: 0.001, thickness: 0.01, wire: wire(0.002), packing: 'hexagonal' })
    expect([fill.wires, fill.turns, fill.copperFill]).toEqual([0, 0, 0])
  })
})

describe('law: greatest wire', () => {
  test('fits, and a hair more does not', () => {
    for (const packing of ['square', 'hexagonal', 'hand-wound'] as const)
      for (const turns of [1, 7, 80]) {
        const input = { width: 0.021, thickness: 0.0123, turns, strands: 2, packing }
        const D = greatestWire(input)
        const at = (x: number) => windowFill({ ...input, wire: wire(x, 2) }).turns
        expect(at(D)).toBeGreaterThanOrEqual(turns)
        expect(at(D * 1.000001)).toBeLessThan(turns)
      }
  })
  test('broken wires and windows are refused', () => {
    const window = { width: 0.02, thickness: 0.01, packing: 'square' } as const
    expect(() =>
      windowFill({ ...window, wire: { bareDiameter: 1e-3, outerDiameter: 9e-4, strands: 1 } }),
    ).toThrow(/below-minimum/)
    expect(() => windowFill({ ...window, wire: wire(0.001, 0) })).toThrow(/not-a-choice/)
    expect(() => windowFill({ ...window, width: 0, wire: wire(0.001) })).toThrow(/below-minimum/)
    expect(() => greatestWire({ ...window, turns: 0, strands: 1 })).toThrow(/not-a-choice/)
  })
})

describe('agrees: strip laid one by one', () => {
  test('columns and rows counted until the next one would not go in', () => {
    const lay = (extent: number, step: number) => {
      let n = 0
      while ((n + 1) * step <= extent * (1 + 1e-12)) n++
      return n
    }
    for (const [a, b, s, t] of [
      [0.018, 0.012, 0.0041, 0.0016],
      [0.02, 0.01, 0.004, 0.001],
      [0.003, 0.01, 0.004, 0.001],
    ] as const)
      for (const growth of [1, handStripGrowth.least, handStripGrowth.usual]) {
        const strip = { across: s, through: t, area: 0.9 * s * t, strands: 1 }
        const { turns } = stripFill({ width: a, thickness: b, strip, growth })
        expect(turns).toBe(lay(a, s * growth) * lay(b, t * growth))
      }
  })
})

describe('law: strip', () => {
  const strip = { across: 0.004, through: 0.001, area: 3.8e-6, strands: 1 }
  const window = { width: 0.02, thickness: 0.01 }
  test('metal never exceeds the window; square strip without gaps fills it', () => {
    const fill = stripFill({ ...window, strip, growth: 1 })
    expect(fill.wireFill).toBeCloseTo(1, 12)
    expect(fill.copperFill).toBeLessThan(fill.wireFill)
  })
  test('the hand lays no more than order; strands share the wires', () => {
    const order = stripFill({ ...window, strip, growth: 1 })
    const hand = stripFill({ ...window, strip, growth: handStripGrowth.greatest })
    expect(hand.turns).toBeLessThan(order.turns)
    expect(stripFill({ ...window, strip: { ...strip, strands: 3 }, growth: 1 }).turns).toBe(16)
  })
  test('fills better than round wire of the same copper', () => {
    const d = Math.sqrt((4 * strip.area) / Math.PI)
    const round = windowFill({
      ...window,
      wire: { bareDiameter: d, outerDiameter: d + 1e-4, strands: 1 },
      packing: 'hand-wound',
      fraction: 0.65,
    })
    expect(stripFill({ ...window, strip, growth: handStripGrowth.usual }).copperFill).toBeGreaterThan(
      round.copperFill,
    )
  })
  test('broken strip is refused', () => {
    expect(() => stripFill({ ...window, strip, growth: 0.9 })).toThrow(/below-minimum/)
    expect(() => stripFill({ ...window, strip: { ...strip, strands: 0 }, growth: 1 })).toThrow(/not-a-choice/)
    expect(() => stripFill({ ...window, strip: { ...strip, across: 0 }, growth: 1 })).toThrow(/below-minimum/)
  })
})
