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
    const branches =
      (branchMismatch: number) =>
      ({ voltage }: ReturnType<typeof phases>) => ({
        voltage: { ...voltage, phases: voltage.phases.map((phase) => ({ ...phase, branchMismatch })) },
        circulating: {
          branches: (speed: number) => speed / 5,
          delta: () => 0,
          loops: () => 0,
          bridge: () => 0,
        },
      })
    const some = phaseImbalance.judge(sampleChain({}, branches(0.08)))
    expect(some?.severity).toBe('warning')
    // the sample's rotor turns at 55 rad/s at most
    expect(some?.figures).toContain('burn 11.0 W among themselves at 525 rpm')
    expect(phaseImbalance.judge(sampleChain({}, branches(0.21)))?.severity).toBe('blocking')
    const bench = sampleChain({ 'purpose.class': 'bench' }, branches(0.21))
    expect(phaseImbalance.judge(bench)?.severity).toBe('warning')
  })
})
