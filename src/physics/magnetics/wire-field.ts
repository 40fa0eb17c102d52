/** Magnetic field of currents in straight pieces of wire. */
import { refuse, requireFinite, requireLength, requireNotNegative } from '../../refusal/require.ts'

const μ0_4π = 1e-7

export interface WirePath {
  /** x y z of the corners; a closed path ends with its first point. */
  readonly polyline: Float64Array
  /** I, positive from the first point to the last [A]. */
  readonly current: number
  /**
   * Half-thickness of the bundle, added square to every distance from the wire: 0 for a filament, and when left out
   * [m].
   */
  readonly softening?: number
}

function requirePath({ polyline, current, softening = 0 }: WirePath, which: number): void {
  if (polyline.length < 6 || polyline.length % 3 !== 0)
    refuse({
      name: `paths[${which}].polyline`,
      condition: 'x y z of at least two points',
      value: polyline.length,
      code: 'wrong-length',
    })
  for (let i = 0; i < polyline.length; i++)
    if (!Number.isFinite(polyline[i]!)) requireFinite(`paths[${which}].polyline[${i}]`, polyline[i]!, 'm')
  requireFinite(`paths[${which}].current`, current, 'A')
  requireNotNegative(`paths[${which}].softening`, softening, 'm')
}

/**
 * Adds the flux density of the path's current at the points, one straight piece after the other.
 *
 * With a, b from the piece's ends to the point, u along it, ρ² = |u × a|² + g²:
 * B = μ0 I/4π (u × a) f, f = (u·a/|a| − u·b/|b|)/ρ² beside the piece; beyond its ends that difference cancels and
 * f = 2 L (|a| + |b|)/(|a| |b| ((|a| + |b|)² − L²)) is the same number without loss of digits.
 */
function addFluxDensity(path: WirePath, points: Float64Array, field: Float64Array): void {
  const { polyline, current, softening = 0 } = path
  const g2 = softening * softening
  const scale = μ0_4π * current
  if (scale === 0) return
  for (let k = 0; k + 5 < polyline.length; k += 3) {
    const x0 = polyline[k]!
    const y0 = polyline[k + 1]!
    const z0 = polyline[k + 2]!
    let ux = polyline[k + 3]! - x0
    let uy = polyline[k + 4]! - y0
    let uz = polyline[k + 5]! - z0
    const L = Math.sqrt(ux * ux + uy * uy + uz * uz)
    if (!(L > 0)) continue
    ux /= L
    uy /= L
    uz /= L
    for (let i = 0; i < points.length; i += 3) {
      const ax = points[i]! - x0
      const ay = points[i + 1]! - y0
      const az = points[i + 2]! - z0
      const cx = uy * az - uz * ay
      const cy = uz * ax - ux * az
      const cz = ux * ay - uy * ax
      const c2 = cx * cx + cy * cy + cz * cz
      // on the wire's own line its field vanishes, inside the wire by symmetry
      if (c2 === 0) continue
      const ρ2 = c2 + g2
      const s = ux * ax + uy * ay + uz * az
      const t = s - L
      const a = Math.sqrt(s * s + ρ2)
      const b = Math.sqrt(t * t + ρ2)
      const sum = a + b
      const f = s >= 0 && t <= 0 ? (s / a - t / b) / ρ2 : (2 * L * sum) / (a * b * (sum - L) * (sum + L))
      const w = scale * f
      field[i] = field[i]! + w * cx
      field[i + 1] = field[i + 1]! + w * cy
      field[i + 2] = field[i + 2]! + w * cz
    }
  }
}

/**
 * Flux density of currents along polylines, summed, at points.
 *
 *   B = μ0 I/(4π) Σ (u × a) (u·a/|a| − u·b/|b|) / |u × a|²
 *
 * over the straight pieces: a and b from a piece's first and last end to the point, u along the piece. Where
 * |a| + |b| is nearly the piece's length or the point lies beyond its ends, the form of the source serves, which loses
 * no digits. On the line of a piece that piece contributes nothing.
 *
 * Holds: steady current in free space; an open path gives the share of its pieces. Accuracy: rounding, 1e-14 of the
 * largest piece's share; for a bundle, `softening` bounds the field near its middle, and outside two
 * half-thicknesses what is left out is under (softening/distance)².
 *
 * @param paths.polyline  x0 y0 z0 x1 … of the corners              [m]
 * @param paths.current   I  from the first point to the last        [A]
 * @param paths.softening g  added square to the distances, 0 if not given [m]
 * @param points          flat x y z of each point                   [m]
 * @returns               flat Bx By Bz at each point                [T]
 * @throws RangeError     fewer than two corners; points not 3n long; a value not finite; softening below zero
 * @source hanson2002, equations 8 and 9 (from memory, not opened)
 * @example wireFluxDensity([{ polyline: new Float64Array([0, 0, -1e6, 0, 0, 1e6]), current: 10 }], new Float64Array([0.02, 0, 0]))[1] // 1.00000e-4
 */
export function wireFluxDensity(paths: readonly WirePath[], points: Float64Array): Float64Array {
  paths.forEach(requirePath)
  requireLength('points', points, 3 * Math.ceil(points.length / 3))
  for (let i = 0; i < points.length; i++)
    if (!Number.isFinite(points[i]!)) requireFinite(`points[${i}]`, points[i]!, 'm')
  const field = new Float64Array(points.length)
  for (const path of paths) addFluxDensity(path, points, field)
  return field
}
