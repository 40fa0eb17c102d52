/** Checks the concern of a weak electrical brake. */
import { describe, expect, test } from 'vitest'
import { sampleChain, samplePhase, sampleVoltage } from '../../../test/sample-chain.ts'
import { brakeTorque } from './brake-torque.ts'

const third = (2 * Math.PI) / 3
const shorting = { 'protection.electrical': 'shorting switch' }
const weak = () => ({ voltage: sampleVoltage([0, third, -third].map((lag) => samplePhase(0.2, lag))) })

describe('law: the short must hold the blades', () => {
  test('a strong winding is silent, and so is another brake', () => {
    expect(brakeTorque.judge(sampleChain(shorting))).toBeUndefined()
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
})
