/** Checks what a converter asks for and gets, wind by wind. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { converterDuty } from './converter-duty.ts'

const document = exampleDocument('hen-house-drum')
document.converter = {
  curve: [
    { speed_rpm: 150, power_W: 0 },
    { speed_rpm: 300, power_W: 1.5 },
    { speed_rpm: 500, power_W: 5 },
    { speed_rpm: 800, power_W: 11 },
  ],
}
document.load.voltage_V = 25.2
const chain = computeDesign(designOf(document))

describe('law: a converter and the machine before it', () => {
  const duty = converterDuty(chain)!
  test('below the battery’s own volts it draws what its curve asks, and never more than comes in at the shaft', () => {
    let followed = 0
    for (const { asked, drawn, shaft, best } of duty.winds) {
      expect(drawn).toBeLessThanOrEqual(shaft * 1.001)
      expect(shaft).toBeLessThanOrEqual(best * 1.01)
      if (drawn > 0.5 && Math.abs(drawn - asked) < 0.02 * asked) followed++
    }
    expect(followed).toBeGreaterThan(2)
  })
  test('the blades’ best is no less than what they give where the machine runs', () => {
    for (const { wind, speed, best } of duty.winds)
      expect(best).toBeGreaterThanOrEqual(chain.blades.power(wind, speed) * 0.999)
  })
  test('none without one', () => {
    expect(converterDuty(exampleChain('hen-house-drum'))).toBeUndefined()
  })
})
