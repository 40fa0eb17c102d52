/** Pull of one loose magnet to a thick steel plate: the attraction of the magnet and its mirror image. */
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import { cylinderFluxDensity } from './cylinder-magnet.ts'

const μ0 = 4e-7 * Math.PI

/** w asinh(u/√(v² + w²)), which goes to zero with w before its factor grows beyond numbers. */
const product = (w: number, u: number, rest: number): number =>
  w < 1e-100 || u === 0 ? 0 : w * Math.asinh(u / rest)

/** Fourfold integral of the force between two rectangles, at one pair of corners. */
function corner(u: number, v: number, w: number): number {
  const r = Math.hypot(u, v, w)
  const area = u * v
  return (
    u * product(w, u, Math.hypot(v, w)) +
    v * product(w, v, Math.hypot(u, w)) +
    (area === 0 ? 0 : area * Math.atan2(area, r * w)) -
    r * w
  )
}

/** Spacer over the longest edge up to which six digits are left. */
export const pullSpacerRange = [0, 10] as const

/**
 * Pull of a block, polarised along its third edge, to a thick plate of ideal iron.
 *
 *   F = J²/(4πμ0) Σ± φ(u, v, w), φ = u w asinh(u/√(v² + w²)) + v w asinh(v/√(u² + w²)) + u v atan(u v/(r w)) − r w
 *
 * over u = 0, ±a, v = 0, ±b (doubled at 0), w = 2s, 2s + c, 2s + 2c: the force between the block and its image at
 * twice the spacer. The source's ln(r − u) become asinh, for what differs cancels in the sum over ±u.
 *
 * Holds: unsaturated iron thicker than the magnet's width, wide plate, fixed J. Accuracy: rounding; six digits within
 * `pullSpacerRange`. Real plates pull less: paint, rust, thin steel.
 *
 * @param magnet.size          a, b, c  edges, the third along J     [m]
 * @param magnet.polarization  J                                     [T]
 * @param magnet.spacer        s  between magnet and plate           [m]
 * @returns                    F  attraction                         [N]
 * @throws RangeError   an edge not above zero; spacer below zero; any value not finite
 * @source akoun1984, force along z between parallel cuboids (from memory, not opened)
 * @example blockPlatePull({ size: [0.02, 0.02, 0.02], polarization: 1.3, spacer: 0.005 }) // 44.4017
 */
export function blockPlatePull(magnet: {
  readonly size: readonly [number, number, number]
  readonly polarization: number
  readonly spacer: number
}): number {
  const { size, polarization: J, spacer } = magnet
  size.forEach((edge, i) => {
    requirePositive(`size[${i}]`, edge, 'm')
  })
  requireFinite('polarization', J, 'T')
  requireNotNegative('spacer', spacer, 'm')
  const unit = Math.max(...size)
  const [a, b, c] = [size[0] / unit, size[1] / unit, size[2] / unit]
  const s = spacer / unit
  const over = (w: number) => corner(0, 0, w) - corner(a, 0, w) - corner(0, b, w) + corner(a, b, w)
  const sum = 4 * (2 * over(2 * s + c) - over(2 * s) - over(2 * s + 2 * c))
  return Math.abs((J * unit) ** 2 * sum) / (4 * Math.PI * μ0)
}

/** Gauss points along the radius. */
const radialOrder = 40

/**
 * Pull of a cylinder, polarised along its axis, to a thick plate of ideal iron.
 *
 *   F = J/μ0 ∮ (Bn(near face) − Bn(far face)) dA, B of the image at twice the spacer
 *
 * the poles of the magnet in the field of its image, ring by ring.
 *
 * Holds: as `blockPlatePull`. Accuracy: 1e-3 in contact, where the image's field bends at the rim; 1e-6 from a
 * twentieth of the radius on, up to a spacer of ten radii.
 *
 * @param magnet.radius        R                              [m]
 * @param magnet.height        h  along J                     [m]
 * @param magnet.polarization  J                              [T]
 * @param magnet.spacer        s  between magnet and plate    [m]
 * @returns                    F  attraction                  [N]
 * @throws RangeError   radius or height not above zero; spacer below zero; any value not finite
 * @source derived, from the force on magnetic surface charges J in the field of the image
 * @example cylinderPlatePull({ radius: 0.01, height: 0.005, polarization: 1.3, spacer: 0.002 }) // 25.625
 */
export function cylinderPlatePull(magnet: {
  readonly radius: number
  readonly height: number
  readonly polarization: number
  readonly spacer: number
}): number {
  const { radius: R, height: h, polarization: J, spacer: s } = magnet
  requirePositive('radius', R, 'm')
  requirePositive('height', h, 'm')
  requireFinite('polarization', J, 'T')
  requireNotNegative('spacer', s, 'm')
  // ρ = R sin t crowds the points at the rim
  const { nodes, weights } = gaussLegendreOn(radialOrder, 0, Math.PI / 2)
  const image = {
    centre: [0, 0, -h / 2 - s],
    frame: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
    radius: R,
    height: h,
    polarization: 1,
  } as const
  const points = new Float64Array(6 * radialOrder)
  nodes.forEach((t, i) => {
    points[6 * i] = R * Math.sin(t)
    points[6 * i + 2] = s
    points[6 * i + 3] = R * Math.sin(t)
    points[6 * i + 5] = s + h
  })
  const B = cylinderFluxDensity([image], points)
  let sum = 0
  nodes.forEach((t, i) => {
    sum += weights[i]! * R * Math.cos(t) * R * Math.sin(t) * (B[6 * i + 2]! - B[6 * i + 5]!)
  })
  return (2 * Math.PI * J * J * sum) / μ0
}
