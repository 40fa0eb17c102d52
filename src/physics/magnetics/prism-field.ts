/** Closed-form field of one prism: the inner loops over points. */
import { edgeRounding } from './block-flux-density.ts'
import { distantRatio } from './block-multipole.ts'
import { distantDerivatives } from './prism-distant.ts'
import { endPotentials, prismView, viewPrism, wallPotential } from './prism-face.ts'
import { type PrismMagnet, type PrismShape, prismShape } from './prism-shape.ts'

/** Places a point in the prism's own axes and units. */
function seenFrom(shape: PrismShape, points: Float64Array, i: number, point: Place): number {
  const { rows, centre } = shape
  const dx = points[i]! - centre[0]
  const dy = points[i + 1]! - centre[1]
  const dz = points[i + 2]! - centre[2]
  point.x = rows[0][0] * dx + rows[0][1] * dy + rows[0][2] * dz
  point.y = rows[1][0] * dx + rows[1][1] * dy + rows[1][2] * dz
  point.z = rows[2][0] * dx + rows[2][1] * dy + rows[2][2] * dz
  return point.x * point.x + point.y * point.y + point.z * point.z
}

interface Place {
  x: number
  y: number
  z: number
}

/**
 * Square of the distance from which the series serves. By default that is where its cut meets the closed form's
 * rounding: later than a block's, as the series is cut earlier.
 */
const distantSquare = (asked: number, { area, halfHeight }: PrismShape): number =>
  Math.max(2.5, Math.min(asked, defaultRatio * ((area * halfHeight) / 4) ** (1 / 7))) ** 2
const defaultRatio = 3 * distantRatio

/** Adds the local vector to a flat result in the machine frame. */
function addTurned(magnet: PrismMagnet, x: number, y: number, z: number, i: number, sum: Float64Array): void {
  const [u, v, n] = magnet.frame
  sum[i] = sum[i]! + x * u[0] + y * v[0] + z * n[0]
  sum[i + 1] = sum[i + 1]! + x * u[1] + y * v[1] + z * n[1]
  sum[i + 2] = sum[i + 2]! + x * u[2] + y * v[2] + z * n[2]
}

/** @internal Adds one prism's B at each point; `asked` is where the series may begin, in units. */
export function addPrismFluxDensity(
  magnet: PrismMagnet,
  points: Float64Array,
  asked: number,
  field: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const shape = prismShape(magnet)
  const view = prismView(shape)
  const { n, tx, ty } = shape
  const J4π = magnet.polarization / (4 * Math.PI)
  const u = magnet.direction
  const [Jx, Jy, Jz] = [u[0] * J4π, u[1] * J4π, u[2] * J4π]
  const lateral = Jx !== 0 || Jy !== 0
  const far2 = distantSquare(asked, shape)
  const farFactor = J4π * shape.area * 2 * shape.halfHeight
  const point: Place = { x: 0, y: 0, z: 0 }
  const distant = new Float64Array(6)
  const demand = { floor: edgeRounding ** 2, standing: lateral, ends: lateral, apart: false }
  for (let i = 0; i < points.length; i += 3) {
    if (seenFrom(shape, points, i, point) > far2) {
      distantDerivatives(shape, point, u, distant)
      addTurned(magnet, farFactor * distant[3]!, farFactor * distant[4]!, farFactor * distant[5]!, i, field)
      continue
    }
    viewPrism(shape, view, point, demand)
    let Bx = 0
    let By = 0
    let Bz = 0
    for (let w = 0; w < n; w++) {
      const mx = ty[w]!
      const my = -tx[w]!
      const Δ = view.upper[w]! - view.lower[w]!
      const ω = view.before[w]! > 0 ? view.wall[w]! : view.before[w]! < 0 ? -view.wall[w]! : 0
      Bx += Jz * mx * Δ
      By += Jz * my * Δ
      Bz -= Jz * ω
      if (!lateral) continue
      const σ = Jx * mx + Jy * my
      const rise = view.standing[w + 1 < n ? w + 1 : 0]! - view.standing[w]!
      Bx += (σ * mx - Jx) * ω + σ * tx[w]! * rise
      By += (σ * my - Jy) * ω + σ * ty[w]! * rise
      Bz += σ * Δ
    }
    if (lateral) {
      const ω = Math.sign(view.overUpper) * view.upperEnd - Math.sign(view.overLower) * view.lowerEnd
      Bx -= Jx * ω
      By -= Jy * ω
    }
    addTurned(magnet, Bx, By, Bz, i, field)
  }
}

/** @internal Adds one prism's A at each point; `asked` is where the series may begin, in units. */
export function addPrismVectorPotential(
  magnet: PrismMagnet,
  points: Float64Array,
  asked: number,
  potential: Float64Array,
): void {
  if (magnet.polarization === 0) return
  const shape = prismShape(magnet)
  const view = prismView(shape)
  const { n, tx, ty } = shape
  const J4π = (magnet.polarization * shape.unit) / (4 * Math.PI)
  const u = magnet.direction
  const [Jx, Jy, Jz] = [u[0] * J4π, u[1] * J4π, u[2] * J4π]
  const lateral = Jx !== 0 || Jy !== 0
  const far2 = distantSquare(asked, shape)
  const volume = shape.area * 2 * shape.halfHeight
  const point: Place = { x: 0, y: 0, z: 0 }
  const distant = new Float64Array(6)
  const demand = { floor: 1e-280, standing: true, ends: lateral, apart: true }
  for (let i = 0; i < points.length; i += 3) {
    let Ax = 0
    let Ay = 0
    let Az = 0
    if (seenFrom(shape, points, i, point) > far2) {
      // A = ∇Φ × J/4π
      distantDerivatives(shape, point, u, distant)
      const gx = volume * distant[0]!
      const gy = volume * distant[1]!
      const gz = volume * distant[2]!
      Ax = gy * Jz - gz * Jy
      Ay = gz * Jx - gx * Jz
      Az = gx * Jy - gy * Jx
    } else {
      viewPrism(shape, view, point, demand)
      for (let w = 0; w < n; w++) {
        const Φ = wallPotential(shape, view, w)
        Ax += Jz * tx[w]! * Φ
        Ay += Jz * ty[w]! * Φ
        if (lateral) Az -= (Jx * tx[w]! + Jy * ty[w]!) * Φ
      }
      if (lateral) {
        const Φ = endPotentials(view)
        Ax += Jy * Φ
        Ay -= Jx * Φ
      }
    }
    addTurned(magnet, Ax, Ay, Az, i, potential)
  }
}
