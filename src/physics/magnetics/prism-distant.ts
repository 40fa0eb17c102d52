/** Field of a prism seen from afar: dipole, octupole by covariance, and the skewness of its outline. */
import type { Vector3 } from '../../numerics/vector.ts'
import type { PrismShape } from './prism-shape.ts'

/**
 * @internal Derivatives of Φ = ∫dV/R per volume at a distant point: ∇Φ and (u·∇)∇Φ for a direction u, into `out`
 * (six numbers). Φ = 1/R + Q/R⁵ + C/R⁷ with the harmonic polynomials Q of second and C of third moments.
 */
export function distantDerivatives(
  shape: PrismShape,
  point: { readonly x: number; readonly y: number; readonly z: number },
  u: Vector3,
  out: Float64Array,
): void {
  const { x, y, z } = point
  const ux = u[0]
  const uy = u[1]
  const uz = u[2]
  const { second, third } = shape
  const Sxx = second[0]
  const Sxy = second[1]
  const Syy = second[2]
  const a = third[0]
  const b = third[1]
  const c = third[2]
  const d = third[3]
  const Szz = shape.halfHeight ** 2 / 3
  const trace = Sxx + Syy + Szz
  // Q = r·G r
  const gxx = (3 * Sxx - trace) / 2
  const gxy = 1.5 * Sxy
  const gyy = (3 * Syy - trace) / 2
  const gzz = (3 * Szz - trace) / 2
  const rr = x * x + y * y + z * z
  const q = 1 / rr
  const f = q * Math.sqrt(q)
  const ur = ux * x + uy * y + uz * z
  const Gx = gxx * x + gxy * y
  const Gy = gxy * x + gyy * y
  const Gz = gzz * z
  const Q = x * Gx + y * Gy + z * Gz
  const uG = ux * Gx + uy * Gy + uz * Gz
  // C = (5 (a x³ + 3b x²y + 3c xy² + d y³) − 3 r² (e x + g y))/2
  const e = a + c
  const g = b + d
  const cubicX = a * x * x + 2 * b * x * y + c * y * y
  const cubicY = b * x * x + 2 * c * x * y + d * y * y
  const line = e * x + g * y
  const C = (5 * (x * cubicX + y * cubicY) - 3 * rr * line) / 2
  const Cx = (15 * cubicX - 6 * x * line - 3 * rr * e) / 2
  const Cy = (15 * cubicY - 6 * y * line - 3 * rr * g) / 2
  const Cz = -3 * z * line
  const uC = ux * Cx + uy * Cy + uz * Cz
  // (u·∇)∇C
  const ue = ux * e + uy * g
  const Cux = 15 * ((a * x + b * y) * ux + (b * x + c * y) * uy) - 3 * (ux * line + x * ue + ur * e)
  const Cuy = 15 * ((b * x + c * y) * ux + (c * x + d * y) * uy) - 3 * (uy * line + y * ue + ur * g)
  const Cuz = -3 * (uz * line + z * ue)
  const q2 = q * q
  // Along r, and along the polynomials' own gradients
  const first = -1 - 5 * Q * q2 - 7 * C * q2 * q
  out[0] = f * (first * x + 2 * Gx * q + Cx * q2)
  out[1] = f * (first * y + 2 * Gy * q + Cy * q2)
  out[2] = f * (first * z + 2 * Gz * q + Cz * q2)
  const along = q * (3 * ur + q * (35 * Q * q * ur - 10 * uG) + q2 * (63 * C * q * ur - 7 * uC))
  const own = -1 - 5 * Q * q2 - 7 * C * q2 * q
  out[3] =
    f *
    (along * x + own * ux + q * (2 * (gxx * ux + gxy * uy) - 10 * Gx * ur * q) + q2 * (Cux - 7 * Cx * ur * q))
  out[4] =
    f *
    (along * y + own * uy + q * (2 * (gxy * ux + gyy * uy) - 10 * Gy * ur * q) + q2 * (Cuy - 7 * Cy * ur * q))
  out[5] = f * (along * z + own * uz + q * (2 * gzz * uz - 10 * Gz * ur * q) + q2 * (Cuz - 7 * Cz * ur * q))
}
