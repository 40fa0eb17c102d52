/** Concern: the year's energy rests on a guessed wind. */
import { windDistribution, windSpeedShare } from '../../physics/aerodynamics/weibull.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { knownOf, nominal, spreadOf } from '../../units/quantity.ts'
import type { WindRow } from '../power-curve.ts'
import type { ConcernRule } from './concern.ts'

/** A yearly mean above this is rather a gust, or another unit [m/s]: common practice, no source. */
export const implausibleMean = 12

/** Half-width of a guessed mean where none is said, as a share: common practice, no source. */
export const guessedShare = 0.2

/** Power in the wind grows by this when its speed grows by `ratio`. */
export const windPowerRatio = (ratio: number): number => ratio ** 3

/** Mean of the useful power over a year's winds of this mean at the hub, each row standing for its half step [W]. */
export function meanUsefulPower(rows: readonly WindRow[], mean: number, shape: number): number {
  const distribution = windDistribution({ mean, shape })
  let below = 0
  let sum = 0
  for (let k = 0; k < rows.length; k++) {
    const next = rows[k + 1]
    const share = next === undefined ? 1 : windSpeedShare(distribution, (rows[k]!.wind + next.wind) / 2)
    sum += rows[k]!.watts.useful * (share - below)
    below = share
  }
  return sum
}

/** Share of its readings that a record should hold: common practice, no source. */
export const leastComplete = 0.9

/** What a record says against itself, in a sentence; undefined where nothing. */
export function recordDoubt(record: {
  readonly origin: string
  /** Share of the readings that are there; undefined where not said. */
  readonly complete: number | undefined
}): string | undefined {
  if (record.origin === 'roof')
    return 'The wind was read over a roof, which speeds it up here and stills it there.'
  if (record.origin === 'weather station') return 'The wind is that of a station elsewhere, not of the site.'
  if (record.origin === 'map') return 'The wind is read off a map, which knows no hedge and no house.'
  return record.complete !== undefined && record.complete < leastComplete
    ? 'Of the record of the wind too much is missing.'
    : undefined
}

export const windGuess: ConcernRule = {
  code: 'wind-guess',
  title: 'The year’s energy rests on a guess of the wind',
  basis:
    'Whether the mean wind is said to be measured; whether it is taken to another height by a guessed exponent; a mean above 12 m/s is taken for a slip of unit; a measured one counts as a guess where its record is of a roof, a station or a map, or holds less than 90 % of its readings (common practice, no source). Energy is recomputed with the mean at both ends of its spread, ± 20 % where none is said. A warning in the outdoor class, a note in the others.',
  measure: ({ machine }) => ({
    name: 'mean wind of a year',
    value: nominal(machine.design.site.meanWind_m_per_s),
    limit: implausibleMean,
    unit: 'm_per_s',
    sound: 'below',
  }),
  answeredBy:
    'Some months of wind logged at hub height beside a year’s record of a station near by; better still, enter the mean as measured.',
  judge: (chain) => {
    const { machine, rows } = chain
    const { site } = machine.design
    const known = knownOf(site.meanWind_m_per_s)
    const mean = nominal(site.meanWind_m_per_s)
    const moved = machine.site.hubHeight !== machine.site.measuredHeight
    const unit = mean > implausibleMean
    const { record } = site
    const complete =
      record?.complete_percent === undefined ? undefined : nominal(record.complete_percent) / 100
    const doubt = record === undefined ? undefined : recordDoubt({ origin: record.origin, complete })
    if (known === 'measured' && !unit && doubt === undefined) return undefined
    const spread = spreadOf(site.meanWind_m_per_s) || guessedShare * mean
    const { meanWind: atHub, energy } = chain.year
    const powerAt = (typed: number) =>
      meanUsefulPower(rows, (atHub * typed) / mean, machine.site.weibullShape)
    const power = powerAt(mean)
    const energyAt = (typed: number) => (power > 0 ? (energy * powerAt(typed)) / power : 0)
    const low = energyAt(Math.max(mean - spread, 0.1 * mean))
    const high = energyAt(mean + spread)
    return {
      code: 'wind-guess',
      severity: machine.safetyClass === 'outdoor' ? 'warning' : 'note',
      path: 'site.meanWind_m_per_s',
      what: unit
        ? `A yearly mean of ${formatNumber(mean)} m/s is hardly ever met: is it a gust, or km/h, mph or knots?`
        : (doubt ?? 'The mean wind is not measured at the site, so the year’s energy is a guess too.'),
      why: 'The power in the wind goes with the cube of its speed: twice the wind is eight times the power. A station’s or a map’s mean says little about a yard behind trees.',
      figures: `${formatSi(chain.year.energy, 'kWh', 2)} a year at ${formatNumber(mean)} m/s; ${formatSi(low, 'kWh', 2)} at ${formatNumber(Math.max(mean - spread, 0.1 * mean), 2)} m/s, ${formatSi(high, 'kWh', 2)} at ${formatNumber(mean + spread, 2)} m/s. The spread of speeds makes the wind hold ${formatNumber(chain.year.patternFactor)} times what the mean alone would.${
        moved
          ? ` Taken from ${formatSi(machine.site.measuredHeight, 'm')} to ${formatSi(machine.site.hubHeight, 'm')} with an exponent of ${formatNumber(machine.site.shearExponent, 2)}: ${formatSi(chain.year.meanWind, 'm_per_s')} at the hub.`
          : ''
      }${complete === undefined ? '' : ` The record holds ${formatSi(complete, 'percent', 2)} of its readings (wanted 90 %).`}`,
      remedies: [
        'Log the wind at hub height for some months, the anemometer clear of mast and rotor, and enter mean and shape as measured.',
        'Until then plan with the lower figure.',
        'Do not cube the mean, and do not multiply rated watts by the hours of the year.',
      ],
    }
  },
}
