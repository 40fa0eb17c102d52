/** Defects of winding and bridge in SI; those of the magnets stand in the rotor's places. */

import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'
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
    diodeFaults: [
      ...[...ofKind('open diode'), ...ofKind('shorted diode')].map(
        ({ kind, line, side, end }): DiodeFault => ({
          line: line - 1,
          side,
          ...(end === undefined ? {} : { end }),
          kind: kind === 'open diode' ? 'open' : 'shorted',
        }),
      ),
      // no current passes a leg whose wire is off
      ...ofKind('open line').flatMap(({ line }) =>
        (['positive', 'negative'] as const).map(
          (side): DiodeFault => ({ line: line - 1, side, kind: 'open' }),
        ),
      ),
    ],
    tilt:
      tilted === undefined
        ? undefined
        : { amplitude: si(tilted.difference_mm, 'mm') / 2, angle: si(tilted.at_deg, 'deg') },
  }
}
