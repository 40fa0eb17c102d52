/** Concern: nothing stops the machine from overcharging the battery, or it charges too fast. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { moreBattery } from '../ladder/battery.ts'
import { dumpAdded } from '../ladder/dump.ts'
import { both, triable, whereTriable } from '../ladder/ladder.ts'
import { limiterEarlier } from '../ladder/limiter.ts'
import { batteryCaution, electricCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Charging current over capacity per hour that a battery usually bears [1/h]: common practice, no source. */
export const chargeRate: Readonly<Record<string, number>> = {
  'lead-acid': 0.2,
  LiFePO4: 0.5,
  'Li-ion': 0.5,
  NiMH: 0.5,
}

export interface Charging {
  /** Greatest voltage at the battery by computation, and the end of charge [V]. */
  readonly voltage: number
  readonly full: number
  /** Greatest current [A]; capacity [A·s], undefined where not said. */
  readonly current: number
  readonly capacity: number | undefined
  /** [1/h] */
  readonly rate: number
  /** Something takes the power when the battery is full. */
  readonly diverted: boolean
}

export interface ChargingFaults {
  readonly overVoltage: boolean
  readonly undiverted: boolean
  /** Current over capacity per hour; undefined where the capacity is not said. */
  readonly tooFast: number | undefined
}

export function chargingFaults(charging: Charging): ChargingFaults {
  const { voltage, full, current, capacity, rate, diverted } = charging
  const perHour = capacity === undefined ? undefined : (current * 3600) / capacity
  return {
    overVoltage: voltage > full,
    undiverted: !diverted && current > 0,
    tooFast: perHour !== undefined && perHour > rate ? perHour : undefined,
  }
}

/** What the rule looks at; undefined without a battery or without current. */
function chargingOf({ machine: { load, protection }, rows }: ChainView) {
  if (load.kind !== 'battery') return undefined
  const most = rowOfMost(rows, ({ loadCurrent }) => loadCurrent)
  if (most === undefined || !(most.loadCurrent > 0)) return undefined
  const charging: Charging = {
    voltage: most.loadVoltage,
    full: load.band[1],
    current: most.loadCurrent,
    capacity: load.capacity,
    rate: chargeRate[load.chemistry] ?? 0.2,
    diverted: protection.electrical === 'dump load',
  }
  return { charging, load, most }
}

export const batteryOvercharge: ConcernRule = {
  code: 'battery-overcharge',
  title: 'Nothing keeps the battery from being overcharged',
  basis:
    'A battery that is full must have its current diverted; terminal volts in the strongest wind against the end-of-charge volts of the chemistry; greatest current over capacity against 0.2 /h (lead) or 0.5 /h (others), common practice, no source. Volts above the end of charge block the outdoor class for lithium cells; all else is a warning. Installation: IEC 62485, verify the edition in force.',
  measure: (chain) => {
    const found = chargingOf(chain)
    if (found === undefined) return undefined
    const { voltage, full, current, capacity, rate } = found.charging
    const { overVoltage, tooFast } = chargingFaults(found.charging)
    return tooFast !== undefined && !overVoltage && capacity !== undefined
      ? {
          name: 'charging current',
          value: current,
          limit: (rate * capacity) / 3600,
          unit: 'A',
          sound: 'below',
        }
      : { name: 'volts at the battery', value: voltage, limit: full, unit: 'V', sound: 'below' }
  },
  answeredBy:
    'Volts at the battery’s own terminals and amps into it, both read in the strongest wind of a season, the battery full.',
  judge: (chain) => {
    const found = chargingOf(chain)
    if (found === undefined) return undefined
    const { charging, load, most } = found
    const { rate } = charging
    const { overVoltage, undiverted, tooFast } = chargingFaults(charging)
    if (!overVoltage && !undiverted && tooFast === undefined) return undefined
    const lithium = load.chemistry.startsWith('Li')
    return {
      code: 'battery-overcharge',
      severity: overVoltage && lithium ? severityFor(chain, ['outdoor']) : 'warning',
      path: undiverted ? 'protection.electrical' : 'load',
      what: overVoltage
        ? 'In strong wind the battery is driven above its end-of-charge volts.'
        : undiverted
          ? 'Nothing takes the current once the battery is full.'
          : 'In strong wind the battery is charged faster than it bears.',
      why: 'The wind does not stop when the battery is full: the current goes on, the battery gasses and heats, or its own protection cuts off and leaves the rotor without a load.',
      figures: `Up to ${formatSi(charging.current, 'A')} in ${formatSi(most.wind, 'm_per_s')}, ${formatSi(charging.voltage, 'V')} at the battery from its present state; end of charge ${formatSi(charging.full, 'V')}${
        load.capacity === undefined
          ? '; capacity not said'
          : `; per hour ${formatNumber((charging.current * 3600) / load.capacity, 2)} times its capacity of ${formatSi(load.capacity, 'Ah')} (usual at most ${formatNumber(rate, 1)})`
      }.`,
      remedies: [
        ...(undiverted
          ? [
              triable(
                'Add a diverting controller with a dump load that takes the full power, and never one that opens the circuit.',
                dumpAdded(chain),
              ),
            ]
          : []),
        ...(undiverted && (tooFast !== undefined || overVoltage)
          ? whereTriable(
              'Best both: more battery, and the dump load for when it is full.',
              both(moreBattery(chain.machine.design), dumpAdded(chain).slice(0, 1)),
            )
          : []),
        ...(tooFast !== undefined || overVoltage
          ? [
              triable(
                'Use a battery of more capacity and lower resistance.',
                moreBattery(chain.machine.design),
              ),
              ...whereTriable(
                'Let the mechanical limiter act earlier.',
                limiterEarlier(chain.machine.design),
              ),
            ]
          : []),
        'Fuse the battery at its terminal with a fuse and a switch rated for direct current.',
        `${batteryCaution} ${electricCaution}`,
      ],
    }
  },
}
