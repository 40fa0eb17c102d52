/** Checks the concern of a weak electrical brake. */
import { describe, expect, test } from 'vitest'
import { sampleChain, samplePhase, sampleVoltage } from '../../../test/sample-chain.ts'
import { brakeTorque } from './brake-torque.ts'

const third = (2 * Math.PI) / 3
const shorting = { 'protection.electrical': 'shorting switch' }
const weak = () => ({ voltage: sampleVoltage([0, third, -third].map((lag) => samplePhase(0.2, lag))) })

/** The same machine with a heavier winding: volts per speed four times, the storm weaker. */
const strong = () => ({ voltage: sampleVoltage([0, third, -third].map((lag) => samplePhase(2.8, lag))) })

describe('law: the short must hold the blades', () => {
  test('a strong winding is silent, and so is another brake', () => {
    expect(brakeTorque.judge(sampleChain(shorting, strong))).toBeUndefined()
    expect(brakeTorque.judge(sampleChain({}, weak))).toBeUndefined()
  })
  test('a weak one warns beside a mechanical limiter and blocks without', () => {
    expect(brakeTorque.judge(sampleChain(shorting, weak))?.severity).toBe('warning')
    const alone = { ...shorting, 'protection.mechanical': 'none' }
    const concern = brakeTorque.judge(sampleChain(alone, weak))
    expect(concern?.severity).toBe('blocking')
    expect(concern?.figures).toContain('wanted up to 25.0 m/s')
    expect(brakeTorque.judge(sampleChain({ ...alone, 'purpose.class': 'bench' }, weak))?.severity).toBe(
      'warning',
    )
  })
  test('one that holds the working rotor in the limiter’s winds may fail the unloaded one in a storm', () => {
    const outdoor = brakeTorque.judge(sampleChain(shorting))
    expect(outdoor?.severity).toBe('warning')
    expect(outdoor?.what).toContain('limiter stick')
    expect(outdoor?.figures).toContain('without load')
    expect(brakeTorque.judge(sampleChain({ ...shorting, 'purpose.class': 'bench' }))?.severity).toBe('note')
    expect(brakeTorque.judge(sampleChain({ ...shorting, 'protection.mechanical': 'none' }))?.severity).toBe(
      'blocking',
    )
  })
  test('half the speed it had is not enough while it still turns as fast as it works', () => {
    const cutIn = (at: number) =>
      brakeTorque.judge(
        sampleChain(shorting, (chain) => ({ ...strong(), generator: { ...chain.generator, cutIn: at } })),
      )
    expect(cutIn(22)).toBeUndefined()
    expect(cutIn(0.01)).toBeDefined()
  })
})
