/** Eddy loss in a standing round bar, such as a bolt, in an alternating field: across it and along it. */
import { besselRatio } from '../../numerics/bessel-ratio.ts'
import { requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

const μ0 = 4e-7 * Math.PI

export interface EddyBar {
  /** ω [rad/s] */
  readonly angularFrequency: number
  /** B  of the undisturbed field, peak of the sine [T]. */
  readonly fluxDensity: number
  /** d [m] */
  readonly diameter: number
  /** ρ [Ω·m] */
  readonly resistivity: number
  /** μr  1 for anything but steel [1]. */
  readonly relativePermeability: number
}

/** Half the diameter over the skin depth, in the bar's own metal. */
function depthsOf(bar: EddyBar): number {
  requirePositive('angularFrequency', bar.angularFrequency, 'rad/s')
  requireNotNegative('fluxDensity', bar.fluxDensity, 'T')
  requirePositive('diameter', bar.diameter, 'm')
  requirePositive('resistivity', bar.resistivity, 'Ω·m')
  requireBetween('relativePermeability', bar.relativePermeability, [1, 1e6])
  const { angularFrequency: ω, resistivity: ρ, relativePermeability: μr } = bar
  return (bar.diameter / 2) * Math.sqrt((ω * μ0 * μr) / (2 * ρ))
}

/**
 * Eddy loss per volume of a long round bar in a field at right angles to it.
 *
 *   P/V = (ω B²/μ0) |Im((1 − S)/(1 + S))|,  S = κa J1'(κa)/(μr J1(κa)),  κ² = −j ω μ0 μr/ρ
 *
 * Holds: bar long against its diameter, uniform field, steel not saturated. Accuracy: exact there; a bar as short as it
 * is thick loses about half as much. Without skin effect and μr = 1 it is ω² B² d²/(32 ρ).
 *
 * @param bar           ω, B, d, ρ, μr  see `EddyBar`   [rad/s], [T], [m], [Ω·m], [1]
 * @returns             P/V                             [W/m³]
 * @throws RangeError   a value not above zero; a permeability below 1
 * @source derived, diffusion equation in a round bar joined to a dipole field outside; see the tests
 * @example acrossBarEddyLoss({ angularFrequency: 60 * Math.PI, fluxDensity: 0.6, diameter: 1.6e-3, resistivity: 1 / 58e6, relativePermeability: 1 }) // 59350
 */
export function acrossBarEddyLoss(bar: EddyBar): number {
  const x = depthsOf(bar)
  const { angularFrequency: ω, fluxDensity: B, relativePermeability: μr } = bar
  // z J1'(z)/J1(z) = z J0/J1 − 1 with z = (1 − j) x
  const [re, im] = besselRatio(x)
  const size = re * re + im * im
  const Sre = ((x * (re - im)) / size - 1) / μr
  const Sim = (-x * (re + im)) / size / μr
  // Im((1 − S)/(1 + S)) = −2 Im S/|1 + S|²
  return ((ω * B * B) / μ0) * Math.abs((2 * Sim) / ((1 + Sre) ** 2 + Sim ** 2))
}

/**
 * Eddy loss per volume of a long round bar in a field along it.
 *
 *   P/V = (ω μr B²/(2 μ0)) |Im(2 J1(κa)/(κa J0(κa)))|,  κ² = −j ω μ0 μr/ρ
 *
 * Holds: bar long against its diameter, uniform field, steel not saturated; for a short steel bar hand in the field
 * that its own poles leave inside, over μr. Accuracy: exact there. Without skin effect it is ω² μr² B² d²/(64 ρ).
 *
 * @param bar           ω, B, d, ρ, μr  see `EddyBar`   [rad/s], [T], [m], [Ω·m], [1]
 * @returns             P/V                             [W/m³]
 * @throws RangeError   a value not above zero; a permeability below 1
 * @source derived, diffusion equation in a round bar in a uniform field along it; see the tests
 * @example alongBarEddyLoss({ angularFrequency: 60 * Math.PI, fluxDensity: 0.6, diameter: 1.6e-3, resistivity: 1 / 58e6, relativePermeability: 1 }) // 29675
 */
export function alongBarEddyLoss(bar: EddyBar): number {
  const x = depthsOf(bar)
  const { angularFrequency: ω, fluxDensity: B, relativePermeability: μr } = bar
  const [re, im] = besselRatio(x)
  // 2/z = (1 + j)/x
  return ((ω * μr * B * B) / (2 * μ0)) * Math.abs((re + im) / x)
}
