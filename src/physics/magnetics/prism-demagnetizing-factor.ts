/** Demagnetizing factor of a uniformly polarised prism, averaged over its volume. */
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { outlineTriangles } from './outline-triangle.ts'
import { endPotentials, prismView, viewPrism, wallPotential } from './prism-face.ts'
import { type PrismMagnet, prismShape, requirePrism } from './prism-shape.ts'

/** Gauss points along each edge of a face, crowded towards its edges; even. */
const faceOrder = 14

/** Nodes on 0 … 1 by t ↦ t²(3 − 2t), whose slope is zero at both ends, and weights that sum to one. */
function crowded(order: number) {
  const { nodes, weights } = gaussLegendre(order)
  const t = nodes.map((x) => (1 + x) / 2)
  return { nodes: t.map((s) => s * s * (3 - 2 * s)), weights: t.map((s, i) => 3 * s * (1 - s) * weights[i]!) }
}

/**
 * Magnetometric demagnetizing factor of a prism along its J.
 *
 *   N = (1/V) Σ_f (ĵ·n_f) ∬ φ dS,  φ = 1/4π Σ_f (ĵ·n_f) ∬dS′/R
 *
 * The mean of −∇φ over the volume is a sum over the faces, and φ of the charged faces is closed: only a double
 * integral of a continuous function is left to Gauss points, crowded at the edges.
 *
 * Holds: uniform polarization in any direction, average over the volume. Accuracy: 1e-6 for outlines of four corners; 2e-4 for
 * many corners.
 *
 * @param magnet  outline, height [m], direction [1]; pose and J do not matter    [m], [T]
 * @returns       N  from 0 to 1                                                  [1]
 * @throws RangeError   what `prismFluxDensity` refuses
 * @source derived, from the mean of a gradient as a surface integral
 * @example prismDemagnetizingFactor({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], outline: new Float64Array([-0.01, -0.01, 0.01, -0.01, 0.01, 0.01, -0.01, 0.01]), height: 0.02, direction: [0, 0, 1], polarization: 1 }) // 0.3333
 */
export function prismDemagnetizingFactor(magnet: PrismMagnet): number {
  requirePrism(magnet, 0)
  const shape = prismShape(magnet)
  const view = prismView(shape)
  const { n, x, y, tx, ty, length, halfHeight: h, area } = shape
  const [jx, jy, jz] = magnet.direction
  const σ = Float64Array.from({ length: n }, (_, w) => jx * ty[w]! - jy * tx[w]!)
  const lateral = jx !== 0 || jy !== 0
  const point = { x: 0, y: 0, z: 0 }
  const demand = { floor: 1e-280, standing: true, ends: true, apart: true }
  const φ = (px: number, py: number, pz: number) => {
    point.x = px
    point.y = py
    point.z = pz
    viewPrism(shape, view, point, demand)
    let sum = jz * endPotentials(view)
    if (lateral) for (let w = 0; w < n; w++) sum += σ[w]! * wallPotential(shape, view, w)
    return sum
  }
  let sum = 0
  if (jz !== 0) {
    const outline = Float64Array.from({ length: 2 * n }, (_, i) => (i % 2 === 0 ? x : y)[i >> 1]!)
    const triangles = outlineTriangles(outline)
    const each = Math.max(2, Math.ceil(faceOrder * Math.min(1, Math.sqrt(12 / triangles.length))))
    const { nodes, weights } = crowded(each)
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
      const [bx, by, cx, cy] = [x[b]! - x[a]!, y[b]! - y[a]!, x[c]! - x[a]!, y[c]! - y[a]!]
      const cross = bx * cy - by * cx
      for (let i = 0; i < each; i++)
        for (let j = 0; j < each; j++) {
          const s = nodes[i]!
          const r = nodes[j]!
          const px = x[a]! + s * (bx + r * (cx - bx))
          const py = y[a]! + s * (by + r * (cy - by))
          const w = s * cross * weights[i]! * weights[j]! * jz
          // Charges that are all on the ends give opposite φ there
          sum += w * (lateral ? φ(px, py, h) - φ(px, py, -h) : 2 * φ(px, py, h))
        }
    }
  }
  if (lateral) {
    const up = crowded(faceOrder)
    // Charges that are all on the walls give equal φ above and below the middle
    const levels = jz === 0 ? faceOrder / 2 : faceOrder
    const twofold = faceOrder / levels
    for (let w = 0; w < n; w++) {
      if (σ[w] === 0) continue
      const across = crowded(Math.min(faceOrder, Math.max(3, Math.ceil(1.5 * faceOrder * length[w]!))))
      across.nodes.forEach((t, i) => {
        const s = t * length[w]!
        const share = σ[w]! * across.weights[i]! * length[w]! * 2 * h * twofold
        for (let j = 0; j < levels; j++)
          sum +=
            share * up.weights[j]! * φ(x[w]! + s * tx[w]!, y[w]! + s * ty[w]!, h * (2 * up.nodes[j]! - 1))
      })
    }
  }
  return Math.min(1, Math.max(0, sum / (4 * Math.PI * area * 2 * h)))
}
