/** A lap coil: its legs lie a span apart, its ends are bent over those of its neighbours. */
import { z } from 'zod'
import {
  type LapCoil,
  lapCoilCurve,
  lapCoilMeanTurnLength,
  lapCoilReach,
  lapCoilRoom,
  lapEndDepth,
} from '../../geometry/lap-coil.ts'
import { nominal } from '../../units/quantity.ts'
import { amount, atLeast, fault } from '../consistency-fault.ts'
import { choice, quantity } from '../field.ts'
import { si, siOr } from '../si.ts'
import { type CoilBench, type CoilPlace, coilShape, holePath } from './coil-shape.ts'

interface LapHole {
  readonly shape: 'lap'
  /** [rad] about the shaft */
  readonly span: number
  readonly runLength: number
  readonly endHeight: number
  readonly twoLevels: boolean
  /** Left out: just enough for the ends to pass. */
  readonly levelStep: number | undefined
}

/** Way along the run in which a leg of a single level climbs to its end's level, in steps: common practice, no source. */
const rampSteps = 2
/** Share of the ends' height that this climb may take. */
const rampShare = 0.75

/** In any one unit of length. */
function lapCoil(hole: LapHole, { surface, away, legWidth, bundleDepth, coilCount }: CoilPlace): LapCoil {
  const bundle = { width: legWidth, thickness: bundleDepth }
  const reference = surface.kind === 'drum' ? surface.radius : surface.meanRadius - hole.runLength / 2
  const flat: LapCoil = {
    surface,
    angle: 0,
    span: hole.span,
    activeLength: hole.runLength,
    endHeight: hole.endHeight,
    ramp: 0,
    step: { leg: 0, end: 0 },
    tipAngle: 0,
  }
  const wide = legWidth / reference
  // coils that lie side by side have nothing to pass over
  const apart = coilCount === 1 || hole.span + wide <= (2 * Math.PI) / coilCount
  if (apart && hole.levelStep === undefined) return flat
  const ramped = (step: number): LapCoil => ({
    ...flat,
    ramp: hole.twoLevels ? 0 : Math.min(rampSteps * step, rampShare * hole.endHeight),
    step: { leg: hole.twoLevels ? away * step : 0, end: away * step },
  })
  // the ramp flattens the ends, which then need more depth: one more look at it is enough, as the ramp is bounded
  const needed = (step: number) => lapEndDepth(ramped(step), bundle, coilCount)
  const step = hole.levelStep ?? needed(needed(bundleDepth))
  const tipAngle = Math.min((2 * Math.PI) / coilCount - wide, (hole.span - wide) / 2) / 2
  return { ...ramped(step), tipAngle: Math.max(0, Math.min(tipAngle, (2 * step) / reference)) }
}

const schema = z.strictObject({
  shape: z.literal('lap').meta({ description: 'legs a span apart, the ends bent over the neighbours' }),
  span: quantity('1', {
    min: 0.1,
    max: 20,
    help: 'From the middle of one leg to the middle of the other, in pole pitches; 1 is full pitch',
  }).default(1),
  runLength_mm: quantity('mm', { min: 1, max: 500, help: 'Length of a leg between its ends' }),
  endHeight_mm: quantity('mm', {
    min: 0.5,
    max: 300,
    help: 'How far the tips of the ends stand out beyond the legs',
  }),
  legs: choice(['two levels', 'one level'], {
    help: 'One leg of each coil low and one high, or all legs on one level with the ends lifted over each other',
  }).default('two levels'),
  levelStep_mm: quantity('mm', {
    min: 0.05,
    max: 200,
    help: 'From the lower level to the upper, middle to middle; left out, just enough for the ends to pass',
  }).optional(),
})

/** The coil with all lengths in mm. */
function lapCoil_mm(fields: z.output<typeof schema>, bench: CoilBench): LapCoil {
  return lapCoil(
    {
      shape: 'lap',
      span: (nominal(fields.span) * 2 * Math.PI) / bench.poleCount,
      runLength: nominal(fields.runLength_mm),
      endHeight: nominal(fields.endHeight_mm),
      twoLevels: fields.legs === 'two levels',
      levelStep: fields.levelStep_mm === undefined ? undefined : nominal(fields.levelStep_mm),
    },
    {
      surface:
        bench.arrangement === 'drum'
          ? { kind: 'drum', radius: bench.radius_mm, z: 0 }
          : { kind: 'disc', meanRadius: bench.radius_mm, z: 0 },
      away: 1,
      legWidth: bench.legWidth_mm,
      bundleDepth: bench.bundleDepth_mm,
      coilCount: bench.coilCount,
    },
  )
}

export const lap = coilShape({
  schema,
  toSi: (hole, poleCount): LapHole => ({
    shape: 'lap',
    span: (nominal(hole.span) * 2 * Math.PI) / poleCount,
    runLength: si(hole.runLength_mm, 'mm'),
    endHeight: si(hole.endHeight_mm, 'mm'),
    twoLevels: hole.legs === 'two levels',
    levelStep: siOr(hole.levelStep_mm, 'mm'),
  }),
  form: (hole, place) => {
    const coil = lapCoil(hole, place)
    const { surface, legWidth, bundleDepth } = place
    const bundle = { width: legWidth, thickness: bundleDepth }
    const radius = surface.kind === 'drum' ? surface.radius : surface.meanRadius
    const reach = lapCoilReach(coil, legWidth)
    return {
      turn: (across, normal) => lapCoilCurve(coil, { across, normal }),
      across: [-legWidth / 2, legWidth / 2],
      turnLength: lapCoilMeanTurnLength(coil, bundle),
      legSpan: coil.span,
      legAngle: legWidth / radius,
      extent: { length: reach.inner + reach.outer, width: coil.span * radius + legWidth },
      room: lapCoilRoom(coil, bundle, place.coilCount).room,
      rise: { legs: Math.abs(coil.step.leg), ends: Math.abs(coil.step.end) },
      parity: 'none',
    }
  },
  faults: (fields, bench) => {
    const span = nominal(fields.span)
    const pitch = 360 / bench.poleCount
    if (span * pitch > 180 * (1 + 1e-12))
      return [fault(holePath('span'), `at most ${amount(180 / pitch, '1')}, half a turn`, span)]
    const drum = bench.arrangement === 'drum'
    const runLength = nominal(fields.runLength_mm)
    const endHeight = nominal(fields.endHeight_mm)
    const inner = bench.radius_mm - (drum ? 0 : runLength / 2)
    if (inner <= 0)
      return atLeast(
        bench.radiusPath,
        bench.radius_mm,
        runLength / 2 + bench.legWidth_mm,
        'half a leg’s length and its width, or the coils reach over the shaft',
      )
    const spanRoom = (span * pitch * Math.PI * inner) / 180
    if (bench.legWidth_mm > 0.95 * spanRoom)
      return [
        fault(
          'stator.winding.legWidth_mm',
          `at most ${amount(0.95 * spanRoom, 'mm')}, as the legs lie ${amount(spanRoom, 'mm')} apart where they are closest; a greater span leaves more`,
          bench.legWidth_mm,
          { suffix: 'mm' },
        ),
      ]
    const coil = lapCoil_mm(fields, bench)
    const step = Math.abs(coil.step.end)
    const reach = lapCoilReach(coil, bench.legWidth_mm).inner
    return [
      ...(drum || reach < bench.radius_mm
        ? []
        : [
            fault(
              holePath('endHeight_mm'),
              `below ${amount(Math.max(0, endHeight - (reach - bench.radius_mm)), 'mm')}, or the inner ends meet at the shaft`,
              endHeight,
              { suffix: 'mm' },
            ),
          ]),
      ...(fields.legs === 'two levels' || step === 0
        ? []
        : atLeast(
            holePath('endHeight_mm'),
            endHeight,
            (rampSteps * step) / rampShare,
            `room for the legs to climb ${amount(step, 'mm')} to the upper level; a shallower bundle, fewer coils or legs on two levels need less`,
          )),
    ]
  },
  rise: (fields, bench) => {
    const { step } = lapCoil_mm(fields, bench)
    return { legs: step.leg, ends: step.end }
  },
})
