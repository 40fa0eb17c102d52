/** Checks the concern of weak diodes. */
import { describe, expect, test } from 'vitest'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { diodeFaults, diodeRating } from './diode-rating.ts'

describe('law: twice the runaway peak', () => {
  const duty = { peak: 87, reverse: 200, current: 5, rated: 15 }
  test('faults', () => {
    expect(diodeFaults(duty)).toEqual({ volts: false, amps: false })
    expect(diodeFaults({ ...duty, reverse: 170 })).toEqual({ volts: true, amps: false })
    expect(diodeFaults({ ...duty, reverse: undefined })).toEqual({ volts: false, amps: false })
    expect(diodeFaults({ ...duty, current: 16 })).toEqual({ volts: false, amps: true })
  })
  test('silent when strong, severity by class', () => {
    expect(diodeRating.judge(sampleChain())).toBeUndefined()
    const weak = { 'bridge.reverseVoltage_V': 35 }
    expect(diodeRating.judge(sampleChain(weak))?.severity).toBe('blocking')
    expect(diodeRating.judge(sampleChain(weak))?.figures).toContain('wanted 40.0 V')
    expect(diodeRating.judge(sampleChain({ ...weak, 'purpose.class': 'bench' }))?.severity).toBe('warning')
  })
  test('the small drop has its price: Schottky and transistors at 30 V of runaway', () => {
    const at = (diode: string) =>
      diodeRating.judge(
        sampleChain({ 'bridge.diode': diode }, ({ runaway, rows }) => ({
          runaway: { ...runaway, directVoltage: 31 },
          rows: rows.map((row) => ({ ...row, dcCurrent: Math.min(row.dcCurrent, 9) })),
        })),
      )
    expect(at('Schottky 10 A 45 V')?.why).toContain('leak')
    expect(at('synchronous 30 A 60 V')?.what).toContain('transistor')
    expect(firstRemedy(at('synchronous 30 A 60 V'))).toContain('62 V of drain-source')
    expect(at('Schottky 10 A 100 V')).toBeUndefined()
  })
  test('single diodes share the current among the phases', () => {
    const at = (diode: string) => diodeRating.judge(sampleChain({ 'bridge.diode': diode }))
    // 0.6 · 11³/26 = 30.7 A: 10.2 A in each of three
    expect(at('diode 3 A')?.figures).toContain('10.2 A of 3.00 A rated in each diode')
    expect(at('bridge 25 A')?.severity).toBe('warning')
  })
})
