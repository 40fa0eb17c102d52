/** Checks of curves: lengths, quadrature, polylines, turns. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import type { Curve, CurvePiece } from './curve.ts'
import {
  curveLength,
  curvePolyline,
  curveQuadrature,
  enclosedArea,
  pieceLength,
  piecePoint,
  straightPiece,
  turnedCurve,
} from './curve.ts'

const flat = { kind: 'plane', origin: [0, 0, 0], xAxis: [1, 0, 0], yAxis: [0, 1, 0] } as const
const ellipse = (a: number, b: number): CurvePiece => ({
  sheet: flat,
  shape: { kind: 'arc', centre: [0.3, -0.2], radii: [a, b], start: 0.4, sweep: 2 * Math.PI },
})
const helix = (rise: number): CurvePiece => ({
  sheet: { kind: 'drum', radius: 2, referenceRadius: 1, angle: 0.1, height: 0 },
  shape: { kind: 'line', from: [0, 0], to: [Math.PI, rise] },
})
const polylineLength = (corners: Float64Array) => {
  let sum = 0
  for (let i = 3; i < corners.length; i += 3)
    sum += Math.hypot(
      corners[i] - corners[i - 3],
      corners[i + 1] - corners[i - 2],
      corners[i + 2] - corners[i - 1],
    )
  return sum
}

describe('source: abramowitz1964, table 17.1 — perimeter of an ellipse 4 a E(m), m = 1 − b²/a² = 0.5 (from memory, not opened)', () => {
  check('a = 1, b = √½', pieceLength(ellipse(1, Math.SQRT1_2)), '5.4025755241907')
})

describe('law: lengths', () => {
  test('circle 2πr, helix by Pythagoras, line of a plane', () => {
    expect(pieceLength(ellipse(0.7, 0.7))).toBeCloseTo(1.4 * Math.PI, 14)
    // half a turn of the reference radius is half a turn of the outer layer: 2π long, whatever the reference
    expect(pieceLength(helix(3))).toBeCloseTo(Math.hypot(2 * Math.PI, 3), 13)
    expect(curveLength({ closed: false, pieces: [straightPiece([1, 2, 3], [4, 6, 3])] })).toBeCloseTo(5, 14)
  })
  test('a nearly flat ellipse is twice its long axis', () => {
    expect(pieceLength(ellipse(1, 1e-7))).toBeCloseTo(4, 9)
    expect(pieceLength(ellipse(1e-7, 1))).toBeCloseTo(4, 9)
  })
  test('the polyline tends to the curve as the square of the chord', () => {
    for (const piece of [ellipse(1, 0.4), helix(3), ellipse(0.5, 0.5)]) {
      const curve: Curve = { closed: false, pieces: [piece] }
      const miss = [1e-3, 1e-5].map(
        (sagitta) => curveLength(curve) - polylineLength(curvePolyline(curve, { sagitta })),
      )
      expect(miss[0]).toBeGreaterThan(0)
      expect(miss[0] / miss[1]).toBeGreaterThan(60)
      expect(miss[1] / curveLength(curve)).toBeLessThan(1e-4)
    }
  })
  test('chords keep to the sagitta asked for', () => {
    const piece = ellipse(1, 1)
    const corners = curvePolyline({ closed: true, pieces: [piece] }, { sagitta: 1e-4 })
    let worst = 0
    for (let i = 3; i < corners.length; i += 3) {
      const x = (corners[i] + corners[i - 3]) / 2 - 0.3
      const y = (corners[i + 1] + corners[i - 2]) / 2 + 0.2
      worst = Math.max(worst, 1 - Math.hypot(x, y))
    }
    expect(worst).toBeLessThan(1.0001e-4)
    expect(worst).toBeGreaterThan(0.9e-4)
  })
})

describe('law: quadrature of a closed curve', () => {
  const closed: Curve = { closed: true, pieces: [ellipse(0.5, 0.2)] }
  test('∮ dl = 0', () => {
    const { steps } = curveQuadrature(closed, { longestStep: 0.5, order: 8 })
    const sum = [0, 0, 0]
    for (let i = 0; i < steps.length; i++) sum[i % 3] += steps[i]
    for (const part of sum) expect(Math.abs(part)).toBeLessThan(1e-12)
  })
  test('½ ∮ r × dl is the area π a b', () => {
    expect(enclosedArea(closed)[2]).toBeCloseTo(Math.PI * 0.1, 12)
  })
  test('summed |steps| are the length; panels keep to the longest step', () => {
    const { steps } = curveQuadrature(closed, { longestStep: 0.05, order: 4 })
    let sum = 0
    for (let i = 0; i < steps.length; i += 3) sum += Math.hypot(steps[i], steps[i + 1], steps[i + 2])
    expect(sum).toBeCloseTo(curveLength(closed), 8)
    expect(steps.length / 12).toBe(Math.ceil(curveLength(closed) / 0.05))
  })
  test('refuses steps that ask for more panels than memory holds', () => {
    expect(() => curveQuadrature(closed, { longestStep: 1e-12, order: 4 })).toThrow(/below-minimum/)
    expect(() => curvePolyline(closed, { sagitta: 1e-20 })).toThrow(/below-minimum/)
    expect(() => curvePolyline(closed, { sagitta: 0 })).toThrow(/below-minimum/)
  })
})

describe('law: a turned curve', () => {
  test('keeps length and turns every point', () => {
    const polar: CurvePiece = {
      sheet: { kind: 'polar', referenceRadius: 1, angle: 0.2, height: 0.3 },
      shape: { kind: 'arc', centre: [0.5, 1], radii: [0.3, 0.2], start: 0, sweep: 2 },
    }
    for (const piece of [ellipse(1, 0.4), helix(3), polar]) {
      const turned = turnedCurve({ closed: false, pieces: [piece] }, 0.7)
      expect(curveLength(turned)).toBeCloseTo(pieceLength(piece), 12)
      for (const t of [0, 0.3, 1]) {
        const [x, y, z] = piecePoint(piece, t)
        const [X, Y, Z] = piecePoint(turned.pieces[0], t)
        expect(X).toBeCloseTo(x * Math.cos(0.7) - y * Math.sin(0.7), 13)
        expect(Y).toBeCloseTo(x * Math.sin(0.7) + y * Math.cos(0.7), 13)
        expect(Z).toBe(z)
      }
    }
  })
  test('survives a structured clone', () => {
    const curve = turnedCurve({ closed: true, pieces: [ellipse(1, 1)] }, 1)
    expect(structuredClone(curve)).toEqual(curve)
  })
})
