/** Ratio J1/J0 of Bessel functions on the ray of the diffusion equation, z = (1 − j) x. */
import { requireNotNegative } from '../refusal/require.ts'

/** Beyond this x the ratio is −j to first order, with its next term: better than 1e-6. */
const farthest = 300

/**
 * J1(z)/J0(z) at z = (1 − j) x, real and imaginary part. By the continued fraction J_n/J_(n−1) = 1/(2n/z − J_(n+1)/J_n),
 * evaluated from far enough down that nothing of its end is left.
 */
export function besselRatio(x: number): readonly [re: number, im: number] {
  requireNotNegative('x', x)
  if (x > farthest) {
    // J1/J0 → −j (1 + j/(2 z)) for a large z with a negative imaginary part
    const inverse = 1 / (4 * x)
    return [inverse, -1 + inverse]
  }
  let re = 0
  let im = 0
  // 1/z = (1 + j)/(2 x)
  for (let n = Math.ceil(1.5 * x) + 24; n >= 1; n--) {
    // times x throughout, so that x → 0 stays finite: r = x/(n (1 + j) − x r)
    const a = n - x * re
    const b = n - x * im
    const size = a * a + b * b
    re = (x * a) / size
    im = (-x * b) / size
  }
  return [re, im]
}
