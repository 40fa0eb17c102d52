/** Concern: the switch behind the bridge cannot break direct current at the volts that it may meet. */
import type { Wiring } from '../../machine/supply-side.ts'
import { formatSi } from '../../units/format.ts'
import { workingDuty } from '../electric-duty.ts'
import { triable } from '../ladder/ladder.ts'
import { fittingSwitch } from '../ladder/part.ts'
import { electricCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

export type SwitchFault = 'not for direct current' | 'too few volts' | 'none' | 'not said' | 'volts not said'

export function switchFault(
  { switchKind, switchVoltage }: Pick<Wiring, 'switchKind' | 'switchVoltage'>,
  needed: number,
): SwitchFault | undefined {
  if (switchKind === 'not said' || switchKind === 'none') return switchKind
  if (switchKind === 'for alternating current only') return 'not for direct current'
  if (switchVoltage === undefined) return 'volts not said'
  return switchVoltage < needed ? 'too few volts' : undefined
}

const words: Readonly<Record<SwitchFault, string>> = {
  'not for direct current': 'The switch behind the bridge is made for alternating current only.',
  'too few volts': 'The switch behind the bridge is made for fewer volts than it may have to break.',
  none: 'There is no switch behind the bridge that takes the load off.',
  'not said': 'Nothing is said of the switch behind the bridge.',
  'volts not said': 'The direct volts on the label of the switch are not said.',
}

const voltsNeeded = ({ runaway }: ChainView, { directVoltage }: { readonly directVoltage: number }): number =>
  Math.max(runaway.directVoltage, directVoltage)

export const switchRating: ConcernRule = {
  code: 'switch-rating',
  title: 'The switch may not break direct current',
  basis:
    'The switch behind the bridge must be made for direct current, and for at least the volts of the open circuit at runaway, for that is what stands across it as soon as it has opened in a storm. Made for alternating current only, or for too few volts: blocks the outdoor class, a warning in the others. None: a warning outdoors, a note else. Not said: a note. Not asked of demonstrations.',
  measure: (chain) => {
    const duty = workingDuty(chain)
    const { switchVoltage } = chain.machine.wiring
    return duty === undefined || switchVoltage === undefined
      ? undefined
      : {
          name: 'direct volts on the switch',
          value: switchVoltage,
          limit: voltsNeeded(chain, duty),
          unit: 'V',
          sound: 'above',
        }
  },
  judge: (chain) => {
    const { machine } = chain
    const duty = workingDuty(chain)
    if (duty === undefined || machine.safetyClass === 'demonstration') return undefined
    const { wiring } = machine
    const needed = voltsNeeded(chain, duty)
    const fault = switchFault(wiring, needed)
    if (fault === undefined) return undefined
    const grave = fault === 'not for direct current' || fault === 'too few volts'
    const outdoor = machine.safetyClass === 'outdoor'
    return {
      code: 'switch-rating',
      severity: grave ? severityFor(chain, ['outdoor']) : fault === 'none' && outdoor ? 'warning' : 'note',
      path: 'wiring.switchKind',
      what: words[fault],
      why: 'Direct current has no moment without current: an arc between contacts that are not made for it goes on burning, and the winding keeps it fed as long as the rotor turns.',
      figures: `Needed: direct current, at least ${formatSi(needed, 'V')} and ${formatSi(duty.directCurrent, 'A')}${
        wiring.switchVoltage === undefined ? '' : `; on its label ${formatSi(wiring.switchVoltage, 'V')}`
      }.`,
      remedies: [
        triable(
          `Take a switch or breaker whose label says direct current, at least ${formatSi(needed, 'V', 2)} and ${formatSi(1.25 * duty.directCurrent, 'A', 2)}; mind plus and minus where the label asks for it.`,
          fittingSwitch(machine.design, needed),
        ),
        'Short the winding at the machine first, and open the load only when the rotor has stopped.',
        electricCaution,
      ],
    }
  },
}
