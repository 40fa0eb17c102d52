/** Defects of the winding in SI; those of the magnets stand in the rotor's places. */
import type { Design } from './design.ts'
import type { WindingDefects } from './machine.ts'
import { si } from './si.ts'

export function resolveWindingDefects({ defects }: Design): WindingDefects {
  const ofKind = <Kind extends Design['defects'][number]['kind']>(kind: Kind) =>
    defects.filter((defect): defect is Extract<typeof defect, { kind: Kind }> => defect.kind === kind)
  const tilted = ofKind('unequal gap')[0]
  return {
    shortedTurns: ofKind('shorted turns').map(({ coil, turns }) => ({ coil, turns })),
    openStrands: ofKind('open strand').map(({ phase, strands }) => ({ phase, strands })),
    reversedCoils: ofKind('reversed coil').map(({ coil }) => coil),
    reversedPhases: ofKind('reversed phase').map(({ phase }) => phase),
    swappedPhases: ofKind('swapped phases').map(({ phase, other }) => [phase, other] as const),
    tilt:
      tilted === undefined
        ? undefined
        : { amplitude: si(tilted.difference_mm, 'mm') / 2, angle: si(tilted.at_deg, 'deg') },
  }
}
