/** Points that fill a cube of many dimensions more evenly than chance does. */
import { refuse } from '../refusal/require.ts'
import { sobolDimensions, sobolDirections } from './sobol-direction.ts'

/** Most numbers (points × dimensions) handed out at once: 128 MB. */
const mostNumbers = 2 ** 24

/** Well-mixed 32 bits for each `state` + 1, + 2, …: the finalizer of MurmurHash3 over a Weyl sequence. */
function mixer(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let h = state
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
    return (h ^ (h >>> 16)) >>> 0
  }
}

/** 1 when an odd number of the bits of x is set. */
function parity(x: number): number {
  let p = x ^ (x >>> 16)
  p ^= p >>> 8
  p ^= p >>> 4
  p ^= p >>> 2
  p ^= p >>> 1
  return p & 1
}

/** M v for a random M over two elements: lower triangular, ones on the diagonal, the first digit the highest bit. */
function scrambled(v: Uint32Array, next: () => number): Uint32Array {
  const rows = Uint32Array.from({ length: 32 }, (_, digit) => {
    const own = 2 ** (31 - digit)
    const above = digit === 0 ? 0 : (0xffffffff << (32 - digit)) >>> 0
    return ((next() & above) | own) >>> 0
  })
  return v.map((direction) => {
    let value = 0
    for (let digit = 0; digit < 32; digit++) value = (value << 1) | parity(rows[digit]! & direction)
    return value >>> 0
  })
}

/**
 * The first `count` points of the Sobol' sequence, point after point (x₀ y₀ … x₁ y₁ …), in Gray-code order (Antonov &
 * Saleev 1979): x_n = x_{n−1} ⊕ v_c, c the place of the lowest zero of n − 1. Up to 64 dimensions.
 *
 * Without `seed` the bare sequence, which begins at the corner 0 and so is unfit for a quantile without bounds.
 * With `seed` (a whole number from 0 to 2³² − 1) each dimension is scrambled by a random lower triangular binary matrix
 * and a random digital shift (Matoušek 1998, Journal of Complexity 14, 527), and every coordinate lies strictly
 * between 0 and 1. The same seed gives the same points on every machine; the mean over seeds is unbiased, and its
 * scatter tells the error of the rule.
 *
 * Accuracy: on smooth integrands the error of the mean falls about as 1/N or faster when `count` is a power of two;
 * other counts spoil the balance. Mean of ∏ (1 + (u_j − ½)/j²) in 60
 * dimensions: rms error 1.7e-4 at 128, 6e-6 at 1024, 6e-7 at 4096 points.
 */
export function sobolPoints(count: number, dimensions: number, seed?: number): Float64Array {
  if (!Number.isInteger(dimensions) || dimensions < 1 || dimensions > sobolDimensions)
    refuse({
      name: 'dimensions',
      condition: `a whole number from 1 to ${sobolDimensions}`,
      value: dimensions,
      code: 'not-a-choice',
    })
  const most = Math.floor(mostNumbers / dimensions)
  if (!Number.isInteger(count) || count < 1 || count > most)
    refuse({
      name: 'count',
      condition: `a whole number from 1 to ${most}`,
      value: count,
      code: 'not-a-choice',
    })
  if (seed !== undefined && (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff))
    refuse({
      name: 'seed',
      condition: 'a whole number from 0 to 4294967295',
      value: seed,
      code: 'not-a-choice',
    })
  const points = new Float64Array(count * dimensions)
  // Half a unit of the last bit keeps scrambled points off both ends.
  const offset = seed === undefined ? 0 : 0.5
  const next = mixer(seed ?? 0)
  for (let j = 0; j < dimensions; j++) {
    const bare = sobolDirections(j)
    const v = seed === undefined ? bare : scrambled(bare, next)
    let x = seed === undefined ? 0 : next()
    for (let n = 0; n < count; n++) {
      if (n > 0) x = (x ^ v[31 - Math.clz32(n & -n)]!) >>> 0
      points[n * dimensions + j] = (x + offset) / 2 ** 32
    }
  }
  return points
}
