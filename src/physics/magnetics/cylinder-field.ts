/** Closed-form field of one axially polarised cylinder: the inner loops over points. */
import { scale } from '../../numerics/vector.ts'
import { edgeRounding } from './block-flux-density.ts'
import { distantRatio } from './block-multipole.ts'
import type { CylinderMagnet } from './cylinder-magnet.ts'

/** Lengths in units of the larger of radius and half height, so that no size under- or overflows. */
function scaledCylinder({ radius, height, frame }: CylinderMagnet) {
  const unit = Math.max(radius, height / 2)
  const a = radius / unit
  const b = height / 2 / unit
  const k = 1 / unit
  const [u, v, n] = frame
  return {
    unit,
    a,
    b,
    rows: [scale(u, k), scale(v, k), scale(n, k)] as const,
    // Means of r² P2 and r⁴ P4 over the volume
    Q2: (b * b) / 3 - (a * a) / 4,
    Q4: b ** 4 / 5 - (a * a * b * b) / 2 + a ** 4 / 8,
  }
}

const distantSquare = (asked: number, a: number, b: number) =>
  Math.max(2.2, Math.min(asked, distantRatio * ((Math.PI / 4) * a * a * b) ** (1 / 9))) ** 2

/** The arithmetic-geometric mean has converged when its two means agree to this; the next step squares it. */
const meanTolerance = 1e-8

/** Keeps the ratio γ of the wall finite where it divides; its sign decides the side. */
const leastγ = 1e-100

/** @internal Adds one cylinder's B at each point; `asked` is where the series may begin, in units. */
export function addCylinderFluxDensity(
  magnet: CylinderMagnet,
  points: Float64Array,
  asked: number,
  field: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const { a, b, rows, Q2, Q4 } = scaledCylinder(magnet)
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz], [Nx, Ny, Nz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J = magnet.polarization
  const far2 = distantSquare(asked, a, b)
  const farFactor = (J * a * a * b) / 2
  const { sqrt, abs, max, sign } = Math
  for (let i = 0; i < points.length; i += 3) {
    const dx = points[i]! - ox
    const dy = points[i + 1]! - oy
    const dz = points[i + 2]! - oz
    const x = ux * dx + uy * dy + uz * dz
    const y = vx * dx + vy * dy + vz * dz
    const z = nx * dx + ny * dy + nz * dz
    const ρρ = x * x + y * y
    const rr = ρρ + z * z
    // Bρ/ρ and Bz
    let radial: number
    let axial: number
    if (rr > far2) {
      const q = 1 / rr
      const C = z * z * q
      const f = farFactor * q * sqrt(q)
      const q2 = Q2 * q
      const q4 = Q4 * q * q
      axial =
        f *
        (3 * C -
          1 +
          q2 * 1.5 * ((35 * C - 30) * C + 3) +
          q4 * (15 / 8) * (((231 * C - 315) * C + 105) * C - 5))
      radial = f * z * q * (3 + q2 * 7.5 * (7 * C - 3) + q4 * (105 / 8) * ((33 * C - 30) * C + 5))
    } else {
      const ρ = sqrt(ρρ)
      const s = a + ρ
      const d = a - ρ
      const γ = max(abs(d / s), leastγ)
      const side = sign(d)
      radial = 0
      axial = 0
      for (let end = 1; end >= -1; end -= 2) {
        const ζ = z + end * b
        const R = sqrt(ζ * ζ + s * s)
        let k = max(sqrt(ζ * ζ + d * d), edgeRounding) / R
        let kk = k
        let em = 1 + k
        let g = 1
        // cel(k, 1, 1, −1) and cel(k, γ², 1, γ) on one sequence of means, each after its first step
        let c1 = 0
        let s1 = 2 * (k - 1)
        let p1 = 1 + k
        let c2 = 1 + side / γ
        let s2 = 2 * (side + k / γ)
        let p2 = k / γ + γ
        while (abs(g - k) > g * meanTolerance) {
          k = 2 * sqrt(kk)
          kk = k * em
          let f = c1
          let h = kk / p1
          c1 += s1 / p1
          s1 = 2 * (s1 + f * h)
          p1 += h
          f = c2
          h = kk / p2
          c2 += s2 / p2
          s2 = 2 * (s2 + f * h)
          p2 += h
          g = em
          em += k
        }
        radial += (end * (s1 + c1 * em)) / (R * em * (em + p1))
        axial += (end * ζ * (s2 + c2 * em)) / (R * em * (em + p2))
      }
      radial *= ρ > 0 ? (J * a) / 2 / ρ : 0
      axial *= (J * a) / 2 / s
    }
    const Bx = radial * x
    const By = radial * y
    field[i] = field[i]! + Bx * Ux + By * Vx + axial * Nx
    field[i + 1] = field[i + 1]! + Bx * Uy + By * Vy + axial * Ny
    field[i + 2] = field[i + 2]! + Bx * Uz + By * Vz + axial * Nz
  }
}

/** Below this 2aρ/(a² + ρ²) the sum over 32 evenly spaced angles is exact to rounding; below the next, over 16. */
const smoothRatio = 0.55
const smoothestRatio = 0.19
const angles = Float64Array.from({ length: 15 }, (_, j) => ((j + 1) * Math.PI) / 16)
const cosines = angles.map(Math.cos)
const sineSquares = angles.map((φ) => Math.sin(φ) ** 2)

/** @internal Adds one cylinder's A at each point; `asked` is where the series may begin, in units. */
export function addCylinderVectorPotential(
  magnet: CylinderMagnet,
  points: Float64Array,
  asked: number,
  potential: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const { unit, a, b, rows, Q2, Q4 } = scaledCylinder(magnet)
  const [[ux, uy, uz], [vx, vy, vz], [nx, ny, nz]] = rows
  const [[Ux, Uy, Uz], [Vx, Vy, Vz]] = magnet.frame
  const [ox, oy, oz] = magnet.centre
  const J = magnet.polarization * unit
  const far2 = distantSquare(asked, a, b)
  const farFactor = (J * a * a * b) / 2
  const aa = a * a
  const { sqrt, abs, max } = Math
  for (let i = 0; i < points.length; i += 3) {
    const dx = points[i]! - ox
    const dy = points[i + 1]! - oy
    const dz = points[i + 2]! - oz
    const x = ux * dx + uy * dy + uz * dz
    const y = vx * dx + vy * dy + vz * dz
    const z = nx * dx + ny * dy + nz * dz
    const ρρ = x * x + y * y
    const rr = ρρ + z * z
    // Aφ/ρ
    let w: number
    if (rr > far2) {
      const q = 1 / rr
      const C = z * z * q
      w =
        farFactor *
        q *
        sqrt(q) *
        (1 + Q2 * q * 1.5 * (5 * C - 1) + Q4 * q * q * (15 / 8) * ((21 * C - 14) * C + 1))
    } else {
      const ρ = sqrt(ρρ)
      const ζ1 = z + b
      const ζ0 = z - b
      const sum = aa + ρρ
      const twice = 2 * a * ρ
      if (twice < smoothRatio * sum) {
        // ∫0…π sin²φ/(D² √(D² + ζ²)) dφ: periodic and smooth, so evenly spaced angles converge exponentially
        const step = twice < smoothestRatio * sum ? 2 : 1
        const z1 = ζ1 * ζ1
        const z0 = ζ0 * ζ0
        let total = 0
        for (let j = step - 1; j < 15; j += step) {
          const D = sum - twice * cosines[j]!
          total += (sineSquares[j]! / D) * (ζ1 / sqrt(D + z1) - ζ0 / sqrt(D + z0))
        }
        w = (J * aa * total * step) / 32
      } else {
        const s = a + ρ
        const d = a - ρ
        const γ = max(abs(d / s), leastγ)
        const p = γ * γ
        w = 0
        for (let end = 1; end >= -1; end -= 2) {
          const ζ = end > 0 ? ζ1 : ζ0
          const R = sqrt(ζ * ζ + s * s)
          let k = max(sqrt(ζ * ζ + d * d), 1e-140) / R
          let kk = k
          let em = 1 + k
          let g = 1
          // cel(k, 1, p, 1) − p cel(k, p, 1, 1)
          let c1 = p + 1
          let s1 = 2 * (1 + p * k)
          let p1 = 1 + k
          let c2 = p + 1
          let s2 = 2 * γ * (1 + k)
          let p2 = k / γ + γ
          while (abs(g - k) > g * meanTolerance) {
            k = 2 * sqrt(kk)
            kk = k * em
            let f = c1
            let h = kk / p1
            c1 += s1 / p1
            s1 = 2 * (s1 + f * h)
            p1 += h
            f = c2
            h = kk / p2
            c2 += s2 / p2
            s2 = 2 * (s2 + f * h)
            p2 += h
            g = em
            em += k
          }
          w += ((end * ζ) / (R * em)) * ((s1 + c1 * em) / (em + p1) - (s2 + c2 * em) / (em + p2))
        }
        w *= (2 * J * aa) / (s * s * (1 - p) * (1 - p))
      }
    }
    const Ax = -w * y
    const Ay = w * x
    potential[i] = potential[i]! + Ax * Ux + Ay * Vx
    potential[i + 1] = potential[i + 1]! + Ax * Uy + Ay * Vy
    potential[i + 2] = potential[i + 2]! + Ax * Uz + Ay * Vz
  }
}
