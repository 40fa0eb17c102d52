/** Concern: a lead-acid battery that goes on being charged gives off hydrogen, and needs air. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { workingDuty } from '../electric-duty.ts'
import { dumpAdded } from '../ladder/dump.ts'
import { triable } from '../ladder/ladder.ts'
import { batteryCaution } from './caution.ts'
import type { ConcernRule } from './concern.ts'

/** Gassing amps per amp-hour of capacity of vented cells whose charge is held at 2.4 V: en-50272-3, 2 A per 100 Ah. */
const heldGassing = 0.02

export interface Ventilation {
  /** Air to pass the battery [m³/h]. */
  readonly airflow: number
  /** Free opening, once below and once above [cm²]. */
  readonly opening: number
}

/**
 * Air that keeps the hydrogen thin, after en-50272-3:
 *
 *   Q = v q s n I = 24 · 0.42·10⁻³ m³/(A·h) · 5 · n · I,  A = 28 Q
 */
export function ventilation({
  cells,
  gassing,
}: {
  readonly cells: number
  readonly gassing: number
}): Ventilation {
  const airflow = 24 * 0.42e-3 * 5 * cells * gassing
  return { airflow, opening: 28 * airflow }
}

/** Amps that make gas: all of the current where nothing diverts it, else what the held volts drive [A]. */
export const gassingCurrent = (charging: number, capacity: number | undefined, diverted: boolean): number =>
  diverted && capacity !== undefined ? Math.min(charging, (heldGassing * capacity) / 3600) : charging

export const batteryGas: ConcernRule = {
  code: 'battery-gas',
  title: 'A full lead-acid battery gives off explosive gas',
  basis:
    'With nothing that diverts the current of a full battery all of it makes hydrogen and oxygen: air after EN 50272-3, 0.05 m³/h for each amp and cell, and 28 cm² of free opening below and above for each m³/h. A note. Verify the edition in force.',
  answeredBy:
    'The free openings of the battery’s box, measured low and high, with the amps they were laid out for.',
  judge: (chain) => {
    const { load, protection } = chain.machine
    const duty = workingDuty(chain)
    if (load.kind !== 'battery' || load.chemistry !== 'lead-acid' || duty === undefined) return undefined
    if (protection.electrical === 'dump load' || !(duty.loadCurrent > 0)) return undefined
    const { airflow, opening } = ventilation({ cells: load.cells, gassing: duty.loadCurrent })
    return {
      code: 'battery-gas',
      severity: 'note',
      path: 'load.chemistry',
      what: 'Once the battery is full the whole current makes hydrogen, which a spark sets off.',
      why: 'Water is split at the plates as soon as they are charged; hydrogen gathers under any lid or ceiling and burns from 4 % in air on.',
      figures: `Up to ${formatSi(duty.loadCurrent, 'A')} through ${load.cells} cells: ${formatNumber(airflow, 2)} m³/h of air, openings of ${formatNumber(opening, 2)} cm² below and above.`,
      remedies: [
        triable(
          'Divert the current of the full battery into a dump load: little gas is left then.',
          dumpAdded(chain),
        ),
        'Give the battery’s box an opening low and one high to the outside, no flame, switch or fuse above it, and never close it tight.',
        batteryCaution,
      ],
    }
  },
}
