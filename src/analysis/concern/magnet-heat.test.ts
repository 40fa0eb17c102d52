/** Checks the concern of magnets that get too hot. */
import { describe, expect, test } from 'vitest'
import { sampleChain, sampleTemperatures } from '../../../test/sample-chain.ts'
import { kneeShare, kneeTemperature, magnetHeat } from './magnet-heat.ts'

describe('law: the knee', () => {
  const magnet = {
    field: 6.7e5,
    temperature: 283.15,
    coercivity: 9.55e5,
    coercivityCoefficient: -0.006,
    remanenceCoefficient: -0.0012,
  }
  test('there the field reaches its share of the coercivity', () => {
    const T = kneeTemperature(magnet)
    const field = (magnet.field / (1 - 0.0012 * -10)) * (1 - 0.0012 * (T - 293.15))
    expect(field).toBeCloseTo(kneeShare * magnet.coercivity * (1 - 0.006 * (T - 293.15)), 3)
    expect(T).toBeGreaterThan(320)
    expect(T).toBeLessThan(345)
  })
  test('a stronger field lowers it, none leaves the zero of the coercivity', () => {
    expect(kneeTemperature({ ...magnet, field: 7.5e5 })).toBeLessThan(kneeTemperature(magnet))
    expect(kneeTemperature({ ...magnet, field: 0 })).toBeCloseTo(293.15 + 1 / 0.006, 6)
  })
  test('ferrite, whose coercivity rises with heat, has none above', () => {
    expect(kneeTemperature({ ...magnet, field: 1e5, coercivityCoefficient: 0.003 })).toBe(
      Number.POSITIVE_INFINITY,
    )
  })
  test('thick magnets in the cool are silent, thin ones beside hot copper warn', () => {
    expect(magnetHeat.judge(sampleChain())).toBeUndefined()
    const thin = sampleChain({}, ({ field, rows }) => ({
      field: { ...field, workingPoint: { ...field.workingPoint, fieldStrength: -6.7e5 } },
      rows: rows.map((row) => ({ ...row, ...sampleTemperatures(430) })),
    }))
    expect(magnetHeat.judge(thin)?.severity).toBe('warning')
    expect(magnetHeat.judge(thin)?.why).toContain('Thin blocks')
    expect(magnetHeat.judge(sampleChain({ 'site.ambient_degC': 45 }))?.what).toContain('hot day')
  })
})

describe('law: magnets in work', () => {
  test('copper above the limit is not yet a magnet above it', () => {
    // the sample's N42 bears 80 °C at most, its air is 12 °C and its magnets take a third of the copper's rise
    const beside = (copper_degC: number) =>
      magnetHeat.judge(
        sampleChain({}, ({ rows }) => ({
          rows: rows.map((row) => ({ ...row, ...sampleTemperatures(copper_degC + 273.15) })),
        })),
      )
    expect(beside(180)).toBeUndefined()
    expect(beside(190)?.severity).toBe('warning')
    expect(beside(190)?.figures).toContain('in work 71.3 °C ± 30 K')
  })
  test('the measure is on the side of its limit that the rule says', () => {
    for (const ambient of [12, 45]) {
      const chain = sampleChain({ 'site.ambient_degC': ambient })
      const { value, limit } = magnetHeat.measure!(chain)!
      expect(value > limit).toBe(magnetHeat.judge(chain) !== undefined)
    }
  })
})
