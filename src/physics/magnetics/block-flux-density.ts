/** Closed-form flux density of one cuboid: the inner loop over points. */
import type { BlockMagnet } from './block-magnet.ts'
import { distantCoefficients, distantSquare, scaled } from './block-multipole.ts'

/** Distance of an edge, in half longest edges, inside which the logarithm of B no longer grows. */
export const edgeRounding = 1e-9
/** @internal Adds one block's share at each point; `asked` is where the series may begin, in half longest edges. */
export function addFluxDensity(
  magnet: BlockMagnet,
  points: Float64Array,
  asked: number,
  field: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const block = scaled(magnet)
  const { a, b, c, rows } = block
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz], [Nx, Ny, Nz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J4π = magnet.polarization / (4 * Math.PI)
  const far2 = distantSquare(asked, block)
  const { gx, gy, gz, αx, αy, αz, βxy, βxz, βyz, hx, hy, hz, K } = distantCoefficients(a, b, c)
  const farFactor = J4π * 8 * a * b * c
  const δ = edgeRounding
  const δδ = δ * δ
  const sqrt = Math.sqrt
  for (let i = 0; i < points.length; i += 3) {
    const dx = points[i]! - ox
    const dy = points[i + 1]! - oy
    const dz = points[i + 2]! - oz
    let x = ux * dx + uy * dy + uz * dz
    let y = vx * dx + vy * dy + vz * dz
    let z = nx * dx + ny * dy + nz * dz
    const rr = x * x + y * y + z * z
    let Bx: number
    let By: number
    let Bz: number
    if (rr > far2) {
      // B = J/4π ∇∂zΦ; each term is P/R^m: its second derivatives with P's own
      const q = 1 / rr
      const q2 = q * q
      const X = x * x * q
      const Y = y * y * q
      const Z = z * z * q
      // P and its derivatives with x, y, z in units of R: p x, p y, p z are ∂P
      const P2 = gx * X + gy * Y + gz * Z
      const H = hx * X + hy * Y + hz * Z
      const P4 =
        105 * (αx * X * X + αy * Y * Y + αz * Z * Z + βxy * X * Y + βxz * X * Z + βyz * Y * Z) -
        15 * H +
        3 * K
      const common = 6 * K - 15 * H
      const px = 2 * (105 * (2 * αx * X + βxy * Y + βxz * Z) - 15 * hx + common)
      const py = 2 * (105 * (2 * αy * Y + βxy * X + βyz * Z) - 15 * hy + common)
      const pz = 2 * (105 * (2 * αz * Z + βxz * X + βyz * Y) - 15 * hz + common)
      const pxz = 420 * βxz - 60 * (hx + hz) + 24 * K
      const pyz = 420 * βyz - 60 * (hy + hz) + 24 * K
      const pzz = 840 * αz - 120 * hz + 24 * K
      const fx = 3 + q * (-10 * (gx + gz) + 35 * P2) + q2 * (pxz - 9 * (px + pz) + 99 * P4)
      const fy = 3 + q * (-10 * (gy + gz) + 35 * P2) + q2 * (pyz - 9 * (py + pz) + 99 * P4)
      const fz = 3 + q * (-20 * gz + 35 * P2) + q2 * (pzz - 18 * pz + 99 * P4)
      const f = farFactor * q * sqrt(q)
      const zf = f * z * q
      Bx = zf * x * fx
      By = zf * y * fy
      Bz = zf * z * fz + f * (-1 + q * (2 * gz - 5 * P2) + q2 * (pz - 9 * P4))
    } else {
      // The field's parity carries the point into the octant x, y, z ≥ 0
      const oddX = z < 0 ? -Math.sign(x) : Math.sign(x)
      const oddY = z < 0 ? -Math.sign(y) : Math.sign(y)
      x = Math.abs(x)
      y = Math.abs(y)
      z = Math.abs(z)
      const X0 = x - a
      const X1 = x + a
      const Y0 = y - b
      const Y1 = y + b
      const Z0 = z - c
      const Z1 = z + c
      const x0 = X0 * X0
      const x1 = X1 * X1
      const y0 = Y0 * Y0
      const y1 = Y1 * Y1
      const z0 = Z0 * Z0
      const z1 = Z1 * Z1
      const R000 = sqrt(x0 + y0 + z0)
      const R001 = sqrt(x0 + y0 + z1)
      const R010 = sqrt(x0 + y1 + z0)
      const R011 = sqrt(x0 + y1 + z1)
      const R100 = sqrt(x1 + y0 + z0)
      const R101 = sqrt(x1 + y0 + z1)
      const R110 = sqrt(x1 + y1 + z0)
      const R111 = sqrt(x1 + y1 + z1)
      // Y0 + R = ρ²/(R − Y0) where Y0 < 0
      let near: number
      let far: number
      if (Y0 >= 0) {
        near = Math.max(Y0 + R000, δ) * (Y0 + R101)
        far = (Y0 + R001) * (Y0 + R100)
      } else {
        near = Math.max(x0 + z0, δδ) * (x1 + z1) * (R001 - Y0) * (R100 - Y0)
        far = (x0 + z1) * (x1 + z0) * Math.max(R000 - Y0, δ) * (R101 - Y0)
      }
      Bx = oddX * Math.log(((Y1 + R111) * (Y1 + R010) * far) / ((Y1 + R011) * (Y1 + R110) * near))
      if (X0 >= 0) {
        near = Math.max(X0 + R000, δ) * (X0 + R011)
        far = (X0 + R001) * (X0 + R010)
      } else {
        near = Math.max(y0 + z0, δδ) * (y1 + z1) * (R001 - X0) * (R010 - X0)
        far = (y0 + z1) * (y1 + z0) * Math.max(R000 - X0, δ) * (R011 - X0)
      }
      By = oddY * Math.log(((X1 + R111) * (X1 + R100) * far) / ((X1 + R101) * (X1 + R110) * near))
      // θ = atan(Z1 R1/p) − atan(Z0 R0/p) lies in 0…π as Z1 > Z0: the angle of (re, im)
      const p11 = X1 * Y1
      let u = Z1 * R111
      let v = Z0 * R110
      let im = p11 * (u - v)
      let re = p11 * p11 + u * v
      Bz = pairAngle(im, re, X0, X0 * Y1, Z1 * R011, Z0 * R010)
      if (Y0 !== 0) {
        const p10 = X1 * Math.abs(Y0)
        u = Z1 * R101
        v = Z0 * R100
        im = p10 * (u - v)
        re = p10 * p10 + u * v
        const angle = pairAngle(im, re, X0, X0 * Y0, Z1 * R001, Z0 * R000)
        Bz += Y0 > 0 ? -angle : angle
      }
      Bx *= J4π
      By *= J4π
      Bz *= J4π
    }
    field[i] = field[i]! + Bx * Ux + By * Vx + Bz * Nx
    field[i + 1] = field[i + 1]! + Bx * Uy + By * Vy + Bz * Ny
    field[i + 2] = field[i + 2]! + Bx * Uz + By * Vz + Bz * Nz
  }
}

/** Angle of (re, im) minus sgn(side) times the like angle θ of p, u = Z1 R1 and v = Z0 R0; both lie in 0…π. */
function pairAngle(im: number, re: number, side: number, p: number, u: number, v: number): number {
  if (side === 0) return Math.atan2(im, re)
  const p0 = Math.abs(p)
  const re0 = p0 * p0 + u * v
  const im0 = p0 * (u - v)
  if (side > 0) return Math.atan2(im * re0 - re * im0, re * re0 + im * im0)
  // A sum above π needs v < 0, and then both im are sums of positive terms: a negative angle is no rounding
  const angle = Math.atan2(im * re0 + re * im0, re * re0 - im * im0)
  return angle < 0 && v < 0 ? angle + 2 * Math.PI : angle
}
