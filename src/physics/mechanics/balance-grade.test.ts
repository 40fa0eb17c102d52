/** Checks of balance grades. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { balancingMass, permissibleUnbalance, reachedGrade, unbalanceShares } from './balance-grade.ts'

const rpm = Math.PI / 30

describe('source: tool-balancing-guide, worked example — 2 kg at 10000 rpm, G 6.3, in g mm', () => {
  const { specific, total } = permissibleUnbalance({ grade: 6.3e-3, mass: 2, speed: 10000 * rpm })
  check('whole', total * 1e6, '12')
  check('per kilogram', specific * 1e6, '6')
})

describe('source: iso21940-11, annex, turbine of 3600 kg at 3000 rpm, G 2.5 (from memory, not opened) — kg mm', () => {
  const { total } = permissibleUnbalance({ grade: 2.5e-3, mass: 3600, speed: 3000 * rpm })
  const { planeA, planeB } = unbalanceShares({ total, bearingA: 0, bearingB: 2.4, centre: 1.5 })
  check('whole', total * 1e3, '28.6')
  check('plane A', planeA * 1e3, '10.7')
  check('plane B', planeB * 1e3, '17.9')
})

describe('law: balance', () => {
  test('the grade comes back from the unbalance it allows', () => {
    const rotor = { mass: 7.5, speed: 420 * rpm }
    const { total } = permissibleUnbalance({ ...rotor, grade: 16e-3 })
    expect(reachedGrade({ ...rotor, unbalance: total })).toBeCloseTo(16e-3, 12)
    expect(balancingMass({ unbalance: total, radius: 0.9 }) * 0.9).toBeCloseTo(total, 15)
  })
  test('the shares of a centre between bearings make the whole, mirrored if the bearings swap', () => {
    const one = unbalanceShares({ total: 1, bearingA: 0, bearingB: 1, centre: 0.4 })
    expect(one.planeA + one.planeB).toBeCloseTo(1, 12)
    expect(unbalanceShares({ total: 1, bearingA: 1, bearingB: 0, centre: 0.4 }).planeA).toBeCloseTo(
      one.planeB,
      12,
    )
  })
  test('an overhung centre is held to 0.3 and 1.3, one near a bearing to 0.3 and 0.7', () => {
    const far = unbalanceShares({ total: 1, bearingA: 0, bearingB: 0.2, centre: -0.2 })
    expect([far.planeA, far.planeB]).toEqual([1.3, 1])
    const near = unbalanceShares({ total: 1, bearingA: 0, bearingB: 1, centre: 0.05 })
    expect([near.planeA, near.planeB]).toEqual([0.7, 0.3])
  })
})
