/** What a rotor and a mast do to an anemometer beside them. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Distances over diameter within which the sector of the wake was meant to be used [1]; nearer, nothing is undisturbed. */
export const WAKE_SECTOR_DISTANCES = [2, 20] as const

const degree = Math.PI / 180

/**
 * Width of the sector of winds that reach a point through the wake of a rotor.
 *
 *   α = 1.3 arctan(2.5 D/L + 0.15) + 10°
 *
 * Holds: from 2 to 20 diameters (WAKE_SECTOR_DISTANCES); the middle of the sector is the bearing of the rotor. A rotor
 * with an upright axis is given the diameter of the disc of equal area. Accuracy: a rule for what to leave out, wider than
 * the wake itself.
 *
 * @param rotor.diameter  D  > 0                           [m]
 * @param rotor.distance  L  from the point, > 0           [m]
 * @returns               α  whole width of the sector     [rad]
 * @throws RangeError     diameter or distance not above zero
 * @source iec61400-12-1, annex A, from memory, not opened
 * @example (wakeSector({ diameter: 1, distance: 2.5 }) * 180) / Math.PI // 73.69
 */
export function wakeSector({
  diameter: D,
  distance: L,
}: {
  readonly diameter: number
  readonly distance: number
}): number {
  requirePositive('diameter', D, 'm')
  requirePositive('distance', L, 'm')
  return 1.3 * Math.atan((2.5 * D) / L + 0.15) + 10 * degree
}

/**
 * Error of the wind speed beside a round mast, away from its lee, as a share of the undisturbed wind.
 *
 *   ε = (d / (2 r))²
 *
 * Too low by it straight before the mast, too high by it straight beside it. Holds: flow without friction round a
 * cylinder, so not in the lee, where it may be half and less. Accuracy: exact for such flow; a real mast, whose wake is
 * wider than itself, disturbs somewhat more.
 *
 * @param mast.diameter  d  ≥ 0                                   [m]
 * @param mast.distance  r  from the mast's middle, at least d/2  [m]
 * @returns              ε  0 … 1                                 [1]
 * @throws RangeError    diameter below zero, distance not above zero
 * @source derived, from the potential flow round a cylinder
 * @example mastSpeedError({ diameter: 0.05, distance: 0.25 }) // 0.01
 */
export function mastSpeedError({
  diameter: d,
  distance: r,
}: {
  readonly diameter: number
  readonly distance: number
}): number {
  requireNotNegative('diameter', d, 'm')
  requirePositive('distance', r, 'm')
  return Math.min(1, (d / (2 * r)) ** 2)
}
