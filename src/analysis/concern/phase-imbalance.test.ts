/** Checks the concern of unlike phases and branches. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../../test/example.ts'
import { fixedDocument } from '../../../test/fixed-document.ts'
import { sampleChain, samplePhase, sampleVoltage } from '../../../test/sample-chain.ts'
import { computeDesign } from '../compute.ts'
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

describe('agrees: two coils beside one, by hand', () => {
  // three coils in step in each phase: the pair raises twice the volts of the single one
  const grouped = (change: object) => {
    const document = fixedDocument('twoDiscs')
    Object.assign(document.stator.winding, change)
    return computeDesign(designOf(document))
  }
  const unlike = grouped({ groupCoils: [2, 1] })
  const { branches, resistance, branchMismatch, fundamental } = unlike.voltage.phases[0]!
  test('I = ΔE/ΣR at low speed, and its watts', () => {
    const [pair, single] = branches
    const volts = (emf: (typeof branches)[number]['emf']) => Math.hypot(emf.cos[1]!, emf.sin[1]!)
    expect(volts(pair!.emf)).toBeCloseTo(2 * volts(single!.emf), 9)
    expect(pair!.resistance).toBeCloseTo(2 * single!.resistance, 12)
    // shared by conductance: (2 E · R + E · 2 R)/(3 R) = 4/3 E, from which the pair stands off by 2/3 E
    expect(fundamental).toBeCloseTo((4 / 3) * volts(single!.emf), 9)
    expect(branchMismatch).toBeCloseTo(0.5, 9)
    expect(resistance).toBeGreaterThan((2 / 3) * single!.resistance)
    // so slowly that reactance does not count
    const speed = 0.05
    const watts = (volts(single!.emf) * speed) ** 2 / 2 / (3 * single!.resistance)
    expect(unlike.circulating.branches(speed) / (3 * watts)).toBeCloseTo(1, 1)
  })
  test('the rule blocks it outdoors; alike groups, listed or counted, are one', () => {
    expect(phaseImbalance.judge(unlike)?.severity).toBe('blocking')
    const counted = grouped({ parallelGroups: 3 })
    expect(grouped({ groupCoils: [1, 1, 1] }).voltage.phases).toEqual(counted.voltage.phases)
    expect(phaseImbalance.judge(counted)).toBeUndefined()
  })
  test('a list that is not all of a phase is refused', () => {
    expect(() => grouped({ groupCoils: [2, 2] })).toThrow(/groupCoils must be 3 coils in all/)
  })
})
