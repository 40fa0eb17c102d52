/** Concern: a limiter that turns or pitches a rotor out of the wind is given to one with an upright axis. */

import { triable } from '../ladder/ladder.ts'
import { limiterForAxis } from '../ladder/limiter.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** Whether that limiter does nothing for an upright rotor: the wind comes to it alike from all sides. */
export const useless = (mechanical: string, upright: boolean): boolean =>
  upright && mechanical === 'furling tail'

export const uprightLimiter: ConcernRule = {
  code: 'upright-limiter',
  title: 'A furling tail on an upright rotor',
  basis:
    'An upright rotor meets the wind from all sides alike, so that a tail cannot turn it out. The rules on runaway go on as if the limiter worked, so it blocks the outdoor class; a warning in the others.',
  judge: (chain) => {
    const { machine } = chain
    if (!useless(machine.protection.mechanical, 'height' in machine.blades)) return undefined
    return {
      code: 'upright-limiter',
      severity: severityFor(chain, ['outdoor']),
      path: 'protection.mechanical',
      what: 'A furling tail does not limit a rotor with an upright axis.',
      why: 'The wind comes to it alike from all sides: there is no direction in which it would take less.',
      figures:
        'Limiter given: furling tail; axis: upright. All that is computed above the limiter’s wind is not to be believed.',
      remedies: [
        triable(
          'A friction brake or blades that pitch by their own centrifugal force.',
          limiterForAxis(machine.design),
        ),
        'Take the rotor down, or tie it, before a storm.',
        'Mast, guys and whatever limits the rotor in a storm need a competent rigger or structural engineer and the local permit.',
      ],
    }
  },
}
