/** Faults of a winding that does not fit its machine, or its connection. */
import { phaseBelts } from '../physics/winding/star-of-slots.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { amount, atLeast, atMost, fault, mm, slack } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

type Winding = Design['stator']['winding']
type Serpentine = Extract<Winding, { kind: 'serpentine' }>
type Coils = Extract<Winding, { kind: 'coils' }>

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

export const windingFaults = (design: Design): Fault[] => {
  const { winding } = design.stator
  return [
    ...(winding.kind === 'serpentine' ? serpentineFaults(design, winding) : coilFaults(design, winding)),
    ...connectionFaults(design),
  ]
}
