/** Checks of random numbers by counter. */
import { describe, expect, test } from 'vitest'
import { counterUniforms, philox } from './counter-random.ts'
import { sampleMoments } from './sample-moment.ts'

const hex = (words: readonly number[]) => words.map((word) => word.toString(16).padStart(8, '0')).join(' ')

describe('source: salmon2011, known answers that go with the generator, file kat_vectors, philox4x32 10 — words', () => {
  const most = 0xffffffff
  const rows = [
    [[0, 0, 0, 0], [0, 0], '6627e8d5 e169c58d bc57ac4c 9b00dbd8'],
    [[most, most, most, most], [most, most], '408f276d 41c83b0e a20bc7c6 6d5451fd'],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      'd16cfe09 94fdcceb 5001e420 24126ea1',
    ],
  ] as const
  for (const [counter, key, words] of rows)
    test(`counter ${hex(counter)}`, () => expect(hex(philox(counter, key))).toBe(words))
})

describe('law: uniform numbers', () => {
  const draws = 4000
  const pairs = Array.from({ length: draws }, (_, draw) => counterUniforms(6, { seed: 7, draw, stream: 3 }))
  test('mean ½ and deviation 1/√12 within four standard errors, place by place', () => {
    for (let i = 0; i < 6; i++) {
      const { mean, deviation } = sampleMoments(pairs.map((one) => one[i]!))
      expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * draws))
      // the square of a uniform number about its middle has the deviation 1/√180
      expect(Math.abs(deviation ** 2 - 1 / 12)).toBeLessThan(4 / Math.sqrt(180 * draws))
    }
  })
  test('places, draws and streams do not know each other', () => {
    const covariance = (a: (one: Float64Array, n: number) => number, b: typeof a) =>
      pairs.reduce((sum, one, n) => sum + (a(one, n) - 0.5) * (b(one, n) - 0.5), 0) / draws
    const limit = 4 / (12 * Math.sqrt(draws))
    const first = (one: Float64Array) => one[0]!
    expect(Math.abs(covariance(first, (one) => one[1]!))).toBeLessThan(limit)
    expect(Math.abs(covariance(first, (_, n) => pairs[(n + 1) % draws]![0]!))).toBeLessThan(limit)
    const other = (_: Float64Array, draw: number) => counterUniforms(1, { seed: 7, draw, stream: 4 })[0]!
    expect(Math.abs(covariance(first, other))).toBeLessThan(limit)
  })
  test('a longer list begins with the shorter one; the ends are never met', () => {
    const place = { seed: 1, draw: 2, stream: 0 }
    expect([...counterUniforms(9, place).subarray(0, 5)]).toEqual([...counterUniforms(5, place)])
    for (const u of counterUniforms(400, place)) expect(u > 0 && u < 1).toBe(true)
  })
  test('what is no counter is refused', () => {
    expect(() => counterUniforms(4, { seed: -1, draw: 0, stream: 0 })).toThrow('seed must be')
  })
})
