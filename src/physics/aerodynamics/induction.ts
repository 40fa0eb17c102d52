/** Axial induction: how much the thrust of a ring of the rotor slows the wind that passes through it. */
import { requireBetween, requireFinite } from '../../refusal/require.ts'

/** Largest power coefficient of a disc in a free stream. [1] */
export const betzLimit = 16 / 27

/** Induction factor from which the momentum theory is left for the empirical curve. [1] */
export const highInductionFrom = 0.4

/** Induction factor up to which the empirical curve was drawn; the thrust coefficient is 2 there. [1] */
export const highInductionTo = 1

/**
 * sin φ / (1 − a) from the loading k = σ C_n / (4 F sin²φ), on every branch, without ever dividing by 1 − a = 0.
 * `s` is sin φ, not zero. The branches join without a step, so a bracketing root search may cross them.
 *
 * @internal
 */
export const sineOverOneMinusInduction = (k: number, F: number, s: number): number => {
  if (s > 0) {
    if (k <= 2 / 3) return s * (1 + k)
    return s / (1 - buhlInduction(k, F))
  }
  // Wind from behind (a > 1): thrust held at 2 until the propeller-brake parabola 4 F a (a − 1) takes over.
  const a1 = (1 + Math.sqrt(1 + 2 / F)) / 2
  if (k > a1 / (a1 - 1)) return -s * Math.sqrt(2 * F * k)
  return s * (1 - k)
}

/** Root a ≤ 1 of 4 F k (1 − a)² = 8/9 + (4F − 40/9) a + (50/9 − 4F) a² (Ning 2014, equations 18–19). */
const buhlInduction = (k: number, F: number): number => {
  const γ1 = 2 * F * k - (10 / 9 - F)
  const γ2 = Math.max(2 * F * k - F * (4 / 3 - F), 0)
  const γ3 = 2 * F * k - (25 / 9 - 2 * F)
  const root = Math.sqrt(γ2)
  if (Math.abs(γ3) < 1e-6) return 1 - 1 / (2 * root)
  return (γ1 - root) / γ3
}

/**
 * Thrust coefficient of a ring from its axial induction factor.
 *
 *   C_T = 4 F a (1 − a) for a ≤ 0.4,   C_T = 8/9 + (4F − 40/9) a + (50/9 − 4F) a² for 0.4 < a ≤ 1
 *
 * Above a = 1 (air drawn back through the disc) C_T is held at 2 until the propeller-brake parabola 4 F a (a − 1) is higher; that bridge is ours.
 *
 * Holds: a from −1 to 1 as published, beyond 1 as an estimate. Accuracy: momentum theory below 0.4; above it the measured
 * points the curve was drawn through scatter by about ±15 %.
 *
 * @param at.induction   a  (wind − wind in the disc) / wind        [1]
 * @param at.lossFactor  F  of tip and hub, 0 < F ≤ 1               [1]
 * @returns              C_T  on the ring's area, ½ρv²              [1]
 * @throws RangeError    loss factor outside 0…1; any value not finite
 * @source buhl2005, equation for the corrected thrust coefficient, from memory, not opened
 * @example thrustFromInduction({ induction: 1 / 3, lossFactor: 1 }) // 0.88889
 */
export function thrustFromInduction(at: { readonly induction: number; readonly lossFactor: number }): number {
  const { induction: a, lossFactor: F } = at
  requireFinite('induction', a)
  requireBetween('lossFactor', F, [1e-12, 1])
  if (a <= highInductionFrom) return 4 * F * a * (1 - a)
  if (a <= highInductionTo) return 8 / 9 + (4 * F - 40 / 9) * a + (50 / 9 - 4 * F) * a * a
  return Math.max(2, 4 * F * a * (a - 1))
}

/**
 * Axial induction factor of a ring whose blades have a given loading.
 *
 *   a = k / (1 + k) for k ≤ 2/3,   a = (γ1 − √γ2) / γ3 above,   k = σ C_n / (4 F sin²φ)
 *
 * Holds: wind coming from the front (φ > 0), k > −1. Accuracy: exact inverse of thrustFromInduction, rounding only.
 *
 * @param at.loading     k  σ C_n / (4 F sin²φ), > −1     [1]
 * @param at.lossFactor  F  of tip and hub, 0 < F ≤ 1     [1]
 * @returns              a                                [1]
 * @throws RangeError    loading ≤ −1, loss factor outside 0…1; any value not finite
 * @source ning2014, equations for the momentum and the empirical region, from memory, not opened
 * @example inductionFromLoading({ loading: 0.5, lossFactor: 1 }) // 0.333333
 */
export function inductionFromLoading(at: { readonly loading: number; readonly lossFactor: number }): number {
  const { loading: k, lossFactor: F } = at
  requireBetween('loading', k, [-1 + 1e-12, Number.MAX_VALUE])
  requireBetween('lossFactor', F, [1e-12, 1])
  return k <= 2 / 3 ? k / (1 + k) : buhlInduction(k, F)
}

/**
 * Induction factors of the ideal rotor with wake rotation: what each ring should do for most power.
 *
 *   16 a³ − 24 a² + (9 − 3x²) a + x² − 1 = 0,   a' = (1 − 3a) / (4a − 1)
 *
 * Its root in closed form is φ = ⅔ arctan(1/x) with σC_l = 4 (1 − cos φ).
 *
 * Holds: no drag, endless number of blades, x > 0. Accuracy: rounding only.
 *
 * @param localSpeedRatio  x  λ r / R, > 0             [1]
 * @returns                a, a' and φ [rad]           [1]
 * @throws RangeError      speed ratio not above zero
 * @source glauert1935, chapter on the ideal windmill, from memory, not opened
 * @example optimumInduction(1).axial // 0.316987
 */
export function optimumInduction(localSpeedRatio: number): {
  readonly axial: number
  readonly tangential: number
  readonly inflowAngle: number
} {
  requireBetween('localSpeedRatio', localSpeedRatio, [Number.MIN_VALUE, Number.MAX_VALUE])
  const x = localSpeedRatio
  const φ = (2 / 3) * Math.atan(1 / x)
  // σC_l = 4(1 − cos φ) put into k = σC_l cos φ / (4 sin²φ) and k' = σC_l / (4 cos φ).
  const c = Math.cos(φ)
  const k = c / (1 + c)
  const kt = (2 * Math.sin(φ / 2) ** 2) / c
  return { axial: k / (1 + k), tangential: kt / (1 - kt), inflowAngle: φ }
}
