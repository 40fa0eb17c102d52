/** Checks the concern of a brake behind the bridge. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { shortedDuty } from '../electric-duty.ts'
import { brakePlace } from './brake-place.ts'

describe('agrees: E/√(R² + (ωL)²) by hand, star, and the mean of a rectified current', () => {
  const behind = { 'protection.electrical': 'shorting switch', 'protection.short.place': 'after the bridge' }
  const chain = sampleChain({ ...behind, 'site.ambient_degC': 20 })
  const { lineCurrent, directCurrent } = shortedDuty(chain)
  // 0.7/√2 V·s at 150 rad/s, 0.2 Ω, 6·150 rad/s · 1.2 mH
  const expected = ((0.7 / Math.SQRT2) * 150) / Math.hypot(0.2, 6 * 150 * 1.2e-3)
  check('line, A rms', lineCurrent, expected.toFixed(2))
  check('mean behind the bridge over the line', directCurrent / lineCurrent, '1.3505')
})

describe('law: at the machine’s own leads', () => {
  const behind = (order: string, fields = {}) =>
    brakePlace.judge(
      sampleChain({
        'protection.electrical': 'shorting switch',
        'protection.short': { place: 'after the bridge', order },
        ...fields,
      }),
    )
  test('it shorts the battery too if it shorts first; else only the limiter makes it a warning', () => {
    expect(brakePlace.judge(sampleChain({ 'protection.electrical': 'shorting switch' }))).toBeUndefined()
    expect(behind('short, then disconnect')?.severity).toBe('blocking')
    expect(behind('short, then disconnect')?.what).toContain('shorts the battery too')
    expect(behind('disconnect, then short')?.severity).toBe('warning')
    expect(behind('disconnect, then short', { 'protection.mechanical': 'none' })?.severity).toBe('blocking')
    const heater = { load: { kind: 'resistor', resistance_ohm: 2 } }
    expect(behind('short, then disconnect', heater)?.severity).toBe('warning')
  })
})
