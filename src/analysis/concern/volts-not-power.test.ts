/** Checks the concern of power claimed without a load. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { matchedPower, voltsNotPower } from './volts-not-power.ts'

describe('agrees: V²/(4R) by hand', () => {
  check('20 V behind 0.5 Ω', matchedPower({ emfRms: 20, resistance: 0.5 }), '200')
  test('a quarter of open volts times short amps, and no load draws more', () => {
    const source = { emfRms: 20, resistance: 0.5 }
    expect(matchedPower(source)).toBeCloseTo((20 * (20 / 0.5)) / 4, 9)
    for (const load of [0.1, 0.4, 0.6, 5])
      expect((20 / (0.5 + load)) ** 2 * load).toBeLessThan(matchedPower(source))
  })
})

describe('law: only watts into a load are claims', () => {
  const claimed = (from: string, safetyClass = 'outdoor') =>
    voltsNotPower.judge(
      sampleChain({ 'purpose.class': safetyClass, 'bench.claims': [{ power_W: 500, from, speed_rpm: 300 }] }),
    )
  test('silent for a load, severity by class for volts', () => {
    expect(voltsNotPower.judge(sampleChain())).toBeUndefined()
    expect(claimed('volts and amps into a load')).toBeUndefined()
    expect(claimed('open-circuit volts')?.severity).toBe('blocking')
    expect(claimed('open-circuit volts', 'bench')?.severity).toBe('warning')
    // three phases of 0.7/√2 V·s/rad at 31.4 rad/s behind 0.2 Ω
    expect(claimed('open-circuit volts times short-circuit amps')?.figures).toContain('907 W')
  })
})
