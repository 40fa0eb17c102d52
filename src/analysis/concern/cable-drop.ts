/** Concern: the cable takes too much of the volts, or gets hot. */
import { formatSi } from '../../units/format.ts'
import { cableAmpacity, leastCableSize } from '../cable-ampacity.ts'
import { workingDuty } from '../electric-duty.ts'
import { higherSystemVolts } from '../ladder/battery.ts'
import { shorterCable, thickerCable } from '../ladder/cable.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { tellingWind } from '../telling-wind.ts'
import { electricCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Drop over the system's volts that is usual at most: common practice, no source. */
export const dropLimit = 0.05

export const dropTooHigh = (share: number): boolean => share > dropLimit

/** Volts lost in the wind that is told, and the most amps of a conductor; undefined where no current flows. */
function dropOf(chain: ChainView) {
  const { machine, rows } = chain
  const duty = workingDuty(chain)
  const told = tellingWind(chain)
  const strongest = rowOfMost(rows, ({ dcCurrent }) => dcCurrent)
  const row = told.kind === 'wanted' && told.row.dcCurrent > 0 ? told.row : strongest
  if (row === undefined || duty === undefined || !(row.dcCurrent > 0) || !(row.loadVoltage > 0))
    return undefined
  // a resistor in the line is counted with the cable's watts, but no thicker cable helps against it
  const drop = Math.max(0, row.watts.cable / row.dcCurrent - machine.cable.seriesResistance * row.dcCurrent)
  return {
    row,
    drop,
    share: drop / row.loadVoltage,
    carried: machine.cable.place === 'before bridge' ? duty.lineCurrent : duty.directCurrent,
    ampacity: cableAmpacity(machine.cable.area),
  }
}

export const cableDrop: ConcernRule = {
  code: 'cable-drop',
  title: 'The cable takes too much, or gets hot',
  basis:
    'Loss in the cable over the current, as a share of the load’s volts, in just the wind of the stated goal, or where none is stated, none flows there or it lies above the storm, in the wind of the greatest current: above 5 % a warning (common practice, no source). The greatest current of a conductor against what its cross-section carries in conduit, three loaded conductors with PVC insulation in air at 30 °C (IEC 60364-5-52 as transcribed; the cautious case, the national code decides): more blocks the outdoor class, where nobody stands by when it gets hot, and is a warning in the others.',
  measure: (chain) => {
    const found = dropOf(chain)
    if (found === undefined) return undefined
    const { share, carried, ampacity } = found
    return carried > ampacity
      ? { name: 'amps in a conductor', value: carried, limit: ampacity, unit: 'A', sound: 'below' }
      : {
          name: 'drop over the load’s volts',
          value: share,
          limit: dropLimit,
          unit: 'percent',
          sound: 'below',
        }
  },
  answeredBy: 'Volts at both ends of the cable and amps through it, read at once under full load.',
  judge: (chain) => {
    const { machine, year } = chain
    const found = dropOf(chain)
    if (found === undefined) return undefined
    const { row, drop, share, carried, ampacity } = found
    const hot = carried > ampacity
    if (!dropTooHigh(share) && !hot) return undefined
    const wanted = Math.max(
      machine.cable.area * (share / dropLimit),
      hot ? (leastCableSize(carried) ?? 0) * 1e-6 : 0,
    )
    const delivered = year.ledger.parts.useful + year.ledger.parts.cable
    const yearly = delivered > 0 ? year.ledger.parts.cable / delivered : 0
    return {
      code: 'cable-drop',
      severity: hot ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'cable',
      what: hot
        ? 'The cable carries so much current that it gets hot.'
        : 'The cable takes a large share of the volts.',
      why: 'The current goes there and back, so the whole length counts twice; what is lost in the cable also moves the speed at which blades and generator agree.',
      figures: `${formatSi(row.dcCurrent, 'A')} in ${formatSi(row.wind, 'm_per_s')} through ${formatSi(machine.cable.length, 'm')} of ${formatSi(machine.cable.area, 'mm2')}: ${formatSi(drop, 'V')}, ${formatSi(share, 'percent')} of ${formatSi(row.loadVoltage, 'V')} (limit 5 %). At most ${formatSi(carried, 'A')} in a conductor that carries ${formatSi(ampacity, 'A', 2)} in conduit. Over the year ${formatSi(yearly, 'percent', 2)} of what would arrive.`,
      remedies: [
        triable(`Take about ${formatSi(wanted, 'mm2', 2)} per conductor.`, thickerCable(machine.design)),
        ...whereTriable(
          'Raise the system’s voltage: at twice the volts the same cable loses a quarter.',
          higherSystemVolts(machine.design),
        ),
        triable('Shorten the route: bring the battery nearer.', shorterCable(machine.design)),
        `Put a fuse at the battery’s end of the cable. ${electricCaution}`,
      ],
    }
  },
}
