/** Checks which wind is told. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../test/sample-chain.ts'
import { tellingRow, tellingWind } from './telling-wind.ts'

const exact = (chain: ReturnType<typeof sampleChain>) => ({
  rowAt: (wind: number) => ({ ...chain.rows[0]!, wind }),
})

describe('law: the wanted wind, and no other in its place', () => {
  test('on a row the row itself, between rows a row of its own', () => {
    const on = sampleChain({ 'purpose.atWind_m_per_s': 6 }, exact)
    expect(tellingWind(on)).toMatchObject({ wanted: 6, kind: 'wanted' })
    expect(tellingRow(on)).toBe(on.rows[11])
    const between = sampleChain({ 'purpose.atWind_m_per_s': 6.3 }, exact)
    expect(tellingRow(between).wind).toBe(6.3)
    expect(
      tellingRow(sampleChain({ 'purpose.atWind_m_per_s': { value: 0.7, spread: 0.1 } }, exact)).wind,
    ).toBe(0.7)
  })
  test('above the storm it says so and tells the machine at work', () => {
    const beyond = tellingWind(sampleChain({ 'purpose.atWind_m_per_s': 26 }, exact))
    expect(beyond.kind).toBe('beyond the storm')
    expect(beyond.wanted).toBe(26)
    expect(beyond.row).toEqual(tellingWind(sampleChain({}, exact)).row)
    expect(tellingWind(sampleChain({ 'purpose.atWind_m_per_s': 25 }, exact)).kind).toBe('wanted')
  })
  test('unasked, the least wind that gives half of the most', () => {
    const { kind, row, wanted } = tellingWind(sampleChain())
    expect(kind).toBe('unasked')
    expect(wanted).toBeUndefined()
    // useful power in the sample goes with the cube up to 11 m/s: half of it at 8.73
    expect(row.wind).toBe(9)
  })
})
