/** Concern: the brake switch takes the load off before it shorts the winding. */
import { formatSi } from '../../units/format.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { limiterAdded } from '../ladder/limiter.ts'
import { shortPutRight } from '../ladder/short.ts'
import { electricCaution, turningCaution } from './caution.ts'
import type { ConcernRule } from './concern.ts'
import { limitedSeverity } from './limited-severity.ts'

export const brakeOrder: ConcernRule = {
  code: 'brake-order',
  title: 'The brake switch opens the load before it shorts the winding',
  basis:
    'The order of a shorting switch: between opening and shorting the rotor has neither load nor brake, and should the second step fail it has none for good. Without a mechanical limiter that acts below the storm it blocks the outdoor class, else a warning.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { electrical, short } = machine.protection
    if (electrical !== 'shorting switch' || short.order !== 'disconnect, then short') return undefined
    const working = chain.rows.reduce((most, { speed }) => Math.max(most, speed), 0)
    return {
      code: 'brake-order',
      severity: limitedSeverity(chain),
      path: 'protection.short.order',
      what: 'The brake switch disconnects the load first; until it has shorted the winding nothing holds the rotor.',
      why: 'A rotor without load gathers speed within a second or two in a gust; contacts that then close meet the full volts and a faster rotor, and if they fail to close the machine is running away.',
      figures: `From ${formatSi(working, 'rpm')} at most under load towards ${formatSi(runaway.speed, 'rpm')} in ${formatSi(runaway.wind, 'm_per_s')}, ${formatSi(runaway.directVoltage, 'V')} across the open switch.`,
      remedies: [
        triable(
          `${short.place === 'at the machine' ? 'Short' : 'Move the short to the machine’s leads and short'} the winding first, with the load still connected: the bridge keeps the battery from feeding a short before it. Then open the load.`,
          shortPutRight(machine.design),
        ),
        ...whereTriable('Add a mechanical limiter that acts below the storm.', limiterAdded(machine.design)),
        'Use a changeover switch only if its contacts make before they break, and say so beside it.',
        `${turningCaution} ${electricCaution}`,
      ],
    }
  },
}
