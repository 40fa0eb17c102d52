/** The speed at which volts along the wire are told. */
import type { WindRow } from '../../src/index.ts'

/** For a machine at rest and without a cut-in speed: 100 rpm [rad/s]. */
const plainSpeed = (100 * Math.PI) / 30

/** Speed at which volts per length are told: of the wind looked at, else where current begins. */
export function toldSpeed(row: WindRow | undefined, cutInSpeed: number): number {
  if (row && row.speed > 0) return row.speed
  return cutInSpeed > 0 && Number.isFinite(cutInSpeed) ? cutInSpeed : plainSpeed
}
