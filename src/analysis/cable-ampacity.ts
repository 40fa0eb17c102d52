/** Amps that a copper cable carries for hours, laid in conduit: the cautious case of the tables. */
import { cableCurrents } from '../data/ampacity.ts'

/** Beyond the table the current is taken to go with this power of the cross-section, below what tables show. */
const thickExponent = 0.5

/**
 * Current of a copper cross-section [A], area in m². Between two sizes straight in the logarithms; thinner than the
 * table the density of its thinnest is kept, thicker it falls: both on the safe side.
 */
export function cableAmpacity(area: number): number {
  const size = area * 1e6
  const rows = cableCurrents
  const [first, last] = [rows[0]!, rows[rows.length - 1]!]
  if (!(size > first.crossSection_mm2)) return (first.at30degC_A * Math.max(0, size)) / first.crossSection_mm2
  if (size >= last.crossSection_mm2) return last.at30degC_A * (size / last.crossSection_mm2) ** thickExponent
  const k = rows.findIndex(({ crossSection_mm2 }) => crossSection_mm2 > size)
  const [a, b] = [rows[k - 1]!, rows[k]!]
  const share = Math.log(size / a.crossSection_mm2) / Math.log(b.crossSection_mm2 / a.crossSection_mm2)
  return a.at30degC_A * (b.at30degC_A / a.at30degC_A) ** share
}

/** Least size of the table that carries a current [mm²]; undefined where none does. */
export const leastCableSize = (current: number): number | undefined =>
  cableCurrents.find(({ at30degC_A }) => at30degC_A >= current)?.crossSection_mm2
