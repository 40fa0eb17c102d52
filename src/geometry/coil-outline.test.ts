/** Checks of coil outlines: Steiner’s formulas, closing, outer size, neighbours. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { CoilOutline, HoleShape } from './coil-outline.ts'
import {
  coilCurve,
  coilExtent,
  coilFilaments,
  coilMeanTurnLength,
  neighbourClearance,
} from './coil-outline.ts'
import { curveLength, curvePolyline, enclosedArea, piecePoint, turnedCurve } from './curve.ts'

const disc = { kind: 'disc', meanRadius: 0.12, z: 0.01 } as const
const drum = { kind: 'drum', radius: 0.12, z: 0.01 } as const
const round: HoleShape = { kind: 'round', diameter: 0.02 }
const rectangle: HoleShape = { kind: 'rectangular', width: 0.02, length: 0.05, cornerRadius: 0.003 }
const wedge: HoleShape = {
  kind: 'wedge',
  innerWidth: 0.012,
  outerWidth: 0.028,
  length: 0.05,
  cornerRadius: 0.003,
}
const holes = [round, rectangle, wedge]

/** Area and perimeter of the hole, in closed form. */
function sizes(hole: HoleShape): { area: number; perimeter: number } {
  if (hole.kind === 'round')
    return { area: (Math.PI * hole.diameter ** 2) / 4, perimeter: Math.PI * hole.diameter }
  const inner = hole.kind === 'wedge' ? hole.innerWidth : hole.width
  const outer = hole.kind === 'wedge' ? hole.outerWidth : hole.width
  const c = hole.cornerRadius
  // corner of inside angle α loses c²(cot(α/2) − (π − α)/2) of area and 2c cot(α/2) − c(π − α) of edge
  const lean = Math.atan((outer - inner) / (2 * hole.length))
  let area = ((inner + outer) / 2) * hole.length
  let perimeter = inner + outer + (2 * hole.length) / Math.cos(lean)
  for (const α of [Math.PI / 2 + lean, Math.PI / 2 - lean]) {
    const cot = 1 / Math.tan(α / 2)
    area -= 2 * c * c * (cot - (Math.PI - α) / 2)
    perimeter -= 2 * (2 * c * cot - c * (Math.PI - α))
  }
  return { area, perimeter }
}

describe('law: parallel outlines', () => {
  for (const hole of holes)
    test(`${hole.kind}: length and area by Steiner's formulas on the disc`, () => {
      const { area, perimeter } = sizes(hole)
      for (const d of [0, 0.0007, 0.01]) {
        const curve = coilCurve({ hole, surface: disc, angle: 0.4 }, { outward: d, normal: 0 })
        expect(curveLength(curve)).toBeCloseTo(perimeter + 2 * Math.PI * d, 13)
        expect(enclosedArea(curve)[2]).toBeCloseTo(area + perimeter * d + Math.PI * d * d, 14)
      }
    })
  test('unrolled lengths hold on the drum as well', () => {
    for (const hole of holes) {
      const curve = coilCurve({ hole, surface: drum, angle: 1 }, { outward: 0.002, normal: 0 })
      expect(curveLength(curve)).toBeCloseTo(sizes(hole).perimeter + 2 * Math.PI * 0.002, 13)
    }
  })
  test('positive round the outward normal on the drum', () => {
    const area = enclosedArea(
      coilCurve({ hole: rectangle, surface: drum, angle: 0 }, { outward: 0, normal: 0 }),
    )
    expect(area[0]).toBeGreaterThan(0.8 * sizes(rectangle).area)
    expect(Math.abs(area[1])).toBeLessThan(1e-12)
  })
  test('pieces join and close, whatever the shape; copies turned by the coil pitch too', () => {
    fc.assert(
      fc.property(
        fc.record({
          inner: fc.double({ min: 0, max: 0.05, noNaN: true }),
          outer: fc.double({ min: 0, max: 0.05, noNaN: true }),
          corner: fc.double({ min: 0, max: 0.3, noNaN: true }),
          outward: fc.double({ min: 0, max: 0.02, noNaN: true }),
          onDisc: fc.boolean(),
        }),
        ({ inner, outer, corner, outward, onDisc }) => {
          const least = Math.min(inner, outer)
          const hole: HoleShape = {
            kind: 'wedge',
            innerWidth: inner,
            outerWidth: outer,
            length: 0.04,
            cornerRadius: Math.min(corner * least, 0.019),
          }
          const coil: CoilOutline = { hole, surface: onDisc ? disc : drum, angle: 0 }
          const curve = turnedCurve(coilCurve(coil, { outward, normal: 0.001 }), 0.7)
          curve.pieces.forEach((piece, i) => {
            const end = piecePoint(piece, 1)
            const next = piecePoint(curve.pieces[(i + 1) % curve.pieces.length], 0)
            expect(Math.hypot(end[0] - next[0], end[1] - next[1], end[2] - next[2])).toBeLessThan(1e-12)
          })
          expect(Number.isFinite(curveLength(curve))).toBe(true)
        },
      ),
      { numRuns: 100 },
    )
  })
  test('mean turn is the average over the legs', () => {
    const section = { width: 0.012, thickness: 0.01 }
    for (const surface of [disc, drum])
      for (const hole of holes) {
        const coil: CoilOutline = { hole, surface, angle: 0 }
        const mean = coilFilaments(coil, section, [6, 6]).reduce(
          (sum, f) => sum + f.weight * curveLength(f.curve),
          0,
        )
        expect(coilMeanTurnLength(coil, section)).toBeCloseTo(mean, 9)
      }
  })
})

describe('law: outer size and neighbours', () => {
  const coil = (hole: HoleShape): CoilOutline => ({ hole, surface: disc, angle: 0 })
  test('round: hole plus two legs every way', () => {
    expect(coilExtent(coil(round), 0.01)).toEqual({
      innerWidth: 0.04,
      outerWidth: 0.04,
      width: 0.04,
      length: 0.04,
    })
  })
  test('the drawn outline is as wide and long as stated', () => {
    for (const hole of holes) {
      const corners = curvePolyline(coilCurve(coil(hole), { outward: 0.008, normal: 0 }), { sagitta: 1e-8 })
      let width = 0
      let least = 1
      let most = 0
      for (let i = 0; i < corners.length; i += 3) {
        width = Math.max(width, 2 * Math.abs(corners[i + 1]))
        least = Math.min(least, corners[i])
        most = Math.max(most, corners[i])
      }
      const extent = coilExtent(coil(hole), 0.008)
      expect(width).toBeCloseTo(extent.width, 6)
      expect(most - least).toBeCloseTo(extent.length, 6)
    }
  })
  test('clearance equals the smallest distance between the drawn neighbours, and its sign the overlap', () => {
    for (const hole of holes)
      for (const count of [6, 9, 12]) {
        const outline = curvePolyline(coilCurve(coil(hole), { outward: 0.006, normal: 0 }), { sagitta: 1e-6 })
        const half = Math.PI / count
        let nearest = 1
        for (let i = 0; i < outline.length; i += 3)
          nearest = Math.min(nearest, outline[i] * Math.sin(half) - outline[i + 1] * Math.cos(half))
        expect(neighbourClearance(coil(hole), 0.006, count)).toBeCloseTo(2 * nearest, 5)
      }
  })
  test('sector-shaped legs that just touch', () => {
    // sides along the ray at π/9, legs filling the sector: hole width 2 (r tan(π/9) − leg/cos(π/9))
    const leg = 0.008
    const at = (r: number) => 2 * (r * Math.tan(Math.PI / 9) - leg / Math.cos(Math.PI / 9))
    const hole: HoleShape = {
      kind: 'wedge',
      innerWidth: at(0.1),
      outerWidth: at(0.14),
      length: 0.04,
      cornerRadius: 0.002,
    }
    expect(Math.abs(neighbourClearance(coil(hole), leg, 9))).toBeLessThan(1e-14)
  })
  test('meaningless coils are refused', () => {
    const curve = (hole: HoleShape) => () => coilCurve(coil(hole), { outward: 0, normal: 0 })
    expect(curve({ ...rectangle, cornerRadius: 0.02 } as HoleShape)).toThrow(/conflict/)
    expect(curve({ ...rectangle, length: -1 } as HoleShape)).toThrow(/below-minimum/)
    expect(() => coilCurve(coil(round), { outward: -0.001, normal: 0 })).toThrow(/below-minimum/)
    expect(() => neighbourClearance(coil(round), 0.01, 0)).toThrow(/below-minimum/)
  })
})
