/** Checks resistances as they are read. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { resistanceUncertainty, twoWireResistance } from './resistance-reading.ts'

describe('source: jcgm100, example H.2, tables H.2 and H.3 — impedance by volts over amps, V = 4.9990 V, I = 19.6610 mA, r = −0.36', () => {
  const read = {
    voltage: 4.999,
    voltageUncertainty: 3.2e-3,
    current: 19.661e-3,
    currentUncertainty: 9.5e-6,
    correlation: -0.36,
  }
  check('Z', read.voltage / read.current, '254.260')
  // the guide rounds on the way: 0.236 printed, 0.2366 from the printed inputs, 0.24 in a transcription that computes it
  check('u(Z)', resistanceUncertainty(read), '0.236', { absolute: 0.001 })
})

describe('source: lead-error-article — leads of 0.2 Ω on 2 Ω', () => {
  check('error, per cent', 100 * (twoWireResistance({ resistance: 2, leads: 0.2 }) / 2 - 1), '10')
})

describe('law: uncertainty', () => {
  test('fully correlated equal shares cancel; independent ones add as squares; the larger alone is the least', () => {
    const read = { voltage: 2, current: 4, voltageUncertainty: 0.02, currentUncertainty: 0.04 }
    expect(resistanceUncertainty({ ...read, correlation: 1 })).toBeCloseTo(0, 7)
    expect(resistanceUncertainty(read)).toBeCloseTo(0.5 * 0.01 * Math.SQRT2, 12)
    expect(resistanceUncertainty({ ...read, voltageUncertainty: 0 })).toBeCloseTo(0.5 * 0.01, 12)
  })
})
