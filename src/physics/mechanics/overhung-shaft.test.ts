/** Checks of reactions and moments of a shaft on two bearings. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { bearingReactions } from './overhung-shaft.ts'

describe('source: shigley, table A-9, cases 5 and 10 (from memory, not opened) — centre load and overhanging load', () => {
  const [l, a, F] = [0.4, 0.15, 1000]
  const centre = bearingReactions({ bearings: [0, l], forces: [{ position: l / 2, force: F }] })
  check('R1 = F/2', centre.reactions[0], '500')
  check('M = F l/4', centre.greatestMoment, '100')
  const beyond = bearingReactions({ bearings: [0, l], forces: [{ position: l + a, force: F }] })
  check('R1 = −F a/l', beyond.reactions[0], '-375')
  check('R2 = F (l + a)/l', beyond.reactions[1], '1375')
  check('M = F a, at the bearing', beyond.greatestMoment, '150')
  test('where', () => expect(beyond.at).toBe(l))
})

describe('law: statics', () => {
  test('forces and moments balance, a couple as two forces', () => {
    const forces = [
      { position: -0.1, force: 120 },
      { position: 0.3, force: -40 },
    ]
    const pair = bearingReactions({
      bearings: [0, 0.2],
      forces: [...forces, { position: -0.05001, force: -1e5 }, { position: -0.05, force: 1e5 }],
    })
    const couple = bearingReactions({ bearings: [0, 0.2], forces, couple: { moment: 1, at: -0.05 } })
    expect(couple.reactions[0]).toBeCloseTo(pair.reactions[0], 6)
    expect(couple.reactions[1]).toBeCloseTo(pair.reactions[1], 6)
    expect(couple.greatestMoment).toBeCloseTo(pair.greatestMoment, 3)
    expect(couple.reactions[0] + couple.reactions[1]).toBeCloseTo(80, 9)
  })
  test('both bearings at one place are refused', () =>
    expect(() => bearingReactions({ bearings: [0.1, 0.1], forces: [] })).toThrow(RangeError))
})
