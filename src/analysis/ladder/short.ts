/** Ladders of the shorting switch: one added, its place, its order. */
import type { Design } from '../../machine/design.ts'
import type { ChainView } from '../concern/concern.ts'
import { type Ladder, put } from './ladder.ts'

/** A short at the machine's leads that closes by speed [rpm], where nothing electrical limits. */
export function shortAdded({ protection }: Design, closesAt_rpm: number): Ladder {
  const { electrical, short } = protection
  if (electrical !== 'none') return []
  return [
    [
      put(['protection', 'electrical'], electrical, 'shorting switch'),
      put(['protection', 'short'], short, {
        place: 'at the machine',
        order: 'short, then disconnect',
        actsAt_rpm: Math.max(1, Math.round(closesAt_rpm / 10) * 10),
      }),
    ],
  ]
}

/** The switch at the machine's leads, shorting before it opens. */
export function shortPutRight({ protection: { electrical, short } }: Design): Ladder {
  if (electrical !== 'shorting switch' || short === undefined) return []
  const changes = [
    ...(short.place === 'at the machine'
      ? []
      : [put(['protection', 'short', 'place'], short.place, 'at the machine')]),
    ...(short.order === 'short, then disconnect'
      ? []
      : [put(['protection', 'short', 'order'], short.order, 'short, then disconnect')]),
  ]
  return changes.length === 0 ? [] : [changes]
}

/** Speed above all in work at which a switch may close by itself: common practice, no source. */
const closingShare = 1.15

/** Where it closes without ever doing so under load [rpm]. */
export const closingSpeed = ({ rows }: Pick<ChainView, 'rows'>): number =>
  (closingShare * rows.reduce((most, { speed }) => Math.max(most, speed), 0) * 60) / (2 * Math.PI)
