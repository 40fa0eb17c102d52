/** Checks the concern of blades that look too good. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { hardToBelieve, powerCoefficient } from './power-coefficient.ts'

describe('law: what small blades reach', () => {
  test('rule', () => {
    expect(hardToBelieve(0.45)).toBe(false)
    expect(hardToBelieve(0.46)).toBe(true)
    expect(powerCoefficient.judge(sampleChain())).toBeUndefined()
    const good = sampleChain({}, ({ rotor }) => ({
      rotor: { ...rotor, best: { tipSpeedRatio: 6, power: 0.52 } },
    }))
    expect(powerCoefficient.judge(good)?.severity).toBe('warning')
    expect(powerCoefficient.judge(good)?.figures).toContain('0.52')
    const blades = { ...good.machine.blades, kind: 'optimum' } as unknown as typeof good.machine.blades
    expect(powerCoefficient.judge({ ...good, machine: { ...good.machine, blades } })?.severity).toBe('note')
  })
})
