/** Faults of defects that name a magnet, coil phase or diode which the machine does not have. */
import { nominal } from '../units/quantity.ts'
import { atMost, fault } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

type Winding = Design['stator']['winding']

/** Coils that a defect may count through, the phases they belong to, and the turns that any coil has. */
function counts(winding: Winding) {
  if (winding.kind === 'coils')
    return { coils: winding.coilCount, phases: winding.phaseCount, turns: winding.turns }
  const phases = winding.phases.length
  return { coils: phases * winding.layers, phases, turns: Math.floor(winding.turns / winding.layers) }
}

/** How far the winding may come nearer to the magnets on one side, or go from them on the other [mm]. */
export function tiltRoom_mm({ rotor, stator }: Design): number {
  const { winding } = stator
  const distances = (winding.kind === 'coils' ? [winding] : winding.phases).map(({ distance_mm }) =>
    nominal(distance_mm),
  )
  const taken = nominal(winding.bundleDepth_mm) / 2 + nominal(rotor.cover_mm)
  const near = Math.min(...distances) - taken
  return rotor.arrangement === 'two-discs'
    ? Math.min(near, nominal(rotor.faceDistance_mm) - Math.max(...distances) - taken)
    : near
}

type DiodeDefect = Extract<Design['defects'][number], { side: string }>

/** Whether a defect sits between the machine's terminals and the load. */
const bridgeDefect = (
  defect: Design['defects'][number],
): defect is DiodeDefect | Extract<Design['defects'][number], { kind: 'open line' }> => 'line' in defect

/** A diode that is not there, named twice, or shorted towards the other rail than another one. */
function diodeDefectFaults(design: Design, k: number, path: (name: string) => string): Fault[] {
  const diodes = design.defects.slice(0, k + 1).filter((defect): defect is DiodeDefect => 'side' in defect)
  const own = diodes.pop()!
  const { connection } = design.stator
  const ends = connection === 'separate' || connection === 'single'
  const place = ({ line, side, end = 'start' }: DiodeDefect) => `${line} ${side} ${end}`
  return [
    ...(own.end === undefined || ends
      ? []
      : [fault(path('end'), `left out: a ${connection} has one bridge for all phases`, own.end)]),
    ...(diodes.some((other) => place(other) === place(own))
      ? [fault(path('line'), 'another diode than those before it', own.line)]
      : []),
    ...(own.kind === 'shorted diode' &&
    diodes.some(({ kind, side }) => kind === 'shorted diode' && side !== own.side)
      ? [
          fault(
            path('side'),
            'that of the other shorted diodes: shorted towards both rails they short what the bridge feeds',
            own.side,
          ),
        ]
      : []),
  ]
}

export function defectFaults(design: Design): Fault[] {
  const { defects, rotor, stator } = design
  const { coils, phases, turns } = counts(stator.winding)
  return defects.flatMap((defect, k) => {
    const path = (name: string) => `defects[${k}].${name}`
    const most = (name: string, value: number, limit: number, why: string): Fault[] =>
      value <= limit ? [] : [fault(path(name), `at most ${limit}, ${why}`, value, { code: 'above-maximum' })]
    if ('position' in defect)
      return [
        ...most('position', defect.position, rotor.poleCount, 'the number of magnets in a ring'),
        ...(defect.disc === undefined || rotor.arrangement === 'two-discs'
          ? []
          : [fault(path('disc'), 'left out where there is one ring of magnets', defect.disc)]),
      ]
    switch (defect.kind) {
      case 'reversed coil':
        return most('coil', defect.coil, coils, 'as there are no more coils')
      case 'shorted turns':
        return [
          ...most('coil', defect.coil, coils, 'as there are no more coils'),
          ...most('turns', defect.turns, turns, 'the turns of the coil'),
        ]
      case 'open diode':
      case 'shorted diode':
        return [
          ...most('line', defect.line, phases, 'as there are no more phases'),
          ...diodeDefectFaults(design, k, path),
        ]
      case 'open line':
        return [
          ...most('line', defect.line, phases, 'as there are no more phases'),
          ...(defects.some((other, j) => j !== k && bridgeDefect(other) && other.line === defect.line)
            ? [fault(path('line'), 'another line than those of other defects of the bridge', defect.line)]
            : []),
        ]
      case 'reversed phase':
        return most('phase', defect.phase, phases, 'as there are no more phases')
      case 'swapped phases':
        return [
          ...most('phase', defect.phase, phases, 'as there are no more phases'),
          ...most('other', defect.other, phases, 'as there are no more phases'),
          ...(defect.phase === defect.other
            ? [fault(path('other'), 'another phase than the first', defect.other)]
            : []),
        ]
      case 'open strand':
        return [
          ...most('phase', defect.phase, phases, 'as there are no more phases'),
          ...(defect.strands < stator.wire.strands
            ? []
            : [
                fault(
                  path('strands'),
                  `below ${stator.wire.strands}, the strands in hand: with none left the phase is open`,
                  defect.strands,
                  { code: 'above-maximum' },
                ),
              ]),
        ]
      default:
        return defects.slice(0, k).some(({ kind }) => kind === defect.kind)
          ? [fault(path('kind'), 'given once', defect.kind)]
          : atMost(
              path('difference_mm'),
              nominal(defect.difference_mm),
              2 * Math.max(0, tiltRoom_mm(design)),
              'or the winding touches the magnets',
            )
    }
  })
}
