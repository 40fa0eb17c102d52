/** Concern: the phases, or the parallel branches of a phase, are unlike. */
import { formatSi } from '../../units/format.ts'
import { moreInSeries } from '../ladder/connection.ts'
import { triable } from '../ladder/ladder.ts'
import { phasesCloser } from '../ladder/winding.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Spread of the phases' volts over their mean from which it is told: common practice, no source. */
export const phaseSpreadLimit = 0.1

/** Unlike volts of parallel branches over a branch's: common practice, no source. */
export const branchLimit = 0.03

/** The same from which the winding is not fit for the open: common practice, no source. */
export const branchBlock = 0.2

/** Greatest less least over the mean; 0 for one value or none above zero. */
export function relativeSpread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return mean > 0 ? (Math.max(...values) - Math.min(...values)) / mean : 0
}

const unlikeness = ({ phases }: ChainView['voltage']) => ({
  spread: relativeSpread(phases.map(({ rms }) => rms)),
  branch: phases.reduce((most, { branchMismatch }) => Math.max(most, branchMismatch), 0),
})

export const phaseImbalance: ConcernRule = {
  code: 'phase-imbalance',
  title: 'Phases or parallel branches are unlike',
  basis:
    'Spread of the phases’ volts over their mean above 10 %: a note; parallel branches of a phase that differ by more than 3 %: a warning, for they drive current through each other; by more than 20 %: blocks the outdoor class, a warning in the others. Common practice, no source. The watts are those of all harmonics through the branches’ own resistance and inductance, copper cold, at the highest working speed.',
  measure: ({ voltage }) => {
    const { spread, branch } = unlikeness(voltage)
    return branch > branchLimit
      ? {
          name: 'unlike volts of branches',
          value: branch,
          limit: branchLimit,
          unit: 'percent',
          sound: 'below',
        }
      : {
          name: 'spread of the phases’ volts',
          value: spread,
          limit: phaseSpreadLimit,
          unit: 'percent',
          sound: 'below',
        }
  },
  answeredBy: 'Alternating volts of every phase, and of every branch not yet joined, all at one speed.',
  judge: (chain) => {
    const { voltage } = chain
    const { design } = chain.machine
    const { spread, branch } = unlikeness(voltage)
    const unlikeBranches = branch > branchLimit
    if (!(spread > phaseSpreadLimit) && !unlikeBranches) return undefined
    const fastest = rowOfMost(chain.rows, ({ speed }) => speed)
    const speed = fastest !== undefined && fastest.speed > 0 ? fastest.speed : chain.runaway.speed
    const per100 = (100 * 2 * Math.PI) / 60
    return {
      code: 'phase-imbalance',
      severity: branch > branchBlock ? severityFor(chain, ['outdoor']) : unlikeBranches ? 'warning' : 'note',
      path: 'stator.winding',
      what: unlikeBranches
        ? 'Parallel branches of a phase are unlike and drive current through each other.'
        : 'The phases raise unlike volts.',
      why: unlikeBranches
        ? 'Branches joined at both ends must agree in size and angle at every moment; what differs drives a current that no load sees.'
        : 'The farther a phase lies from the magnets the less it collects; the strongest carries the current first and gets hottest.',
      figures: `Phases ${voltage.phases.map(({ rms }) => formatSi(rms * per100, 'V')).join(', ')} rms per 100 rpm: ${formatSi(spread, 'percent', 2)} apart (limit 10 %). Branches differ by ${formatSi(branch, 'percent', 2)} (limit 3 %)${
        unlikeBranches
          ? ` and burn ${formatSi(chain.circulating.branches(speed), 'W')} among themselves at ${formatSi(speed, 'rpm')}, load or no load`
          : ''
      }.`,
      remedies: [
        unlikeBranches
          ? triable(
              'Put the coils in series, or group them so that every branch holds coils of the same electrical places.',
              moreInSeries(design),
            )
          : 'Give the farther phases a few turns more, in proportion to the volts they lack.',
        triable(
          'Bring the layers closer together: flatter bundles, no spacers.',
          unlikeBranches ? [] : phasesCloser(design),
        ),
        'Do not close such a winding as a delta.',
      ],
    }
  },
}
