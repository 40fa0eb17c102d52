/** Gauss–Legendre nodes: definite integrals of smooth functions. */
import { refuse } from '../refusal/require.ts'

export interface QuadratureRule {
  /** Nodes on −1…1, rising. */
  readonly nodes: Float64Array
  /** Weights; they sum to 2. */
  readonly weights: Float64Array
}

const known = new Map<number, QuadratureRule>()

/** The n-point rule on −1…1; exact for polynomials up to degree 2n − 1. */
export function gaussLegendre(n: number): QuadratureRule {
  if (!Number.isInteger(n) || n < 1 || n > 256)
    refuse({ name: 'n', condition: 'a whole number from 1 to 256', value: n, code: 'not-a-choice' })
  const found = known.get(n)
  if (found) return found
  const nodes = new Float64Array(n)
  const weights = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5))
    // u = (1 − x²) P′; its own slope is −n (n + 1) P, zero at the node, so u is good to the square of the last step.
    let u = 1
    for (let iteration = 0; iteration < 50; iteration++) {
      let p0 = 1
      let p1 = x
      for (let k = 2; k <= n; k++) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k]
      u = n * (p0 - x * p1)
      const step = (p1 * (1 - x) * (1 + x)) / u
      x -= step
      if (Math.abs(step) < 1e-15) break
    }
    nodes[i] = x
    weights[i] = (2 * (1 - x) * (1 + x)) / (u * u)
  }
  const rule = { nodes, weights }
  known.set(n, rule)
  return rule
}

/** The n-point rule carried to `from`…`to`: nodes there, weights that sum to `to − from`. */
export function gaussLegendreOn(n: number, from: number, to: number): QuadratureRule {
  const { nodes, weights } = gaussLegendre(n)
  const half = (to - from) / 2
  const middle = (from + to) / 2
  return { nodes: nodes.map((x) => middle + half * x), weights: weights.map((w) => half * w) }
}
