/** Concern: the rotor's speed hangs on its load, or on one single limiter. */
import { formatSi } from '../../units/format.ts'
import { mechanicalHolds } from '../electric-duty.ts'
import { dumpAdded } from '../ladder/dump.ts'
import { both, triable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { closingSpeed, shortAdded } from '../ladder/short.ts'
import { limiterWind } from '../power-curve.ts'
import { electricCaution, towerCaution, turningCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

export interface Limiters {
  /** Wind at which the mechanical limiter acts [m/s]; undefined for none. */
  readonly mechanicalWind: number | undefined
  readonly electrical: boolean
  /** Gust to be survived [m/s]. */
  readonly stormWind: number
}

/**
 * unlimited: the load alone holds the speed; electrical only: a lost wire or a burnt winding takes load and limiter
 * together; mechanical only: nothing is left when it sticks; double: each may fail once.
 */
export type LimiterVerdict = 'unlimited' | 'electrical only' | 'mechanical only' | 'double'

export function limiterVerdict({ mechanicalWind, electrical, stormWind }: Limiters): LimiterVerdict {
  const mechanical = mechanicalWind !== undefined && mechanicalWind < stormWind
  if (mechanical) return electrical ? 'double' : 'mechanical only'
  return electrical ? 'electrical only' : 'unlimited'
}

/** Resistor that takes a power at a voltage [Ω]: R = V²/P. */
export const dumpResistance = ({ voltage, power }: { readonly voltage: number; readonly power: number }) =>
  voltage ** 2 / power

const causes: Readonly<Record<Exclude<LimiterVerdict, 'double'>, string>> = {
  unlimited:
    'The current into the load is all that brakes the rotor here; a blown fuse, a loose terminal or a full battery that disconnects takes it away in an instant.',
  'electrical only':
    'The electrical limiter needs the same winding, joints and cable as the load: one broken wire takes both.',
  'mechanical only':
    'The mechanical limiter is the only one: if it sticks, ices up or is lashed down, nothing slows the rotor.',
}

const byHand = ({ protection }: ChainView['machine']): boolean =>
  protection.electrical === 'shorting switch' && protection.short.actsAt === undefined

export const loadLoss: ConcernRule = {
  code: 'load-loss',
  title: 'The load is lost in a storm and too little is left to limit the speed',
  basis:
    'Each limiter’s failure is tried in turn, and the load is never counted as one. No limiter, or an electrical one alone, blocks the outdoor class and is a note in the others; a single mechanical one is a warning outdoors. Speed: blades without load in the storm wind. Two independent limiters: common practice, no source; see also IEC 61400-2 for small turbines, verify the edition in force.',
  measure: ({ machine }) => ({
    name: 'independent limiters',
    value: Number(mechanicalHolds(machine)) + Number(machine.protection.electrical !== 'none'),
    limit: 2,
    unit: '1',
    sound: 'above',
  }),
  judge: (chain) => {
    const { machine, runaway } = chain
    const { mechanical, electrical } = machine.protection
    const { stormWind } = machine.site
    const mechanicalWind = mechanical === 'none' ? undefined : limiterWind(machine)
    const verdict = limiterVerdict({ mechanicalWind, electrical: electrical !== 'none', stormWind })
    if (verdict === 'double') return undefined
    const outdoor = machine.safetyClass === 'outdoor'
    if (verdict === 'mechanical only' && !outdoor) return undefined
    const working = chain.rows.reduce((most, { speed }) => Math.max(most, speed), 0)
    const best = rowOfMost(chain.rows, ({ watts }) => watts.useful)
    const dump =
      best !== undefined && best.watts.useful > 0 && best.loadVoltage > 0
        ? `, about ${formatSi(dumpResistance({ voltage: best.loadVoltage, power: best.watts.useful }), 'ohm', 2)} to take ${formatSi(best.watts.useful, 'W', 2)} at ${formatSi(best.loadVoltage, 'V')}`
        : ''
    return {
      code: 'load-loss',
      severity: !outdoor
        ? 'note'
        : verdict === 'mechanical only'
          ? 'warning'
          : severityFor(chain, ['outdoor']),
      path: 'protection',
      what: `With the load gone in a gust of ${formatSi(stormWind, 'm_per_s')} the rotor runs up to ${formatSi(runaway.speed, 'rpm')}.`,
      why:
        verdict === 'electrical only' && byHand(machine)
          ? `${causes[verdict]} And somebody must be there to close the switch.`
          : causes[verdict],
      figures: `Runaway ${formatSi(runaway.speed, 'rpm')} (tip ${formatSi(runaway.tipSpeed, 'm_per_s')}, ${formatSi(runaway.directVoltage, 'V')} behind the bridge) against ${formatSi(working, 'rpm')} at most under load.${
        mechanicalWind !== undefined && mechanicalWind >= stormWind
          ? ` The mechanical limiter acts at ${formatSi(mechanicalWind, 'm_per_s')} only, not below the storm.`
          : ''
      }`,
      remedies: [
        ...(verdict === 'mechanical only'
          ? []
          : [
              triable(
                'Add a limiter that works by itself and without electricity: a furling tail or pitching blades, tried in moderate wind first.',
                limiter(machine.design),
              ),
            ]),
        ...(electrical === 'none'
          ? [
              triable(
                'Add a second way to stop that shares no part with the first: a shorting switch at the machine’s own leads that closes by speed.',
                shortAdded(machine.design, closingSpeed(chain)),
              ),
              triable(
                `Or a dump load whose controller and fuse are not those of the battery${dump}.`,
                dumpAdded(chain),
              ),
              ...(verdict === 'unlimited'
                ? [
                    triable(
                      'Best both at once: the limiter, and the switch for when it sticks.',
                      both(limiter(machine.design), shortAdded(machine.design, closingSpeed(chain))),
                    ),
                  ]
                : []),
            ]
          : []),
        'Never let a charge controller answer a full battery by opening the circuit: divert the power instead.',
        `${turningCaution} ${towerCaution} ${electricCaution}`,
      ],
    }
  },
}
