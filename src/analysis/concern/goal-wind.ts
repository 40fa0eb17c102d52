/** Concern: the goal names no wind, or the machine falls short of it. */
import { formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ConcernRule } from './concern.ts'

/** Share of the goal below which the machine falls short of it: common practice, no source. */
export const goalShare = 0.9

export const fallsShort = (power: number, goal: number): boolean => power < goalShare * goal

export const goalWind: ConcernRule = {
  code: 'goal-wind',
  title: 'The goal names no wind, or is not reached',
  basis:
    'A wanted power must name its wind; the power computed in that wind should reach nine tenths of it (common practice, no source). A note without a wind, a warning where it falls short.',
  judge: ({ machine, rows }) => {
    const { power_W, atWind_m_per_s } = machine.design.purpose
    if (power_W === undefined) return undefined
    const goal = nominal(power_W)
    if (atWind_m_per_s === undefined)
      return {
        code: 'goal-wind',
        severity: 'note',
        path: 'purpose.atWind_m_per_s',
        what: 'The goal names a power but no wind.',
        why: 'The same machine gives eight times the power in twice the wind: a power without its wind says nothing.',
        figures: `${formatSi(goal, 'W')} wanted; the machine gives ${formatSi(
          rows.reduce((most, { watts }) => Math.max(most, watts.useful), 0),
          'W',
        )} at its best.`,
        remedies: [
          'Say in which wind the power is wanted.',
          'Better still, say how much energy a month must bring.',
        ],
      }
    const wind = nominal(atWind_m_per_s)
    const row = rows.reduce<(typeof rows)[number] | undefined>(
      (best, each) =>
        best === undefined || Math.abs(each.wind - wind) < Math.abs(best.wind - wind) ? each : best,
      undefined,
    )
    if (row === undefined || !fallsShort(row.watts.useful, goal)) return undefined
    return {
      code: 'goal-wind',
      severity: 'warning',
      path: 'purpose.power_W',
      what: 'The machine falls short of its goal.',
      why: 'What arrives is what the blades take from the wind, less friction, copper, diodes and cable.',
      figures: `${formatSi(goal, 'W')} wanted in ${formatSi(wind, 'm_per_s')}; computed ${formatSi(row.watts.useful, 'W')} there, of ${formatSi(row.available, 'W')} in the wind through the swept area.`,
      remedies: [
        'A larger rotor: the power goes with the square of its diameter.',
        'A generator that lets the blades run at their best speed in that wind; look at the losses for the largest.',
        'Or a more modest goal.',
      ],
    }
  },
}
