/** Checks the concern of current round a delta. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain, sampleVoltage } from '../../../test/sample-chain.ts'
import { deltaCirculation } from '../../physics/winding/circulation.ts'
import { cornerTooHigh, deltaCirculationRule } from './delta-circulation.ts'

describe('agrees: I = 3 E₃/(3 R) by hand', () => {
  const E = 10
  const R = 0.5
  const third = {
    cos: Float64Array.of(0, 0, 0, 0.1 * E * Math.SQRT2),
    sin: new Float64Array(4),
  }
  const { currentRms } = deltaCirculation({
    emf: [third, third, third],
    resistance: [R, R, R],
    inductance: [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ],
    angularFrequency: 100,
  })
  check('a tenth of 10 V in the third harmonic over 0.5 Ω', currentRms[0]!, '2.000')
})

describe('law: the rule', () => {
  test('star is silent, an even delta is a note, an uneven one a warning', () => {
    expect(cornerTooHigh(0.05)).toBe(false)
    expect(cornerTooHigh(0.051)).toBe(true)
    expect(deltaCirculationRule.judge(sampleChain())).toBeUndefined()
    const delta = { 'stator.connection': 'delta' }
    expect(deltaCirculationRule.judge(sampleChain(delta))?.severity).toBe('note')
    const uneven = sampleChain(delta, () => {
      const voltage = sampleVoltage()
      const phases = voltage.phases.map((phase) => ({
        ...phase,
        emf: {
          cos: phase.emf.cos.map((amplitude, order) => (order === 3 ? 0.07 : amplitude)),
          sin: phase.emf.sin,
        },
      }))
      return { voltage: { ...voltage, phases, openCorner: 0.3 } }
    })
    const concern = deltaCirculationRule.judge(uneven)
    expect(concern?.severity).toBe('warning')
    expect(concern?.figures).toMatch(/drive [1-9][\d.]* A round/)
  })
})
