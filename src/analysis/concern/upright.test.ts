/** Checks the concerns of rotors with an upright axis. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../../test/example.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { computeDesign } from '../compute.ts'
import { bladeReynoldsRule, uprightReynolds } from './blade-reynolds.ts'
import { uprightLimiter, useless } from './upright-limiter.ts'
import { deadBand, uprightStart, uprightStartRule } from './upright-start.ts'

const question = {
  tipSpeedRatio: [0, 1, 2, 3, 4],
  torque: [0.02, 0.01, 0.05, 0.09, -0.02],
  best: 3,
  turn: { restMean: 0.02, restLeast: 0.01 },
  friction: 0.005,
}

describe('law: starting of an upright rotor', () => {
  test('braking below the best ratio is a dead band, braking above it is runaway', () => {
    expect(uprightStart(question)).toBe('starts')
    expect(deadBand({ ...question, torque: [0.02, -0.001, 0.05, 0.09, -0.02] })).toBe(1)
    expect(uprightStart({ ...question, torque: [0.02, -0.001, 0.05, 0.09, -0.02] })).toBe('dead band')
  })
  test('friction above the least torque is a dead spot', () => {
    expect(uprightStart({ ...question, friction: 0.011 })).toBe('dead spot')
  })
  test('horizontal rotors are not asked', () => {
    expect(uprightStartRule.judge(sampleChain())).toBeUndefined()
    expect(uprightLimiter.judge(sampleChain())).toBeUndefined()
  })
  test('a furling tail is useless on an upright rotor only', () => {
    expect(useless('furling tail', true)).toBe(true)
    expect(useless('furling tail', false)).toBe(false)
    expect(useless('friction brake', true)).toBe(false)
  })
  test('two buckets of one storey have a dead spot, two storeys have none', () => {
    const document = exampleDocument('garden-vertical')
    document.blades = { kind: 'drag-rotor', diameter_m: 0.8, height_m: 1.2, bucketCount: 'two' }
    document.shaft = { friction_mNm: 400 }
    document.protection.mechanical = 'furling tail'
    const one = computeDesign(designOf(document))
    expect(one.concerns.find(({ code }) => code === 'upright-start')?.severity).toBe('note')
    const limiter = (chain: typeof one) => chain.concerns.find(({ code }) => code === 'upright-limiter')
    expect(limiter(one)?.severity).toBe('blocking')
    document.purpose.class = 'bench'
    expect(limiter(computeDesign(designOf(document)))?.severity).toBe('warning')
    document.purpose.class = 'outdoor'
    document.blades.storeys = 'two'
    const two = computeDesign(designOf(document))
    expect(two.concerns.some(({ code }) => code === 'upright-start')).toBe(false)
  })
})

describe('agrees: Reynolds number of an upright blade by hand, c v √(λ² + (2/3)²) / ν', () => {
  test('0.2 m, λ 2.7, 6 m/s', () => {
    expect(uprightReynolds(0.2, 2.7)).toBeCloseTo((0.2 * 6 * Math.sqrt(2.7 ** 2 + 4 / 9)) / 1.46e-5, 6)
  })
  test('narrow blades are told of, wide ones are not', () => {
    const chain = exampleChain('garden-vertical')
    expect(bladeReynoldsRule.judge(chain)).toBeUndefined()
    const narrow = { ...chain.machine.blades, chord: 0.05 } as typeof chain.machine.blades
    expect(
      bladeReynoldsRule.judge({ ...chain, machine: { ...chain.machine, blades: narrow } })?.severity,
    ).toBe('note')
  })
})
