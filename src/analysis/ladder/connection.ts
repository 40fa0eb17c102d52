/** Ladders of the connection: star for delta and back, bridges of their own, groups in series or in parallel. */
import type { Design } from '../../machine/design.ts'
import { type Ladder, put } from './ladder.ts'

const connected = ({ stator: { connection } }: Design, to: Design['stator']['connection']) =>
  put(['stator', 'connection'], connection, to)

export const starForDelta = (design: Design): Ladder =>
  design.stator.connection === 'delta' ? [[connected(design, 'star')]] : []

export const deltaForStar = (design: Design): Ladder =>
  design.stator.connection === 'star' ? [[connected(design, 'delta')]] : []

/** A bridge for each phase. */
export const ownBridges = (design: Design): Ladder => {
  const { connection } = design.stator
  return connection === 'star' || connection === 'delta' ? [[connected(design, 'separate')]] : []
}

function groupLadder({ stator: { winding } }: Design, wanted: (groups: number) => boolean): Ladder {
  if (winding.kind !== 'coils') return []
  const each = winding.coilCount / winding.phaseCount
  if (!Number.isInteger(each)) return []
  return Array.from({ length: each }, (_, k) => k + 1)
    .filter((groups) => each % groups === 0 && wanted(groups))
    .map((groups) => [
      put(['stator', 'winding', 'parallelGroups'], winding.parallelGroups, groups),
      // a list of unlike groups would stand before the number
      ...(winding.groupCoils === undefined
        ? []
        : [put(['stator', 'winding', 'groupCoils'], winding.groupCoils, undefined)]),
    ])
}

const groupsNow = ({ stator: { winding } }: Design): number =>
  winding.kind === 'coils' ? (winding.groupCoils?.length ?? winding.parallelGroups) : 1

/** Ever fewer groups in parallel, down to all coils in series. */
export const moreInSeries = (design: Design): Ladder => {
  const now = groupsNow(design)
  return [...groupLadder(design, (groups) => groups < now)].reverse()
}

export const moreInParallel = (design: Design): Ladder => {
  const now = groupsNow(design)
  return groupLadder(design, (groups) => groups > now)
}
