/** Checks the digest against the runtime’s own. */
import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { sha256 } from './sha-256.ts'

describe('agrees: the runtime’s own SHA-256', () => {
  test('texts of every length round the ends of a block, and letters beyond ASCII', () => {
    const texts = [
      ...Array.from({ length: 140 }, (_, n) => 'gust'.repeat(40).slice(0, n)),
      'Wind ≈ 5 m/s, Ω, 風, 🌬',
    ]
    for (const text of texts) expect(sha256(text)).toBe(createHash('sha256').update(text).digest('hex'))
  })
})

describe('law: a digest tells texts apart', () => {
  test('one letter changes about half of the bits', () => {
    const [one, other] = [sha256('46 turns'), sha256('47 turns')]
    const bits = [...one].reduce((sum, digit, k) => {
      const differing = Number.parseInt(digit, 16) ^ Number.parseInt(other[k]!, 16)
      return sum + [0, 1, 1, 2, 1, 2, 2, 3, 1, 2, 2, 3, 2, 3, 3, 4][differing]!
    }, 0)
    expect(Math.abs(bits - 128)).toBeLessThan(40)
  })
})
