/** Checks the concern of standby watts. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { converterStandby } from './converter-standby.ts'

describe('agrees: watts times the hours of a year by hand', () => {
  const judged = (standby_W: number, energy = 600 * 3.6e6) =>
    converterStandby.judge(
      sampleChain(
        {
          converter: {
            standby_W,
            curve: [
              { speed_rpm: 100, power_W: 0 },
              { speed_rpm: 500, power_W: 300 },
            ],
          },
        },
        ({ year }) => ({ year: { ...year, energy } }),
      ),
    )
  test('10 W are 87.6 kWh of 600 kWh', () => {
    expect(judged(10)?.figures).toContain('10.0 W all year are 87.6 kWh')
    expect(judged(10)?.figures).toContain('15 % of it')
    expect(judged(10)?.severity).toBe('note')
    expect(judged(30)?.severity).toBe('warning')
    expect(judged(1)).toBeUndefined()
    expect(judged(1, 0)?.what).toContain('more than the machine yields')
  })
})
