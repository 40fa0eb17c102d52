/** Checks of the Sobol' points and their direction numbers. */
import { describe, expect, test } from 'vitest'
import { sobolPoints } from './low-discrepancy.ts'
import { sobolDimensions, sobolDirections } from './sobol-direction.ts'

describe('agrees: SciPy 1.17.1, stats.qmc.Sobol(64, scramble=False, bits=32), points as it prints them', () => {
  const points = sobolPoints(4096, 64)
  const at = (n: number, dimensions: readonly number[]) => dimensions.map((j) => points[n * 64 + j])
  test('points 0 to 7 of the first four dimensions', () => {
    const printed = [
      [0, 0, 0, 0],
      [0.5, 0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25, 0.25],
      [0.25, 0.75, 0.75, 0.75],
      [0.375, 0.375, 0.625, 0.875],
      [0.875, 0.875, 0.125, 0.375],
      [0.625, 0.125, 0.875, 0.625],
      [0.125, 0.625, 0.375, 0.125],
    ]
    for (const [n, row] of printed.entries()) expect(at(n, [0, 1, 2, 3])).toEqual(row)
  })
  test('points 1000 and 4095', () => {
    const some = [0, 1, 2, 9, 31, 63]
    expect(at(1000, some)).toEqual([
      0.2197265625, 0.0966796875, 0.5185546875, 0.0693359375, 0.1455078125, 0.4462890625,
    ])
    expect(at(4095, some)).toEqual([
      0.000244140625, 0.941162109375, 0.334228515625, 0.246337890625, 0.087646484375, 0.553466796875,
    ])
    const sum = (n: number) => points.slice(n * 64, n * 64 + 64).reduce((a, b) => a + b)
    expect([sum(1000), sum(4095)]).toEqual([32.94140625, 30.84375])
  })
})

describe("source: joe2008, Sobol's property A holds in every dimension of the table (from memory, not opened)", () => {
  // One point in each of the 2^d orthants: the first bits of v₁ … v_d over d dimensions have determinant 1 modulo 2.
  for (const d of [2, 3, 5, 8, 13, 21, 32])
    test(`${d} dimensions`, () => {
      const rows = Array.from({ length: d }, (_, j) =>
        sobolDirections(j)
          .slice(0, d)
          .reduce((bits, v, k) => (v >>> 31 ? bits | (1n << BigInt(k)) : bits), 0n),
      )
      for (let k = 0n; k < BigInt(d); k++) {
        const pivot = rows.findIndex((row) => (row >> k) & 1n)
        expect(pivot).toBeGreaterThanOrEqual(0)
        const [row] = rows.splice(pivot, 1)
        for (let i = 0; i < rows.length; i++) if ((rows[i]! >> k) & 1n) rows[i]! ^= row!
      }
    })
})

describe('law: 2^m points put one into each 2^m-th of every axis, bare and scrambled', () => {
  for (const seed of [undefined, 0, 7, 0xffffffff])
    test(`seed ${seed}`, () => {
      const points = sobolPoints(256, sobolDimensions, seed)
      for (let j = 0; j < sobolDimensions; j++) {
        const cells = new Set(Array.from({ length: 256 }, (_, n) => Math.floor(points[n * 64 + j]! * 256)))
        expect(cells.size).toBe(256)
      }
      if (seed !== undefined) for (const u of points) expect(u > 0 && u < 1).toBe(true)
    })
})

describe('law: convergence on a smooth integrand of known mean', () => {
  // ∏ (1 + (u_j − ½)/j²) has mean 1 in any number of dimensions.
  const rmsError = (count: number, dimensions: number) => {
    let squares = 0
    for (let seed = 0; seed < 16; seed++) {
      const points = sobolPoints(count, dimensions, seed)
      let sum = 0
      for (let n = 0; n < count; n++) {
        let product = 1
        for (let j = 0; j < dimensions; j++) product *= 1 + (points[n * dimensions + j]! - 0.5) / (j + 1) ** 2
        sum += product
      }
      squares += (sum / count - 1) ** 2
    }
    return Math.sqrt(squares / 16)
  }
  for (const dimensions of [3, 12, 60])
    test(`${dimensions} dimensions: faster than N^−0.8`, () => {
      const order = Math.log2(rmsError(128, dimensions) / rmsError(4096, dimensions)) / 5
      expect(order).toBeGreaterThan(0.8)
    })
  test('the mean over seeds is unbiased: within four deviations of the mean', () => {
    const means = Array.from({ length: 200 }, (_, seed) => {
      const points = sobolPoints(2, 1, seed)
      return (points[0]! ** 2 + points[1]! ** 2) / 2
    })
    const mean = means.reduce((a, b) => a + b) / 200
    const deviation = Math.sqrt(means.reduce((a, b) => a + (b - mean) ** 2, 0) / 199 / 200)
    expect(Math.abs(mean - 1 / 3)).toBeLessThan(4 * deviation)
  })
})

describe('law: seeds and refusals', () => {
  test('same seed, same points; another seed, others', () => {
    expect(sobolPoints(16, 5, 3)).toEqual(sobolPoints(16, 5, 3))
    expect(sobolPoints(16, 5, 3)).not.toEqual(sobolPoints(16, 5, 4))
  })
  test('a shorter list begins a longer one', () => {
    expect(sobolPoints(32, 5, 3).slice(0, 80)).toEqual(sobolPoints(16, 5, 3))
  })
  test('what has no meaning is refused', () => {
    expect(() => sobolPoints(16, 65)).toThrow(RangeError)
    expect(() => sobolPoints(0, 2)).toThrow(RangeError)
    expect(() => sobolPoints(2 ** 24, 2)).toThrow(RangeError)
    expect(() => sobolPoints(4, 2, -1)).toThrow(RangeError)
    expect(() => sobolDirections(64)).toThrow(RangeError)
  })
})
