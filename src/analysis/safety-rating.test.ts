/** Checks what must stand on labels, and the order of switching. */
import { describe, expect, test } from 'vitest'
import { sampleChain, sampleMachine } from '../../test/sample-chain.ts'
import { ratingVerdict, safetyRatings } from './safety-rating.ts'
import { switchingOrder } from './switching-order.ts'

const verdicts = (fields: Record<string, unknown> = {}) =>
  Object.fromEntries(safetyRatings(sampleChain(fields)).map((rating) => [rating.part, ratingVerdict(rating)]))

describe('law: ratings and concerns agree', () => {
  test('a machine without faults has no part that does not fit', () => {
    expect(Object.values(verdicts())).not.toContain('does not fit')
    expect(verdicts()).toMatchObject({ bridge: 'fits', fuse: 'fits', 'dump load': 'fits' })
  })
  test.each([
    ['bridge', { 'bridge.reverseVoltage_V': 39 }],
    ['switch of the load', { 'wiring.switchKind': 'for alternating current only' }],
    ['switch of the load', { 'wiring.switchVoltage_V': 19 }],
    ['fuse', { 'wiring.fuse_A': 38 }],
    ['fuse', { 'wiring.fuse_A': 63 }],
    ['fuse', { 'wiring.fusePlace': 'elsewhere' }],
    ['battery’s leads', { 'cable.area_mm2': 6 }],
    ['dump load', { 'protection.dump.resistance_ohm': 1.1 }],
    ['dump load', { 'protection.dump.withoutPower': 'off' }],
  ])('%s', (part, fields) => {
    expect(verdicts(fields)[part]).toBe('does not fit')
  })
  test('what is not said is not judged', () => {
    expect(verdicts({ wiring: {} })).toMatchObject({ fuse: 'not said', 'switch of the load': 'not said' })
  })
  test('a machine that never charges asks for insulation only', () => {
    const chain = sampleChain({}, () => ({ rows: [] }))
    expect(safetyRatings(chain).map(({ part }) => part)).toEqual(['insulation of every wire'])
  })
})

describe('law: the order of switching', () => {
  const stepsOf = (fields: Record<string, unknown>, name: string) =>
    switchingOrder(sampleMachine(fields)).find((part) => part.name === name)!.steps
  const brake = { 'protection.electrical': 'shorting switch' }
  test('the short closes before the load opens, and opens after it has closed', () => {
    const stop = stepsOf(brake, 'to stop').join('|')
    expect(stop.indexOf('Close the short')).toBeGreaterThanOrEqual(0)
    expect(stop.indexOf('Then open')).toBeGreaterThan(stop.indexOf('Close the short'))
    const start = stepsOf(brake, 'to start').join('|')
    expect(start.indexOf('Open the short')).toBeGreaterThan(start.indexOf('Close the battery’s switch'))
  })
  test('a short behind the bridge never meets the battery', () => {
    const behind = { ...brake, 'protection.short.place': 'after the bridge' }
    expect(stepsOf(behind, 'to start').join('|')).toMatch(/Open the short.*then close the battery’s switch/)
    expect(stepsOf(behind, 'to stop').join('|')).toMatch(/opens the battery’s switch first/)
  })
  test('without a brake the load stays', () => {
    expect(stepsOf({}, 'to stop').join(' ')).toContain('never open it on a turning rotor')
  })
})
