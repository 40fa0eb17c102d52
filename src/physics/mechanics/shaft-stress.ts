/** Stress in a round shaft bent, twisted and pulled at once, and in the key that drives it. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Stress at the surface of a round shaft, solid or hollow, and what it is worth as one pull.
 *
 *   σ = 32 M D / (π (D⁴ − d⁴)) + 4 |F| / (π (D² − d²)),  τ = 16 T D / (π (D⁴ − d⁴)),
 *   σvM = √(σ² + 3 τ²),  σTr = √(σ² + 4 τ²)
 *
 * Holds: nominal stress, elastic, away from steps and keyways, whose concentration the caller brings in;
 * the shear of the transverse force, nil at this fibre, left out. Accuracy: exact there.
 *
 * @param shaft.moment    M  bending moment, either sign               [N·m]
 * @param shaft.torque    T  either sign                               [N·m]
 * @param shaft.force     F  along the axis, either sign; 0 if left out [N]
 * @param shaft.diameter  D  > 0                                       [m]
 * @param shaft.bore      d  0 to below D; 0 if left out               [m]
 * @returns               normal σ, shear τ, vonMises σvM, tresca σTr, all ≥ 0 [Pa]
 * @throws RangeError     a value not finite or out of its bounds
 * @source shigley, section 5-4 and 5-5 and table A-16, from memory, not opened
 * @example shaftStress({ moment: 100, torque: 0, diameter: 0.02 }).vonMises / 1e6 // 127.32
 */
export function shaftStress(shaft: {
  readonly moment: number
  readonly torque: number
  readonly force?: number | undefined
  readonly diameter: number
  readonly bore?: number | undefined
}): { readonly normal: number; readonly shear: number; readonly vonMises: number; readonly tresca: number } {
  const { moment: M, torque: T, force: F = 0, diameter: D, bore: d = 0 } = shaft
  requireFinite('moment', M, 'N·m')
  requireFinite('torque', T, 'N·m')
  requireFinite('force', F, 'N')
  requirePositive('diameter', D, 'm')
  requireNotNegative('bore', d, 'm')
  const q = d / D
  // (1 − q)(1 + q) keeps the digits of a thin tube.
  const area = (1 - q) * (1 + q)
  if (!(area > 0))
    refuse({ name: 'bore', condition: 'below diameter', value: d, unit: 'm', code: 'above-maximum' })
  const section = Math.PI * D ** 3 * area * (1 + q * q)
  const σ = (32 * Math.abs(M)) / section + (4 * Math.abs(F)) / (Math.PI * D * D * area)
  const τ = (16 * Math.abs(T)) / section
  return { normal: σ, shear: τ, vonMises: Math.hypot(σ, Math.sqrt(3) * τ), tresca: Math.hypot(σ, 2 * τ) }
}

/**
 * Shear across a parallel key and pressure on its flanks.
 *
 *   τ = 2 T / (D w l),  p = 4 T / (D h l)
 *
 * Holds: force at the shaft's surface, half of the height in the shaft and half in the hub, even along the
 * bearing length l (without round ends). Accuracy: exact there; true pressure is uneven, up to twice that.
 *
 * @param key.torque    T  either sign                                 [N·m]
 * @param key.diameter  D  of the shaft, > 0                           [m]
 * @param key.width     w  > 0                                         [m]
 * @param key.height    h  > 0                                         [m]
 * @param key.length    l  > 0                                         [m]
 * @returns             shear τ, pressure p, both ≥ 0                  [Pa]
 * @throws RangeError   a value not finite or out of its sign
 * @source khurmi2005, section 13.8, strength of a sunk key, from memory, not opened
 * @example keyStress({ torque: 1100, diameter: 0.055, width: 0.018, height: 0.018, length: 0.0975 }).shear / 1e6 // 22.79
 */
export function keyStress(key: {
  readonly torque: number
  readonly diameter: number
  readonly width: number
  readonly height: number
  readonly length: number
}): { readonly shear: number; readonly pressure: number } {
  const { torque, diameter: D, width: w, height: h, length: l } = key
  requireFinite('torque', torque, 'N·m')
  requirePositive('diameter', D, 'm')
  requirePositive('width', w, 'm')
  requirePositive('height', h, 'm')
  requirePositive('length', l, 'm')
  const T = Math.abs(torque)
  return { shear: (2 * T) / D / w / l, pressure: (4 * T) / D / h / l }
}
