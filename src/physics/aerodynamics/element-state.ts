/** State of the elements along a blade: angles, induction, forces and Reynolds numbers, for drawings and warnings. */
import { requirePositive } from '../../refusal/require.ts'
import {
  type BladeRotor,
  cutOf,
  type ElementOptions,
  newRing,
  requireTipSpeedRatio,
  solveRing,
  usualElements,
} from './blade-ring.ts'

/** What each ring does, for drawings and warnings; every list runs from hub to tip. */
export interface ElementStates {
  /** Distance from the axis. [m] */
  readonly distance: Float64Array
  readonly chord: Float64Array
  /** φ, wind to disc. [rad] */
  readonly inflowAngle: Float64Array
  /** α, wind to chord. [rad] */
  readonly attackAngle: Float64Array
  /** a. [1] */
  readonly axialInduction: Float64Array
  /** a'; at rest, where it has no bound, the swirl is in `swirl` instead and this is 0. [1] */
  readonly tangentialInduction: Float64Array
  /** Speed of the swirl the blades give the air, over the wind's. [1] */
  readonly swirl: Float64Array
  /** F. [1] */
  readonly lossFactor: Float64Array
  readonly lift: Float64Array
  readonly drag: Float64Array
  /** Speed of the air past the section. [m/s] */
  readonly airSpeed: Float64Array
  /** On the chord. [1] */
  readonly reynolds: Float64Array
  /** Share of each ring in C_t and C_q; they add up to rotorCoefficients. [1] */
  readonly thrustShare: Float64Array
  readonly torqueShare: Float64Array
}

/**
 * State of each ring of the rotor at a wind speed: angles, induction, coefficients, Reynolds number.
 *
 *   Re = W c / ν,   a = 1 − W sin φ / v,   λ_r a' = W cos φ / v − λ_r
 *
 * Holds: as rotorCoefficients. Accuracy: as rotorCoefficients.
 *
 * @param rotor                  shape and section                     [1]
 * @param at.tipSpeedRatio       λ  ωR/v                               [1]
 * @param at.windSpeed           v  far in front of the rotor, > 0     [m/s]
 * @param at.kinematicViscosity  ν  of air, > 0                        [m²/s]
 * @param options.elements       n  rings                              [1]
 * @returns                      lists from hub to tip; angles [rad], speeds [m/s], the rest [1]
 * @throws RangeError            rotor malformed; a value out of its bounds
 * @source ning2014, equations for the forces, from memory, not opened
 * @example elementStates({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }, { tipSpeedRatio: 5, windSpeed: 6, kinematicViscosity: 1.5e-5 }).reynolds[19] // 1.6581e5
 */
export function elementStates(
  rotor: BladeRotor,
  at: { readonly tipSpeedRatio: number; readonly windSpeed: number; readonly kinematicViscosity: number },
  options: ElementOptions = {},
): ElementStates {
  const { tipSpeedRatio: λ, windSpeed: v, kinematicViscosity: ν } = at
  requireTipSpeedRatio(λ)
  requirePositive('windSpeed', v, 'm/s')
  requirePositive('kinematicViscosity', ν, 'm²/s')
  const n = options.elements ?? usualElements
  const cut = cutOf(rotor, { elements: n, stream: { windSpeed: v, kinematicViscosity: ν } })
  const { bladeCount: B, radius: R } = rotor
  const list = () => new Float64Array(n)
  const out = {
    distance: cut.r.map((r) => r * R),
    chord: cut.c.map((c) => c * R),
    inflowAngle: list(),
    attackAngle: list(),
    axialInduction: list(),
    tangentialInduction: list(),
    swirl: list(),
    lossFactor: list(),
    lift: list(),
    drag: list(),
    airSpeed: list(),
    reynolds: list(),
    thrustShare: list(),
    torqueShare: list(),
  }
  const ring = newRing()
  for (let i = 0; i < n; i++) {
    solveRing(B, rotor.hubRadius / R, cut, i, λ, ring)
    const s = Math.sin(ring.φ)
    const c = Math.cos(ring.φ)
    const x = λ * cut.r[i]!
    const swirl = ring.W * c - x
    const q = ((B * cut.c[i]!) / Math.PI) * ring.W * ring.W * cut.Δr
    out.inflowAngle[i] = ring.φ
    out.attackAngle[i] = ring.α
    out.axialInduction[i] = 1 - ring.W * s
    out.swirl[i] = swirl
    out.tangentialInduction[i] = x > 0 ? swirl / x : 0
    out.lossFactor[i] = ring.F
    out.lift[i] = ring.lift
    out.drag[i] = ring.drag
    out.airSpeed[i] = ring.W * v
    out.reynolds[i] = (ring.W * v * cut.c[i]! * R) / ν
    out.thrustShare[i] = q * (ring.lift * c + ring.drag * s)
    out.torqueShare[i] = q * (ring.lift * s - ring.drag * c) * cut.r[i]!
  }
  return out
}
