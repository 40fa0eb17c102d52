/** Remedy: the same coils connected in another way: star or delta, more or fewer groups in parallel. */
import type { Design } from '../../machine/design.ts'
import type { Change } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

const swaps = { star: 'delta', delta: 'star' } as const

/** The change from star to delta or back; none where the machine is in neither. */
export function swapChanges({ stator: { connection } }: Design): Change[] {
  if (connection !== 'star' && connection !== 'delta') return []
  return [{ path: ['stator', 'connection'], from: connection, to: swaps[connection] }]
}

/** Equal groups that a phase's coils can be put in, other than now. */
function groupChanges({ stator: { winding } }: Design): Change[][] {
  if (winding.kind !== 'coils') return []
  const each = winding.coilCount / winding.phaseCount
  if (!Number.isInteger(each)) return []
  return Array.from({ length: each }, (_, k) => k + 1)
    .filter(
      (groups) => each % groups === 0 && groups !== (winding.groupCoils?.length ?? winding.parallelGroups),
    )
    .map((groups) => [
      { path: ['stator', 'winding', 'parallelGroups'], from: winding.parallelGroups, to: groups },
      ...(winding.groupCoils === undefined
        ? []
        : [{ path: ['stator', 'winding', 'groupCoils'], from: winding.groupCoils, to: undefined }]),
    ])
}

function attempts(design: Design): Attempt[] {
  const swap = swapChanges(design)
  const groups = groupChanges(design)
  return [
    ...(swap.length > 0 ? [{ changes: swap }] : []),
    ...groups.flatMap((changes) => [
      { changes },
      ...(swap.length > 0 ? [{ changes: [...changes, ...swap] }] : []),
    ]),
  ].slice(0, 8)
}

export const connectionRemedy: RemedyRule = {
  kind: 'connection',
  unfit: ({ design }) =>
    attempts(design).length === 0 ? 'these coils can be connected in one way only' : undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
