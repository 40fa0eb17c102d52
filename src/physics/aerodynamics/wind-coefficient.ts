/** Coefficients of a rotor in several winds: where its Reynolds numbers, and so its sections, are others. */
import { type PowerCoefficientTable, summedRings } from './blade-element.ts'
import {
  type AirStream,
  type BladeRotor,
  cutOf,
  type ElementOptions,
  requireTipSpeedRatio,
} from './blade-ring.ts'

/**
 * The three coefficients at a list of tip-speed ratios in each of several winds, every ring at its own Reynolds number.
 *
 *   C_p(λ, v) = λ C_q(λ, v),   Re = (v c / ν) √((2/3)² + λ_r²)
 *
 * Below the lowest Reynolds number of the polars the lowest is held, above the highest the highest.
 *
 * Holds: as rotorCoefficients; a rotor without `polars` gives the same table in every wind. Accuracy: as rotorCoefficients; Re within 10 % of
 * the ring's own, under 1 % of C_p.
 *
 * @param rotor                  shape and section, with its polars            [1]
 * @param tipSpeedRatios         λ  each zero or above                         [1]
 * @param air.windSpeeds         v  each above zero                            [m/s]
 * @param air.kinematicViscosity ν  > 0                                        [m²/s]
 * @param options.elements       n  rings                                      [1]
 * @returns                      one table per wind: λ, C_p, C_t, C_q          [1]
 * @throws RangeError            rotor malformed; a value out of its bounds
 * @source derived, rotorCoefficients at the polar of each ring
 * @example windCoefficientTables({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }, [0, 5], { windSpeeds: [3, 9], kinematicViscosity: 1.5e-5 })[1].power[1] // 0.29485
 */
export function windCoefficientTables(
  rotor: BladeRotor,
  tipSpeedRatios: ArrayLike<number>,
  air: { readonly windSpeeds: readonly number[]; readonly kinematicViscosity: number },
  options: Pick<ElementOptions, 'elements'> = {},
): PowerCoefficientTable[] {
  const tipSpeedRatio = Float64Array.from(tipSpeedRatios)
  const empty = () => new Float64Array(tipSpeedRatio.length)
  const cuts = air.windSpeeds.map((windSpeed) => {
    const stream: AirStream = { windSpeed, kinematicViscosity: air.kinematicViscosity }
    return cutOf(rotor, { ...options, stream })
  })
  const tables = cuts.map(() => ({ tipSpeedRatio, power: empty(), thrust: empty(), torque: empty() }))
  tipSpeedRatio.forEach((λ, k) => {
    requireTipSpeedRatio(λ)
    // the first wind is solved from nothing, the others about it: the angles differ by little
    const about = new Float64Array(cuts[0]?.r.length ?? 0).fill(Number.NaN)
    cuts.forEach((cut, w) => {
      const table = tables[w]!
      const row = w > 0 && cut === cuts[0] ? undefined : summedRings(rotor, cut, λ, about)
      table.power[k] = row?.power ?? tables[0]!.power[k]!
      table.thrust[k] = row?.thrust ?? tables[0]!.thrust[k]!
      table.torque[k] = row?.torque ?? tables[0]!.torque[k]!
    })
  })
  return tables
}
