/** Places of the document that change with the number of turns, the window as full as before. */

import { gauge } from '../../data/wire-gauge.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, valueChange } from './change.ts'

/** Down to the hundredth of a millimetre above a third of one, to the thousandth below: never more than fits. */
export function drawnDiameter(diameter_mm: number): number {
  const places = diameter_mm >= 0.3 ? 100 : 1000
  return Math.floor(diameter_mm * places + 1e-6) / places
}

/** N turns in place of those at hand; the wire's copper section goes with 1/N, so that R goes with N². */
export function turnsChanges({ stator }: Design, turns: number): Change[] {
  const { winding, wire } = stator
  const ratio = Math.sqrt(winding.turns / turns)
  const changes: Change[] = [valueChange(['stator', 'winding', 'turns'], winding.turns, turns)]
  const { strip, size } = wire
  if (strip !== undefined) {
    const side = (name: 'width_mm' | 'thickness_mm' | 'edgeRadius_mm') => {
      const from = strip[name]
      if (from !== undefined)
        changes.push(
          valueChange(['stator', 'wire', 'strip', name], from, drawnDiameter(ratio * nominal(from))),
        )
    }
    side('width_mm')
    side('thickness_mm')
    side('edgeRadius_mm')
  } else if (size !== undefined) {
    const given = nominal(typeof size === 'string' ? gauge(size)! : size)
    changes.push({ path: ['stator', 'wire', 'size'], from: size, to: drawnDiameter(ratio * given) })
  }
  return changes
}
