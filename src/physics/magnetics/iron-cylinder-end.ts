/** Charge on coaxial iron tubes of finite length: one even function of z on each, found so that its field meets Φ = 0. */
import { linearSolve } from '../../numerics/linear-solve.ts'

/**
 * @internal (−1)^j J_2j(x), j = 0 … count − 1, by recurrence downwards: the spectrum of T_2j(ζ)/√(1 − ζ²), which grows
 * towards the ends as the charge of a sheet does.
 */
export function evenSpectrum(x: number, count: number, into: Float64Array, at: number): void {
  const top = 2 * Math.ceil(Math.max(2 * count + 8, x + 12 + 4 * Math.cbrt(x)) / 2)
  let [above, here] = [0, 1e-300]
  let sum = 0
  for (let n = top; n > 0; n--) {
    if (n % 2 === 0) {
      sum += 2 * here
      if (n / 2 < count) into[at + n / 2] = n % 4 === 0 ? here : -here
    }
    const below = ((2 * n) / x) * here - above
    above = here
    here = below
    if (Math.abs(here) > 1e200) {
      here *= 1e-200
      above *= 1e-200
      sum *= 1e-200
      for (let j = 0; j < count; j++) into[at + j]! *= 1e-200
    }
  }
  into[at] = here
  sum += here
  for (let j = 0; j < count; j++) into[at + j]! /= sum
}

export interface EndedTube {
  /** R [m]. */
  readonly radius: number
  readonly length: number
  readonly functions: number
  /** Own kernel I K + z at each k, and the potential to be met. */
  readonly kernel: Float64Array
  readonly potential: Float64Array
}

/**
 * @internal How many functions a tube needs to follow changes over `scale` to 1e-3 of the charge's work, as far as the
 * steepest wave number shows them apart.
 */
export const functionsFor = (length: number, scale: number, steepest: number): number =>
  Math.max(Math.min(3 + Math.ceil(length / (1.1 * scale)), Math.floor((steepest * length) / 4 - 2)), 1)

/**
 * @internal Spectra s(k) of the charge on one or two tubes: ∫ f_i (Φ + Σ R s (I K + z)) dz = 0 for every function f_i,
 * integrals over k at the middles of equal steps, the rest beyond by J_n J_m ≈ 1/(π x).
 */
export function endedCharge(
  wave: Float64Array,
  step: number,
  tubes: readonly EndedTube[],
  coupling: Float64Array | undefined,
): Float64Array[] {
  const count = wave.length
  const spectra = tubes.map(({ length, functions }) => {
    const table = new Float64Array(count * functions)
    for (let i = 0; i < count; i++) evenSpectrum((wave[i]! * length) / 2, functions, table, i * functions)
    return table
  })
  const size = tubes.reduce((sum, { functions }) => sum + functions, 0)
  const matrix = new Float64Array(size * size)
  const right = new Float64Array(size)
  let rowAt = 0
  tubes.forEach((row, a) => {
    const A = spectra[a]!
    const n = row.functions
    for (let i = 0; i < count; i++) {
      const source = step * row.potential[i]!
      for (let f = 0; f < n; f++) right[rowAt + f]! -= source * A[i * n + f]!
    }
    let columnAt = 0
    tubes.forEach((column, b) => {
      const B = spectra[b]!
      const m = column.functions
      const kernel = a === b ? row.kernel : coupling!
      if (b >= a) {
        for (let i = 0; i < count; i++) {
          const weight = step * column.radius * kernel[i]!
          for (let f = 0; f < n; f++) {
            const w = weight * A[i * n + f]!
            const start = (rowAt + f) * size + columnAt
            for (let g = 0; g < m; g++) matrix[start + g]! += w * B[i * m + g]!
          }
        }
        if (a === b) {
          const rest = (2 * row.radius * kernel[count - 1]!) / (Math.PI * row.length)
          for (let f = 0; f < n; f++)
            for (let g = 0; g < n; g++) matrix[(rowAt + f) * size + columnAt + g]! += rest
        } else {
          // the same coupling seen from the other tube, whose charge is per its own radius
          const ratio = row.radius / column.radius
          for (let f = 0; f < n; f++)
            for (let g = 0; g < m; g++)
              matrix[(columnAt + g) * size + rowAt + f] = ratio * matrix[(rowAt + f) * size + columnAt + g]!
        }
      }
      columnAt += m
    })
    rowAt += n
  })
  const c = linearSolve(matrix, right)
  let at = 0
  return tubes.map(({ functions: n }, a) => {
    const s = new Float64Array(count)
    const A = spectra[a]!
    for (let i = 0; i < count; i++) {
      let sum = 0
      for (let f = 0; f < n; f++) sum += c[at + f]! * A[i * n + f]!
      s[i] = sum
    }
    at += n
    return s
  })
}
