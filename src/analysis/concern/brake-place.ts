/** Concern: the brake sits behind the bridge, where a diode or a wire more may disable it. */
import { diodeClasses } from '../../data/diode.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { shortedDuty } from '../electric-duty.ts'
import { triable } from '../ladder/ladder.ts'
import { shortPutRight } from '../ladder/short.ts'
import { batteryCaution, electricCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'
import { limitedSeverity } from './limited-severity.ts'

export const brakePlace: ConcernRule = {
  code: 'brake-place',
  title: 'The brake shorts behind the bridge, not at the machine',
  basis:
    'A short behind the bridge works through the diodes, the cable and every joint; one open diode or lead leaves the rotor half a brake or none, and the battery stands across the same wires. The steady short current at the speed without load in the storm, as the bridge would carry it, stands beside the kind’s rating. Without a mechanical limiter that acts below the storm it blocks the outdoor class, else a warning; one that shorts a battery before it opens it blocks the outdoor class in any case.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { electrical, short } = machine.protection
    if (electrical !== 'shorting switch' || short.place !== 'after the bridge') return undefined
    const { directCurrent, lineCurrent } = shortedDuty(chain)
    const shortsBattery = machine.load.kind === 'battery' && short.order === 'short, then disconnect'
    const kind = diodeClasses.find(({ name }) => name === machine.design.bridge.diode)
    return {
      code: 'brake-place',
      severity: shortsBattery ? severityFor(chain, ['outdoor']) : limitedSeverity(chain),
      path: 'protection.short.place',
      what: `The shorting switch sits behind the bridge: a failed diode, a blown bridge or a loose lead before it disables the brake.${
        shortsBattery ? ' As it shorts first and opens the load afterwards, it shorts the battery too.' : ''
      }`,
      why: 'The part that fails in a storm is often the bridge itself, and then the brake behind it is gone when it is needed. The diodes’ drop also lets a slow rotor turn on, and plus and minus of the battery meet in the same switch.',
      figures: `Shorted at ${formatSi(runaway.speed, 'rpm')}: ${formatSi(lineCurrent, 'A')} rms in a line, ${formatSi(directCurrent, 'A')} through the bridge${
        kind === undefined
          ? ''
          : `, rated ${formatNumber(kind.rated_A)} A${kind.name.startsWith('diode') ? ' each' : ''}`
      }; drop of two diodes ${formatSi(2 * machine.diode.threshold, 'V', 2)} or more.`,
      remedies: [
        triable(
          'Short the leads of the winding themselves, all of them, before the bridge and before any long cable.',
          shortPutRight(machine.design),
        ),
        'If a switch behind the bridge must stay, block the battery from it with a diode or open the battery’s side with the same movement, after the short has closed.',
        'Try the brake in light wind with each lead off in turn, and know what is left.',
        `${batteryCaution} ${electricCaution}`,
      ],
    }
  },
}
