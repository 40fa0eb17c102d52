/** Ladders of the wire: thinner or thicker, in hand, strip laid on edge. */

import { gauge, neighbourSizes } from '../../data/wire-gauge.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import type { Change } from '../remedy/change.ts'
import { drawnDiameter } from '../remedy/turns-change.ts'
import { type Ladder, put } from './ladder.ts'

const sizesTried = 12

const sizePath = ['stator', 'wire', 'size'] as const

function sold({ stator: { wire } }: Design, side: 'thinner' | 'thicker'): Ladder {
  const { size } = wire
  if (size === undefined) return []
  const own = typeof size === 'string' ? size : nominal(size)
  return neighbourSizes(own, sizesTried)[side].map((other) => [put(sizePath, size, other)])
}

/** The next thinner sizes sold, the turns kept. */
export const thinnerWire = (design: Design): Ladder => sold(design, 'thinner')

/** The next thicker sizes sold, the turns kept. */
export const thickerWire = (design: Design): Ladder => sold(design, 'thicker')

/** Ever more and thinner wires in hand, the copper kept. */
export function moreStrands({ stator: { wire } }: Design): Ladder {
  const { size, strands } = wire
  if (size === undefined) return []
  const bare = nominal(typeof size === 'string' ? gauge(size)! : size)
  return [2, 3, 4, 6, 8, 12, 16]
    .map((factor) => factor * strands)
    .filter((count) => count <= 60)
    .map((count): Change[] => [
      put(['stator', 'wire', 'strands'], strands, count),
      put(sizePath, size, drawnDiameter(bare * Math.sqrt(strands / count))),
    ])
}

export const stripOnEdge = ({ stator: { wire } }: Design): Ladder =>
  wire.strip?.lies === 'flat' ? [[put(['stator', 'wire', 'strip', 'lies'], 'flat', 'on edge')]] : []
