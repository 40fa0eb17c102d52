/** Concern: the dump load takes too little power, or burns. */
import { formatSi } from '../../units/format.ts'
import { dumpAlone } from '../dump-alone.ts'
import { stuckDuty, workingDuty } from '../electric-duty.ts'
import { dumpAdded, dumpLarger } from '../ladder/dump.ts'
import { triable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { electricCaution, fireCaution } from './caution.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { limitedSeverity } from './limited-severity.ts'

export interface DumpCase {
  readonly resistance: number
  /** Watts it may burn [W]. */
  readonly rated: number
  /** Volts at which it is switched on [V]. */
  readonly on: number
  /** Greatest power of the machine [W]. */
  readonly greatest: number
  /** Burnt in it when the battery is gone [W]. */
  readonly alone: number
}

export const dumpFaults = ({ resistance, rated, on, greatest, alone }: DumpCase) => ({
  weak: on ** 2 / resistance < greatest,
  burns: rated < on ** 2 / resistance,
  burnsAlone: alone > rated,
})

/** The dump load against what it meets; undefined where none is described or nothing flows. */
function dumpCaseOf(chain: ChainView): DumpCase | undefined {
  const { electrical, dump } = chain.machine.protection
  const duty = workingDuty(chain)
  if (electrical !== 'dump load' || dump === undefined || duty === undefined || !(duty.power > 0))
    return undefined
  return {
    resistance: dump.resistance,
    rated: dump.power,
    on: dump.on,
    greatest: duty.power,
    alone: dump.place === 'behind the bridge' ? dumpAlone(chain, dump.resistance).power : 0,
  }
}

export const dumpPower: ConcernRule = {
  code: 'dump-power',
  title: 'The dump load takes too little, or burns',
  basis:
    'V²/R at the volts that switch it on against the machine’s greatest power in work, which it must take while the battery is full; its label against the same V²/R, and against what it burns alone, the battery gone, in the strongest wind that a mechanical limiter leaves (fundamental, diodes without drop). Without a mechanical limiter that acts below the storm it blocks the outdoor class, else a warning; a note where ohms and watts are not said.',
  measure: (chain) => {
    const found = dumpCaseOf(chain)
    if (found === undefined) return undefined
    const { on, resistance, greatest, rated, alone } = found
    const taken = on ** 2 / resistance
    return taken < greatest
      ? { name: 'watts that the dump load takes', value: taken, limit: greatest, unit: 'W', sound: 'above' }
      : {
          name: 'watts in the dump load',
          value: Math.max(taken, alone),
          limit: rated,
          unit: 'W',
          sound: 'below',
        }
  },
  answeredBy:
    'The dump load’s resistance hot, its volts, and its temperature after an hour at its full power.',
  judge: (chain) => {
    const { machine } = chain
    const { electrical, dump } = machine.protection
    const duty = workingDuty(chain)
    if (electrical !== 'dump load' || duty === undefined || !(duty.power > 0)) return undefined
    const stuck = stuckDuty(chain)
    const wanted = (voltage: number, power: number) =>
      `${formatSi(voltage ** 2 / power, 'ohm', 2)} or less, and ${formatSi(1.5 * power, 'W', 2)} or more on its label in the place where it hangs`
    const storm =
      stuck !== undefined && stuck.power > duty.power
        ? `; ${formatSi(stuck.power, 'W')} in the storm should the limiter stick`
        : ''
    if (dump === undefined)
      return {
        code: 'dump-power',
        severity: 'note',
        path: 'protection.dump',
        what: 'The ohms and watts of the dump load are not said.',
        why: 'A dump load that takes less than the machine gives lets the volts go on rising.',
        figures: `Greatest power ${formatSi(duty.power, 'W')} at ${formatSi(duty.loadVoltage, 'V')}${storm}.`,
        remedies: [
          triable(`Take ${wanted(duty.loadVoltage, duty.power)}.`, dumpAdded(chain)),
          electricCaution,
        ],
      }
    const alone = dumpAlone(chain, dump.resistance)
    const taken = dump.on ** 2 / dump.resistance
    const { weak, burns, burnsAlone } = dumpFaults({
      resistance: dump.resistance,
      rated: dump.power,
      on: dump.on,
      greatest: duty.power,
      alone: dump.place === 'behind the bridge' ? alone.power : 0,
    })
    if (!weak && !burns && !burnsAlone) return undefined
    return {
      code: 'dump-power',
      severity: limitedSeverity(chain),
      path: 'protection.dump',
      what: [
        ...(weak ? ['The dump load takes less than the machine gives, so that the volts go on rising.'] : []),
        ...(burns ? ['The dump load burns more watts than it is made for as soon as it is on.'] : []),
        ...(burnsAlone && !burns
          ? ['With the battery gone the dump load burns more watts than it is made for.']
          : []),
      ].join(' '),
      why: 'The dump load is asked for on the windiest day with the battery full: it must then take all that arrives, for hours, and if it burns through the rotor has lost its last load.',
      figures: `Takes ${formatSi(taken, 'W')} at ${formatSi(dump.on, 'V')}, made for ${formatSi(dump.power, 'W')}; greatest power ${formatSi(duty.power, 'W')}${storm}. Alone in ${formatSi(alone.wind, 'm_per_s')}: ${formatSi(alone.voltage, 'V')} and ${formatSi(alone.power, 'W')} in it at ${formatSi(alone.speed, 'rpm')}.`,
      remedies: [
        triable(
          `Take ${wanted(dump.on, Math.max(duty.power, burnsAlone ? alone.power : 0))}.`,
          dumpLarger(chain, duty.power),
        ),
        triable(
          'Let a mechanical limiter act earlier, so that less has to be taken.',
          limiter(machine.design),
        ),
        'Count its resistance hot; hang it in free air, away from everything that burns.',
        `${fireCaution} ${electricCaution}`,
      ],
    }
  },
}
