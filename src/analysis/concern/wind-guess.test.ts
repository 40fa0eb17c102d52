/** Checks the concern of a guessed wind. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { energyPatternFactor } from '../../physics/aerodynamics/weibull.ts'
import { meanUsefulPower, windGuess, windPowerRatio } from './wind-guess.ts'

describe('agrees: moments and cubes by hand', () => {
  check('Rayleigh ⟨v³⟩/⟨v⟩³ = 6/π', energyPatternFactor(2), '1.91')
  check('twice the wind', windPowerRatio(2), '8')
  test('a power that goes with the cube gives the pattern factor', () => {
    const rows = Array.from({ length: 200 }, (_, k) => {
      const wind = (k + 1) / 4
      return {
        ...sampleChain().rows[0]!,
        wind,
        watts: { ...sampleChain().rows[0]!.watts, useful: wind ** 3 },
      }
    })
    expect(meanUsefulPower(rows, 5, 2) / 125).toBeCloseTo(6 / Math.PI, 1)
  })
})

describe('law: the rule', () => {
  const guessed = (value: number, safetyClass = 'outdoor') =>
    windGuess.judge(sampleChain({ 'site.meanWind_m_per_s': value, 'purpose.class': safetyClass }))
  test('silent when measured, severity by class when guessed', () => {
    expect(windGuess.judge(sampleChain())).toBeUndefined()
    expect(guessed(5)?.severity).toBe('warning')
    expect(guessed(5, 'bench')?.severity).toBe('note')
    expect(guessed(5)?.figures).toMatch(/600 kWh a year at 5\.00 m\/s/)
    expect(guessed(15)?.what).toContain('km/h')
  })
  test('a measured mean is doubted by its record', () => {
    const recorded = (record: object) => windGuess.judge(sampleChain({ 'site.record': record }))
    expect(recorded({ origin: 'own mast', complete_percent: 90 })).toBeUndefined()
    expect(recorded({ origin: 'own mast', complete_percent: 89 })?.severity).toBe('warning')
    expect(recorded({ complete_percent: 70 })?.figures).toContain('The record holds 70 % of its readings')
    expect(recorded({ origin: 'roof' })?.what).toContain('roof')
    expect(recorded({ origin: 'weather station' })?.what).toContain('station elsewhere')
    expect(recorded({ origin: 'map' })?.what).toContain('map')
    expect(recorded({ origin: 'not said' })).toBeUndefined()
  })
  test('less wind is less energy', () => {
    const { rows } = sampleChain()
    expect(meanUsefulPower(rows, 4, 2)).toBeLessThan(meanUsefulPower(rows, 5, 2))
    expect(meanUsefulPower([], 5, 2)).toBe(0)
  })
})
