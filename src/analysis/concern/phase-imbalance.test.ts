/** Checks the concern of unlike phases and branches. */
import { describe, expect, test } from 'vitest'
import { sampleChain, samplePhase, sampleVoltage } from '../../../test/sample-chain.ts'
import { phaseImbalance, relativeSpread } from './phase-imbalance.ts'

const third = (2 * Math.PI) / 3

describe('law: spread over the mean', () => {
  test('numbers', () => {
    expect(relativeSpread([10, 10, 10])).toBe(0)
    expect(relativeSpread([9, 10, 11])).toBeCloseTo(0.2, 12)
    expect(relativeSpread([0, 0])).toBe(0)
  })
  test('alike is silent, unlike phases are a note, unlike branches a warning', () => {
    expect(phaseImbalance.judge(sampleChain())).toBeUndefined()
    const uneven = [
      [0.7, 0],
      [0.6, third],
      [0.5, -third],
    ] as const
    const phases = () => ({ voltage: sampleVoltage(uneven.map(([size, lag]) => samplePhase(size, lag))) })
    expect(phaseImbalance.judge(sampleChain({}, phases))?.severity).toBe('note')
    const branches = ({ voltage }: ReturnType<typeof phases>) => ({
      voltage: { ...voltage, phases: voltage.phases.map((phase) => ({ ...phase, branchMismatch: 0.08 })) },
    })
    expect(phaseImbalance.judge(sampleChain({}, branches))?.severity).toBe('warning')
  })
})
