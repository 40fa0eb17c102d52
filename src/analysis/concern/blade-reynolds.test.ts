/** Checks the concern of a low Reynolds number. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { bladeReynolds } from '../../physics/aerodynamics/blade-reynolds.ts'
import { bladeReynoldsRule, reynoldsTooLow } from './blade-reynolds.ts'

const shape = (chord: number) => ({
  bladeCount: 3,
  radius: 1,
  hubRadius: 0.15,
  station: Float64Array.of(0.2, 1),
  chord: Float64Array.of(chord, chord),
  twist: Float64Array.of(0, 0),
  pitch: 0,
  polar: {
    angle: Float64Array.of(0, 1),
    lift: Float64Array.of(0, 1),
    drag: Float64Array.of(0, 1),
    reynolds: 1e5,
  },
})

describe('agrees: c w/ν by hand, w² = v² ((2/3)² + (0.75 λ)²)', () => {
  check(
    'chord 60 mm, λ 6, 6 m/s, in thousands',
    bladeReynolds(shape(0.06), { tipSpeedRatio: 6, windSpeed: 6, kinematicViscosity: 1.46e-5 }) / 1000,
    '112.2',
  )
})

describe('law: the rule', () => {
  const narrow = (chord: number) =>
    bladeReynoldsRule.judge(
      sampleChain({}, ({ rotor }) => ({
        rotor: { ...rotor, shape: shape(chord), best: { tipSpeedRatio: 6, power: 0.4 } },
      })),
    )
  test('silent for wide blades and tables, a note for narrow ones', () => {
    expect(reynoldsTooLow(99_999)).toBe(true)
    expect(reynoldsTooLow(1e5)).toBe(false)
    expect(bladeReynoldsRule.judge(sampleChain())).toBeUndefined()
    expect(narrow(0.06)).toBeUndefined()
    expect(narrow(0.04)?.severity).toBe('note')
  })
  test('a section measured only at higher Reynolds numbers is told, and from where it is held', () => {
    const wide = { ...shape(0.06), polars: [{ ...shape(0.06).polar, reynolds: 1e6 }] }
    const judged = bladeReynoldsRule.judge(
      sampleChain({}, ({ rotor }) => ({
        rotor: { ...rotor, shape: wide, best: { tipSpeedRatio: 6, power: 0.4 } },
      })),
    )
    expect(judged?.figures).toContain('begins at 1000000')
  })
})
