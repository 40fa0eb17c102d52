/** Concern: the dump load switches at volts that do not suit the battery. */
import { batteryChemistries } from '../../data/battery.ts'
import { formatSi } from '../../units/format.ts'
import { dumpVoltsPutRight } from '../ladder/dump.ts'
import { triable } from '../ladder/ladder.ts'
import { batteryCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { limitedSeverity } from './limited-severity.ts'

/** Room above the end of charge before it is called overcharge: makers of lead batteries differ by as much. */
export const topTolerance = 1.03

export interface TriggerCase {
  readonly on: number
  readonly off: number
  /** Of the full battery at rest, and at the end of charge [V]. */
  readonly restFull: number
  readonly top: number
  /** Where the battery takes itself off [V]; undefined where it does not. */
  readonly disconnect: number | undefined
}

export type TriggerFault = 'battery leaves first' | 'overcharges' | 'drains' | 'never full'

/** Every fault of the two voltages, the gravest first. */
export const triggerFaults = ({ on, off, restFull, top, disconnect }: TriggerCase): TriggerFault[] => [
  ...(disconnect !== undefined && disconnect <= on ? ['battery leaves first' as const] : []),
  ...(on > topTolerance * top ? ['overcharges' as const] : []),
  ...(off <= restFull && on > restFull ? ['drains' as const] : []),
  ...(on <= restFull ? ['never full' as const] : []),
]

const words: Readonly<Record<TriggerFault, string>> = {
  'battery leaves first': 'The battery takes itself off before the dump load is switched on.',
  overcharges: 'The dump load is switched on only above the battery’s end of charge.',
  drains: 'Once on, the dump load goes on when the wind has dropped and drains the battery.',
  'never full': 'The dump load is switched on below the volts of a full battery at rest.',
}

/** Undefined where no dump load switches at a battery's volts. */
function triggerCaseOf({ machine: { load, protection } }: ChainView): TriggerCase | undefined {
  const { dump, electrical } = protection
  if (load.kind !== 'battery' || dump === undefined || electrical !== 'dump load') return undefined
  const cell = batteryChemistries.find(({ name }) => name === load.chemistry)
  if (cell === undefined) return undefined
  return {
    on: dump.on,
    off: dump.off,
    restFull: load.cells * cell.restFull_V_per_cell,
    top: load.band[1],
    disconnect: load.disconnect?.above,
  }
}

export const dumpVoltage: ConcernRule = {
  code: 'dump-voltage',
  title: 'The dump load switches at the wrong volts',
  basis: `Volts that switch it on: above those of the full battery at rest, at most the end of charge of the chemistry (3 % above it pass: common practice, no source), and below those at which the battery takes itself off. Volts that switch it off: above those of the full battery at rest. A battery that leaves first blocks the outdoor class without a mechanical limiter that acts below the storm; an overcharged lithium battery blocks it; all else is a warning.`,
  measure: (chain) => {
    const found = triggerCaseOf(chain)
    if (found === undefined) return undefined
    const { on, off, restFull, top, disconnect } = found
    const [first] = triggerFaults(found)
    if (first === 'drains')
      return { name: 'volts that switch it off', value: off, limit: restFull, unit: 'V', sound: 'above' }
    return first === 'never full'
      ? { name: 'volts that switch it on', value: on, limit: restFull, unit: 'V', sound: 'above' }
      : {
          name: 'volts that switch it on',
          value: on,
          limit: Math.min(topTolerance * top, disconnect ?? Number.POSITIVE_INFINITY),
          unit: 'V',
          sound: 'below',
        }
  },
  judge: (chain) => {
    const { load } = chain.machine
    const { dump } = chain.machine.protection
    const found = triggerCaseOf(chain)
    if (load.kind !== 'battery' || dump === undefined || found === undefined) return undefined
    const { restFull, top, disconnect } = found
    const faults = triggerFaults(found)
    const [first] = faults
    if (first === undefined) return undefined
    const high = disconnect === undefined ? top : Math.min(top, disconnect)
    return {
      code: 'dump-voltage',
      severity:
        first === 'battery leaves first'
          ? limitedSeverity(chain)
          : first === 'overcharges' && load.chemistry.startsWith('Li')
            ? severityFor(chain, ['outdoor'])
            : 'warning',
      path: 'protection.dump.on_V',
      what: faults.map((fault) => words[fault]).join(' '),
      why: 'The volts of the battery are all that the dump load’s controller goes by: they must reach its step before they hurt the battery, and fall below the lower one before they empty it.',
      figures: `On at ${formatSi(dump.on, 'V')}, off at ${formatSi(dump.off, 'V')}; full at rest ${formatSi(restFull, 'V')}, end of charge ${formatSi(top, 'V')}${
        disconnect === undefined ? '' : `, takes itself off at ${formatSi(disconnect, 'V')}`
      } (${load.cells} cells).`,
      remedies: [
        high > restFull
          ? triable(
              `Switch on between ${formatSi(restFull, 'V')} and ${formatSi(high, 'V')}, near the upper end, and off a few per cent below but above ${formatSi(restFull, 'V')}; after the battery maker’s sheet.`,
              dumpVoltsPutRight(chain),
            )
          : 'Take a battery whose own electronics leave room above its volts at rest.',
        batteryCaution,
      ],
    }
  },
}
