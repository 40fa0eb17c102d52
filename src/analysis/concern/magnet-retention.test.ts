/** Checks the concern of thrown magnets. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { centrifugalForce } from '../../physics/mechanics/retention.ts'
import { magnetRetention, retentionFails, retentionMargin } from './magnet-retention.ts'

const rpm = Math.PI / 30

describe('agrees: m r ω² by hand, 60 g at 0.12 m', () => {
  for (const [speed, force] of [
    [300, '7.11'],
    [600, '28.4'],
    [1000, '79.0'],
    [1900, '285'],
  ] as const)
    check(
      `newtons at ${speed} rpm`,
      centrifugalForce({ mass: 0.06, radius: 0.12, speed: speed * rpm }),
      force,
    )
})

describe('law: holder against pull', () => {
  test('twice the pull is wanted', () => {
    expect(retentionFails({ force: 285, hold: 569 })).toBe(true)
    expect(retentionFails({ force: 285, hold: 571 })).toBe(false)
    expect(retentionFails({ force: 0, hold: 0 })).toBe(false)
    expect(retentionMargin({ force: 100, hold: 250 })).toBe(2.5)
  })
  test('silent when held, severity by class', () => {
    expect(magnetRetention.judge(sampleChain())).toBeUndefined()
    const weak = (safetyClass: string) =>
      magnetRetention.judge(sampleChain({ 'rotor.retention.hold_N': 400, 'purpose.class': safetyClass }))
    expect(weak('outdoor')?.severity).toBe('blocking')
    expect(weak('bench')?.severity).toBe('warning')
    expect(weak('outdoor')?.figures).toContain('270 N')
    expect(weak('outdoor')?.figures).toContain('400 N')
  })
  test('glue counts for nothing', () => {
    const glued = magnetRetention.judge(sampleChain({ 'rotor.retention': { kind: 'glue' } }))
    expect(glued?.what).toContain('glue')
    expect(glued?.figures).toContain('0 N')
  })
  test('magnets inside a ring are pressed into it', () => {
    const chain = sampleChain({ 'rotor.retention': { kind: 'glue' } })
    const rotor = { ...chain.machine.rotor, arrangement: 'drum' as const, windingSide: 'inside' as const }
    expect(magnetRetention.judge({ ...chain, machine: { ...chain.machine, rotor } })).toBeUndefined()
  })
})
