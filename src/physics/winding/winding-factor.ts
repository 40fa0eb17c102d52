/** Textbook winding factors: what pitch, distribution, width and skew leave of each harmonic. */
import { refuse, requireFinite } from '../../refusal/require.ts'

function requireHarmonic(harmonic: number): void {
  if (!Number.isInteger(harmonic) || harmonic < 1)
    refuse({ name: 'harmonic', condition: 'a whole number from 1', value: harmonic, code: 'not-a-choice' })
}

const sinc = (x: number) => (Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x)

/**
 * Pitch factor of a coil for one harmonic.
 *
 *   k_p = sin(n W/2)
 *
 * Holds: thin legs, field that repeats every 2π electrical. Accuracy: exact for that picture.
 *
 * @param coil.span      W  electrical angle between the legs, π for full pitch  [rad]
 * @param coil.harmonic  n  order of the electrical fundamental                  [1]
 * @returns              k_p  signed, −1…1                                       [1]
 * @throws RangeError    span not finite; harmonic not a whole number from 1
 * @source pyrhonen2014, section 2.6 (pitch factor); from memory, not opened
 * @example pitchFactor({ span: (5 / 6) * Math.PI, harmonic: 1 }) // 0.9659
 */
export function pitchFactor(coil: { readonly span: number; readonly harmonic: number }): number {
  requireFinite('span', coil.span, 'rad')
  requireHarmonic(coil.harmonic)
  return Math.sin((coil.harmonic * coil.span) / 2)
}

/**
 * Distribution factor of a belt of equally spaced coils.
 *
 *   k_d = sin(q n γ/2) / (q sin(n γ/2))
 *
 * Holds: q alike coils in series, each γ from the next. Accuracy: exact; limits at n γ = 2π k included.
 *
 * @param belt.coils     q  in the belt                                [1]
 * @param belt.step      γ  electrical angle from coil to coil         [rad]
 * @param belt.harmonic  n                                             [1]
 * @returns              k_d  signed, −1…1                             [1]
 * @throws RangeError    coils or harmonic not a whole number from 1; step not finite
 * @source pyrhonen2014, section 2.6 (distribution factor); from memory, not opened
 * @example distributionFactor({ coils: 3, step: Math.PI / 9, harmonic: 1 }) // 0.9598
 */
export function distributionFactor(belt: {
  readonly coils: number
  readonly step: number
  readonly harmonic: number
}): number {
  const { coils: q, step: γ, harmonic: n } = belt
  if (!Number.isInteger(q) || q < 1)
    refuse({ name: 'coils', condition: 'a whole number from 1', value: q, code: 'not-a-choice' })
  requireFinite('step', γ, 'rad')
  requireHarmonic(n)
  const half = (n * γ) / 2
  const below = Math.sin(half)
  // all phasors parallel: the quotient's limit is ±1
  if (Math.abs(below) < 1e-9) return Math.cos(q * half) / Math.cos(half)
  return Math.sin(q * half) / (q * below)
}

/**
 * Spread factor of a leg whose turns fill a width evenly.
 *
 *   k_s = sin(n σ/2) / (n σ/2)
 *
 * Holds: turns spread evenly over σ, every turn of the same pitch. Accuracy: exact for that picture.
 *
 * @param leg.width     σ  electrical angle covered by the leg   [rad]
 * @param leg.harmonic  n                                        [1]
 * @returns             k_s                                      [1]
 * @throws RangeError   width not finite; harmonic not a whole number from 1
 * @source derived, from the mean of cos(n x) over −σ/2…σ/2
 * @example spreadFactor({ width: Math.PI / 3, harmonic: 1 }) // 0.95493
 */
export function spreadFactor(leg: { readonly width: number; readonly harmonic: number }): number {
  requireFinite('width', leg.width, 'rad')
  requireHarmonic(leg.harmonic)
  return sinc((leg.harmonic * leg.width) / 2)
}

/**
 * Skew factor of straight runs that lean by an electrical angle from end to end.
 *
 *   k_sk = sin(n s/2) / (n s/2)
 *
 * Holds: field alike along the whole run; end turns left out. Accuracy: exact for that picture. A zigzag
 * serpentine (runs that lean in turn, joined without crowns) keeps this factor for each run.
 *
 * @param run.skew      s  electrical angle from end to end   [rad]
 * @param run.harmonic  n                                     [1]
 * @returns             k_sk                                  [1]
 * @throws RangeError   skew not finite; harmonic not a whole number from 1
 * @source pyrhonen2014, section 4.3.4 (skewing factor); from memory, not opened
 * @example skewFactor({ skew: Math.PI, harmonic: 1 }) // 0.63662
 */
export function skewFactor(run: { readonly skew: number; readonly harmonic: number }): number {
  requireFinite('skew', run.skew, 'rad')
  requireHarmonic(run.harmonic)
  return sinc((run.harmonic * run.skew) / 2)
}

/**
 * What is left of a series group whose members are spread in two equal parts, an electrical angle apart.
 *
 *   k = cos(n δ/2)
 *
 * Holds: two alike groups in series, δ apart. Accuracy: exact.
 *
 * @param groups.apart     δ  electrical angle between the groups   [rad]
 * @param groups.harmonic  n                                        [1]
 * @returns                k                                        [1]
 * @throws RangeError      apart not finite; harmonic not a whole number from 1
 * @source derived, from the sum of two unit phasors
 * @example placementFactor({ apart: Math.PI / 9, harmonic: 1 }) // 0.9848
 */
export function placementFactor(groups: { readonly apart: number; readonly harmonic: number }): number {
  requireFinite('apart', groups.apart, 'rad')
  requireHarmonic(groups.harmonic)
  return Math.cos((groups.harmonic * groups.apart) / 2)
}
