/** Checks the concern of eddy currents in thick strands. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { strandEddyLoss } from '../../physics/electrics/eddy-loss.ts'
import { eddyShareTooHigh, strandEddy } from './strand-eddy.ts'

describe('agrees: ω² B² d²/(32 ρ) by hand, 0.6 T peak at 30 Hz', () => {
  for (const [diameter, loss] of [
    [0.8, '14.8'],
    [1.6, '59.4'],
  ] as const)
    check(
      `kilowatts per cubic metre at ${diameter} mm`,
      strandEddyLoss({
        angularFrequency: 60 * Math.PI,
        fluxDensity: 0.6,
        diameter: diameter * 1e-3,
        resistivity: 1.724e-8,
      }) / 1000,
      loss,
    )
})

describe('law: a share of the shaft’s energy', () => {
  test('rule', () => {
    expect(eddyShareTooHigh(0.05)).toBe(false)
    expect(eddyShareTooHigh(0.06)).toBe(true)
    expect(strandEddy.judge(sampleChain())).toBeUndefined()
    const heavy = sampleChain({}, ({ year }) => ({
      year: {
        ...year,
        ledger: { ...year.ledger, parts: { ...year.ledger.parts, eddy: 0.2 * year.ledger.shaft } },
      },
    }))
    expect(strandEddy.judge(heavy)?.severity).toBe('warning')
    expect(firstRemedy(strandEddy.judge(heavy))).toContain('4 of 0.750 mm')
  })
})
