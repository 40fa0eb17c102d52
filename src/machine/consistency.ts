/** Faults of a document whose values are allowed one by one but cannot stand together. */
import { largestBlockWidth } from '../physics/magnetics/magnet-ring.ts'
import { phaseBelts } from '../physics/winding/star-of-slots.ts'
import type { RefusalCode } from '../refusal/code.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { unit } from '../units/unit.ts'
import type { Design } from './design.ts'
import { type Fault, receivedText } from './fault.ts'

type Winding = Design['stator']['winding']
type Serpentine = Extract<Winding, { kind: 'serpentine' }>
type Coils = Extract<Winding, { kind: 'coils' }>

/** Shares of a length that count as nothing: what decimal fractions leave behind. */
const slack = 1e-9

/** A number as a message shows it: six digits, and no zeros behind them. */
const digits = (value: number): string => String(Number(value.toPrecision(6)))

const amount = (value: number, suffix: string): string => digits(value) + unit(suffix).symbol

function fault(
  path: string,
  condition: string,
  received: number | string,
  { suffix = '1', code = 'conflict' }: { readonly suffix?: string; readonly code?: RefusalCode } = {},
): Fault {
  const text = typeof received === 'number' ? amount(received, suffix) : receivedText(received)
  return { path, condition, received: text, code }
}

/** A length in mm that must not be below, or not be above, a limit that other fields set. */
const mm = { suffix: 'mm' } as const
const atLeast = (path: string, value: number, least: number, why: string): Fault[] =>
  value >= least - slack * Math.max(1, Math.abs(least))
    ? []
    : [fault(path, `at least ${amount(least, 'mm')}, ${why}`, value, mm)]
const atMost = (path: string, value: number, most: number, why: string): Fault[] =>
  value <= most + slack * Math.max(1, Math.abs(most))
    ? []
    : [fault(path, `at most ${amount(most, 'mm')}, ${why}`, value, mm)]

/** The values of a list must rise; every one that does not is a fault of its own. */
const rising = (values: readonly number[], least: number, path: (k: number) => string, suffix: string) =>
  values.flatMap((value, k) =>
    k === 0 || value >= values[k - 1]! + least
      ? []
      : [
          fault(
            path(k),
            least > 0
              ? `at least ${amount(least, suffix)} above the one before, ${amount(values[k - 1]!, suffix)}`
              : `above the one before, ${amount(values[k - 1]!, suffix)}`,
            value,
            { suffix, code: 'not-increasing' },
          ),
        ],
  )

/** The longest slope of a table of power coefficients that a number can carry: λ steps at least this. */
const leastRatioStep = 1e-3
const leastStationStep_mm = 1e-3

/** Where the straight blade takes its chord and its twist from: the hub must lie inside the innermost of them. */
const straightestHub = 0.4
const greatestHub = 0.95

function bladeFaults({ blades }: Design): Fault[] {
  if (blades.kind === 'table') {
    const last = blades.points.length - 1
    const at = (k: number, name: string) => `blades.points[${k}].${name}`
    const zero = (k: number, name: string, value: Quantity, why: string) =>
      nominal(value) === 0 ? [] : [fault(at(k, name), `0, ${why}`, nominal(value))]
    const [first] = blades.points
    return [
      ...zero(0, 'tipSpeedRatio', first!.tipSpeedRatio, 'as the table begins at rest'),
      ...zero(0, 'powerCoefficient', first!.powerCoefficient, 'as a rotor at rest gives no power'),
      ...rising(
        blades.points.map((point) => nominal(point.tipSpeedRatio)),
        leastRatioStep,
        (k) => at(k, 'tipSpeedRatio'),
        '1',
      ),
      ...zero(
        last,
        'powerCoefficient',
        blades.points[last]!.powerCoefficient,
        'as the table ends at runaway, where the blades give no power',
      ),
    ]
  }
  const diameter = 1000 * nominal(blades.diameter_m)
  const straight = blades.kind === 'optimum' && blades.straightTaper
  const share = straight ? straightestHub : greatestHub
  const hub =
    blades.hubDiameter_mm === undefined
      ? []
      : atMost(
          'blades.hubDiameter_mm',
          nominal(blades.hubDiameter_mm),
          share * diameter,
          `${share} of the diameter${straight ? ' for blades of straight taper' : ''}, to leave room for blades`,
        )
  if (blades.kind === 'optimum') return hub
  const radii = blades.stations.map((station) => nominal(station.radius_mm))
  const path = (k: number) => `blades.stations[${k}].radius_mm`
  return [
    ...hub,
    ...rising(radii, leastStationStep_mm, path, 'mm'),
    ...radii.flatMap((radius, k) => atMost(path(k), radius, diameter / 2, 'the radius of the blade tips')),
  ]
}

function magnetFaults({ rotor }: Design): Fault[] {
  const { poleCount, poleSequence, magnet } = rotor
  const radius = nominal(rotor.pitchRadius_mm)
  const edgeName = rotor.arrangement === 'drum' ? 'thickness_mm' : 'length_mm'
  const edge = nominal(magnet[edgeName])
  const crossing = atLeast(
    'rotor.pitchRadius_mm',
    radius,
    edge / 2,
    `half of rotor.magnet.${edgeName}, so that no magnet crosses the shaft`,
  )
  const widest =
    crossing.length > 0
      ? Number.MAX_VALUE
      : largestBlockWidth({ count: poleCount, radius: radius / 1000, radialEdge: edge / 1000 }) * 1000
  return [
    ...(poleSequence === undefined || poleSequence.length === poleCount
      ? []
      : [
          fault('rotor.poleSequence', `${poleCount} letters long, one for each pole`, poleSequence, {
            code: 'conflict',
          }),
        ]),
    ...crossing,
    ...atMost(
      'rotor.magnet.width_mm',
      nominal(magnet.width_mm),
      widest,
      `or the corners of neighbouring magnets collide at a pitch radius of ${amount(radius, 'mm')}`,
    ),
  ]
}

/** Where the middle of a bundle may lie between what stands on either side of it. */
function roomFaults({ rotor, stator }: Design, path: string, distance_mm: Quantity): Fault[] {
  const distance = nominal(distance_mm)
  const half = nominal(stator.winding.bundleDepth_mm) / 2
  const cover = nominal(rotor.cover_mm)
  const near = atLeast(
    path,
    distance,
    half + cover,
    'half the bundle and the cover of the magnets, or the winding touches them',
  )
  if (rotor.arrangement === 'drum') {
    if (rotor.windingSide === 'outside') return near
    const most = nominal(rotor.pitchRadius_mm) - nominal(rotor.magnet.thickness_mm) / 2 - half
    return distance < most
      ? near
      : [...near, fault(path, `below ${amount(most, 'mm')}, where the winding meets the shaft`, distance, mm)]
  }
  const opposite =
    rotor.arrangement === 'two-discs'
      ? { face: nominal(rotor.faceDistance_mm), cover, what: 'the magnets' }
      : rotor.opposite?.kind === 'steel'
        ? { face: nominal(rotor.opposite.faceDistance_mm), cover: 0, what: 'the plate' }
        : undefined
  if (opposite === undefined) return near
  const most = opposite.face - opposite.cover - half
  return [...near, ...atMost(path, distance, most, `or the winding touches ${opposite.what} opposite`)]
}

const spell = (words: readonly string[]): string => words.map((word) => `"${word}"`).join(' or ')

function connectionFaults({ stator: { connection, winding } }: Design): Fault[] {
  const phases = winding.kind === 'serpentine' ? winding.phases.length : winding.phaseCount
  const fitting =
    phases === 1
      ? (['single', 'separate'] as const)
      : phases === 3
        ? (['star', 'delta', 'separate'] as const)
        : (['separate'] as const)
  return fitting.some((word) => word === connection)
    ? []
    : [
        fault(
          'stator.connection',
          `${spell(fitting)} for ${phases} phase${phases > 1 ? 's' : ''}`,
          connection,
        ),
      ]
}

/** Angle between the runs of two waves, 0 to half a pole pitch [°]. */
const runsApart = (a: number, b: number, pitch: number): number => {
  const turns = (a - b) / pitch
  return Math.abs(turns - Math.round(turns)) * pitch
}

function serpentineFaults(design: Design, winding: Serpentine): Fault[] {
  const { rotor } = design
  const pitch = 360 / rotor.poleCount
  const slant = nominal(winding.slant_deg)
  const inner =
    nominal(rotor.pitchRadius_mm) - nominal(winding.runLength_mm) / 2 - nominal(winding.crownHeight_mm)
  const radius = nominal(rotor.pitchRadius_mm)
  const width = nominal(winding.bundleWidth_mm)
  const depth = nominal(winding.bundleDepth_mm)
  const place = winding.phases.map((phase) => ({
    offset: nominal(phase.offset_deg),
    distance: nominal(phase.distance_mm),
  }))
  const path = (k: number) => `stator.winding.phases[${k}].distance_mm`
  return [
    ...(slant < 0
      ? [fault('stator.winding.slant_deg', 'at least 0°', slant, { suffix: 'deg', code: 'below-minimum' })]
      : slant > pitch * (1 + slack)
        ? [
            fault('stator.winding.slant_deg', `at most ${amount(pitch, 'deg')}, the pole pitch`, slant, {
              suffix: 'deg',
              code: 'above-maximum',
            }),
          ]
        : []),
    ...(rotor.arrangement === 'drum' || inner > 0
      ? []
      : [
          fault(
            'stator.winding.crownHeight_mm',
            `below ${amount(Math.max(0, inner + nominal(winding.crownHeight_mm)), 'mm')}, the way from the inner ends of the runs to the shaft`,
            nominal(winding.crownHeight_mm),
            mm,
          ),
        ]),
    ...place.flatMap(({ offset, distance }, k) => {
      const met = place.findIndex(
        (other, j) =>
          j < k &&
          Math.abs(other.distance - distance) < depth * (1 - slack) &&
          ((runsApart(other.offset, offset, pitch) * Math.PI) / 180) * radius < width * (1 - slack),
      )
      return met < 0
        ? []
        : [
            fault(
              path(k),
              `${amount(depth, 'mm')} or more from that of phases[${met}], ${amount(place[met]!.distance, 'mm')}, as their runs lie on each other`,
              distance,
              mm,
            ),
          ]
    }),
    ...winding.phases.flatMap(({ distance_mm }, k) => roomFaults(design, path(k), distance_mm)),
  ]
}

/** Greatest radius of a hole's corners that leaves its sides and ends straight or just gone. */
function greatestCorner(hole: Exclude<Coils['hole'], { shape: 'round' }>): number {
  const length = nominal(hole.holeLength_mm)
  const [inner, outer] =
    hole.shape === 'wedge'
      ? [nominal(hole.holeInnerWidth_mm), nominal(hole.holeOuterWidth_mm)]
      : [nominal(hole.holeWidth_mm), nominal(hole.holeWidth_mm)]
  const lean = (outer - inner) / (2 * length)
  const slope = Math.hypot(1, lean)
  return Math.min(length / 2, inner / (2 * (slope - lean)), outer / (2 * (slope + lean)))
}

function coilFaults(design: Design, winding: Coils): Fault[] {
  const { rotor } = design
  const { coilCount, phaseCount, hole, parallelGroups } = winding
  const belts = phaseBelts({ coilCount, polePairs: rotor.poleCount / 2, phaseCount })
  const counted = Array.from(
    { length: phaseCount },
    (_, phase) => belts.filter((belt) => belt.phase === phase).length,
  )
  // counts that give no belts are dealt out in turn
  const perPhase = counted.includes(0)
    ? counted.map((_, phase) => Math.ceil((coilCount - phase) / phaseCount))
    : counted
  const uneven = perPhase.findIndex((count) => count % parallelGroups !== 0)
  const holeLength = hole.shape === 'round' ? nominal(hole.holeDiameter_mm) : nominal(hole.holeLength_mm)
  const outside = (list: readonly number[], most: number, name: string, noun: string) =>
    list.flatMap((number, k) => {
      const path = `stator.winding.${name}[${k}]`
      if (number > most)
        return [
          fault(path, `at most ${most}, as there are no more ${noun}`, number, { code: 'above-maximum' }),
        ]
      return list.indexOf(number) < k ? [fault(path, 'another number than those before it', number)] : []
    })
  return [
    ...(coilCount < phaseCount
      ? [fault('stator.winding.coilCount', `at least ${phaseCount}, a coil for each phase`, coilCount)]
      : uneven >= 0
        ? [
            fault(
              'stator.winding.parallelGroups',
              `a number that divides the ${perPhase[uneven]} coils of phase ${uneven + 1}`,
              parallelGroups,
            ),
          ]
        : []),
    ...(hole.shape === 'round'
      ? []
      : atMost(
          'stator.winding.hole.cornerRadius_mm',
          nominal(hole.cornerRadius_mm),
          greatestCorner(hole),
          'or the corners do not fit into the hole',
        )),
    ...(rotor.arrangement === 'drum'
      ? []
      : atLeast(
          winding.centreRadius_mm === undefined ? 'rotor.pitchRadius_mm' : 'stator.winding.centreRadius_mm',
          nominal(winding.centreRadius_mm ?? rotor.pitchRadius_mm),
          holeLength / 2 + nominal(winding.legWidth_mm),
          'half the hole and a leg, or the coils reach over the shaft',
        )),
    ...outside(winding.reversedCoils, coilCount, 'reversedCoils', 'coils'),
    ...outside(winding.reversedPhases, phaseCount, 'reversedPhases', 'phases'),
    ...roomFaults(design, 'stator.winding.distance_mm', winding.distance_mm),
  ]
}

/** Every pair of values that cannot both be true; none for a machine that could be built. */
export function consistencyFaults(design: Design): Fault[] {
  const { winding } = design.stator
  return [
    ...bladeFaults(design),
    ...magnetFaults(design),
    ...(winding.kind === 'serpentine' ? serpentineFaults(design, winding) : coilFaults(design, winding)),
    ...connectionFaults(design),
  ]
}
