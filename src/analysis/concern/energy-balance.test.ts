/** Checks the concern of more power out than in. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { windPower } from '../../physics/aerodynamics/wind-power.ts'
import { betzLimit, claimExceedsShaft, energyBalance, shaftPowerOf } from './energy-balance.ts'

describe('agrees: T = P/ω by hand', () => {
  check('torque of 100 W at 300 rpm', 100 / shaftPowerOf({ torque: 1, rpm: 300 }), '3.18')
  check(
    'a kilogram-force on 0.30 m at 300 rpm, watts',
    shaftPowerOf({ torque: 9.80665 * 0.3, rpm: 300 }),
    '92',
  )
  check('Betz', betzLimit, '0.593')
  check(
    'wind through 1.5 m at 10 m/s, watts',
    windPower({ density: 1.225, area: Math.PI * 0.75 ** 2, speed: 10 }),
    '1082',
  )
})

describe('law: claims within the shaft', () => {
  test('5 % or the stated spreads', () => {
    const claim = { power: 104, shaftPower: 100, powerSpread: 0, shaftSpread: 0 }
    expect(claimExceedsShaft(claim)).toBe(false)
    expect(claimExceedsShaft({ ...claim, power: 106 })).toBe(true)
    expect(claimExceedsShaft({ ...claim, power: 106, powerSpread: 6, shaftSpread: 5 })).toBe(false)
    expect(claimExceedsShaft({ ...claim, shaftPower: 0 })).toBe(true)
  })
  const claimed = (power_W: number, safetyClass = 'outdoor') =>
    energyBalance.judge(
      sampleChain({
        'purpose.class': safetyClass,
        'bench.claims': [
          { power_W, from: 'volts and amps into a load', speed_rpm: 300, shaftTorque_Nm: 3.18 },
        ],
      }),
    )
  test('silent below, severity by class above', () => {
    expect(energyBalance.judge(sampleChain())).toBeUndefined()
    expect(claimed(80)).toBeUndefined()
    expect(claimed(150)?.severity).toBe('blocking')
    expect(claimed(150)?.figures).toContain('99.9 W at the shaft')
    expect(claimed(150, 'bench')?.severity).toBe('warning')
  })
  test('an efficiency above one', () => {
    const stated = (efficiency_percent: number) =>
      energyBalance.judge(
        sampleChain({
          'bench.claims': [{ power_W: 80, from: 'volts and amps into a load', efficiency_percent }],
        }),
      )
    expect(stated(100)).toBeUndefined()
    expect(stated(104)?.severity).toBe('blocking')
    expect(stated(104)?.figures).toContain('at an efficiency of 104 %')
  })
  test('a goal beyond the wind', () => {
    const goal = (power_W: number) =>
      energyBalance.judge(sampleChain({ 'purpose.power_W': power_W, 'purpose.atWind_m_per_s': 6 }))
    expect(goal(300)).toBeUndefined()
    expect(goal(400)?.path).toBe('purpose.power_W')
  })
})
