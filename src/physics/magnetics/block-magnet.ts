/** Magnetic field of uniformly polarised cuboids ("blocks") in any pose, in free space. */
import { dot, type Frame3, type Vector3 } from '../../numerics/vector.ts'
import { refuse, requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'

/** A cuboid of uniform polarization along its local z axis. */
export interface BlockMagnet {
  readonly centre: Vector3
  /** Rows: local x, y and z unit vectors in the machine frame. */
  readonly frame: Frame3
  /** Full edge lengths along local x, y and z [m]. */
  readonly size: Vector3
  /** J along local +z, sign allowed [T]. */
  readonly polarization: number
}

export interface BlockAccuracy {
  /**
   * Largest error of one block's contribution, as a fraction of the value its equal dipole would have at a
   * distance of half its longest edge. Left out: about 1e-10 (l³/V)^(2/3) of the contribution itself.
   */
  readonly relativeError?: number
}

/** Distance of an edge, in half longest edges, inside which the logarithm of B no longer grows. */
export const edgeRounding = 1e-9
/**
 * Distance in half longest edges beyond which the multipole series replaces the closed form by default, for a
 * cube; times (V/l³)^(1/9) for others. There the series' cut, 12 K⁻⁶, meets the closed form's rounding, about
 * 1.5e-15 (K/2)³ l³/V, both as shares of the value.
 */
export const distantRatio = 73

// Largest errors of the series cut after the fifth derivative, in units of the equal dipole's value at the
// same distance, times (distance / half longest edge)⁶: measured over directions and shapes, see the tests.
const seriesErrorA = 1.6
const seriesErrorB = 12

function requireBlocks(magnets: readonly BlockMagnet[]): void {
  magnets.forEach((magnet, m) => {
    const name = `magnets[${m}]`
    for (let i = 0; i < 3; i++) {
      requireFinite(`${name}.centre[${i}]`, magnet.centre[i]!, 'm')
      requirePositive(`${name}.size[${i}]`, magnet.size[i]!, 'm')
      for (let j = i; j < 3; j++) {
        const product = dot(magnet.frame[i]!, magnet.frame[j]!)
        if (!(Math.abs(product - (i === j ? 1 : 0)) <= 1e-9))
          refuse({
            name: `${name}.frame`,
            condition: 'three unit vectors square to each other',
            value: magnet.frame,
            code: 'conflict',
          })
      }
    }
    requireFinite(`${name}.polarization`, magnet.polarization, 'T')
  })
}

function requirePoints(points: Float64Array): void {
  if (points.length % 3 !== 0)
    refuse({
      name: 'points',
      condition: 'a multiple of 3 long (x, y, z of each point)',
      value: points.length,
      code: 'wrong-length',
    })
  for (let i = 0; i < points.length; i++)
    if (!Number.isFinite(points[i]!)) requireFinite(`points[${i}]`, points[i]!, 'm')
}

/** Distance of the switch to the series as asked for; `decay` is the power of the error's fall. */
function switchAskedFor(accuracy: BlockAccuracy, series: number, decay: number): number {
  const { relativeError } = accuracy
  if (relativeError === undefined) return distantRatio
  requireBetween('relativeError', relativeError, [1e-15, 0.1])
  return Math.max((series / relativeError) ** (1 / decay), 2.2)
}

/**
 * The block's constants for lengths in half longest edges, so that no size under- or overflows.
 * Multipole moments: Φ = ∫dV/R = V (1/R + P2/R⁵ + P4/R⁹ + …), see `distantCoefficients`.
 */
interface ScaledBlock {
  readonly unit: number
  readonly a: number
  readonly b: number
  readonly c: number
  readonly rows: Frame3
}

function scaled(magnet: BlockMagnet): ScaledBlock {
  const [w, l, t] = magnet.size
  const unit = Math.max(w, l, t) / 2
  const k = 1 / unit
  const [u, v, n] = magnet.frame
  return {
    unit,
    a: w / 2 / unit,
    b: l / 2 / unit,
    c: t / 2 / unit,
    rows: [
      [u[0] * k, u[1] * k, u[2] * k],
      [v[0] * k, v[1] * k, v[2] * k],
      [n[0] * k, n[1] * k, n[2] * k],
    ],
  }
}

/** Coefficients of the harmonic polynomials P2 and P4 from the mean squares and fourth powers of a cuboid. */
function distantCoefficients(a: number, b: number, c: number) {
  const [A, B, C] = [a * a, b * b, c * c]
  const [αx, αy, αz] = [(A * A) / 120, (B * B) / 120, (C * C) / 120]
  const [βxy, βxz, βyz] = [(A * B) / 36, (A * C) / 36, (B * C) / 36]
  const s = A + B + C
  return {
    // P2 = (gx x² + gy y² + gz z²)
    gx: (3 * A - s) / 6,
    gy: (3 * B - s) / 6,
    gz: (3 * C - s) / 6,
    αx,
    αy,
    αz,
    βxy,
    βxz,
    βyz,
    hx: 6 * αx + βxy + βxz,
    hy: 6 * αy + βxy + βyz,
    hz: 6 * αz + βxz + βyz,
    K: 3 * (αx + αy + αz) + βxy + βxz + βyz,
  }
}

/**
 * Flux density of polarised blocks, summed, at each point; inside a magnet too (B, not μ0H).
 *
 *   B = J/4π (Σ± ln(Y+R), Σ± ln(X+R), Σ± sgn(XY) atan(Z R/|XY|)) over the eight corners
 *
 * with X, Y, Z from corner to point in the block's own axes, R their length, ± the product of the three
 * corner signs. The eight logarithms of a component are one logarithm of a ratio of sums of positive
 * terms, so edges' extensions cost no digits; beyond `distantRatio` a multipole series (dipole, octupole
 * and 32-pole) takes over. On a face the tangential B is the mean of both sides. On an edge B has no
 * limit: there the logarithm stops growing at a distance of `edgeRounding` half longest edges.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J close by; far
 * away 2e-10 (l³/V)^(2/3) of the value, l the longest edge; with `relativeError` what that asks for.
 *
 * @param magnets                 blocks                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the block's dipole field allowed as error [1]
 * @returns                       flat Bx By Bz at each point                 [T]
 * @throws RangeError   size not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source yang1990, closed form of the cuboid (from memory, not opened); pairing of corners derived here
 * @example blockFluxDensity([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0, 0, 0]))[2] // 0.666667
 */
export function blockFluxDensity(
  magnets: readonly BlockMagnet[],
  points: Float64Array,
  accuracy: BlockAccuracy = {},
): Float64Array {
  requireBlocks(magnets)
  requirePoints(points)
  const asked = switchAskedFor(accuracy, seriesErrorB, 9)
  const field = new Float64Array(points.length)
  for (const magnet of magnets) addFluxDensity(magnet, points, asked, field)
  return field
}

function addFluxDensity(magnet: BlockMagnet, points: Float64Array, asked: number, field: Float64Array): void {
  if (magnet.polarization === 0) return
  const { a, b, c, rows } = scaled(magnet)
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz], [Nx, Ny, Nz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J4π = magnet.polarization / (4 * Math.PI)
  const far2 = Math.max(2.2, Math.min(asked, distantRatio * (a * b * c) ** (1 / 9))) ** 2
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

/**
 * Vector potential of polarised blocks, summed, at each point: Coulomb gauge, zero at infinity.
 *
 *   A = J/4π (Σ± F(X,Y,Z), −Σ± F(Y,X,Z), 0),  F = X ln(Z+R) + Z ln(X+R) − Y atan(X Z/(Y R))
 *
 * in the block's own axes: the surface currents of the four side walls, each wall's ∬da/R in closed form.
 * The four arctangents of a wall are one angle of a product of complex numbers; logarithms are taken of
 * ratios. A is continuous everywhere, faces and edges included; a multipole series serves far points.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J l close by; far
 * away 2e-10 (l³/V)^(2/3) of the value, l the longest edge; with `relativeError` what that asks for.
 *
 * @param magnets                 blocks                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the block's dipole potential allowed as error [1]
 * @returns                       flat Ax Ay Az at each point                 [T·m]
 * @throws RangeError   size not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source derived, from the surface currents J/μ0 of the side walls and the potential of a uniform rectangle
 * @example blockVectorPotential([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0.01, 0, 0]))[1] // 2.4e-3
 */
export function blockVectorPotential(
  magnets: readonly BlockMagnet[],
  points: Float64Array,
  accuracy: BlockAccuracy = {},
): Float64Array {
  requireBlocks(magnets)
  requirePoints(points)
  const asked = switchAskedFor(accuracy, seriesErrorA, 8)
  const potential = new Float64Array(points.length)
  for (const magnet of magnets) addVectorPotential(magnet, points, asked, potential)
  return potential
}

function addVectorPotential(
  magnet: BlockMagnet,
  points: Float64Array,
  asked: number,
  potential: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const { unit, a, b, c, rows } = scaled(magnet)
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J4π = (magnet.polarization * unit) / (4 * Math.PI)
  const far2 = Math.max(2.2, Math.min(asked, distantRatio * (a * b * c) ** (1 / 9))) ** 2
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
