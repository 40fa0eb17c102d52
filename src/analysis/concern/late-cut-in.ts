/** Concern: current begins only in winds stronger than the site has most of the time. */
import { windSpeedShare } from '../../physics/aerodynamics/weibull.ts'
import { formatSi } from '../../units/format.ts'
import { lowerBatteryVolts } from '../ladder/battery.ts'
import { starForDelta } from '../ladder/connection.ts'
import { narrowerGap } from '../ladder/gap.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { strongerGrade } from '../ladder/magnet.ts'
import { moreTurns } from '../ladder/turns.ts'
import type { ConcernRule } from './concern.ts'

/** Current begins too late, or never, for the mean wind at the hub. */
export const cutsInLate = (cutInWind: number, meanWind: number): boolean => !(cutInWind <= meanWind)

export const lateCutIn: ConcernRule = {
  code: 'late-cut-in',
  title: 'Current begins only in stronger wind than usual at the site',
  basis:
    'Wind in which current begins against the mean wind at the hub: common practice, no source. A warning in the outdoor class, a note in the others.',
  measure: ({ cutInWind, year, machine }) =>
    machine.load.kind === 'open' || !Number.isFinite(cutInWind)
      ? undefined
      : {
          name: 'wind in which current begins',
          value: cutInWind,
          limit: year.meanWind,
          unit: 'm_per_s',
          sound: 'below',
        },
  answeredBy: 'The speed at which current begins, and the wind logged with it, over some days.',
  judge: (chain) => {
    const { cutInWind, year, machine, generator } = chain
    if (machine.load.kind === 'open' || !cutsInLate(cutInWind, year.meanWind)) return undefined
    const never = !Number.isFinite(cutInWind)
    const idle = never ? 1 : windSpeedShare(year.distribution, cutInWind)
    return {
      code: 'late-cut-in',
      severity: machine.safetyClass === 'outdoor' ? 'warning' : 'note',
      path: 'stator.winding.turns',
      what: never
        ? 'No wind brings the machine to the speed at which current begins.'
        : `Current begins at ${formatSi(cutInWind, 'm_per_s')}, above the site’s mean wind.`,
      why: 'Until the peak of the line volts passes the load’s voltage and two diodes, nothing flows; weak wind blows most hours of the year.',
      figures: `${
        Number.isFinite(generator.cutIn)
          ? `Current begins at ${formatSi(generator.cutIn, 'rpm')}`
          : 'The winding raises no usable volts'
      }; mean wind at the hub ${formatSi(year.meanWind, 'm_per_s')}; no current in ${formatSi(idle, 'percent', 2)} of the hours.`,
      remedies: [
        triable(
          'More turns of thinner wire in the same room: the volts rise at the same speed.',
          moreTurns(machine.design),
        ),
        ...(machine.stator.connection === 'delta'
          ? [triable('Star in place of delta.', starForDelta(machine.design))]
          : []),
        triable('A smaller gap.', narrowerGap(machine.design)),
        ...whereTriable('Stronger magnets.', strongerGrade(machine.design)),
        ...whereTriable(
          'A lower battery voltage, if cable and load allow it.',
          lowerBatteryVolts(machine.design),
        ),
      ],
    }
  },
}
