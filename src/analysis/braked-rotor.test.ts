/** Checks where a shorted rotor settles, and what counts as parked. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { sampleChain } from '../../test/sample-chain.ts'
import { brake, brakedState, parkedSpeed, unloadedSpeed } from './braked-rotor.ts'

describe('agrees: where two straight torques cross', () => {
  // 2 − ω/60 = ω  →  ω = 120/61
  const state = brakedState(
    (speed) => 2 - speed / 60,
    (speed) => speed,
    { from: 60, parked: 10 },
  )
  check('settled, rad/s', state.speed, (120 / 61).toFixed(4), { absolute: 1e-4 })
  test('holds', () => {
    expect(state.holds).toBe(true)
  })
})

describe('law: a braked rotor', () => {
  const blades = (speed: number) => 2 - speed / 60
  test('must come below the parked speed and below half of what it had', () => {
    const settled = { from: 60, parked: 1 }
    expect(brakedState(blades, (speed) => speed, settled).holds).toBe(false)
    const slow = { from: 3, parked: 10 }
    expect(brakedState(blades, (speed) => speed, slow).holds).toBe(false)
    expect(brakedState(blades, (speed) => speed, slow).speed).toBeCloseTo(120 / 61, 4)
  })
  test('one that cannot be slowed stays where it was; one at rest is held', () => {
    expect(brakedState(blades, () => 0.5, { from: 60, parked: 10 })).toEqual({ speed: 60, holds: false })
    const none = () => 0
    expect(brakedState(() => 1, none, { from: 0, parked: 10 })).toEqual({ speed: 0, holds: true })
    expect(brakedState(() => -1, none, { from: 5, parked: 1 })).toEqual({ speed: 0, holds: true })
  })
  test('stops at the first crossing from above, whatever waits below', () => {
    // the brake fails between 40 and 20 rad/s only
    const braking = (speed: number) => (speed > 40 || speed < 20 ? 3 : 0)
    const { speed } = brakedState(blades, braking, { from: 60, parked: 25 })
    expect(speed).toBeCloseTo(40, 3)
  })
})

describe('law: speeds', () => {
  const chain = sampleChain()
  test('parked is below cut-in, or tip as fast as the wind where no current ever begins', () => {
    expect(parkedSpeed(chain, 10)).toBe(22)
    const open = { ...chain, generator: { ...chain.generator, cutIn: Number.POSITIVE_INFINITY } }
    expect(parkedSpeed(open, 12)).toBeCloseTo(12 / 1.2, 12)
  })
  test('without load the speed goes with the wind', () => {
    expect(unloadedSpeed(chain, 25)).toBe(150)
    expect(unloadedSpeed(chain, 5)).toBe(30)
  })
  test('the faster start never settles slower, and the table meets the solution', () => {
    const { stop, torque, at } = brake(chain, { place: 'leads', copperTemperature: 333, fastest: 150 })
    let last = 0
    for (const from of [20, 50, 100, 150]) {
      const { speed } = stop(20, from)
      expect(speed).toBeGreaterThanOrEqual(last - 1e-3)
      last = speed
    }
    for (const speed of [3, 11, 40, 95]) expect(torque(speed) / at(speed).torque).toBeCloseTo(1, 2)
    const still = brake(chain, { place: 'leads', copperTemperature: 333, fastest: 0 })
    expect(still.torque(0)).toBe(0)
  })
})
