/** Checks the concern of a converter that bears too few volts. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { converterInput } from './converter-input.ts'

describe('law: the open circuit’s volts at runaway', () => {
  const curve = [
    { speed_rpm: 100, power_W: 0 },
    { speed_rpm: 500, power_W: 300 },
  ]
  const judged = (greatestInput_V?: number, safetyClass = 'outdoor') =>
    converterInput.judge(
      sampleChain(
        {
          converter: { curve, ...(greatestInput_V === undefined ? {} : { greatestInput_V }) },
          'purpose.class': safetyClass,
        },
        ({ runaway }) => ({ runaway: { ...runaway, directVoltage: 87 } }),
      ),
    )
  test('severity', () => {
    expect(judged(87)).toBeUndefined()
    expect(judged(60)?.severity).toBe('blocking')
    expect(judged(60)?.figures).toContain('87.0 V at 1430 rpm without load against 60.0 V')
    expect(judged(60, 'bench')?.severity).toBe('warning')
    expect(judged()?.severity).toBe('note')
    expect(converterInput.judge(sampleChain())).toBeUndefined()
  })
})
