/** Checks the concern of dangerous volts. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { remedyTexts } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { shockBand, shockBandRule, shockLimits, shockSeverity, speedAtLimit } from './shock-band.ts'

describe('agrees: volts in proportion to speed, cut-in at 14 V peak and 306 rpm', () => {
  const direct = (14 * 1910) / 306
  check('direct volts at 1910 rpm', direct, '87')
  check('line volts rms at 1910 rpm', direct / Math.SQRT2, '62')
  // 50/62 of the speed comes before 120/87
  check(
    'rpm at which 50 V AC is passed',
    speedAtLimit({ alternating: 62, direct: 87 }, 1910, shockLimits.extraLow),
    '1540',
  )
  // 60/87 comes before 25/20
  check(
    'rpm at which 60 V DC is passed',
    speedAtLimit({ alternating: 20, direct: 87 }, 1910, shockLimits.dryTouch),
    '1317',
  )
  test('above extra-low voltage by its alternating part alone', () => {
    expect(shockBand({ alternating: 62, direct: 87 })).toBe('dangerous')
    expect(shockBand({ alternating: 49, direct: 87 })).toBe('cover always')
    expect(shockBand({ alternating: 20, direct: 29 })).toBe('cover when wet')
    expect(shockBand({ alternating: 12, direct: 30 })).toBe('harmless')
    expect(shockBand({ alternating: 0, direct: 121 })).toBe('dangerous')
  })
})

describe('law: severity by class', () => {
  test('bands', () => {
    expect(shockSeverity('harmless', 'demonstration')).toBeUndefined()
    expect(shockSeverity('cover when wet', 'demonstration')).toBe('warning')
    expect(shockSeverity('cover always', 'demonstration')).toBe('blocking')
    expect(shockSeverity('cover always', 'outdoor')).toBe('warning')
    expect(shockSeverity('dangerous', 'outdoor')).toBe('blocking')
    expect(shockSeverity('dangerous', 'bench')).toBe('warning')
  })
  test('wet hands and children bear less', () => {
    expect(shockSeverity('cover always', 'outdoor', 'wet')).toBe('blocking')
    expect(shockSeverity('cover when wet', 'outdoor', 'wet')).toBe('warning')
    expect(shockSeverity('dangerous', 'bench', 'wet')).toBe('warning')
    expect(shockSeverity('cover always', 'bench', 'class room')).toBe('blocking')
    const wet = sampleChain({ 'wiring.surroundings': 'wet' }, ({ runaway }) => ({
      runaway: { ...runaway, lineVoltage: 20, directVoltage: 61 },
    }))
    const concern = shockBandRule.judge(wet)
    expect(concern?.severity).toBe('blocking')
    expect(concern?.what).toContain('wet')
    // 150 rad/s · 60/61
    expect(concern?.figures).toContain('past 25 V rms or 60.0 V direct from 1410 rpm on')
  })
  test('silent at low volts, blocking at 62 V', () => {
    expect(shockBandRule.judge(sampleChain())).toBeUndefined()
    const high = sampleChain({}, ({ runaway }) => ({
      runaway: { ...runaway, lineVoltage: 62, directVoltage: 87 },
    }))
    const concern = shockBandRule.judge(high)
    expect(concern?.severity).toBe('blocking')
    expect(concern?.figures).toContain('62.0 V rms')
    expect(remedyTexts(concern).join(' ')).toContain('licensed electrician')
  })
})
