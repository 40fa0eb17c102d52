/** Quadrature over the volume of a magnet. */
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { refuse } from '../../refusal/require.ts'
import { type Magnet, magnetVolume } from './magnet.ts'
import { outlineTriangles } from './outline-triangle.ts'

export interface VolumePoints {
  /** Flat x y z of each point, inside the magnet [m]. */
  readonly points: Float64Array
  /** One for each point; they sum to the volume [m³]. */
  readonly weights: Float64Array
}

/** Local x, y and weight, whose sum is the cross-section's area; flat in threes. */
function sectionPoints(magnet: Magnet, order: number): number[] {
  const { nodes, weights } = gaussLegendre(order)
  const section: number[] = []
  if ('size' in magnet) {
    const [w, l] = magnet.size
    for (let i = 0; i < order; i++)
      for (let j = 0; j < order; j++)
        section.push((nodes[i]! * w) / 2, (nodes[j]! * l) / 2, (weights[i]! * weights[j]! * w * l) / 4)
  } else if ('radius' in magnet) {
    // Gauss points in ρ², which the mean round the axis of a smooth function is one of
    const rings = gaussLegendre(Math.ceil(order / 2))
    const spokes = 2 * order
    rings.nodes.forEach((u, i) => {
      const ρ = magnet.radius * Math.sqrt((1 + u) / 2)
      const share = (rings.weights[i]! * Math.PI * magnet.radius ** 2) / (2 * spokes)
      for (let k = 0; k < spokes; k++) {
        const φ = (2 * Math.PI * (k + (i % 2) / 2)) / spokes
        section.push(ρ * Math.cos(φ), ρ * Math.sin(φ), share)
      }
    })
  } else {
    const triangles = outlineTriangles(magnet.outline)
    const corners = magnet.outline
    // So many points a triangle that the whole has no more than a few times those of a block
    const each = Math.max(1, Math.ceil(order * Math.min(1, Math.sqrt(6 / triangles.length))))
    const inner = gaussLegendre(each)
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
      const [ax, ay] = [corners[2 * a]!, corners[2 * a + 1]!]
      const [bx, by] = [corners[2 * b]! - ax, corners[2 * b + 1]! - ay]
      const [cx, cy] = [corners[2 * c]! - ax, corners[2 * c + 1]! - ay]
      const cross = bx * cy - by * cx
      for (let i = 0; i < each; i++)
        for (let j = 0; j < each; j++) {
          // The square folded to the triangle: (s, t) ↦ s (b + t (c − b)), area s ds dt
          const s = (1 + inner.nodes[i]!) / 2
          const r = (1 + inner.nodes[j]!) / 2
          section.push(
            ax + s * (bx + r * (cx - bx)),
            ay + s * (by + r * (cy - by)),
            (s * cross * inner.weights[i]! * inner.weights[j]!) / 4,
          )
        }
    }
  }
  return section
}

/**
 * Points and weights that integrate over a magnet's volume.
 *
 *   ∫f dV ≈ Σ_i w_i f(r_i),  Σ_i w_i = V
 *
 * Gauss points along local z times points of the cross-section: Gauss by Gauss on a block, Gauss in ρ² by evenly spaced
 * angles on a cylinder, folded Gauss squares on the triangles of a prism's outline.
 *
 * Holds: any shape. Accuracy: exact for polynomials up to degree 2·order − 1 (on a cylinder: order · 2 − 1 in ρ; on a
 * prism one degree less, and lower for outlines of more than four corners).
 *
 * @param magnet  any shape                                               [m], [T]
 * @param order   Gauss points along local z and along a block's edges    [1]
 * @returns       points [m] and weights, in the machine frame            [m³]
 * @throws RangeError   order not a whole number from 1 to 64
 * @source derived, from product rules of Gauss and of evenly spaced angles
 * @example magnetVolumePoints({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.01], polarization: 1 }, 1).weights[0] // 4.00e-6
 */
export function magnetVolumePoints(magnet: Magnet, order: number): VolumePoints {
  if (!Number.isInteger(order) || order < 1 || order > 64)
    refuse({ name: 'order', condition: 'a whole number from 1 to 64', value: order, code: 'not-a-choice' })
  const { centre, frame } = magnet
  const [u, v, n] = frame
  const height = 'size' in magnet ? magnet.size[2] : magnet.height
  const section = sectionPoints(magnet, order)
  const { nodes, weights: along } = gaussLegendre(order)
  const count = section.length / 3
  const points = new Float64Array(3 * count * order)
  const weights = new Float64Array(count * order)
  let sum = 0
  for (let i = 0, at = 0; i < count; i++) {
    const [x, y, area] = [section[3 * i]!, section[3 * i + 1]!, section[3 * i + 2]!]
    for (let k = 0; k < order; k++, at++) {
      const z = (nodes[k]! * height) / 2
      for (let axis = 0; axis < 3; axis++)
        points[3 * at + axis] = centre[axis]! + x * u[axis]! + y * v[axis]! + z * n[axis]!
      weights[at] = (area * along[k]! * height) / 2
      sum += weights[at]!
    }
  }
  // Rounding of the nodes must not pass for volume
  const share = magnetVolume(magnet) / sum
  return { points, weights: weights.map((w) => w * share) }
}
