/** Checks of sentences whose quantities are turned into chosen units. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatSi } from './format.ts'
import { metricMeasure, saidUnit, withSystem } from './measure-choice.ts'
import { measuredSentence } from './measured-sentence.ts'
import { fromSi, units } from './unit.ts'

const inches = withSystem(metricMeasure, 'inch and pound')
const turned = (sentence: string) => measuredSentence(sentence, (suffix) => saidUnit(suffix, inches))

describe('law: what is measured is turned, and nothing else', () => {
  const cases = [
    ['at least 0.3 mm', 'at least 0.0118 in'],
    ['A wire of 25.4 mm, 12 V and 3 A.', 'A wire of 1.00 in, 12 V and 3 A.'],
    ['40 × 10 × 5 mm', '1.57 × 0.394 × 0.197 in'],
    ['12.30 ± 0.40 mm', '0.4843 ± 0.016 in'],
    ['3 to 25 m/s', '6.71 to 55.9 mph'],
    ['80.0 ± 5.0 °C', '176 ± 9.0 °F'],
    ['warmer by 20 °C', 'warmer by 36.0 °F'],
    ['at −10 °C', 'at 14.0 °F'],
    ['1.2 kg/m³', '0.0749 lb/ft³'],
    ['2.5 mm² of copper', '2.5 mm² of copper'],
    ['phases 1, 2 and 3 mm', 'phases 1, 2 and 3 mm'],
    ['5 mm/s and 2 N·m', '0.197 in/s and 1.48 lbf·ft'],
    [
      'stator.winding.legWidth_mm must be at most 50 mm; received 60 mm (above-maximum)',
      'stator.winding.legWidth_mm must be at most 1.97 in; received 2.36 in (above-maximum)',
    ],
    ['magnet N42, M8 thread, 5 magnets', 'magnet N42, M8 thread, 5 magnets'],
    ['0.39 % per K, 5 mΩ', '0.39 % per K, 5 mΩ'],
  ] as const
  for (const [before, after] of cases) test(before, () => expect(turned(before)).toBe(after))
})

describe('law: metric leaves every sentence as it is', () => {
  test('letter for letter', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units.values()),
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        (unit, value) => {
          const sentence = `It is ${formatSi(value, unit)} there, not ${formatSi(2 * value, unit)}.`
          expect(measuredSentence(sentence, (suffix) => saidUnit(suffix, metricMeasure))).toBe(sentence)
        },
      ),
    )
  })
})

describe('agrees: the sentence says the number that the value gives in the chosen unit', () => {
  test('within the digits printed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units.values()),
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (unit, value) => {
          const target = saidUnit(unit.suffix, inches)
          const read = Number.parseFloat(turned(formatSi(value, unit)).replace('−', '-'))
          const wanted = fromSi(value, target)
          // the metric text was rounded to three digits before, a kelvin scale at its own size
          const allowed = 0.011 * Math.abs(wanted) + (unit.offset > 0 ? 0.02 * value : 0)
          expect(Math.abs(read - wanted)).toBeLessThanOrEqual(allowed + 1e-4)
        },
      ),
    )
  })
})

describe('law: a long hostile sentence is answered', () => {
  test('digits, bounds and minus signs by the ten thousand', () => {
    for (const text of ['1 to '.repeat(20_000), '−'.repeat(50_000), '1'.repeat(50_000), '1,'.repeat(20_000)])
      expect(turned(text)).toBe(text)
  })
})
