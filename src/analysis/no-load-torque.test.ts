/** Checks the torque of the unloaded machine: energy, causes, and what the chain makes of a metal part. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { noLoadRow, noLoadRows, partsSpread } from './no-load-torque.ts'
import { openCorner } from './open-corner.ts'

describe('law: torque times speed is what all causes burn, and what the generator asks of the shaft', () => {
  for (const name of ['class-room-fan', 'hen-house-drum'] as const)
    test(name, () => {
      const chain = exampleChain(name)
      const rows = noLoadRows(chain)
      expect(rows.length).toBeGreaterThan(2)
      for (const row of rows) {
        const sum = Object.values(row.watts).reduce((total, watts) => total + watts, 0)
        expect((row.torque * row.speed) / sum).toBeCloseTo(1, 12)
        expect(sum / chain.generator.idlePower(row.speed)).toBeCloseTo(1, 10)
      }
      const torques = rows.map(({ torque }) => torque)
      expect([...torques].sort((a, b) => a - b)).toEqual(torques)
    })
  test('at rest there is no power and the rows are round numbers', () => {
    const chain = exampleChain('hen-house-drum')
    expect(noLoadRow(chain, 0).watts).toEqual({
      friction: 0,
      strands: 0,
      parts: 0,
      branches: 0,
      delta: 0,
      loops: 0,
      bridge: 0,
    })
    for (const { speed } of noLoadRows(chain)) {
      const tens = (speed * 3) / Math.PI
      expect(tens - Math.round(tens)).toBeCloseTo(0, 9)
    }
  })
})

describe('law: a plate of metal near the magnets costs watts, and none of them in the copper', () => {
  const document = exampleDocument('hen-house-drum')
  document.stator.metalParts = [
    { kind: 'ring', material: 'aluminium', thickness_mm: 2, distance_mm: 14, length_mm: 60 },
  ]
  const plain = exampleChain('hen-house-drum')
  const braked = computeDesign(designOf(document))
  test('less useful energy, the same strands', () => {
    expect(braked.year.energy).toBeLessThan(plain.year.energy)
    expect(braked.year.ledger.parts.parts).toBeGreaterThan(0)
    expect(braked.drag.strands.total).toBe(plain.drag.strands.total)
    expect(partsSpread(braked.drag.parts, 10)).toBe(braked.drag.parts[0]!.spread)
    expect(partsSpread([], 10)).toBe(0)
  })
  test('every watt of the shaft is told', () => {
    for (const { speed } of noLoadRows(braked)) {
      const state = braked.generator.at(speed, 300)
      const sum = Object.values(state.watts).reduce((total, watts) => total + watts, 0)
      expect(Math.abs(sum / braked.generator.shaftPower(speed, 300) - 1)).toBeLessThan(5e-3)
    }
  })
  test('the rule speaks up where it costs much', () => {
    const { parts, shaft } = braked.year.ledger
    const told = braked.concerns.find(({ code }) => code === 'metal-part-eddy')
    expect(told !== undefined).toBe((parts.parts / shaft) * 1.35 > 0.03)
    expect(plain.concerns.some(({ code }) => code === 'metal-part-eddy')).toBe(false)
  })
})

describe('law: the open corner, order by order', () => {
  const series = (a1: number, a3: number, lag: number) => ({
    cos: Float64Array.of(0, a1 * Math.cos(lag), 0, a3 * Math.cos(3 * lag)),
    sin: Float64Array.of(0, a1 * Math.sin(lag), 0, a3 * Math.sin(3 * lag)),
  })
  const third = (2 * Math.PI) / 3
  const cornerOf = (list: ReturnType<typeof series>[]) =>
    openCorner({ phases: list.map((emf) => ({ emf })) as never, order: 1 })
  test('alike phases leave three times the third harmonic and nothing else', () => {
    const { rms, orders } = cornerOf([0, third, -third].map((lag) => series(1, 0.1, lag)))
    expect(orders.map(({ order }) => order)).toEqual([3])
    expect(orders[0]!.rms).toBeCloseTo(0.3 / Math.SQRT2, 12)
    expect(rms).toBeCloseTo(0.3 / Math.SQRT2, 12)
  })
  test('a weak phase leaves its lack at the fundamental; squares add up', () => {
    const { rms, orders } = cornerOf([series(0.9, 0.1, 0), series(1, 0.1, third), series(1, 0.1, -third)])
    expect(orders.map(({ order }) => order)).toEqual([3, 1])
    expect(orders[1]!.rms).toBeCloseTo(0.1 / Math.SQRT2, 10)
    expect(Math.hypot(...orders.map((one) => one.rms)) / rms).toBeCloseTo(1, 10)
  })
})
