/** Checks of a year's energy: its parts, its months, its bounds, its winds. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { windSpeedShare } from '../physics/aerodynamics/weibull.ts'
import { histogramMoment } from '../physics/aerodynamics/wind-histogram.ts'
import { computeDesign } from './compute.ts'
import { siteWind } from './site-wind.ts'
import { wattColumns } from './watts.ts'
import { energyInWinds, year } from './year.ts'

function chainWith(name: 'drum', change: (document: ReturnType<typeof fixedDocument>) => void) {
  const document = fixedDocument(name)
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}

const flat = Array.from({ length: 12 }, () => 5)
const wavy = [7, 6.5, 6, 5, 4, 3.5, 3, 3.2, 4, 5, 6, 6.8]
const chain = chainWith('drum', (document) => {
  document.site.monthlyMean_m_per_s = wavy
})
const histogramOf = (scale: number, shape: number) =>
  Array.from(
    { length: 80 },
    (_, i) =>
      1e4 * (windSpeedShare({ scale, shape }, (i + 1) * 0.5) - windSpeedShare({ scale, shape }, i * 0.5)),
  )
type Site = Partial<
  Record<
    | 'monthlyMean_m_per_s'
    | 'windHistogram'
    | 'turbulenceIntensity'
    | 'averaging_s'
    | 'meanWind_m_per_s'
    | 'shearExponent',
    unknown
  >
>
const withSite = (change: (site: Site) => void) => chainWith('drum', (document) => change(document.site))

describe('law: the year’s ledger closes', () => {
  const { ledger } = chain.year
  test('its parts sum to what the blades took; taken, held and passed by sum to what the wind held', () => {
    const parts = wattColumns.reduce((sum, column) => sum + ledger.parts[column], 0)
    expect(parts / ledger.shaft).toBeCloseTo(1, 12)
    expect((ledger.shaft + ledger.held + ledger.pastBlades) / ledger.available).toBeCloseTo(1, 12)
    expect(ledger.held).toBeGreaterThan(0)
    expect(ledger.pastBlades).toBeGreaterThan(0)
    expect(ledger.shaft + ledger.held).toBeLessThan((16 / 27) * ledger.available)
  })
  test('nothing is held back where no limiter acts', () => {
    const free = chainWith('drum', (document) => {
      document.protection = { mechanical: 'none' }
    })
    expect(free.year.ledger.held).toBe(0)
  })
})

describe('law: months', () => {
  test('not known where the site names none', () => expect(withSite(() => {}).year.months).toBeUndefined())
  test('they sum to the year, the windiest brings most, bounds hold the middle', () => {
    const months = chain.year.months!
    expect(months.reduce((sum, { energy }) => sum + energy, 0) / chain.year.energy).toBeCloseTo(1, 10)
    expect(months.reduce((sum, { days }) => sum + days, 0)).toBe(365)
    const perDay = months.map(({ energy, days }) => energy / days)
    expect(perDay.indexOf(Math.max(...perDay))).toBe(0)
    expect(perDay.indexOf(Math.min(...perDay))).toBe(6)
    for (const { low, energy, high } of months) {
      expect(low).toBeLessThanOrEqual(energy)
      expect(high).toBeGreaterThanOrEqual(energy)
    }
  })
  test('twelve months alike share the year by their days, whatever mean they name', () => {
    const { months, energy } = withSite((site) => {
      site.monthlyMean_m_per_s = flat
    }).year
    for (const month of months!) expect(month.energy / ((energy * month.days) / 365)).toBeCloseTo(1, 6)
  })
  test('a better known wind narrows the bounds, weather is left', () => {
    const known = withSite((site) => {
      site.meanWind_m_per_s = 4.2
      site.shearExponent = 0.2
    }).year.range
    const { range } = chain.year
    expect(known.high - known.low).toBeLessThan(0.6 * (range.high - range.low))
    expect(known.low).toBeLessThan(known.energy)
  })
})

describe('agrees: a histogram of the Weibull distribution and the distribution itself', () => {
  test('year, ledger and gusts', () => {
    const plain = withSite((site) => {
      site.turbulenceIntensity = 0.2
    }).year
    const counted = withSite((site) => {
      site.turbulenceIntensity = 0.2
      site.windHistogram = { count: histogramOf(4.739, 2) }
    }).year
    expect(counted.wind.kind).toBe('histogram')
    for (const pick of [
      ({ energy }: typeof plain) => energy,
      ({ energyInGusts }: typeof plain) => energyInGusts!,
      ({ ledger }: typeof plain) => ledger.available,
      ({ patternFactor }: typeof plain) => patternFactor,
      ({ range }: typeof plain) => range.high,
    ])
      expect(pick(counted) / pick(plain)).toBeCloseTo(1, 1.7)
  })
  test('a year by its curve with the same winds is the chain’s own', () =>
    expect(energyInWinds(chain, chain.year.wind) / chain.year.energy).toBeCloseTo(1, 12))
})

describe('law: winds of the site', () => {
  test('a histogram is stretched to the mean at the hub', () => {
    const { machine } = withSite((site) => {
      site.windHistogram = { binWidth_m_per_s: 1, count: [1, 5, 9, 4, 2, 1] }
    })
    const wind = siteWind(machine)
    if (wind.kind !== 'histogram') throw new Error('not the histogram')
    expect(histogramMoment(wind, 1)).toBeCloseTo(
      year(machine, { rising: chain.rows, falling: chain.fallingRows, rowAt: chain.rowAt }).meanWind,
      10,
    )
  })
  test('fast readings hold their gusts already; without turbulence nothing is said of them', () => {
    const fast = withSite((site) => {
      site.turbulenceIntensity = 0.2
      site.averaging_s = 1
    })
    expect(fast.year.energyInGusts).toBeUndefined()
    expect(chain.year.energyInGusts).toBeUndefined()
  })
  test('months or counts all zero are refused', () => {
    expect(() =>
      withSite((site) => {
        site.windHistogram = { count: [0, 0, 0] }
      }),
    ).toThrow()
    expect(() =>
      withSite((site) => {
        site.monthlyMean_m_per_s = flat.map(() => 0)
      }),
    ).toThrow()
  })
})
