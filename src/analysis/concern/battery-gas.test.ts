/** Checks the concern of a gassing battery. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { batteryGas, gassingCurrent, ventilation } from './battery-gas.ts'

describe('source: en-50272-3, final formula Q = 0,05 · n · Igas · Cn/100, area 28 Q', () => {
  // the factor is printed rounded from 24 · 0.00042 · 5 = 0.0504
  const { airflow, opening } = ventilation({ cells: 1, gassing: 1 })
  check('m³/h per cell and amp', airflow, '0.05')
  check('cm² per m³/h', opening / airflow, '28')
  // 2 A per 100 Ah at 2.4 V in each cell
  check('amps of 200 Ah held at 2.4 V', gassingCurrent(30, 200 * 3600, true), '4')
})

describe('law: what is diverted makes little gas', () => {
  test('a note for lead without a dump load only', () => {
    expect(gassingCurrent(30, 200 * 3600, false)).toBe(30)
    expect(gassingCurrent(3, 200 * 3600, true)).toBe(3)
    expect(gassingCurrent(30, undefined, true)).toBe(30)
    expect(batteryGas.judge(sampleChain())).toBeUndefined()
    const bare = { 'protection.electrical': 'none' }
    expect(batteryGas.judge(sampleChain(bare))?.severity).toBe('note')
    // 30.7 A · 12 cells · 0.0504
    expect(batteryGas.judge(sampleChain(bare))?.figures).toContain('19 m³/h')
    expect(batteryGas.judge(sampleChain({ ...bare, 'load.chemistry': 'LiFePO4' }))).toBeUndefined()
  })
})
