/** Checks of parts that give way to a growing pull. */
import { describe, expect, test } from 'vitest'
import { root } from '../../numerics/root.ts'
import { pulledDeflection } from './pulled-plate.ts'

const part = { pull: 1500, decay: 0.012, stiffness: 2e6, sides: 2 }

describe('agrees: the root of k w = F e^(n w/ℓ), bracketed', () => {
  for (const stiffness of [1.5e6, 2e6, 1e7, 1e9])
    test(`${stiffness} N/m`, () => {
      const { deflection } = pulledDeflection({ ...part, stiffness })
      const { pull, decay, sides } = part
      const w = root((x) => stiffness * x - pull * Math.exp((sides * x) / decay), [0, decay / sides], 1e-16)
      expect(deflection! / w).toBeCloseTo(1, 9)
    })
})

describe('law: stiffness of the magnets against that of the part', () => {
  test('a stiff part gives way by F/k, and 1/(1 − s) more to first order', () => {
    for (const stiffness of [1e8, 1e9]) {
      const { deflection, amplification } = pulledDeflection({ ...part, stiffness })
      const s = (2 * 1500) / (stiffness * 0.012)
      expect(amplification! / (1 / (1 - s))).toBeCloseTo(1, 4)
      expect(deflection! / ((1500 / stiffness) * amplification!)).toBeCloseTo(1, 12)
    }
  })
  test('it snaps at s = 1/e, where it has given way by ℓ/n', () => {
    const stiffness = (2 * 1500 * Math.E) / 0.012
    const edge = pulledDeflection({ ...part, stiffness: stiffness * (1 + 1e-12) })
    expect(edge.closeness).toBeCloseTo(1, 9)
    expect(edge.deflection! / (0.012 / 2)).toBeCloseTo(1, 4)
    expect(pulledDeflection({ ...part, stiffness: 0.99 * stiffness }).deflection).toBeUndefined()
  })
  test('no pull, no deflection; meaningless numbers are refused', () => {
    expect(pulledDeflection({ ...part, pull: 0 })).toEqual({ deflection: 0, amplification: 1, closeness: 0 })
    for (const bad of [{ pull: -1 }, { decay: 0 }, { stiffness: 0 }, { sides: 0 }, { pull: Number.NaN }])
      expect(() => pulledDeflection({ ...part, ...bad })).toThrow(RangeError)
  })
})
