/** Concern: the goal names no wind, or the machine falls short of it. */
import { formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { largerRotor } from '../ladder/blade.ts'
import { lowerGoal } from '../ladder/goal.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { strongerGrade } from '../ladder/magnet.ts'
import { fewerTurns, moreTurns } from '../ladder/turns.ts'
import { tellingWind } from '../telling-wind.ts'
import type { ConcernRule } from './concern.ts'

/** Share of the goal below which the machine falls short of it: common practice, no source. */
export const goalShare = 0.9

export const fallsShort = (power: number, goal: number): boolean => power < goalShare * goal

export const goalWind: ConcernRule = {
  code: 'goal-wind',
  title: 'The goal names no wind, or is not reached',
  basis:
    'A wanted power must name its wind; the power computed in that wind should reach nine tenths of it (common practice, no source). A note without a wind, a warning where it falls short; a warning where the wind lies above the storm wind of the site, up to which the machine is computed.',
  measure: (chain) => {
    const { power_W } = chain.machine.design.purpose
    const { kind, row } = tellingWind(chain)
    return power_W === undefined || kind !== 'wanted'
      ? undefined
      : {
          name: 'power in the wind of the goal',
          value: row.watts.useful,
          limit: goalShare * nominal(power_W),
          unit: 'W',
          sound: 'above',
        }
  },
  answeredBy:
    'Volts and amps into the load with the wind logged beside them, in the wind that the goal names.',
  judge: (chain) => {
    const { machine, rows } = chain
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
    const { kind, row } = tellingWind(chain)
    const wind = nominal(atWind_m_per_s)
    if (kind === 'beyond the storm')
      return {
        code: 'goal-wind',
        severity: 'warning',
        path: 'purpose.atWind_m_per_s',
        what: 'The goal names a wind above the storm wind of the site: the machine was not computed there.',
        why: 'The storm wind is the strongest that the site is said to have; a power in more than that is never met, and the machine must be slowed or stopped well below it.',
        figures: `${formatSi(goal, 'W')} wanted in ${formatSi(wind, 'm_per_s')}; storm wind ${formatSi(machine.site.stormWind, 'm_per_s')}; what is told of one wind is of ${formatSi(row.wind, 'm_per_s')}, with ${formatSi(row.watts.useful, 'W')}.`,
        remedies: [
          'Name a wind that blows often: the yearly mean, or up to twice that.',
          'If the site knows such winds, raise the storm wind: everything that must hold is judged there.',
        ],
      }
    if (!fallsShort(row.watts.useful, goal)) return undefined
    return {
      code: 'goal-wind',
      severity: 'warning',
      path: 'purpose.power_W',
      what: 'The machine falls short of its goal.',
      why: 'What arrives is what the blades take from the wind, less friction, copper, diodes and cable.',
      figures: `${formatSi(goal, 'W')} wanted in ${formatSi(wind, 'm_per_s')}; computed ${formatSi(row.watts.useful, 'W')} there, of ${formatSi(row.available, 'W')} in the wind through the swept area.`,
      remedies: [
        triable(
          'A larger rotor: the power goes with the square of its diameter.',
          largerRotor(machine.design),
        ),
        triable(
          'A generator that lets the blades run faster in that wind: fewer turns of thicker wire.',
          fewerTurns(machine.design),
        ),
        triable('Or one that loads them earlier: more turns of thinner wire.', moreTurns(machine.design)),
        ...whereTriable('Or one of stronger magnets.', strongerGrade(machine.design)),
        triable('Or a more modest goal.', lowerGoal(machine.design)),
      ],
    }
  },
}
