/** Closed-form vector potential of one cuboid: the inner loop over points. */
import type { BlockMagnet } from './block-magnet.ts'
import { distantCoefficients, distantSquare, scaled } from './block-multipole.ts'

/** @internal Adds one block's share at each point; `asked` is where the series may begin, in half longest edges. */
export function addVectorPotential(
  magnet: BlockMagnet,
  points: Float64Array,
  asked: number,
  potential: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const block = scaled(magnet)
  const { unit, a, b, c, rows } = block
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J4π = (magnet.polarization * unit) / (4 * Math.PI)
  const far2 = distantSquare(asked, block)
  const { gx, gy, gz, αx, αy, αz, βxy, βxz, βyz, hx, hy, hz, K } = distantCoefficients(a, b, c)
  const farFactor = J4π * 8 * a * b * c
  const leastAC = Math.min(a, c)
  const leastBC = Math.min(b, c)
  const { sqrt, log } = Math
  // Keeps ln(0) finite where its factor is exactly zero
  const least = 1e-140
  const leastSquare = 1e-280
  for (let i = 0; i < points.length; i += 3) {
    const dx = points[i]! - ox
    const dy = points[i + 1]! - oy
    const dz = points[i + 2]! - oz
    let x = ux * dx + uy * dy + uz * dz
    let y = vx * dx + vy * dy + vz * dz
    let z = nx * dx + ny * dy + nz * dz
    const rr = x * x + y * y + z * z
    let Ax: number
    let Ay: number
    if (rr > far2) {
      const q = 1 / rr
      const q2 = q * q
      const X = x * x * q
      const Y = y * y * q
      const Z = z * z * q
      const P2 = gx * X + gy * Y + gz * Z
      const H = hx * X + hy * Y + hz * Z
      const P4 =
        105 * (αx * X * X + αy * Y * Y + αz * Z * Z + βxy * X * Y + βxz * X * Z + βyz * Y * Z) -
        15 * H +
        3 * K
      const common = 6 * K - 15 * H
      const px = 2 * (105 * (2 * αx * X + βxy * Y + βxz * Z) - 15 * hx + common)
      const py = 2 * (105 * (2 * αy * Y + βxy * X + βyz * Z) - 15 * hy + common)
      const f = farFactor * q * sqrt(q)
      Ax = f * y * (-1 + q * (2 * gy - 5 * P2) + q2 * (py - 9 * P4))
      Ay = -f * x * (-1 + q * (2 * gx - 5 * P2) + q2 * (px - 9 * P4))
    } else {
      const oddX = Math.sign(x)
      const oddY = Math.sign(y)
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
      // Along z: ln((Z1+R)/(Z0+R)) of the four edges, in differences along y (α, β) or x (γ, least)
      let q00: number
      let q01: number
      let q10: number
      let q11: number
      if (Z0 >= 0) {
        q00 = (Z1 + R001) / Math.max(Z0 + R000, least)
        q01 = (Z1 + R011) / (Z0 + R010)
        q10 = (Z1 + R101) / (Z0 + R100)
        q11 = (Z1 + R111) / (Z0 + R110)
      } else {
        q00 = ((Z1 + R001) * (R000 - Z0)) / Math.max(x0 + y0, leastSquare)
        q01 = ((Z1 + R011) * (R010 - Z0)) / (x0 + y1)
        q10 = ((Z1 + R101) * (R100 - Z0)) / (x1 + y0)
        q11 = ((Z1 + R111) * (R110 - Z0)) / (x1 + y1)
      }
      const α = log(q11 / q10)
      const β = log(q01 / q00)
      const γ = log(q11 / q01)
      Ax = X1 * α - X0 * β
      Ay = Y1 * γ - Y0 * (γ - α + β)
      // Z1 and Z0 times Σ± ln(X+R) of the edges along x
      if (X0 >= 0) {
        Ax += Z1 * log(((X1 + R111) * (X0 + R001)) / ((X0 + R011) * (X1 + R101)))
        Ax -= Z0 * log(((X1 + R110) * Math.max(X0 + R000, least)) / ((X0 + R010) * (X1 + R100)))
      } else {
        Ax += Z1 * log(((X1 + R111) * (R011 - X0) * (y0 + z1)) / ((R001 - X0) * (X1 + R101) * (y1 + z1)))
        Ax -=
          Z0 *
          log(
            ((X1 + R110) * (R010 - X0) * Math.max(y0 + z0, leastSquare)) /
              ((R000 - X0) * (X1 + R100) * (y1 + z0)),
          )
      }
      if (Y0 >= 0) {
        Ay += Z1 * log(((Y1 + R111) * (Y0 + R001)) / ((Y0 + R101) * (Y1 + R011)))
        Ay -= Z0 * log(((Y1 + R110) * Math.max(Y0 + R000, least)) / ((Y0 + R100) * (Y1 + R010)))
      } else {
        Ay += Z1 * log(((Y1 + R111) * (R101 - Y0) * (x0 + z1)) / ((R001 - Y0) * (Y1 + R011) * (x1 + z1)))
        Ay -=
          Z0 *
          log(
            ((Y1 + R110) * (R100 - Y0) * Math.max(x0 + z0, leastSquare)) /
              ((R000 - Y0) * (Y1 + R010) * (x1 + z0)),
          )
      }
      // Solid angles of the walls, up to 2π: |Y| atan(X Z/(|Y| R)) and its twin
      const besideAC = X0 < 0 && Z0 < 0
      const besideBC = Y0 < 0 && Z0 < 0
      const p = Math.abs(Y0)
      let Ω = solidAngle(p * R000, X0 * Z0, p * R001, X0 * Z1, p * R100, X1 * Z0, p * R101, X1 * Z1)
      if (Ω < 0 && ((besideAC && p < leastAC) || Ω < -1)) Ω += 2 * Math.PI
      Ax += p * Ω
      Ω = solidAngle(Y1 * R010, X0 * Z0, Y1 * R011, X0 * Z1, Y1 * R110, X1 * Z0, Y1 * R111, X1 * Z1)
      if (Ω < 0 && ((besideAC && Y1 < leastAC) || Ω < -1)) Ω += 2 * Math.PI
      Ax -= Y1 * Ω
      const s = Math.abs(X0)
      Ω = solidAngle(s * R000, Y0 * Z0, s * R001, Y0 * Z1, s * R010, Y1 * Z0, s * R011, Y1 * Z1)
      if (Ω < 0 && ((besideBC && s < leastBC) || Ω < -1)) Ω += 2 * Math.PI
      Ay += s * Ω
      Ω = solidAngle(X1 * R100, Y0 * Z0, X1 * R101, Y0 * Z1, X1 * R110, Y1 * Z0, X1 * R111, Y1 * Z1)
      if (Ω < 0 && ((besideBC && X1 < leastBC) || Ω < -1)) Ω += 2 * Math.PI
      Ay -= X1 * Ω
      Ax *= oddY * J4π
      Ay *= -oddX * J4π
    }
    potential[i] = potential[i]! + Ax * Ux + Ay * Vx
    potential[i + 1] = potential[i + 1]! + Ax * Uy + Ay * Vy
    potential[i + 2] = potential[i + 2]! + Ax * Uz + Ay * Vz
  }
}

/** Angle of z00 · z01* · z10* · z11 with z = u + iv. */
function solidAngle(
  u00: number,
  v00: number,
  u01: number,
  v01: number,
  u10: number,
  v10: number,
  u11: number,
  v11: number,
): number {
  const re0 = u00 * u01 + v00 * v01
  const im0 = v00 * u01 - u00 * v01
  const re1 = u10 * u11 + v10 * v11
  const im1 = v11 * u10 - u11 * v10
  return Math.atan2(re0 * im1 + im0 * re1, re0 * re1 - im0 * im1)
}
