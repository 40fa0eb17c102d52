/** Concern: one failure takes the dump load together with the battery, or switches it off. */
import type { Protection } from '../../machine/supply-side.ts'
import { formatSi } from '../../units/format.ts'
import { dumpPutRight } from '../ladder/dump.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { limiterAdded } from '../ladder/limiter.ts'
import { electricCaution } from './caution.ts'
import type { ConcernRule } from './concern.ts'
import { limitedSeverity } from './limited-severity.ts'

type Dump = NonNullable<Protection['dump']>

/** What would take the dump load off: the battery's fuse or disconnect, and a controller without power. */
export const dumpLost = ({ place, ownFuse, withoutPower }: Dump) => ({
  withBattery: place === 'at the battery' || !ownFuse,
  withController: withoutPower === 'off',
})

export const dumpPath: ConcernRule = {
  code: 'dump-path',
  title: 'One failure takes the dump load as well',
  basis:
    'A dump load behind the battery’s fuse or its own electronics is lost together with the battery; one whose switch rests open is lost with its controller. Lost together with the battery: without a mechanical limiter that acts below the storm it blocks the outdoor class, else a warning. Lost with the controller alone: a warning outdoors, a note else. Fail-safe is a switch that rests closed: common practice, no source.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { dump, electrical } = machine.protection
    if (electrical !== 'dump load' || dump === undefined) return undefined
    const { withBattery, withController } = dumpLost(dump)
    const battery = machine.load.kind === 'battery' && withBattery
    if (!battery && !withController) return undefined
    return {
      code: 'dump-path',
      severity: battery ? limitedSeverity(chain) : machine.safetyClass === 'outdoor' ? 'warning' : 'note',
      path: battery ? 'protection.dump.place' : 'protection.dump.withoutPower',
      what: [
        ...(battery
          ? [
              'The dump load hangs on the battery’s fuse or disconnect: when that opens, battery and dump load are gone together.',
            ]
          : []),
        ...(withController ? ['The dump load is off when its controller has no power or has failed.'] : []),
      ].join(' '),
      why: 'A second load is worth its name only if nothing that takes the first one takes it too. A relay that rests closed and is held open by a healthy controller fails to the safe side.',
      figures: `With both gone ${formatSi(runaway.speed, 'rpm')} and ${formatSi(runaway.directVoltage, 'V')} behind the bridge in ${formatSi(runaway.wind, 'm_per_s')}.`,
      remedies: [
        triable(
          [
            ...(battery
              ? [
                  'Connect the dump load at the bridge, on the machine’s side of the battery’s fuse, with a fuse of its own.',
                ]
              : []),
            ...(withController
              ? [
                  'Take a relay whose resting contact connects the dump load, and feed its controller from the machine’s side.',
                ]
              : []),
          ].join(' '),
          dumpPutRight(machine.design),
        ),
        ...(battery
          ? [
              ...whereTriable(
                'Add a mechanical limiter that acts below the storm.',
                limiterAdded(machine.design),
              ),
            ]
          : []),
        'Pull the battery’s fuse and the controller’s supply in light wind, one after the other, and see what the rotor does.',
        electricCaution,
      ],
    }
  },
}
