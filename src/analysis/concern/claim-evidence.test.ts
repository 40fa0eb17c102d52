/** Checks the concern of claims above their evidence. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { type EvidenceLevel, evidenceLevels } from '../../machine/evidence.ts'
import { claimEvidence, earnedLevel, lacking } from './claim-evidence.ts'

const measured = {
  power_W: { value: 80, spread: 4, known: 'measured' },
  from: 'volts and amps into a load',
  speed_rpm: 300,
  shaftTorque_Nm: 3.2,
}
const bench = { runs: 3, instrument: 'two hand meters', rawFile: 'bench.csv', predicted: true }
const field = { field_h: 120, exclusions: true, stateLog: true }

const chainOf = (claim: object, safetyClass = 'outdoor') =>
  sampleChain({ 'purpose.class': safetyClass, 'bench.claims': [claim] })
const claimOf = (claim: object) => chainOf(claim).machine.design.bench.claims[0]!

describe('law: the word follows from what there is', () => {
  const rows: readonly (readonly [EvidenceLevel, object])[] = [
    ['idea', { power_W: 80, from: 'open-circuit volts' }],
    ['calculated', { ...measured, evidence: { calculation: 'version 0.1 of this document' } }],
    ['bench-indicated', { ...measured, power_W: 80, evidence: { ...bench, runs: 1 } }],
    ['bench-indicated', { ...measured, evidence: { ...bench, predicted: false } }],
    ['bench-indicated', { ...measured, shaftTorque_Nm: undefined, evidence: bench }],
    ['bench-measured', { ...measured, evidence: bench }],
    ['field-measured', { ...measured, evidence: { ...bench, ...field } }],
    ['bench-measured', { ...measured, evidence: { ...bench, ...field, stateLog: false } }],
    ['replicated', { ...measured, evidence: { ...bench, otherBuilders: 1, builderSpread: 'stated' } }],
    ['bench-measured', { ...measured, evidence: { ...bench, otherBuilders: 1 } }],
  ]
  rows.forEach(([level, claim], k) => {
    test(`row ${k + 1}: ${level}`, () => expect(earnedLevel(claimOf(claim))).toBe(level))
  })
  test('an idea asks for nothing, and an empty claim lacks something of all else', () => {
    const empty = claimOf({ power_W: 80, from: 'open-circuit volts' })
    for (const level of evidenceLevels) expect(lacking(empty, level).length > 0).toBe(level !== 'idea')
  })
  test('an energy balance that does not close is none', () => {
    expect(earnedLevel(claimOf({ ...measured, shaftTorque_Nm: 2, evidence: bench }))).toBe('bench-indicated')
  })
})

describe('law: above its evidence', () => {
  const judged = (claim: object, safetyClass?: string) => claimEvidence.judge(chainOf(claim, safetyClass))
  test('silent without a word, or with one that is earned or modest', () => {
    expect(judged(measured)).toBeUndefined()
    expect(judged({ ...measured, level: 'bench-measured', evidence: bench })).toBeUndefined()
    expect(judged({ ...measured, level: 'calculated', evidence: bench })).toBeUndefined()
  })
  test('what it lacks is named', () => {
    const found = judged({ ...measured, level: 'field-measured', evidence: bench })
    expect(found?.severity).toBe('blocking')
    expect(found?.what).toContain('calls itself field-measured; its evidence earns the word bench-measured')
    expect(found?.figures).toContain('for field-measured it lacks averaged hours in bins of wind speed')
    expect(judged({ ...measured, level: 'field-measured' }, 'bench')?.severity).toBe('warning')
    expect(judged({ ...measured, level: 'calculated' })?.severity).toBe('warning')
  })
})
