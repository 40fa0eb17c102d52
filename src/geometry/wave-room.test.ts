/** Checks lifted crowns, and the room between waves against distances sampled all along them. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chordLength, greatestJump, leastDistance, sampledPoints } from '../../test/bundle-distance.ts'
import { curveLength, enclosedArea, piecePoint } from './curve.ts'
import { type Serpentine, serpentineCurve, serpentineMeanTurnLength } from './serpentine.ts'
import { type PlacedWave, waveRoom } from './wave-room.ts'

const flat: Serpentine = {
  surface: { kind: 'drum', radius: 0.056, z: 0 },
  polePairs: 6,
  activeLength: 0.06,
  runSlant: 0,
  crown: { kind: 'half-ellipse', height: 0.014 },
  angle: 0,
}
const lifted = (height: number, ramp: number, of: Serpentine = flat): Serpentine => ({
  ...of,
  lift: { height, ramp },
})
const disc: Serpentine = {
  ...flat,
  surface: { kind: 'disc', meanRadius: 0.12, z: 0.004 },
  crown: { kind: 'half-ellipse', height: 0.03 },
}

describe('law: crowns that leave the surface', () => {
  test('close, and stand at their level over a ramp that carries on the run', () => {
    for (const wave of [
      lifted(0.004, 0.008),
      lifted(-0.004, 0.008),
      lifted(0.004, 0.008, disc),
      lifted(0.003, 0.006, { ...flat, runSlant: 0.2 }),
    ]) {
      const curve = serpentineCurve(wave)
      expect(greatestJump(curve)).toBeLessThan(1e-13)
      const level = (p: readonly [number, number, number]) =>
        wave.surface.kind === 'drum' ? Math.hypot(p[0], p[1]) - wave.surface.radius : p[2] - wave.surface.z
      const along = (p: readonly [number, number, number]) =>
        wave.surface.kind === 'drum' ? Math.abs(p[2]) : Math.abs(Math.hypot(p[0], p[1]) - 0.12)
      const { height, ramp } = wave.lift!
      for (const piece of curve.pieces)
        for (const t of [0.01, 0.3, 0.5, 0.99]) {
          const point = piecePoint(piece, t)
          const beyond = along(point) - wave.activeLength / 2
          // a cubic that is level at both ends, in the way beyond the run
          const s = Math.min(Math.max(beyond / ramp, 0), 1)
          expect(level(point)).toBeCloseTo(height * s * s * (3 - 2 * s), 12)
        }
    }
  })
  test('ramps are level at both ends: the path has no corner there', () => {
    const curve = serpentineCurve(lifted(0.004, 0.008))
    curve.pieces.forEach((piece, k) => {
      const next = curve.pieces[(k + 1) % curve.pieces.length]!
      const [a, b, c] = [piecePoint(piece, 1 - 1e-6), piecePoint(piece, 1), piecePoint(next, 1e-6)]
      const into = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
      const out = [c[0] - b[0], c[1] - b[1], c[2] - b[2]]
      const dot = into.reduce((sum, x, i) => sum + x * out[i]!, 0)
      expect(dot / (Math.hypot(...into) * Math.hypot(...out))).toBeGreaterThan(1 - 1e-8)
    })
  })
  test('drum: runs, crowns at the raised radius and four ramps of exact length make a pole pair', () => {
    const [h, ramp] = [0.004, 0.008]
    // crown of height 6 mm left over the ramp: half an ellipse whose width grows with the radius
    const wide = serpentineCurve({
      ...flat,
      surface: { kind: 'drum', radius: 0.056 + h, z: 0 },
      activeLength: 0.06 + 2 * ramp,
      crown: { kind: 'half-ellipse', height: 0.014 - ramp },
    })
    // ∫√(l² + (6h t(1 − t))²) dt by Simpson's rule over a thousand steps
    const n = 1000
    let sum = 0
    for (let k = 0; k <= n; k++) {
      const t = k / n
      const weight = k === 0 || k === n ? 1 : k % 2 === 1 ? 4 : 2
      sum += weight * Math.hypot(ramp, 6 * h * t * (1 - t))
    }
    const slope = sum / (3 * n)
    const expected = curveLength(wide) + 24 * (slope - ramp)
    expect(curveLength(serpentineCurve(lifted(h, ramp)))).toBeCloseTo(expected, 12)
  })
  test('disc: a lift leaves the area that the wave encloses seen along the shaft', () => {
    const upright = enclosedArea(serpentineCurve(lifted(0, 0.01, disc)))[2]
    expect(enclosedArea(serpentineCurve(lifted(0.005, 0.01, disc)))[2]).toBeCloseTo(upright, 12)
  })
  test('length agrees with fine chords, mean turn with the turn in the middle', () => {
    for (const wave of [lifted(0.004, 0.008), lifted(0.005, 0.01, disc)]) {
      const curve = serpentineCurve(wave)
      expect(chordLength(curve, 1e-8) / curveLength(curve)).toBeCloseTo(1, 6)
      expect(
        serpentineMeanTurnLength(wave, { width: 0.008, thickness: 0.002 }) / curveLength(curve),
      ).toBeCloseTo(1, 5)
    }
  })
  test('a lifted zigzag and a lift into the axis are refused', () => {
    expect(() => serpentineCurve(lifted(0.001, 0.002, { ...flat, runSlant: Math.PI / 6 }))).toThrow(
      /conflict/,
    )
    expect(() => serpentineCurve(lifted(-0.06, 0.01))).toThrow(/below-minimum/)
    expect(() => serpentineCurve(lifted(0.001, 0.02))).toThrow(/above-maximum/)
  })
})

/** Turns at the rim of the bundle and inside it. */
const turns = ({ serpentine, bundle }: PlacedWave) =>
  [-0.5, -0.2, 0.2, 0.5].flatMap((u) =>
    [-0.5, 0.5].map((v) =>
      serpentineCurve(serpentine, { lateral: u * bundle.width, normal: v * bundle.thickness }),
    ),
  )

describe('law: the room of two waves is what lies between them', () => {
  test('never more than the least distance of points all along both bundles', () => {
    const place = fc.record({
      onDisc: fc.boolean(),
      offset: fc.constantFrom(1 / 3, 2 / 3, 0.45, 4 / 3),
      width: fc.constantFrom(0.003, 0.006, 0.008),
      slant: fc.constantFrom(0, 0.1),
      lift: fc.constantFrom(0.0022, 0.0035, 0.005),
      distance: fc.constantFrom(0, 0.001, 0.004),
      corners: fc.boolean(),
    })
    let met = 0
    fc.assert(
      fc.property(place, ({ onDisc, offset, width, slant, lift, distance, corners }) => {
        const base = onDisc ? disc : flat
        const pitch = Math.PI / base.polePairs
        const wave = (level: number, height: number, angle: number): PlacedWave => ({
          serpentine: {
            ...base,
            surface:
              base.surface.kind === 'drum'
                ? { ...base.surface, radius: base.surface.radius + level }
                : { ...base.surface, z: base.surface.z + level },
            runSlant: slant * pitch,
            crown: corners
              ? { kind: 'rounded-corners', height: base.crown.height, cornerRadius: 0.002 }
              : base.crown,
            lift: { height, ramp: 0.01 },
            angle,
          },
          bundle: { width, thickness: 0.002 },
        })
        const a = wave(0, 0, 0)
        const b = wave(distance, lift, offset * pitch)
        const { room } = waveRoom(a, b)
        if (room <= 0) return
        met++
        const least = leastDistance(sampledPoints(turns(a), 12), sampledPoints(turns(b), 12))
        expect(least).toBeGreaterThan(room * (1 - 1e-9))
      }),
      { numRuns: 25 },
    )
    expect(met).toBeGreaterThan(4)
  })
  test('side by side, and one over the other, in closed form', () => {
    const bundle = { width: 0.008, thickness: 0.002 }
    const b = { serpentine: lifted(0.003, 0.006, { ...flat, angle: Math.PI / 9 }), bundle }
    const room = waveRoom({ serpentine: lifted(0, 0.006), bundle }, b)
    // a third of the pitch of 30° apart at the bottom of the bundle, whose width is that at its middle
    expect(room.beside).toBeCloseTo(0.055 * (Math.PI / 18 - 0.008 / 0.056), 12)
    expect(room.over).toBeCloseTo(-0.002, 12)
    expect(room.crowns).toBeCloseTo(0.001, 12)
    expect(room.room).toBeCloseTo(0.001, 12)
  })
  test('runs that lean against each other are closer at one end, zigzags cross', () => {
    const bundle = { width: 0, thickness: 0.002 }
    const beside = (runSlant: number, angle: number) =>
      waveRoom(
        { serpentine: { ...flat, runSlant }, bundle },
        { serpentine: { ...flat, runSlant, angle }, bundle },
      ).beside / 0.055
    const pitch = Math.PI / 6
    expect(beside(0.2 * pitch, pitch / 2)).toBeCloseTo(0.3 * pitch, 12)
    expect(beside(0.2 * pitch, pitch / 4)).toBeCloseTo(0.25 * pitch, 12)
    expect(beside(pitch, pitch / 2)).toBeLessThan(0)
  })
})
