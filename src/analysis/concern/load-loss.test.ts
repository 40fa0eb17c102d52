/** Checks the concern of a lost load. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { rotorSpeed } from '../../physics/aerodynamics/wind-power.ts'
import { dumpResistance, limiterVerdict, loadLoss } from './load-loss.ts'

describe('agrees: n = 60 λ v/(π D) and R = V²/P by hand', () => {
  check(
    'unloaded rotor of 1.5 m at λ = 10 in 15 m/s, rpm',
    (rotorSpeed({ tipSpeedRatio: 10, windSpeed: 15, radius: 0.75 }) * 30) / Math.PI,
    '1910',
  )
  check('dump for 300 W at 14.4 V, ohms', dumpResistance({ voltage: 14.4, power: 300 }), '0.69')
  check('its current, amps', 14.4 / dumpResistance({ voltage: 14.4, power: 300 }), '20.8')
})

describe('law: limiters are counted, the load never is', () => {
  test('verdicts', () => {
    const storm = { stormWind: 25 }
    expect(limiterVerdict({ mechanicalWind: undefined, electrical: false, ...storm })).toBe('unlimited')
    expect(limiterVerdict({ mechanicalWind: undefined, electrical: true, ...storm })).toBe('electrical only')
    expect(limiterVerdict({ mechanicalWind: 11, electrical: false, ...storm })).toBe('mechanical only')
    expect(limiterVerdict({ mechanicalWind: 11, electrical: true, ...storm })).toBe('double')
  })
  test('a limiter that acts above the storm is none', () => {
    expect(limiterVerdict({ mechanicalWind: 30, electrical: false, stormWind: 25 })).toBe('unlimited')
  })
  test('two limiters are silent, none blocks outdoors only', () => {
    expect(loadLoss.judge(sampleChain())).toBeUndefined()
    const none = { 'protection.mechanical': 'none', 'protection.electrical': 'none' }
    const severity = (safetyClass: string) =>
      loadLoss.judge(sampleChain({ ...none, 'purpose.class': safetyClass }))?.severity
    expect(severity('outdoor')).toBe('blocking')
    expect(severity('bench')).toBe('note')
    expect(severity('demonstration')).toBe('note')
  })
  test('an electrical one alone blocks, a mechanical one alone warns', () => {
    const electrical = loadLoss.judge(sampleChain({ 'protection.mechanical': 'none' }))
    expect(electrical?.severity).toBe('blocking')
    expect(electrical?.figures).toContain('1430 rpm')
    expect(loadLoss.judge(sampleChain({ 'protection.electrical': 'none' }))?.severity).toBe('warning')
    const byHand = { 'protection.mechanical': 'none', 'protection.electrical': 'shorting switch' }
    expect(loadLoss.judge(sampleChain(byHand))?.why).toContain('somebody must be there')
    const bySpeed = { ...byHand, 'protection.short.actsAt_rpm': 500 }
    expect(loadLoss.judge(sampleChain(bySpeed))?.why).not.toContain('somebody')
  })
})
