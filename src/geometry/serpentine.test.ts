/** Checks of the serpentine: closing, symmetry, lengths, sense. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  curveLength,
  curvePolyline,
  curveQuadrature,
  enclosedArea,
  piecePoint,
  turnedCurve,
} from './curve.ts'
import type { Serpentine } from './serpentine.ts'
import {
  serpentineCurve,
  serpentineFilaments,
  serpentineMeanTurnLength,
  serpentineRunGap,
  serpentineSegment,
} from './serpentine.ts'

const onDrum: Serpentine = {
  surface: { kind: 'drum', radius: 0.038, z: 0.01 },
  polePairs: 8,
  activeLength: 0.05,
  runSlant: 0,
  crown: { kind: 'half-ellipse', height: 0.006 },
  angle: 0.1,
}
const onDisc: Serpentine = { ...onDrum, surface: { kind: 'disc', meanRadius: 0.12, z: 0.01 } }

const shape = fc
  .record({
    disc: fc.boolean(),
    polePairs: fc.integer({ min: 1, max: 40 }),
    slant: fc.constantFrom(0, 0.3, 0.9, 1),
    corners: fc.boolean(),
    height: fc.constantFrom(0, 0.001, 0.01),
    angle: fc.double({ min: -7, max: 7, noNaN: true }),
  })
  .map(({ disc, polePairs, slant, corners, height, angle }): Serpentine => {
    const pitch = Math.PI / polePairs
    const gap = 0.05 * pitch * (1 - slant)
    return {
      surface: disc ? { kind: 'disc', meanRadius: 0.12, z: 0.01 } : { kind: 'drum', radius: 0.05, z: 0.01 },
      polePairs,
      activeLength: 0.04,
      runSlant: slant * pitch,
      crown: corners
        ? { kind: 'rounded-corners', height, cornerRadius: Math.min(height, 0.4 * gap) }
        : { kind: 'half-ellipse', height },
      angle,
    }
  })

describe('law: every serpentine', () => {
  test('joins end to end, closes, and its pole-pair copies make the whole', () => {
    fc.assert(
      fc.property(shape, (serpentine) => {
        const curve = serpentineCurve(serpentine)
        curve.pieces.forEach((piece, i) => {
          const end = piecePoint(piece, 1)
          const next = piecePoint(curve.pieces[(i + 1) % curve.pieces.length], 0)
          expect(Math.hypot(end[0] - next[0], end[1] - next[1], end[2] - next[2])).toBeLessThan(1e-13)
        })
        const { segment, repeats } = serpentineSegment(serpentine)
        expect(curve.pieces.length).toBe(repeats * segment.pieces.length)
        expect(curveLength(segment) * repeats).toBeCloseTo(curveLength(curve), 11)
        const last = turnedCurve(segment, (2 * Math.PI * (repeats - 1)) / repeats)
        const point = piecePoint(last.pieces[0], 0.5)
        const same = piecePoint(curve.pieces[curve.pieces.length - segment.pieces.length], 0.5)
        for (let k = 0; k < 3; k++) expect(point[k]).toBeCloseTo(same[k], 13)
      }),
      { numRuns: 60 },
    )
  })
  test('∮ dl = 0, and the polyline closes to the last bit', () => {
    fc.assert(
      fc.property(shape, (serpentine) => {
        const curve = serpentineCurve(serpentine)
        const { steps } = curveQuadrature(curve, { longestStep: 0.01, order: 8 })
        const sum = [0, 0, 0]
        for (let i = 0; i < steps.length; i++) sum[i % 3] += steps[i]
        for (const part of sum) expect(Math.abs(part)).toBeLessThan(1e-9)
        const corners = curvePolyline(curve, { sagitta: 1e-3 })
        expect(Array.from(corners.slice(-3))).toEqual(Array.from(corners.slice(0, 3)))
        // as many chords in every pole pair, so that sums may use the symmetry
        expect((corners.length / 3 - 1) % serpentine.polePairs).toBe(0)
      }),
      { numRuns: 40 },
    )
  })
})

describe('law: lengths in closed form', () => {
  test('drum: 2p straight runs and 2p half ellipses, on a circle when height is half the pitch', () => {
    const pitch = (Math.PI / 8) * 0.038
    const round = serpentineCurve({ ...onDrum, crown: { kind: 'half-ellipse', height: pitch / 2 } })
    expect(curveLength(round)).toBeCloseTo(16 * (0.05 + (Math.PI * pitch) / 2), 13)
  })
  test('drum: rounded corners are straight chords and quarter circles', () => {
    const pitch = (Math.PI / 8) * 0.038
    const cornered = serpentineCurve({
      ...onDrum,
      crown: { kind: 'rounded-corners', height: 0.006, cornerRadius: 0.002 },
    })
    expect(curveLength(cornered)).toBeCloseTo(16 * (0.05 + 2 * 0.004 + pitch - 0.004 + Math.PI * 0.002), 13)
  })
  test('zigzag: 2p helices of one pole pitch each, no crowns left', () => {
    const zigzag = serpentineCurve({ ...onDrum, runSlant: Math.PI / 8 })
    expect(zigzag.pieces.length).toBe(16)
    expect(curveLength(zigzag)).toBeCloseTo(16 * Math.hypot(0.05, (Math.PI / 8) * 0.038), 13)
  })
  test('disc with flat crowns: radial runs and arcs at both ends', () => {
    const bare = serpentineCurve({ ...onDisc, crown: { kind: 'half-ellipse', height: 0 } })
    expect(curveLength(bare)).toBeCloseTo(16 * 0.05 + Math.PI * (0.095 + 0.145), 12)
    // arcs over half the poles at each radius: ½ Σ (R² − r²) · π/p · p, plus the inner disc
    expect(enclosedArea(bare)[2]).toBeCloseTo((Math.PI / 2) * (0.145 ** 2 + 0.095 ** 2), 12)
  })
  test('the first loop is counter-clockwise seen against the outward normal', () => {
    const [down] = serpentineCurve(onDrum).pieces
    expect(piecePoint(down, 1)[2]).toBeLessThan(piecePoint(down, 0)[2])
    const [out] = serpentineCurve(onDisc).pieces
    expect(Math.hypot(...piecePoint(out, 1))).toBeGreaterThan(Math.hypot(...piecePoint(out, 0)))
    expect(Math.atan2(piecePoint(out, 0.5)[1], piecePoint(out, 0.5)[0])).toBeCloseTo(0.1, 13)
  })
  test('a lateral shift turns the wave, a normal one moves it off the surface', () => {
    const shifted = serpentineCurve(onDrum, { lateral: 0.0038, normal: 0.002 })
    const [x, y, z] = piecePoint(shifted.pieces[0], 0.5)
    expect(Math.atan2(y, x)).toBeCloseTo(0.2, 13)
    expect(Math.hypot(x, y)).toBeCloseTo(0.04, 14)
    expect(z).toBeCloseTo(0.01, 14)
  })
  test('mean turn: average over the layers; the crowns alone grow with the radius', () => {
    const section = { width: 0.004, thickness: 0.003 }
    const filaments = serpentineFilaments(onDrum, section, [2, 6])
    const mean = filaments.reduce((sum, f) => sum + f.weight * curveLength(f.curve), 0)
    expect(serpentineMeanTurnLength(onDrum, section)).toBeCloseTo(mean, 12)
    expect(filaments.reduce((sum, f) => sum + f.weight, 0)).toBeCloseTo(1, 14)
  })
})

describe('law: room between the runs', () => {
  test('is the distance between the facing outer filaments at the ends of the runs', () => {
    for (const serpentine of [onDrum, onDisc, { ...onDisc, runSlant: 0.1 }]) {
      const width = 0.005
      const [run] = serpentineCurve(serpentine, { lateral: width / 2, normal: 0 }).pieces
      const next = serpentineCurve(serpentine, { lateral: -width / 2, normal: 0 }).pieces[2]
      const disc = serpentine.surface.kind === 'disc'
      // disc: the wave's next inner crown lies past run 2; runs 2 and 3 face each other there
      const from = disc ? serpentineCurve(serpentine, { lateral: width / 2, normal: 0 }).pieces[2] : run
      const to = disc ? serpentineCurve(serpentine, { lateral: -width / 2, normal: 0 }).pieces[4] : next
      const a = piecePoint(from, 1)
      const b = piecePoint(to, 0)
      const azimuth = Math.atan2(b[1], b[0]) - Math.atan2(a[1], a[0])
      expect(serpentineRunGap(serpentine, width)).toBeCloseTo(azimuth * Math.hypot(a[0], a[1]), 13)
    }
  })
})

describe('law: meaningless serpentines are refused', () => {
  test('with their codes', () => {
    expect(() => serpentineCurve({ ...onDrum, polePairs: 1.5 })).toThrow(/not-a-choice/)
    expect(() => serpentineCurve({ ...onDrum, runSlant: 1 })).toThrow(/above-maximum/)
    expect(() => serpentineCurve({ ...onDrum, activeLength: Number.NaN })).toThrow(/not-finite/)
    expect(() => serpentineCurve({ ...onDisc, activeLength: 0.3 })).toThrow(/below-minimum/)
    expect(() => serpentineCurve(onDrum, { lateral: 0, normal: -0.04 })).toThrow(/below-minimum/)
    expect(() =>
      serpentineCurve({ ...onDrum, crown: { kind: 'rounded-corners', height: 0.001, cornerRadius: 0.002 } }),
    ).toThrow(/above-maximum/)
  })
})
