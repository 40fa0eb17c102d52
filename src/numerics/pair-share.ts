/** What two inputs do together to the scatter of a result, beyond what each does alone. */
import { requireLength } from '../refusal/require.ts'
import { basisVariable, type ShareBasis } from './variance-share.ts'

export interface PairShare {
  readonly pair: readonly [number, number]
  /** Of the whole variance, 0 … 1. */
  readonly share: number
}

/** Shares below this many standard errors of what chance leaves are chance. */
const clearly = 3

/** Of mean square 1. */
const first = (basis: ShareBasis, u: number): number =>
  (basis === 'legendre' ? Math.sqrt(3) : 1) * basisVariable(basis, u)

/**
 * Shares of the products of two inputs, the largest first, from what is left when every input's own effect is taken off.
 *
 *   c_ij = mean r φ_i(u_i) φ_j(u_j),   S_ij = (c_ij² − s²/N)/V,   s² = mean r²
 *
 * φ of mean 0 and mean square 1, the first of its basis: the bilinear part of a pair, so at most its whole share. Pairs
 * with |c_ij| under three standard errors s/√N are left out.
 *
 * Holds: points that fill the cube evenly. Accuracy: about 2 |c_ij| s/(√N V).
 *
 * @param points   u, point after point, each strictly between 0 and 1
 * @param residual r at each point
 * @param variance V of the result before anything was taken off, above zero
 * @param apart    how many of the points differ, where some inputs are shared by several: N in the errors above
 */
export function pairShares(
  points: ArrayLike<number>,
  residual: ArrayLike<number>,
  {
    bases,
    variance,
    apart,
  }: {
    readonly bases: readonly ShareBasis[]
    readonly variance: number
    readonly apart: (i: number, j: number) => number
  },
): PairShare[] {
  const [N, d] = [residual.length, bases.length]
  requireLength('points', points, N * d)
  const φ = Float64Array.from({ length: N * d }, (_, k) => first(bases[k % d]!, points[k]!))
  let square = 0
  for (let n = 0; n < N; n++) square += residual[n]! ** 2 / N
  const found: PairShare[] = []
  for (let i = 0; i < d; i++)
    for (let j = i + 1; j < d; j++) {
      let c = 0
      for (let n = 0; n < N; n++) c += (residual[n]! * φ[n * d + i]! * φ[n * d + j]!) / N
      const chance = square / apart(i, j)
      if (c * c > clearly ** 2 * chance) found.push({ pair: [i, j], share: (c * c - chance) / variance })
    }
  return found.sort((one, other) => other.share - one.share)
}
