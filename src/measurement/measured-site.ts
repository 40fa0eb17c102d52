/** The fields of a design's site that a wind record fills in. */
import type { Design } from '../machine/design.ts'
import type { WindStatistics } from './wind-statistics.ts'

type SiteFields = Pick<
  Design['site'],
  | 'meanWind_m_per_s'
  | 'weibullShape'
  | 'averaging_s'
  | 'turbulenceIntensity'
  | 'monthlyMean_m_per_s'
  | 'windHistogram'
  | 'airDensity_kg_per_m3'
>

const rounded = (value: number, digits = 4): number => Number(value.toPrecision(digits))

/** Deviation of yearly means about the mean of many years, as a share of it (interannual-wind2012). */
const yearToYear = 0.06
/** Half-width at 90 % over one standard deviation of a normal distribution. */
const ninety = 1.645

const between = (value: number, [least, most]: readonly [number, number]) =>
  Math.min(Math.max(value, least), most)

/** How far the missing share of a year may move its mean, over that share: common practice, no source. */
const guessOfMissing = 0.5

/** Days of readings that make a measured year: common practice, no source. */
const leastYear = 0.9 * 365

/**
 * As a design carries them. A record of under a year says nothing of the seasons it missed: its mean is then a guess,
 * with a spread of half of what is missing; a whole year's differs from the many years' mean by 6 % (one deviation).
 */
export function measuredSite(statistics: WindStatistics): Partial<SiteFields> {
  const { mean, weibull, averaging, histogram, monthlyMean, turbulenceIntensity, airDensity, readings } =
    statistics
  const days = (readings * averaging) / 86_400
  const years = days / 365
  const missing = Math.max(0, 1 - years)
  const whole = days >= leastYear
  const share = Math.hypot((ninety * yearToYear) / Math.sqrt(Math.max(1, years)), guessOfMissing * missing)
  const counted = Array.from(histogram.count)
  const folded = counted.slice(0, 400)
  folded[folded.length - 1]! += counted.slice(400).reduce((sum, each) => sum + each, 0)
  return {
    meanWind_m_per_s: {
      value: rounded(between(mean, [0.1, 25])),
      spread: rounded(share * mean, 2),
      known: whole ? 'measured' : 'guessed',
    },
    ...(weibull === undefined ? {} : { weibullShape: rounded(between(weibull.shape, [1, 6])) }),
    ...(averaging >= 0.01 && averaging <= 86_400 ? { averaging_s: averaging } : {}),
    ...(turbulenceIntensity === undefined
      ? {}
      : { turbulenceIntensity: rounded(between(turbulenceIntensity, [0, 0.6]), 3) }),
    ...(monthlyMean.every((each) => each !== undefined)
      ? { monthlyMean_m_per_s: monthlyMean.map((each) => rounded(each!)) }
      : {}),
    ...(folded.length >= 2 ? { windHistogram: { binWidth_m_per_s: histogram.binWidth, count: folded } } : {}),
    ...(airDensity === undefined ? {} : { airDensity_kg_per_m3: rounded(between(airDensity, [0.5, 1.6])) }),
  }
}
