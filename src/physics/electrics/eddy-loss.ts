/** Eddy-current loss in round wire that a moving magnetic field crosses. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Diameter over skin depth up to which the low-frequency formula is high by less than 1 %. */
export const EDDY_LOSS_DIAMETER_MOST = 1

const μ0 = 4e-7 * Math.PI

/**
 * Depth at which an alternating field has fallen to 1/e in a conductor.
 *
 *   δ = √(2ρ / (ω μ0))
 *
 * Holds: non-magnetic metal. Accuracy: exact for a plane surface.
 *
 * @param metal.resistivity       ρ  [Ω·m]
 * @param metal.angularFrequency  ω  above zero [rad/s]
 * @returns                       δ  [m]
 * @throws RangeError             a value not above zero
 * @source jackson1999, section 5.18 (from memory, not opened)
 * @example 1000 * skinDepth({ resistivity: 1.724e-8, angularFrequency: 2 * Math.PI * 50 }) // 9.346
 */
export function skinDepth(metal: {
  readonly resistivity: number
  readonly angularFrequency: number
}): number {
  requirePositive('resistivity', metal.resistivity, 'Ω·m')
  requirePositive('angularFrequency', metal.angularFrequency, 'rad/s')
  return Math.sqrt((2 * metal.resistivity) / (metal.angularFrequency * μ0))
}

/**
 * Eddy loss per volume of round strands across which a sinusoidal field swings.
 *
 *   P/V = ω² B² d² / (32 ρ)
 *
 * Holds: field at right angles to the strand, long strands, d ≤ δ (EDDY_LOSS_DIAMETER_MOST × skin depth), strands
 * transposed so that no current circulates between them. Accuracy: 0.7 % high at d = δ, 8 % at d = 2δ, exact for d → 0.
 *
 * @param strand.angularFrequency  ω                    [rad/s]
 * @param strand.fluxDensity       B  peak of the sine  [T]
 * @param strand.diameter          d  bare              [m]
 * @param strand.resistivity       ρ  at the strand's own temperature [Ω·m]
 * @returns                        P/V  per volume of metal           [W/m³]
 * @throws RangeError              resistivity not above zero; a negative diameter, frequency or field
 * @source derived, J = ω B x/ρ over the round section
 * @example strandEddyLoss({ angularFrequency: 2 * Math.PI * 30, fluxDensity: 0.6, diameter: 0.8e-3, resistivity: 1 / 58e6 }) // 14838
 */
export function strandEddyLoss(strand: {
  readonly angularFrequency: number
  readonly fluxDensity: number
  readonly diameter: number
  readonly resistivity: number
}): number {
  requireNotNegative('angularFrequency', strand.angularFrequency, 'rad/s')
  requireNotNegative('fluxDensity', strand.fluxDensity, 'T')
  requireNotNegative('diameter', strand.diameter, 'm')
  requirePositive('resistivity', strand.resistivity, 'Ω·m')
  const { angularFrequency: ω, fluxDensity: B, diameter: d, resistivity: ρ } = strand
  return (ω ** 2 * B ** 2 * d ** 2) / (32 * ρ)
}

/**
 * The same for a field of any periodic shape and direction across the strand: all harmonics, both components.
 *
 *   P/V = d²/(32 ρ) Σ (h ω)² (Bu,h² + Bv,h²)
 *
 * Holds: as strandEddyLoss for the highest order that matters. Accuracy: that of each order summed.
 *
 * @param strand.components        B  flux density across the strand in one or two directions at right angles, one
 *                                    period                                            [T]
 * @param strand.angularFrequency  ω  of that period                                    [rad/s]
 * @param strand.diameter          d  bare                                              [m]
 * @param strand.resistivity       ρ  at the strand's own temperature                   [Ω·m]
 * @returns                        P/V  per volume of metal                             [W/m³]
 * @throws RangeError              resistivity not above zero; a negative diameter or frequency; not finite
 * @source derived, Parseval's sum over strandEddyLoss
 * @example strandEddyLossOfSeries({ components: [{ cos: Float64Array.of(0, 0.6, 0, 0.1), sin: Float64Array.of(0, 0, 0, 0) }], angularFrequency: 2 * Math.PI * 30, diameter: 0.8e-3, resistivity: 1 / 58e6 }) // 18547
 */
export function strandEddyLossOfSeries(strand: {
  readonly components: readonly FourierSeries[]
  readonly angularFrequency: number
  readonly diameter: number
  readonly resistivity: number
}): number {
  let sum = 0
  for (const { cos, sin } of strand.components)
    for (let h = 1; h < cos.length; h++) sum += h ** 2 * (cos[h]! ** 2 + sin[h]! ** 2)
  requireFinite('components', sum, 'T²')
  return strandEddyLoss({ ...strand, fluxDensity: Math.sqrt(sum) })
}
