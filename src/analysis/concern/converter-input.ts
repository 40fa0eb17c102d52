/** Concern: the converter's input bears fewer volts than the machine raises without load. */
import { formatSi } from '../../units/format.ts'
import { workingDuty } from '../electric-duty.ts'
import { triable } from '../ladder/ladder.ts'
import { converterForVolts } from '../ladder/part.ts'
import { fewerTurns } from '../ladder/turns.ts'
import { electricCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'

export const converterInput: ConcernRule = {
  code: 'converter-input',
  title: 'The converter bears fewer volts than the machine raises without load',
  basis:
    'Greatest volts at the converter’s input, from its sheet, against the open circuit’s at runaway in the storm: it sees them as soon as it stops drawing. Fewer: blocks the outdoor class, a warning in the others. Not said: a note.',
  measure: ({ machine: { converter }, runaway }) =>
    converter?.greatestInputVoltage === undefined
      ? undefined
      : {
          name: 'volts at the converter’s input without load',
          value: runaway.directVoltage,
          limit: converter.greatestInputVoltage,
          unit: 'V',
          sound: 'below',
        },
  answeredBy: 'Open-circuit volts behind the bridge at a known speed, taken to the speed at runaway.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { converter } = machine
    if (converter === undefined) return undefined
    const { greatestInputVoltage } = converter
    if (greatestInputVoltage !== undefined && greatestInputVoltage >= runaway.directVoltage) return undefined
    const duty = workingDuty(chain)
    return {
      code: 'converter-input',
      severity: greatestInputVoltage === undefined ? 'note' : severityFor(chain, ['outdoor']),
      path: 'converter.greatestInput_V',
      what:
        greatestInputVoltage === undefined
          ? 'The greatest volts that the converter’s input bears are not said.'
          : 'At runaway the converter’s input sees more volts than it bears.',
      why: 'A converter that stops, by a fault, a full battery or a blown fuse, draws nothing: the rotor runs up, and its volts stand on the input of the electronics that should hold it.',
      figures: `${formatSi(runaway.directVoltage, 'V')} at ${formatSi(runaway.speed, 'rpm')} without load${
        greatestInputVoltage === undefined ? '' : ` against ${formatSi(greatestInputVoltage, 'V')}`
      }${duty === undefined ? '' : `; in work up to ${formatSi(duty.directVoltage, 'V')}`}.`,
      remedies: [
        triable(
          `Take a converter for at least ${formatSi(runaway.directVoltage, 'V', 2)} at its input, or put a dump load before it that holds the volts below its limit by itself.`,
          converterForVolts(machine.design, runaway.directVoltage),
        ),
        triable('Fewer turns raise fewer volts.', fewerTurns(machine.design)),
        'Never count on a converter as the rotor’s only load: limit the speed without it.',
        electricCaution,
      ],
    }
  },
}
