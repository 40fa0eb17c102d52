/** Modified Bessel functions of whole order as logarithms and logarithmic slopes, which no argument overflows. */
import { refuse, requirePositive } from '../refusal/require.ts'

export interface ModifiedBessel {
  /** ln I_n(x). */
  readonly lnI: number
  /** ln K_n(x). */
  readonly lnK: number
  /** I′_n(x)/I_n(x), above zero. */
  readonly slopeI: number
  /** K′_n(x)/K_n(x), below zero. */
  readonly slopeK: number
}

/** From this order on the uniform expansion serves, with so many terms after the first. */
const uniformFrom = 16
const terms = 8

/** Coefficients by rising power of t of u_k(t) (Abramowitz & Stegun 1964, 9.3.9 and 9.3.10). */
const uniformPolynomials = (() => {
  const u: number[][] = [[1]]
  for (let k = 0; k < terms; k++) {
    const next = new Array<number>(3 * k + 4).fill(0)
    u[k]!.forEach((c, j) => {
      next[j + 1]! += (j * c) / 2 + c / (8 * (j + 1))
      next[j + 3]! -= (j * c) / 2 + (5 * c) / (8 * (j + 3))
    })
    u.push(next)
  }
  return u
})()

/** Coefficients of v_k(t) (9.3.13 and 9.3.14): v_k = u_k + t (t² − 1) (u_{k−1}/2 + t u′_{k−1}). */
const uniformSlopePolynomials = uniformPolynomials.map((u, k) => {
  const v = [...u]
  if (k > 0)
    uniformPolynomials[k - 1]!.forEach((c, j) => {
      v[j + 1]! -= c * (0.5 + j)
      v[j + 3]! += c * (0.5 + j)
    })
  return v
})

/** u_k and v_k hold only the powers k, k + 2, … 3k: their coefficients, k + 1 for each k, one after the other. */
const packed = (polynomials: number[][]): Float64Array =>
  Float64Array.from(polynomials.flatMap((c, k) => Array.from({ length: k + 1 }, (_, i) => c[k + 2 * i] ?? 0)))
const U = packed(uniformPolynomials)
const V = packed(uniformSlopePolynomials)

/** Σ c_k(t)/n^k over even and over odd k. */
function uniformSums(coefficients: Float64Array, n: number, t: number): readonly [even: number, odd: number] {
  const square = t * t
  let even = 1
  let odd = 0
  let power = 1
  let at = 1
  for (let k = 1; k <= terms; k++) {
    power *= t / n
    let sum = coefficients[at + k]!
    for (let i = k - 1; i >= 0; i--) sum = sum * square + coefficients[at + i]!
    at += k + 1
    if ((k & 1) === 0) even += sum * power
    else odd += sum * power
  }
  return [even, odd]
}

/** Uniform expansion for large order (9.7.7 to 9.7.10). */
function uniform(n: number, x: number): ModifiedBessel {
  const z = x / n
  const root = Math.sqrt(1 + z * z)
  const exponent = n * (root + Math.log(z / (1 + root)))
  const [evenU, oddU] = uniformSums(U, n, 1 / root)
  const [evenV, oddV] = uniformSums(V, n, 1 / root)
  const [sumI, sumK] = [evenU + oddU, evenU - oddU]
  const grow = root / z
  return {
    lnI: exponent + 0.5 * Math.log((sumI * sumI) / (2 * Math.PI * n * root)),
    lnK: -exponent + 0.5 * Math.log((sumK * sumK * Math.PI) / (2 * n * root)),
    slopeI: (grow * (evenV + oddV)) / sumI,
    slopeK: (-grow * (evenV - oddV)) / sumK,
  }
}

/** I′/I − n/x = I_{n+1}/I_n by the uniform expansion. */
function uniformRatio(n: number, x: number): number {
  const z = x / n
  const root = Math.sqrt(1 + z * z)
  const [evenU, oddU] = uniformSums(U, n, 1 / root)
  const [evenV, oddV] = uniformSums(V, n, 1 / root)
  return ((root / z) * (evenV + oddV)) / (evenU + oddU) - n / x
}

/** e^x K_0(x) and e^x K_1(x): trapezoidal rule on ∫ exp(−x (cosh t − 1)) cosh νt dt (9.6.24). */
function lowestK(x: number): readonly [number, number] {
  const h = Math.min(0.35, 0.8 / Math.sqrt(x))
  const step = Math.exp(h)
  let grow = 1
  let k0 = 0.5
  let k1 = 0.5
  for (;;) {
    grow *= step
    // cosh t − 1 from e^t without cancellation
    const exponent = (x * (grow - 1) * (grow - 1)) / (2 * grow)
    if (exponent > 30) break
    const f = Math.exp(-exponent)
    k0 += f
    k1 += (f * (grow + 1 / grow)) / 2
  }
  return [k0 * h, k1 * h]
}

/** Above this a product is taken into its logarithm. */
const large = 1e150

/** Low orders: K upwards from 0 and 1, I downwards from the uniform expansion, joined by the Wronskian (9.6.15). */
function low(n: number, x: number): ModifiedBessel {
  const [k0, k1] = lowestK(x)
  // ρ = K_{j+1}/K_j
  let ρ = k1 / k0
  let lnK = -x
  let product = k0
  let before = 0
  for (let j = 0; j < n; j++) {
    if (ρ > large) lnK += Math.log(ρ)
    else product *= ρ
    if (product > large) {
      lnK += Math.log(product)
      product = 1
    }
    before = 1 / ρ
    ρ = (2 * (j + 1)) / x + before
  }
  lnK += Math.log(product)
  // s = I_{j+1}/I_j downwards; the start's rounding is nothing beside the 2j/x it is added to
  const above = uniformFrom + 4
  let s = uniformRatio(above, x)
  for (let j = above; j > n; j--) s = 1 / ((2 * j) / x + s)
  return {
    lnI: -Math.log(x) - Math.log(ρ + s) - lnK,
    lnK,
    slopeI: s + n / x,
    slopeK: n === 0 ? -ρ : -(before + n / x),
  }
}

/** Least and greatest argument; beyond, quotients leave the range of numbers. */
const argumentRange = [1e-290, 1e150] as const

/**
 * ln I_n, ln K_n and the slopes I′/I, K′/K for whole n ≥ 0 and x from 1e-290 to 1e150, values within 1e-10 of
 * max(1, |ln|) and slopes within 1e-10 of themselves.
 */
export function modifiedBessel(n: number, x: number): ModifiedBessel {
  if (!(Number.isInteger(n) && n >= 0))
    refuse({ name: 'n', condition: 'a whole number, 0 or more', value: n, code: 'below-minimum' })
  if (!(x >= argumentRange[0] && x <= argumentRange[1])) {
    requirePositive('x', x)
    refuse({
      name: 'x',
      condition: `from ${argumentRange[0]} to ${argumentRange[1]}`,
      value: x,
      code: x > 1 ? 'above-maximum' : 'below-minimum',
    })
  }
  return n >= uniformFrom ? uniform(n, x) : low(n, x)
}
