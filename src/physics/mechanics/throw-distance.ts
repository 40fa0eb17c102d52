/** How far a thing may fly that leaves a turning rotor. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Farthest that something thrown from a height can land, whatever the direction it is thrown in.
 *
 *   x = (v/g) √(v² + 2 g h)
 *
 * Holds: no air, level ground. Accuracy: exact there; drag shortens it, of light and flat pieces by far, a blade that
 * glides or a slope may lengthen it: a bound for orders of magnitude, no safety distance.
 *
 * @param thrown.speed    v  ≥ 0                                        [m/s]
 * @param thrown.height   h  above the ground, ≥ 0                      [m]
 * @param thrown.gravity  g  > 0                                        [m/s2]
 * @returns               x  along the ground                           [m]
 * @throws RangeError     a value not finite or out of its sign
 * @source derived, envelope of the parabolas of throw: y = v²/2g − g x²/2v² at y = −h
 * @example throwDistance({ speed: 20, height: 10, gravity: 9.80665 }) // 49.8
 */
export function throwDistance(thrown: {
  readonly speed: number
  readonly height: number
  readonly gravity: number
}): number {
  const { speed: v, height: h, gravity: g } = thrown
  requireNotNegative('speed', v, 'm/s')
  requireNotNegative('height', h, 'm')
  requirePositive('gravity', g, 'm/s2')
  return (v / g) * Math.sqrt(v * v + 2 * g * h)
}
