/** Checks the concern of a brake that opens first. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { brakeOrder } from './brake-order.ts'

describe('law: short first', () => {
  test('silent for the right order and for no brake; blocking where nothing else is left', () => {
    const brake = { 'protection.electrical': 'shorting switch' }
    const wrong = { ...brake, 'protection.short.order': 'disconnect, then short' }
    expect(
      brakeOrder.judge(sampleChain({ 'protection.short.order': 'disconnect, then short' })),
    ).toBeUndefined()
    expect(brakeOrder.judge(sampleChain(brake))).toBeUndefined()
    expect(brakeOrder.judge(sampleChain(wrong))?.severity).toBe('warning')
    // 55 rad/s of the last row, 150 rad/s of the runaway
    expect(brakeOrder.judge(sampleChain(wrong))?.figures).toContain(
      'From 525 rpm at most under load towards 1430 rpm',
    )
    const alone = { ...wrong, 'protection.mechanical': 'none' }
    expect(brakeOrder.judge(sampleChain(alone))?.severity).toBe('blocking')
    expect(brakeOrder.judge(sampleChain({ ...alone, 'purpose.class': 'bench' }))?.severity).toBe('warning')
    const late = { ...wrong, 'protection.actsAt_m_per_s': 30 }
    expect(brakeOrder.judge(sampleChain(late))?.severity).toBe('blocking')
  })
})
