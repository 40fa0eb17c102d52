/** Concern: a capacitor is made for fewer volts than it may see. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { capacitorFor } from '../ladder/part.ts'
import { fewerTurns } from '../ladder/turns.ts'
import { electricCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** Most volts in use over those on the label: common practice, no source. */
export const capacitorShare = 0.8

const mostVolts = ({ rows, runaway }: ChainView): number =>
  rows.reduce((volts, { loadVoltage }) => Math.max(volts, loadVoltage), runaway.directVoltage)

export const capacitorVoltage: ConcernRule = {
  code: 'capacitor-voltage',
  title: 'The capacitor is made for fewer volts than it may see',
  basis: `Volts on its label against the open circuit’s at runaway in the storm, for what draws on it may be disconnected. More than the label: blocks the outdoor class, a warning in the others. More than ${capacitorShare} of it: a note (common practice, no source).`,
  measure: (chain) => {
    const { load } = chain.machine
    return load.kind === 'capacitor'
      ? {
          name: 'volts at the capacitor',
          value: mostVolts(chain),
          limit: capacitorShare * load.ratedVoltage,
          unit: 'V',
          sound: 'below',
        }
      : undefined
  },
  answeredBy: 'Open-circuit volts behind the bridge at a known speed, taken to the speed at runaway.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { load } = machine
    if (load.kind !== 'capacitor') return undefined
    const most = mostVolts(chain)
    if (!(most > capacitorShare * load.ratedVoltage)) return undefined
    const over = most > load.ratedVoltage
    return {
      code: 'capacitor-voltage',
      severity: over ? severityFor(chain, ['outdoor']) : 'note',
      path: 'load.ratedVoltage_V',
      what: over
        ? 'At runaway the capacitor sees more volts than it is made for, and may burst.'
        : 'At runaway the capacitor comes near the volts that it is made for.',
      why: 'Once charged it draws no current and brakes nothing: the rotor runs as without load, and the capacitor takes the peak of its volts. It keeps them after the rotor has stopped.',
      figures: `Up to ${formatSi(most, 'V')} at ${formatSi(runaway.speed, 'rpm')}; made for ${formatSi(load.ratedVoltage, 'V')}, stored then ${formatNumber(0.5 * load.capacitance * most ** 2)} J.`,
      remedies: [
        triable(
          `Take capacitors for ${formatSi(most / capacitorShare, 'V', 2)} or more; in series only with resistors that share the volts.`,
          capacitorFor(machine.design, most / capacitorShare),
        ),
        triable('Fewer turns raise fewer volts.', fewerTurns(machine.design)),
        'Or load it with something that limits its volts by itself, with the wind at its strongest.',
        'Discharge it through a resistor and prove it with a meter before touching it.',
        electricCaution,
      ],
    }
  },
}
