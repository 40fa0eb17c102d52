/** Winds that change within seconds: the gusts that the design rules for turbines reckon with. */
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import { smallTurbineTurbulence } from './turbulence.ts'

/** How rare a gust is: factor on the standard deviation [1] and how long the whole of it lasts [s]. */
export const operatingGusts = {
  'once a year': { factor: 4.8, duration: 10.5 },
  'once in 50 years': { factor: 6.4, duration: 14 },
} as const

/** Height up to which the size of the gusts grows [m], and its share of the height [1]. */
const scaleHeight = 30
const scaleShare = 0.7

/** Share of the gust's size by which the wind rises and dips. */
const swing = 0.37

/** Share of its size by which the gust's top lies above the wind before it. */
export const gustTop = 2 * swing

/**
 * Size of the gusts at a hub's height, along the wind.
 *
 *   Λ_1 = 0.7 z for z < 30 m, else Λ_1 = 21 m
 *
 * Holds: the classes of small turbines. Accuracy: the rule exactly.
 *
 * @param hubHeight    z    above the ground, > 0   [m]
 * @returns            Λ_1                          [m]
 * @throws RangeError  height not above zero
 * @source iec61400-2, turbulence scale parameter, from memory, not opened; 21 m also in burton2001, figure 5.1
 * @example turbulenceScale(10) // 7
 */
export function turbulenceScale(hubHeight: number): number {
  requirePositive('hubHeight', hubHeight, 'm')
  return scaleShare * Math.min(hubHeight, scaleHeight)
}

/**
 * Size of the extreme operating gust.
 *
 *   V_gust = β σ_1 / (1 + 0.1 D / Λ_1)
 *
 * Holds: a rotor that meets the gust as a whole. Accuracy: the rule exactly; real gusts come in all shapes.
 *
 * @param at.deviation  σ_1  of the wind within ten minutes, ≥ 0                     [m/s]
 * @param at.diameter   D    of the rotor, > 0                                       [m]
 * @param at.scale      Λ_1  turbulenceScale, > 0                                    [m]
 * @param at.factor     β    4.8 for a gust once a year, 6.4 once in 50 years; ≥ 0   [1]
 * @returns             V_gust                                                       [m/s]
 * @throws RangeError   a value out of its bounds
 * @source iecwind, routine GenEOG, where β is 3.3 and σ_1 that of large turbines; 6.4 in burton2001, figure 5.1; 4.8 from memory, not opened
 * @example operatingGustSize({ deviation: 3.9, diameter: 40, scale: 21, factor: 6.4 }) // 20.9664
 */
export function operatingGustSize(at: {
  readonly deviation: number
  readonly diameter: number
  readonly scale: number
  readonly factor: number
}): number {
  requireNotNegative('deviation', at.deviation, 'm/s')
  requirePositive('diameter', at.diameter, 'm')
  requirePositive('scale', at.scale, 'm')
  requireNotNegative('factor', at.factor)
  return (at.factor * at.deviation) / (1 + (0.1 * at.diameter) / at.scale)
}

/**
 * Wind in the extreme operating gust: a dip, a rise, a dip, and steady before and after.
 *
 *   v(t) = V − 0.37 V_gust sin(3π t/T) (1 − cos(2π t/T)),   0 ≤ t ≤ T
 *
 * The top, V + 0.74 V_gust, comes at T/2; never below calm.
 *
 * Holds: the shape that the rules prescribe. Accuracy: exactly that.
 *
 * @param gust.wind      V       before and after, ≥ 0       [m/s]
 * @param gust.size      V_gust  operatingGustSize, ≥ 0      [m/s]
 * @param gust.duration  T       > 0                         [s]
 * @param time           t       since its beginning         [s]
 * @returns              v                                   [m/s]
 * @throws RangeError    a value out of its bounds
 * @source iecwind, routine GenEOG
 * @example operatingGust({ wind: 25, size: 20.97, duration: 14 }, 7) // 40.52
 */
export function operatingGust(
  gust: { readonly wind: number; readonly size: number; readonly duration: number },
  time: number,
): number {
  const { wind: V, size, duration: T } = gust
  requireNotNegative('wind', V, 'm/s')
  requireNotNegative('size', size, 'm/s')
  requirePositive('duration', T, 's')
  requireFinite('time', time, 's')
  if (time <= 0 || time >= T) return V
  const x = time / T
  return Math.max(0, V - swing * size * Math.sin(3 * Math.PI * x) * (1 - Math.cos(2 * Math.PI * x)))
}

/**
 * Wind in the extreme coherent gust: a rise that stays.
 *
 *   v(t) = V + V_cg (1 − cos(π t/T)) / 2,   0 ≤ t ≤ T
 *
 * Holds: the shape that the rules prescribe, with V_cg = 15 m/s and T = 10 s. Accuracy: exactly that.
 *
 * @param gust.wind      V     before, ≥ 0     [m/s]
 * @param gust.rise      V_cg  ≥ 0             [m/s]
 * @param gust.duration  T     > 0             [s]
 * @param time           t     since its beginning [s]
 * @returns              v                     [m/s]
 * @throws RangeError    a value out of its bounds
 * @source iecwind, routine GenECD
 * @example coherentGust({ wind: 10, rise: 15, duration: 10 }, 5) // 17.5
 */
export function coherentGust(
  gust: { readonly wind: number; readonly rise: number; readonly duration: number },
  time: number,
): number {
  const { wind: V, rise, duration: T } = gust
  requireNotNegative('wind', V, 'm/s')
  requireNotNegative('rise', rise, 'm/s')
  requirePositive('duration', T, 's')
  requireFinite('time', time, 's')
  const x = Math.min(Math.max(time / T, 0), 1)
  return V + (rise * (1 - Math.cos(Math.PI * x))) / 2
}

/**
 * The steady wind whose extreme operating gust just reaches a given top.
 *
 *   V = (v_top − q I_15 15 m/s / (a + 1)) / (1 + q I_15 a / (a + 1)),   q = 0.74 β / (1 + 0.1 D / Λ_1)
 *
 * With σ_1 = I_15 (15 m/s + a V) / (a + 1), I_15 = 0.18, a = 2. Not below zero.
 *
 * Holds: tops above 5 m/s; below them the wind it starts from would be calm. Accuracy: rounding only.
 *
 * @param at.top       v_top  ≥ 0                  [m/s]
 * @param at.diameter  D      of the rotor, > 0    [m]
 * @param at.scale     Λ_1    turbulenceScale, > 0 [m]
 * @param at.factor    β      ≥ 0                  [1]
 * @returns            V and the gust's V_gust     [m/s]
 * @throws RangeError  a value out of its bounds
 * @source derived, operatingGust at T/2 with operatingGustSize and the turbulence of normalTurbulenceIntensity, solved for V
 * @example windBeforeGust({ top: 25, diameter: 2, scale: 7, factor: 4.8 }).wind // 15.4779
 */
export function windBeforeGust(at: {
  readonly top: number
  readonly diameter: number
  readonly scale: number
  readonly factor: number
}): { readonly wind: number; readonly size: number } {
  const { top, diameter, scale, factor } = at
  requireNotNegative('top', top, 'm/s')
  const { intensity15, slope: a } = smallTurbineTurbulence
  const q = 2 * swing * operatingGustSize({ deviation: 1, diameter, scale, factor })
  const V = Math.max(0, (top - (q * intensity15 * 15) / (a + 1)) / (1 + (q * intensity15 * a) / (a + 1)))
  return { wind: V, size: (top - V) / (2 * swing) }
}
