/** Checks lap coils: closing, lengths, sense, and room between neighbours against sampled distances. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chordLength, greatestJump, leastDistance, sampledPoints } from '../../test/bundle-distance.ts'
import { curveLength, enclosedArea, piecePoint, turnedCurve } from './curve.ts'
import {
  type LapCoil,
  lapCoilCurve,
  lapCoilMeanTurnLength,
  lapCoilReach,
  lapCoilRoom,
  lapEndDepth,
} from './lap-coil.ts'

const onDrum: LapCoil = {
  surface: { kind: 'drum', radius: 0.056, z: 0 },
  angle: 0,
  span: Math.PI / 6,
  activeLength: 0.06,
  endHeight: 0.02,
  ramp: 0,
  step: { leg: 0, end: 0 },
  tipAngle: 0,
}
const onDisc: LapCoil = { ...onDrum, surface: { kind: 'disc', meanRadius: 0.1, z: 0.01 }, activeLength: 0.04 }
const twoLevels = { step: { leg: 0.004, end: 0.004 }, tipAngle: 0.03 }
const oneLevel = { step: { leg: 0, end: 0.004 }, ramp: 0.008, tipAngle: 0.03 }

const coils: readonly LapCoil[] = [onDrum, onDisc].flatMap((coil) => [
  coil,
  { ...coil, ...twoLevels },
  { ...coil, ...oneLevel },
  { ...coil, ...twoLevels, tipAngle: 0 },
  { ...coil, ...twoLevels, step: { leg: -0.004, end: -0.004 }, angle: 2 },
])

describe('law: every turn of a lap coil', () => {
  test('closes, and has as many pieces as its neighbours', () => {
    for (const coil of coils) {
      const counts = [-0.004, 0, 0.004].map((across) => {
        const curve = lapCoilCurve(coil, { across, normal: 0.001 })
        expect(greatestJump(curve)).toBeLessThan(1e-13)
        return curve.pieces.length
      })
      expect(new Set(counts).size).toBe(1)
    }
  })
  test('runs counter-clockwise seen against the outward normal', () => {
    for (const coil of coils) {
      const area = enclosedArea(lapCoilCurve(coil, { across: 0, normal: 0 }))
      const out =
        coil.surface.kind === 'drum'
          ? area[0] * Math.cos(coil.angle) + area[1] * Math.sin(coil.angle)
          : area[2]
      expect(out).toBeGreaterThan(0)
    }
  })
  test('has its legs where they belong', () => {
    for (const coil of coils)
      for (const across of [-0.003, 0, 0.003]) {
        const legs = lapCoilCurve(coil, { across, normal: 0.0005 }).pieces.filter((piece) => {
          const [a, b] = [piecePoint(piece, 0), piecePoint(piece, 1)]
          const way = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
          return Math.abs(way - coil.activeLength) < 1e-12
        })
        expect(legs.length).toBe(2)
        for (const leg of legs) {
          const [x, y, z] = piecePoint(leg, 0.5)
          const azimuth = Math.atan2(y, x) - coil.angle
          const side = Math.sin(azimuth) > 0 ? 1 : -1
          const level = side > 0 ? coil.step.leg : 0
          if (coil.surface.kind === 'drum') {
            expect(Math.hypot(x, y)).toBeCloseTo(coil.surface.radius + 0.0005 + level, 12)
            expect(z).toBeCloseTo(coil.surface.z, 12)
            expect(Math.sin(azimuth)).toBeCloseTo(
              side * Math.sin(coil.span / 2 + across / coil.surface.radius),
              12,
            )
          } else {
            expect(z).toBeCloseTo(coil.surface.z + 0.0005 + level, 12)
            // beside the radius through the leg's middle
            const middle = coil.angle + (side * coil.span) / 2
            expect(-x * Math.sin(middle) + y * Math.cos(middle)).toBeCloseTo(side * across, 12)
          }
        }
      }
  })
})

describe('law: lengths in closed form', () => {
  test('drum, flat: two legs and four sides of the diamonds', () => {
    const half = (Math.PI / 12) * 0.056
    const length = curveLength(lapCoilCurve(onDrum, { across: 0, normal: 0 }))
    expect(length).toBeCloseTo(2 * 0.06 + 4 * Math.hypot(half, 0.02), 13)
    // a turn further out has the diamond's sides longer in the same measure
    const outer = curveLength(lapCoilCurve(onDrum, { across: 0.002, normal: 0 }))
    expect(outer).toBeCloseTo(2 * 0.06 + 4 * Math.hypot(half, 0.02) * (1 + 0.002 / half), 12)
  })
  test('a step at the tips adds itself, twice', () => {
    const stepped = { ...onDisc, step: { leg: 0.004, end: 0.004 } }
    const flat = curveLength(lapCoilCurve(onDisc, { across: 0, normal: 0 }))
    expect(curveLength(lapCoilCurve(stepped, { across: 0, normal: 0 }))).toBeCloseTo(flat + 2 * 0.004, 12)
  })
  test('lengths agree with fine chords, the mean turn with the middle one', () => {
    for (const coil of coils) {
      const middle = lapCoilCurve(coil, { across: 0, normal: 0 })
      expect(chordLength(middle, 1e-8) / curveLength(middle)).toBeCloseTo(1, 6)
      const mean = lapCoilMeanTurnLength(coil, { width: 0.006, thickness: 0.003 })
      expect(mean / curveLength(middle)).toBeCloseTo(1, 3)
    }
  })
  test('reach: the tip of the outermost turn', () => {
    for (const coil of coils) {
      const points = sampledPoints([lapCoilCurve(coil, { across: 0.003, normal: 0 })], 400)
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
      for (let i = 0; i < points.length; i += 3) {
        const at =
          coil.surface.kind === 'drum'
            ? points[i + 2]!
            : Math.hypot(points[i]!, points[i + 1]!) - coil.surface.meanRadius
        low = Math.min(low, at)
        high = Math.max(high, at)
      }
      const reach = lapCoilReach(coil, 0.006)
      expect(reach.inner).toBeCloseTo(-low, 3)
      expect(reach.outer).toBeCloseTo(high, 3)
      expect(reach.inner).toBeGreaterThan(-low - 1e-12)
    }
  })
})

describe('law: the room of lap coils is what lies between them', () => {
  test('never more than the least distance of points all along neighbouring bundles', () => {
    const place = fc.record({
      disc: fc.boolean(),
      two: fc.boolean(),
      count: fc.constantFrom(6, 12, 18, 24, 36),
      span: fc.constantFrom(0.7, 1, 1.25),
      width: fc.constantFrom(0.002, 0.004, 0.006),
      step: fc.constantFrom(0.003, 0.0045),
    })
    let met = 0
    fc.assert(
      fc.property(place, ({ disc, two, count, span, width, step }) => {
        const section = { width, thickness: 0.0025 }
        const reference = disc ? 0.08 : 0.056
        const coil: LapCoil = {
          ...(disc ? onDisc : onDrum),
          span: (span * Math.PI) / 6,
          ramp: two ? 0 : 0.008,
          step: { leg: two ? step : 0, end: step },
          tipAngle: Math.max(0, (2 * Math.PI) / count - width / reference) / 2,
        }
        if (coil.tipAngle > (coil.span / 2 - width / (2 * reference)) / 2) return
        const { room } = lapCoilRoom(coil, section, count)
        if (room <= 0) return
        met++
        const turns = [-0.5, 0, 0.5].flatMap((u) =>
          [-0.5, 0.5].map((v) => lapCoilCurve(coil, { across: u * width, normal: v * section.thickness })),
        )
        const own = sampledPoints(turns, 16)
        for (let k = 1; k <= Math.min(4, count - 1); k++) {
          const next = sampledPoints(
            turns.map((turn) => turnedCurve(turn, (2 * Math.PI * k) / count)),
            16,
          )
          expect(leastDistance(own, next)).toBeGreaterThan(room * (1 - 1e-9))
        }
      }),
      { numRuns: 40 },
    )
    expect(met).toBeGreaterThan(5)
  })
  test('legs side by side, and ends over each other, in closed form', () => {
    const section = { width: 0.006, thickness: 0.003 }
    const room = lapCoilRoom({ ...onDrum, ...twoLevels }, section, 36)
    expect(room.legs).toBeCloseTo((Math.PI / 18) * (0.056 - 0.0015) - 0.006, 12)
    // the sides of the diamond lean by atan(20/14.66) against the circumference
    const across = (Math.PI / 18) * 0.056 * (0.02 / Math.hypot(0.02, (Math.PI / 12) * 0.056))
    expect(lapEndDepth({ ...onDrum, ...twoLevels }, section, 36)).toBeCloseTo(
      0.003 * Math.max(1, 0.006 / across),
      12,
    )
    expect(room.ends).toBeCloseTo(0.004 - 0.003 * Math.max(1, 0.006 / across), 12)
  })
  test('on one level opposite legs count too; coils that do not overlap need no step', () => {
    const section = { width: 0.004, thickness: 0.003 }
    // 24 coils 15° apart, legs 30° apart: every leg lies on another coil's
    expect(lapCoilRoom({ ...onDrum, ...oneLevel }, section, 24).legs).toBeCloseTo(-0.004, 6)
    expect(lapCoilRoom({ ...onDrum, ...twoLevels }, section, 24).legs).toBeGreaterThan(0)
    expect(lapCoilRoom(onDrum, section, 6).ends).toBeUndefined()
    expect(lapCoilRoom(onDrum, section, 1).room).toBeGreaterThan(0)
  })
})

describe('law: meaningless lap coils are refused', () => {
  test('with their codes', () => {
    const at = { across: 0, normal: 0 }
    expect(() => lapCoilCurve({ ...onDrum, span: 4 }, at)).toThrow(/above-maximum/)
    expect(() => lapCoilCurve({ ...onDrum, endHeight: Number.NaN }, at)).toThrow(/not-finite/)
    expect(() => lapCoilCurve({ ...onDisc, endHeight: 0.09 }, at)).toThrow(/below-minimum/)
    expect(() => lapCoilCurve(onDrum, { across: -0.02, normal: 0 })).toThrow(/conflict/)
    expect(() => lapCoilCurve({ ...onDrum, ramp: 0.02 }, at)).toThrow(/above-maximum/)
    expect(() => lapCoilRoom(onDrum, { width: 0.002, thickness: 0.002 }, 2.5)).toThrow(/not-a-choice/)
  })
})
