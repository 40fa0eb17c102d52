/** Random numbers that depend on their place alone: the same for the same seed, draw and place, in any order. */
import { refuse } from '../refusal/require.ts'

/** Multipliers and Weyl steps of Philox 4×32. */
const multipliers = [0xd2511f53, 0xcd9e8d57] as const
const weyl = [0x9e3779b9, 0xbb67ae85] as const
const rounds = 10

/** Upper 32 bits of the product of two 32-bit words. */
function highWord(a: number, b: number): number {
  const [aLow, aHigh] = [a & 0xffff, a >>> 16]
  const [bLow, bHigh] = [b & 0xffff, b >>> 16]
  const middle = aHigh * bLow + Math.floor((aLow * bLow) / 0x10000)
  const cross = aLow * bHigh + (middle % 0x10000)
  return (aHigh * bHigh + Math.floor(middle / 0x10000) + Math.floor(cross / 0x10000)) >>> 0
}

/**
 * Four words of 32 bits for a counter of four and a key of two: the generator Philox4x32-10 (Salmon, Moraes, Dror &
 * Shaw 2011, Parallel random numbers: as easy as 1, 2, 3).
 *
 *   (L, R) → (R_high ⊕ k, R_low) in two lanes, ten times, the key stepped in between
 *
 * Exact: every machine gives the same words.
 */
export function philox(
  counter: readonly [number, number, number, number],
  key: readonly [number, number],
): readonly [number, number, number, number] {
  let [c0, c1, c2, c3] = counter
  let [k0, k1] = key
  for (let round = 0; round < rounds; round++) {
    const [m0, m1] = multipliers
    const next0 = (highWord(m1, c2) ^ c1 ^ k0) >>> 0
    const next2 = (highWord(m0, c0) ^ c3 ^ k1) >>> 0
    c1 = Math.imul(m1, c2) >>> 0
    c3 = Math.imul(m0, c0) >>> 0
    c0 = next0
    c2 = next2
    k0 = (k0 + weyl[0]) >>> 0
    k1 = (k1 + weyl[1]) >>> 0
  }
  return [c0, c1, c2, c3]
}

const isWord = (value: number) => Number.isInteger(value) && value >= 0 && value <= 0xffffffff

/**
 * `count` numbers strictly between 0 and 1 of stream `stream` in draw `draw`, evenly spread, in steps of 2⁻³²: those of
 * other streams, draws and seeds are independent of them. Seed, draw and stream are whole numbers from 0 to 2³² − 1.
 */
export function counterUniforms(
  count: number,
  place: { readonly seed: number; readonly draw: number; readonly stream: number },
): Float64Array {
  const { seed, draw, stream } = place
  for (const [name, value] of [
    ['count', count],
    ['seed', seed],
    ['draw', draw],
    ['stream', stream],
  ] as const)
    if (!isWord(value))
      refuse({ name, condition: 'a whole number from 0 to 4294967295', value, code: 'not-a-choice' })
  const numbers = new Float64Array(count)
  for (let n = 0; n < count; n += 4) {
    const words = philox([n / 4, draw, stream, 0], [seed, 0])
    for (let i = 0; i < 4 && n + i < count; i++) numbers[n + i] = (words[i]! + 0.5) / 2 ** 32
  }
  return numbers
}
