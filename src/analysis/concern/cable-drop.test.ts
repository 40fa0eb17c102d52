/** Checks the concern of a thin cable. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { cableLoopResistance, threeWireLoss } from '../../physics/electrics/cable.ts'
import { cableDrop, dropTooHigh } from './cable-drop.ts'

describe('agrees: I ρ 2l/A by hand, 20 m of 6 mm² at 15 A', () => {
  const drop = 15 * cableLoopResistance({ route: 20, area: 6e-6, resistivity: 1.724e-8 })
  check('volts', drop, '1.72')
  check('per cent of 12.6 V', (100 * drop) / 12.6, '13.7')
  test('three wires before the bridge lose as much as two behind it', () => {
    expect(threeWireLoss({ dcCurrent: 15, wireResistance: 0.05 })).toBeCloseTo(2 * 15 ** 2 * 0.05, 9)
  })
})

describe('law: five per cent, and no hot cable', () => {
  test('rule', () => {
    expect(dropTooHigh(0.05)).toBe(false)
    expect(dropTooHigh(0.137)).toBe(true)
    expect(cableDrop.judge(sampleChain())).toBeUndefined()
    const lossy = sampleChain({}, ({ rows }) => ({
      rows: rows.map((row) => ({ ...row, watts: { ...row.watts, cable: 0.1 * row.watts.useful } })),
    }))
    const concern = cableDrop.judge(lossy)
    expect(concern?.severity).toBe('warning')
    expect(concern?.figures).toContain('10.0 % of 26.0 V')
    expect(firstRemedy(concern)).toContain('32 mm²')
    const told = (wind: number) =>
      cableDrop.judge(
        sampleChain({ 'purpose.atWind_m_per_s': wind }, ({ rows }) => ({
          rows: rows.map((row) => ({ ...row, watts: { ...row.watts, cable: 0.1 * row.watts.useful } })),
          rowAt: (at) => ({ ...rows[20]!, wind: at, watts: { ...rows[20]!.watts, cable: 40 } }),
        })),
      )?.figures
    expect(told(7.2)).toContain('in 7.20 m/s')
    expect(told(30)).toContain('in 11.0 m/s')
    // 30.7 A; 4 mm² carry 27 A, 6 mm² carry 34 A
    const thin = cableDrop.judge(sampleChain({ 'cable.area_mm2': 4 }))
    expect(thin?.what).toContain('hot')
    expect(thin?.severity).toBe('blocking')
    expect(cableDrop.judge(sampleChain({ 'cable.area_mm2': 4, 'purpose.class': 'bench' }))?.severity).toBe(
      'warning',
    )
    expect(firstRemedy(thin)).toContain('6.0 mm²')
    expect(cableDrop.judge(sampleChain({ 'cable.area_mm2': 6 }))).toBeUndefined()
  })
})
