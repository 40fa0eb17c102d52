/** The winds that a machine is put through in time: gusts, a rise that stays, a steady storm, a logged wind. */
import type { Machine } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import {
  coherentGust,
  operatingGust,
  operatingGusts,
  turbulenceScale,
  windBeforeGust,
} from '../physics/aerodynamics/gust.ts'
import type { WindSeries } from './wind-series.ts'

export const stormWindKinds = ['operating gust', 'coherent gust', 'steady storm', 'logged wind'] as const
export type StormWindKind = (typeof stormWindKinds)[number]

export interface StormWind {
  readonly kind: StormWindKind
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
  const { factor, duration } = operatingGusts['once a year']
  const scale = turbulenceScale(site.hubHeight)
  const { wind, size } = windBeforeGust({ top, diameter: 2 * blades.radius, scale, factor })
  return {
    kind,
    words: 'the gust that the rules for small turbines prescribe',
    at: (time) => operatingGust({ wind, size, duration }, time - lead),
    top,
    // after a third of it the dip is over
    rise: lead + duration / 3,
    duration: lead + duration + tail,
  }
}

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
