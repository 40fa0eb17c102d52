/** Concern: the battery's own electronics take the load off the rotor, full or in frost, and nothing takes over. */
import { formatSi } from '../../units/format.ts'
import { mechanicalHolds, workingDuty } from '../electric-duty.ts'
import { dumpAdded, dumpPutRight } from '../ladder/dump.ts'
import { triable } from '../ladder/ladder.ts'
import { limiterAdded } from '../ladder/limiter.ts'
import { closingSpeed, shortAdded } from '../ladder/short.ts'
import { winterAllowance } from './battery-frost.ts'
import { batteryCaution, turningCaution } from './caution.ts'
import type { ChainView, ConcernRule, Severity } from './concern.ts'

/** Whether something electrical loads the rotor by itself as soon as the battery has gone. */
export function takesOver({ protection }: ChainView['machine'], above: number): boolean {
  const { electrical, dump, short } = protection
  if (electrical === 'shorting switch') return short.actsAt !== undefined
  if (electrical !== 'dump load') return false
  // a dump load of which nothing is said is asked about elsewhere
  return dump === undefined || (dump.place === 'behind the bridge' && dump.ownFuse && dump.on < above)
}

export const batteryDisconnect: ConcernRule = {
  code: 'battery-disconnect',
  title: 'The battery takes itself off and leaves the rotor without load',
  basis: `A battery with electronics of its own opens the circuit when it is full, and in frost (the site’s air less ${winterAllowance} K for winter nights: common practice, no source). It is asked what then loads the rotor by itself: a dump load at the bridge that is switched on before, or a short that closes by speed. Neither, and no mechanical limiter that acts below the storm: blocks the outdoor class; with one a warning; a note in the other classes. Lithium batteries of which it is not said are taken to have such electronics: a warning outdoors at most.`,
  judge: (chain) => {
    const { machine, runaway } = chain
    const { load, site, safetyClass } = machine
    const duty = workingDuty(chain)
    if (load.kind !== 'battery' || duty === undefined) return undefined
    const said = load.disconnect
    const assumed = said === undefined && load.chemistry.startsWith('Li')
    if (said === undefined && !assumed) return undefined
    const above = said?.above ?? load.band[1]
    if (takesOver(machine, above)) return undefined
    const outdoor = safetyClass === 'outdoor'
    const severity: Severity = !outdoor
      ? 'note'
      : assumed || mechanicalHolds(machine)
        ? 'warning'
        : 'blocking'
    const night = site.ambient - winterAllowance
    const frost = said !== undefined && outdoor && night < said.below
    return {
      code: 'battery-disconnect',
      severity,
      path: 'load.disconnect',
      what: `${
        assumed
          ? 'A battery of this chemistry usually has electronics of its own that take it off'
          : 'The battery’s own electronics take it off'
      } when it is full${frost ? ' and on frosty nights' : ''}, and nothing else then loads the rotor by itself.`,
      why: `The wind does not stop when the battery leaves: the rotor runs up, and its volts stand on whatever hangs on the same wires, the battery’s electronics included.${
        mechanicalHolds(machine)
          ? ' Only the mechanical limiter is left, and it lets the rotor run without load up to its wind.'
          : ''
      }`,
      figures: `Off above ${formatSi(above, 'V')}${
        said === undefined
          ? ' (usual for its cells)'
          : `, and below ${formatSi(said.below, 'degC', 2)} (winter nights perhaps ${formatSi(night, 'degC', 2)})`
      }; up to ${formatSi(duty.loadVoltage, 'V')} in work from its present state. Without it ${formatSi(runaway.speed, 'rpm')} and ${formatSi(runaway.directVoltage, 'V')} in ${formatSi(runaway.wind, 'm_per_s')}.`,
      remedies: [
        triable(
          `Add a dump load at the bridge with a fuse of its own, switched on below ${formatSi(above, 'V')} and by a contact that rests closed.`,
          [...dumpPutRight(machine.design), ...dumpAdded(chain)],
        ),
        triable(
          'Or add a switch at the machine’s leads that shorts the winding by speed.',
          shortAdded(machine.design, closingSpeed(chain)),
        ),
        triable(
          'Let a mechanical limiter hold the rotor below the storm: a furling tail, pitching blades or a friction brake.',
          limiterAdded(machine.design),
        ),
        'Keep the battery where it does not freeze.',
        `${batteryCaution} ${turningCaution}`,
      ],
    }
  },
}
