/** Faults of a winding that does not fit its machine, or its connection. */
import { phaseBelts } from '../physics/winding/star-of-slots.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import type { CoilBench } from './coil-shape/coil-shape.ts'
import { holeFaults, holeRise } from './coil-shape/index.ts'
import { amount, atLeast, atMost, fault, mm } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'
import { serpentineFaults, stackDepth_mm, windingRadius_mm } from './serpentine-consistency.ts'

type Winding = Design['stator']['winding']
type Coils = Extract<Winding, { kind: 'coils' }>

/** What of a winding stands away from the magnets beyond the middle of its nearest bundle [mm]. */
interface Rise {
  readonly path: string
  readonly distance_mm: Quantity
  /** Middle of the farthest bundle between the magnets, and of crowns or ends beyond them. */
  readonly legs: number
  readonly ends: number
}

/** What stands beyond the winding, and where [mm]. */
function oppositeOf(rotor: Design['rotor']) {
  const cover = nominal(rotor.cover_mm)
  if (rotor.arrangement === 'two-discs') {
    const face = nominal(rotor.faceDistance_mm)
    const plate = face + nominal(rotor.magnet.thickness_mm)
    return { face: face - cover, plate, what: 'the magnets opposite' }
  }
  if (rotor.arrangement === 'disc') {
    if (rotor.opposite?.kind !== 'steel') return undefined
    const face = nominal(rotor.opposite.faceDistance_mm)
    return { face, plate: face, what: 'the plate opposite' }
  }
  if (rotor.windingSide === 'inside' || rotor.sleeve === undefined) return undefined
  const face = nominal(rotor.sleeve.distance_mm)
  return { face, plate: face, what: 'the sleeve' }
}

/** Where the middle of a bundle may lie between what stands on either side of it. */
function roomFaults({ rotor, stator }: Design, { path, distance_mm, legs, ends }: Rise): Fault[] {
  const distance = nominal(distance_mm)
  const half = nominal(stator.winding.bundleDepth_mm) / 2
  const near = atLeast(
    path,
    distance,
    half + nominal(rotor.cover_mm),
    'half the bundle and the cover of the magnets, or the winding touches them',
  )
  if (rotor.arrangement === 'drum' && rotor.windingSide === 'inside') {
    const most =
      nominal(rotor.pitchRadius_mm) - nominal(rotor.magnet.thickness_mm) / 2 - half - Math.max(legs, ends)
    return distance < most
      ? near
      : [...near, fault(path, `below ${amount(most, 'mm')}, where the winding meets the shaft`, distance, mm)]
  }
  const opposite = oppositeOf(rotor)
  if (opposite === undefined) return near
  const { face, plate, what } = opposite
  const touching = atMost(path, distance, face - half - legs, `or the winding touches ${what}`)
  return [
    ...near,
    ...touching,
    ...(touching.length > 0 || ends <= legs
      ? []
      : atMost(path, distance, plate - half - ends, 'or the ends of the winding touch what stands opposite')),
  ]
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

function coilFaults(design: Design, winding: Coils): Fault[] {
  const { rotor } = design
  const { coilCount, phaseCount, hole, parallelGroups } = winding
  const bench: CoilBench = {
    arrangement: rotor.arrangement,
    poleCount: rotor.poleCount,
    coilCount,
    radius_mm:
      rotor.arrangement === 'drum'
        ? windingRadius_mm(rotor, nominal(winding.distance_mm))
        : nominal(winding.centreRadius_mm ?? rotor.pitchRadius_mm),
    radiusPath:
      winding.centreRadius_mm === undefined ? 'rotor.pitchRadius_mm' : 'stator.winding.centreRadius_mm',
    legWidth_mm: nominal(winding.legWidth_mm),
    bundleDepth_mm: nominal(winding.bundleDepth_mm),
  }
  const unbuildable = holeFaults(hole, bench)
  const belts = phaseBelts({ coilCount, polePairs: rotor.poleCount / 2, phaseCount })
  const counted = Array.from(
    { length: phaseCount },
    (_, phase) => belts.filter((belt) => belt.phase === phase).length,
  )
  // counts that give no belts are dealt out in turn
  const perPhase = counted.includes(0)
    ? counted.map((_, phase) => Math.ceil((coilCount - phase) / phaseCount))
    : counted
  const { groupCoils } = winding
  const grouped = groupCoils?.reduce((sum, count) => sum + count, 0)
  const uneven =
    grouped === undefined
      ? perPhase.findIndex((count) => count % parallelGroups !== 0)
      : perPhase.findIndex((count) => count !== grouped)
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
        ? grouped !== undefined
          ? [
              fault(
                'stator.winding.groupCoils',
                `${perPhase[uneven]} coils in all, as phase ${uneven + 1} has`,
                grouped,
              ),
            ]
          : [
              fault(
                'stator.winding.parallelGroups',
                `a number that divides the ${perPhase[uneven]} coils of phase ${uneven + 1}`,
                parallelGroups,
              ),
            ]
        : []),
    ...unbuildable,
    ...outside(winding.reversedCoils, coilCount, 'reversedCoils', 'coils'),
    ...outside(winding.reversedPhases, phaseCount, 'reversedPhases', 'phases'),
    ...(unbuildable.length > 0
      ? []
      : roomFaults(design, {
          path: 'stator.winding.distance_mm',
          distance_mm: winding.distance_mm,
          ...holeRise(hole, bench),
        })),
  ]
}

export const windingFaults = (design: Design): Fault[] => {
  const { winding } = design.stator
  return [
    ...(winding.kind === 'serpentine'
      ? [
          ...serpentineFaults(design, winding),
          ...winding.phases.flatMap(({ distance_mm, crownLift_mm }, k) => {
            const legs = stackDepth_mm(winding) - nominal(winding.bundleDepth_mm)
            return roomFaults(design, {
              path: `stator.winding.phases[${k}].distance_mm`,
              distance_mm,
              legs,
              ends: legs + nominal(crownLift_mm),
            })
          }),
        ]
      : coilFaults(design, winding)),
    ...connectionFaults(design),
  ]
}
