/** Checks the concern of softening plastic. */
import { describe, expect, test } from 'vitest'
import { sampleChain, sampleTemperatures } from '../../../test/sample-chain.ts'
import { plasticSoftening, softeningVerdict } from './plastic-softening.ts'

describe('law: fifteen kelvin in hand', () => {
  test('verdict', () => {
    const part = { softening: 353.15, standing: 315.15, working: 337 }
    expect(softeningVerdict(part)).toBe('sound')
    expect(softeningVerdict({ ...part, standing: 338.2 })).toBe('soft in the sun')
    expect(softeningVerdict({ ...part, working: 339 })).toBe('soft in work')
  })
  const wall = (material: string, ambient_degC: number, safetyClass = 'outdoor') =>
    plasticSoftening.judge(
      sampleChain({
        'rotor.retention': { kind: 'pocket', wall_mm: 4, material },
        'site.ambient_degC': ambient_degC,
        'purpose.class': safetyClass,
      }),
    )
  test('silent for polycarbonate, blocking for PLA in the sun, severity by class', () => {
    expect(plasticSoftening.judge(sampleChain())).toBeUndefined()
    expect(wall('PC', 12)).toBeUndefined()
    expect(wall('PLA', 18)?.severity).toBe('blocking')
    expect(wall('PLA', 18)?.path).toBe('rotor.retention.material')
    expect(wall('PLA', 18, 'bench')).toBeUndefined()
    expect(wall('PLA', 50, 'bench')?.severity).toBe('warning')
  })
  test('a wall beside magnets that work has warmed', () => {
    const hot = plasticSoftening.judge(
      sampleChain(
        { 'rotor.retention': { kind: 'pocket', wall_mm: 4, material: 'PETG' }, 'site.ambient_degC': 12 },
        ({ rows }) => ({ rows: rows.map((row) => ({ ...row, ...sampleTemperatures(470) })) }),
      ),
    )
    expect(hot?.severity).toBe('warning')
    expect(hot?.what).toContain('in work')
  })
  test('the measure is on the side of its limit that the rule says', () => {
    for (const material of ['PC', 'PLA']) {
      const chain = sampleChain({ 'rotor.retention': { kind: 'pocket', wall_mm: 4, material } })
      const { value, limit } = plasticSoftening.measure!(chain)!
      expect(value > limit).toBe(plasticSoftening.judge(chain) !== undefined)
    }
  })
  test('the body of the winding warns', () => {
    const soft = plasticSoftening.judge(sampleChain({ 'stator.support': 'epoxy' }))
    expect(soft?.severity).toBe('warning')
    expect(soft?.path).toBe('stator.support')
  })
})
