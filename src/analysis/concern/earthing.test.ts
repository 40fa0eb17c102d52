/** Checks the concern of earthing that nobody licensed has planned. */
import { describe, expect, test } from 'vitest'
import { remedyTexts } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { earthing } from './earthing.ts'

describe('law: always referred, never optional', () => {
  const judged = (fields: Record<string, unknown>, volts = 20) =>
    earthing.judge(
      sampleChain({ 'wiring.earthing': 'not yet', ...fields }, ({ runaway }) => ({
        runaway: { ...runaway, directVoltage: volts },
      })),
    )
  test('a warning outdoors, a note where the volts are high, and it says who', () => {
    expect(judged({})?.severity).toBe('warning')
    const said = remedyTexts(judged({})).join(' ')
    expect(said).toContain('licensed electrician')
    expect(said).toContain('lightning protection specialist')
    expect(`${said} ${judged({})?.why}`).not.toMatch(/optional|not needed|may be left/)
    expect(judged({ 'purpose.class': 'bench' })).toBeUndefined()
    expect(judged({ 'purpose.class': 'bench' }, 61)?.severity).toBe('note')
    expect(judged({ 'wiring.earthing': 'by a licensed person' })).toBeUndefined()
  })
})
