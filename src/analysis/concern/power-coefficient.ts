/** Concern: the power coefficient is higher than small carved or printed blades reach. */
import { formatNumber } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

/** Above this a small home-made rotor should be measured before it is believed: common practice, no source. */
export const believablePowerCoefficient = 0.45

export const hardToBelieve = (powerCoefficient: number): boolean =>
  powerCoefficient > believablePowerCoefficient

export const powerCoefficient: ConcernRule = {
  code: 'power-coefficient',
  title: 'The blades look too good',
  basis:
    'Greatest power coefficient against 0.45 (common practice for small home-made blades, no source); no rotor exceeds 16/27 = 0.593 (Betz). A warning for a table typed in, a note for computed blades.',
  measure: ({ rotor }) => ({
    name: 'greatest power coefficient',
    value: rotor.best.power,
    limit: believablePowerCoefficient,
    unit: '1',
    sound: 'below',
  }),
  answeredBy: 'Power, speed and wind of these blades under load, with the place and kind of the wind sensor.',
  judge: ({ rotor, machine }) => {
    if (!hardToBelieve(rotor.best.power)) return undefined
    const table = machine.blades.kind === 'table'
    return {
      code: 'power-coefficient',
      severity: table ? 'warning' : 'note',
      path: table ? 'blades.points' : 'blades',
      what: 'The blades take more from the wind than small home-made ones usually do.',
      why: 'Rough surfaces, blunt edges, wrong twist and low Reynolds numbers all cost power that a smooth drawing does not know of.',
      figures: `Power coefficient ${formatNumber(rotor.best.power, 2)} at a tip-speed ratio of ${formatNumber(rotor.best.tipSpeedRatio)}; usual at most ${formatNumber(believablePowerCoefficient, 2)}, limit of any rotor 0.593.`,
      remedies: [
        table
          ? 'Say where the table comes from, and whether it was measured under load, with which wind sensor.'
          : 'Count on a tenth to a third less until the blades are measured.',
        'Check that the swept area is the real one: for a rotor with an upright axis height times diameter.',
      ],
    }
  },
}
