/** Concern: the phases, or the parallel branches of a phase, are unlike. */
import { formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

/** Spread of the phases' volts over their mean from which it is told: common practice, no source. */
export const phaseSpreadLimit = 0.1

/** Unlike volts of parallel branches over a branch's: common practice, no source. */
export const branchLimit = 0.03

/** Greatest less least over the mean; 0 for one value or none above zero. */
export function relativeSpread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return mean > 0 ? (Math.max(...values) - Math.min(...values)) / mean : 0
}

export const phaseImbalance: ConcernRule = {
  code: 'phase-imbalance',
  title: 'Phases or parallel branches are unlike',
  basis:
    'Spread of the phases’ volts over their mean above 10 %: a note; parallel branches of a phase that differ by more than 3 %: a warning, for they drive current through each other. Common practice, no source.',
  judge: ({ voltage }) => {
    const spread = relativeSpread(voltage.phases.map(({ rms }) => rms))
    const branch = voltage.phases.reduce((most, { branchMismatch }) => Math.max(most, branchMismatch), 0)
    const unlikeBranches = branch > branchLimit
    if (!(spread > phaseSpreadLimit) && !unlikeBranches) return undefined
    const per100 = (100 * 2 * Math.PI) / 60
    return {
      code: 'phase-imbalance',
      severity: unlikeBranches ? 'warning' : 'note',
      path: 'stator.winding',
      what: unlikeBranches
        ? 'Parallel branches of a phase are unlike and drive current through each other.'
        : 'The phases raise unlike volts.',
      why: unlikeBranches
        ? 'Branches joined at both ends must agree in size and angle at every moment; what differs drives a current that no load sees.'
        : 'The farther a phase lies from the magnets the less it collects; the strongest carries the current first and gets hottest.',
      figures: `Phases ${voltage.phases.map(({ rms }) => formatSi(rms * per100, 'V')).join(', ')} rms per 100 rpm: ${formatSi(spread, 'percent', 2)} apart (limit 10 %). Branches differ by ${formatSi(branch, 'percent', 2)} (limit 3 %).`,
      remedies: [
        unlikeBranches
          ? 'Put the coils in series, or group them so that every branch holds coils of the same electrical places.'
          : 'Give the farther phases a few turns more, in proportion to the volts they lack.',
        'Bring the layers closer together: flatter bundles, no spacers.',
        'Do not close such a winding as a delta.',
      ],
    }
  },
}
