/** Concern: the battery is charged in frost that it does not bear. */
import { batteryChemistries } from '../../data/battery.ts'
import { formatSi } from '../../units/format.ts'
import { chemistryFor } from '../ladder/battery.ts'
import { triable } from '../ladder/ladder.ts'
import { batteryCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** How far a winter night lies below the mean air of the site [K]: common practice, no source. */
export const winterAllowance = 15

export type FrostVerdict = 'warm enough' | 'on winter nights' | 'most of the time'

export function frostVerdict(ambient: number, leastCharging: number): FrostVerdict {
  if (ambient < leastCharging) return 'most of the time'
  return ambient - winterAllowance < leastCharging ? 'on winter nights' : 'warm enough'
}

export const batteryFrost: ConcernRule = {
  code: 'battery-frost',
  title: 'The battery would be charged in frost',
  basis: `Least charging temperature of the chemistry against the site’s air, and against ${winterAllowance} K below it for winter nights (common practice, no source). Colder on average blocks the outdoor class; winter nights are a warning. Asked outdoors only for winter nights.`,
  measure: ({ machine: { load, site, safetyClass } }) => {
    const cell =
      load.kind === 'battery' ? batteryChemistries.find(({ name }) => name === load.chemistry) : undefined
    return (
      cell && {
        name: safetyClass === 'outdoor' ? 'air on winter nights' : 'mean air',
        value: site.ambient - (safetyClass === 'outdoor' ? winterAllowance : 0),
        limit: cell.chargeLeast_degC + 273.15,
        unit: 'degC',
        sound: 'above',
      }
    )
  },
  answeredBy: 'The lowest reading of a thermometer on the battery over a winter, where it stands.',
  judge: (chain) => {
    const { load, site, safetyClass, protection } = chain.machine
    if (load.kind !== 'battery') return undefined
    const cell = batteryChemistries.find(({ name }) => name === load.chemistry)
    if (cell === undefined) return undefined
    const least = cell.chargeLeast_degC + 273.15
    const verdict = frostVerdict(site.ambient, least)
    if (verdict === 'warm enough' || (verdict === 'on winter nights' && safetyClass !== 'outdoor'))
      return undefined
    return {
      code: 'battery-frost',
      severity: verdict === 'most of the time' ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'load.chemistry',
      what: `The ${load.chemistry} battery would be charged below its least temperature ${verdict}.`,
      why: 'Charging a frozen or too cold cell spoils it for good and can make it dangerous later; a protection circuit that cuts the charge instead takes the load off the rotor.',
      figures: `Charge above ${formatSi(least, 'degC', 2)} only; mean air ${formatSi(site.ambient, 'degC', 2)}, winter nights perhaps ${formatSi(site.ambient - winterAllowance, 'degC', 2)}.`,
      remedies: [
        'Keep the battery in a frost-free, ventilated place, with a thermometer on it.',
        protection.electrical === 'dump load'
          ? 'Let the controller send the power to the dump load while the battery is cold.'
          : 'Add a dump load that takes the power while the battery is cold; never leave the rotor without a load.',
        triable(
          'Or choose a chemistry that bears the cold.',
          chemistryFor(
            chain.machine.design,
            site.ambient - (safetyClass === 'outdoor' ? winterAllowance : 0) - 273.15,
          ),
        ),
        batteryCaution,
      ],
    }
  },
}
