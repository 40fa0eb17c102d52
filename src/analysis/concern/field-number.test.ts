/** Checks the concern of mixed-up magnet numbers. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { fieldFault, fieldNumber, looseBlockFluxDensity } from './field-number.ts'

describe('agrees: the closed form on the axis, (J/π)(atan … − atan …), block 40 × 20 × 10 mm of 1.3 T', () => {
  const block = { length: 0.04, width: 0.02, thickness: 0.01, remanence: 1.3, recoilPermeability: 1 }
  const onAxis = (z: number) => {
    const term = (d: number) =>
      Math.atan((0.04 * 0.02) / (2 * d * Math.sqrt(4 * d * d + 0.04 ** 2 + 0.02 ** 2)))
    return (1.3 / Math.PI) * ((z === 0 ? Math.PI / 2 : term(z)) - term(z + 0.01))
  }
  for (const [mm, field] of [
    [0, '0.367'],
    [2, '0.318'],
    [5, '0.2445'],
    [10, '0.150'],
    [20, '0.0602'],
  ] as const) {
    check(`tesla at ${mm} mm`, looseBlockFluxDensity(block, mm / 1000), field)
    check(`by hand at ${mm} mm`, onAxis(mm / 1000), field)
  }
})

describe('law: the rule', () => {
  test('verdicts', () => {
    const numbers = { remanence: 1.3, spread: 0.02, graded: true, measured: false }
    expect(fieldFault(numbers)).toBeUndefined()
    expect(fieldFault({ ...numbers, reading: 0.15, expected: 0.15 })).toBeUndefined()
    expect(fieldFault({ ...numbers, reading: 0.25, expected: 0.15 })).toBe('reading disagrees')
    expect(fieldFault({ ...numbers, reading: 0.099, range: 0.1, expected: 0.15 })).toBe('sensor at its end')
    const bare = { ...numbers, graded: false }
    expect(fieldFault({ ...bare, remanence: 0.37, reading: 0.37, expected: 0.1 })).toBe(
      'reading taken for remanence',
    )
    expect(fieldFault({ ...bare, remanence: 0.7 })).toBe('no such remanence')
    expect(fieldFault({ ...bare, remanence: 0.7, measured: true })).toBeUndefined()
    expect(fieldFault({ ...bare, remanence: 0.38 })).toBeUndefined()
  })
  test('silent for a grade, a warning for a reading at the sensor’s end', () => {
    expect(fieldNumber.judge(sampleChain())).toBeUndefined()
    const read = sampleChain({
      'rotor.magnet.readings': [{ kind: 'hall', distance_mm: 10, fluxDensity_mT: 99, sensorRange_mT: 100 }],
    })
    expect(fieldNumber.judge(read)?.severity).toBe('warning')
    expect(fieldNumber.judge(read)?.what).toContain('end of its range')
    const slip = sampleChain({ 'rotor.magnet.grade': undefined, 'rotor.magnet.polarization_T': 0.6 })
    expect(fieldNumber.judge(slip)?.path).toBe('rotor.magnet.polarization_T')
  })
})
