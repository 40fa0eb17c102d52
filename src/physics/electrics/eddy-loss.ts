/** Eddy-current loss in wire, round or strip, that a moving magnetic field crosses. */
import { besselRatio } from '../../numerics/bessel-ratio.ts'
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'
import type { StrandSection } from './strand-section.ts'

/** Diameter over skin depth up to which the low-frequency formula is high by less than 1 %. */
export const EDDY_LOSS_DIAMETER_MOST = 1

/** Side of a strip at right angles to the field over skin depth up to which the same holds. */
export const EDDY_LOSS_STRIP_MOST = 1

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
 * @source sullivan2001, loss of a round strand, π l d⁴ ⟨(dB/dt)²⟩/(64 ρ), here per volume for a sine (as quoted by others, not opened)
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
 * The same with the skin effect: share of the low-frequency loss that is left.
 *
 *   F = (4/x²) |Im(J2(κa)/J0(κa))|,  κa = (1 − j) x,  x = d/(2δ)
 *
 * Holds: long round wire of non-magnetic metal alone in a uniform field across it. Accuracy: exact, rounding only.
 *
 * @param diameterOverDepth  d/δ  from 0 up                           [1]
 * @returns                  F    1 for a thin strand, falls from there [1]
 * @throws RangeError        a negative ratio; not finite
 * @source derived, diffusion equation in a round conductor, see the tests
 * @example strandSkinShare(2) // 0.8976
 */
export function strandSkinShare(diameterOverDepth: number): number {
  requireNotNegative('diameterOverDepth', diameterOverDepth)
  const x = diameterOverDepth / 2
  // the series of J2/J0 begins with z²/8 and goes on with z⁴/48
  if (x < 1e-2) return 1
  // J2/J0 = 2 J1/(z J0) − 1, and 1/z = (1 + j)/(2x)
  const [re, im] = besselRatio(x)
  return ((4 / x ** 2) * (re + im)) / -x
}

/**
 * Eddy loss per volume of wire in a field that changes in any way, by how fast it changes.
 *
 *   P/V = (⟨x²⟩ ⟨Ḃt²⟩ + ⟨y²⟩ ⟨Ḃw²⟩) / ρ
 *
 * Holds: long wire, strands transposed, thin against the skin depth of the highest order that matters
 * (EDDY_LOSS_DIAMETER_MOST for round wire, EDDY_LOSS_STRIP_MOST for the wider side of a strip).
 * Accuracy: exact for a thin wire; above the truth for any other, as every current loop decays with a time of its own.
 *
 * @param wire.section         ⟨x²⟩, ⟨y²⟩  along its width and thickness                    [m²]
 * @param wire.rateThickness   ⟨Ḃt²⟩  mean square of dB/dt, field along the thickness       [T²/s²]
 * @param wire.rateWidth       ⟨Ḃw²⟩  the same, field along the width                       [T²/s²]
 * @param wire.resistivity     ρ  at the wire's own temperature                             [Ω·m]
 * @returns                    P/V  per volume of metal                                     [W/m³]
 * @throws RangeError          resistivity not above zero; a negative square
 * @source sullivan2001, loss by the mean square of the field's derivative (as quoted by others, not opened); strip derived likewise
 * @example eddyLossOfRate({ section: roundSection(0.8e-3), rateThickness: (60 * Math.PI * 0.6) ** 2 / 2, rateWidth: 0, resistivity: 1 / 58e6 }) // 14838
 */
export function eddyLossOfRate(wire: {
  readonly section: StrandSection
  readonly rateThickness: number
  readonly rateWidth: number
  readonly resistivity: number
}): number {
  requireNotNegative('rateThickness', wire.rateThickness, 'T²/s²')
  requireNotNegative('rateWidth', wire.rateWidth, 'T²/s²')
  requirePositive('resistivity', wire.resistivity, 'Ω·m')
  const { meanSquareWidth, meanSquareThickness } = wire.section
  return (meanSquareWidth * wire.rateThickness + meanSquareThickness * wire.rateWidth) / wire.resistivity
}
