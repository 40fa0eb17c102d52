/** Faults of defects that name a magnet, coil or phase which the machine does not have. */
import { fault } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

type Winding = Design['stator']['winding']

/** Coils that a defect may count through, and the phases they belong to. */
function counts(winding: Winding): { readonly coils: number; readonly phases: number } {
  if (winding.kind === 'serpentine') return { coils: winding.phases.length, phases: winding.phases.length }
  return { coils: winding.coilCount, phases: winding.phaseCount }
}

export function defectFaults({ defects, rotor, stator }: Design): Fault[] {
  const { coils, phases } = counts(stator.winding)
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
          ...most('turns', defect.turns, stator.winding.turns, 'the turns of the coil'),
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
          ...most('strands', defect.strands, stator.wire.strands, 'the strands in hand'),
        ]
      default:
        return defects.slice(0, k).some(({ kind }) => kind === defect.kind)
          ? [fault(path('kind'), 'given once', defect.kind)]
          : []
    }
  })
}
