/** The winds that a machine is put through in time: gusts, a rise that stays, a steady storm, a logged wind. */
import type { Machine } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import {
  coherentGust,
  gustTop,
  operatingGust,
  operatingGustSize,
  operatingGusts,
  turbulenceScale,
  windBeforeGust,
} from '../physics/aerodynamics/gust.ts'
import { normalTurbulenceIntensity } from '../physics/aerodynamics/turbulence.ts'
import type { WindSeries } from './wind-series.ts'

export const stormWindKinds = [
  'operating gust',
  'extreme gust',
  'coherent gust',
  'steady storm',
  'logged wind',
] as const
export type StormWindKind = (typeof stormWindKinds)[number]

export interface StormWind {
  readonly kind: StormWindKind | 'rising wind' | 'steady wind'
  readonly words: string
  /** Wind at a time since the beginning [m/s]. */
  readonly at: (time: number) => number
  /** Highest of it [m/s]. */
  readonly top: number
  /** Time at which it begins to rise above what it was: the worst moment for something to fail [s]. */
  readonly rise: number
  /** Seconds until it says nothing new [s]. */
  readonly duration: number
}

/** Steady before the gust, so that the machine is seen at work first [s]. */
const lead = 5
/** After it, so that what comes of it is seen [s]. */
const tail = 44.5

/** The rise of the rules' coherent gust [m/s] and how long it takes [s]. */
const coherentRise = 15
const coherentDuration = 10

/** Wind of the given kind whose highest value is `top`. */
export function stormWind(
  { blades, site }: Pick<Machine, 'blades' | 'site'>,
  kind: Exclude<StormWindKind, 'logged wind'>,
  top: number = site.stormWind,
): StormWind {
  if (kind === 'steady storm')
    return {
      kind,
      words: `a steady storm`,
      at: () => top,
      top,
      rise: lead,
      duration: 60,
    }
  if (kind === 'coherent gust') {
    const rise = Math.min(coherentRise, top)
    const gust = { wind: top - rise, rise, duration: coherentDuration }
    return {
      kind,
      words: 'a wind that rises within ten seconds and stays',
      at: (time) => coherentGust(gust, time - lead),
      top,
      rise: lead,
      duration: 60,
    }
  }
  const rarity = kind === 'extreme gust' ? 'once in 50 years' : 'once a year'
  const scale = turbulenceScale(site.hubHeight)
  const { factor } = operatingGusts[rarity]
  return gustOf(kind, rarity, windBeforeGust({ top, diameter: 2 * blades.radius, scale, factor }))
}

const gustWords = {
  'once a year': 'the gust that the rules for small turbines prescribe',
  'once in 50 years': 'the rare gust that the rules for small turbines prescribe for once in fifty years',
} as const

const gustOf = (
  kind: 'operating gust' | 'extreme gust',
  rarity: keyof typeof operatingGusts,
  { wind, size }: { readonly wind: number; readonly size: number },
): StormWind => {
  const { duration } = operatingGusts[rarity]
  return {
    kind,
    words: gustWords[rarity],
    at: (time) => operatingGust({ wind, size, duration }, time - lead),
    top: wind + gustTop * size,
    // after a third of it the dip is over
    rise: lead + duration / 3,
    duration: lead + duration + tail,
  }
}

/** The gust of once a year that comes upon a machine at work in a wind [m/s]; never above the site's storm. */
export function gustAbout({ blades, site }: Pick<Machine, 'blades' | 'site'>, wind: number): StormWind {
  const size = operatingGustSize({
    deviation: normalTurbulenceIntensity(wind) * wind,
    diameter: 2 * blades.radius,
    scale: turbulenceScale(site.hubHeight),
    factor: operatingGusts['once a year'].factor,
  })
  const room = Math.max(0, site.stormWind - wind) / gustTop
  return gustOf('operating gust', 'once a year', { wind, size: Math.min(size, room) })
}

/** How fast a wind that is to start the machine rises [m/s²]: as a breeze comes up, a guess, no source. */
const breezeRise = 0.05
/** In the last of it, so that what comes of it is seen [s]. */
const breezeTail = 240

/** From calm evenly up to a wind, then steady. */
export function risingWind(top: number): StormWind {
  return {
    kind: 'rising wind',
    words: 'a breeze that comes up from calm, half a metre per second in ten seconds',
    at: (time) => Math.min(breezeRise * Math.max(time, 0), top),
    top,
    rise: 0,
    duration: top / breezeRise + breezeTail,
  }
}

export const steadyWind = (wind: number): StormWind => ({
  kind: 'steady wind',
  words: 'a steady wind',
  at: () => wind,
  top: wind,
  rise: lead,
  duration: 60,
})

/** A logged wind from its first reading on. */
export function loggedWind({ times, winds }: WindSeries): StormWind {
  const first = times[0]!
  const between = piecewiseLinear(
    times.map((time) => time - first),
    winds,
  )
  let top = 0
  let fastest = 0
  for (let k = 0; k < winds.length; k++)
    if (winds[k]! > top) {
      top = winds[k]!
      fastest = times[k]! - first
    }
  return {
    kind: 'logged wind',
    words: 'the wind as it was logged',
    at: between,
    top,
    rise: Math.max(0, fastest - 2),
    duration: times[times.length - 1]! - first,
  }
}
