/** Remedy: fewer turns of thicker wire or more of thinner, the window as full as before. */
import type { Design } from '../../machine/design.ts'
import { gauge } from '../../machine/wire-size.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

/** Turns tried, over those at hand. */
const least = 0.5
const greatest = 1.6
const mostAttempts = 40

/** Down to the hundredth of a millimetre above a third of one, to the thousandth below: never more than fits. */
function drawnDiameter(diameter_mm: number): number {
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

function attempts(design: Design): Attempt[] {
  const { turns } = design.stator.winding
  const low = Math.max(1, Math.round(least * turns))
  const high = Math.round(greatest * turns)
  const ratio = (high / low) ** (1 / mostAttempts)
  const all =
    high - low <= mostAttempts
      ? Array.from({ length: high - low + 1 }, (_, k) => low + k)
      : [...new Set(Array.from({ length: mostAttempts + 1 }, (_, k) => Math.round(low * ratio ** k)))]
  return all.filter((each) => each !== turns).map((each) => ({ changes: turnsChanges(design, each) }))
}

export const turnsRemedy: RemedyRule = {
  kind: 'turns',
  unfit: ({ design }) =>
    design.stator.winding.turns < 3 ? 'so few turns cannot be changed in fine steps' : undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
