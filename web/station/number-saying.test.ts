/** Checks of how the numbers of fields are said and typed in units and languages. */
import { afterEach, describe, expect, test } from 'vitest'
import { designFields, type FormField } from '../../src/index.ts'
import { metricMeasure, withSystem } from '../../src/units/measure-choice.ts'
import { inMeasure, intervalInMeasure, measure, measured, spreadInMeasure } from '../store/measure.ts'
import { language } from '../text/say.ts'
import { listText, numberList } from './number-list.ts'
import { faultSentence, numberSaying, quantitySaying } from './number-saying.ts'

const inches = withSystem(metricMeasure, 'inch and pound')

const fields = designFields()
const fieldAt = (path: string): FormField => {
  const found = fields.find((each) => each.path === path)!
  return { ...found, keys: path.split('.'), value: undefined }
}

afterEach(() => {
  measure.value = metricMeasure
  language.value = 'en'
})

describe('law: a field says its number in the chosen unit and language', () => {
  const wind = fieldAt('site.meanWind_m_per_s')
  test('a decimal comma where people write one, and both taken', () => {
    language.value = 'de'
    const { show, read, fault } = numberSaying(wind)
    expect(show(4.2)).toBe('4,2')
    expect([read('4,2'), read('4.2')]).toEqual([4.2, 4.2])
    expect(fault('1.200')).toBe('mark of thousands')
    expect(read('1.200')).toBe('1.200')
    expect(read('1,200')).toBe(1.2)
  })
  test('a temperature turns with its zero, its spread without', () => {
    measure.value = inches
    const ambient = fieldAt('site.ambient_degC')
    expect(numberSaying(ambient).show(20)).toBe('68')
    expect(numberSaying(ambient).unit(20)).toBe('°F')
    expect(quantitySaying(ambient, true).show(5)).toBe('9')
    expect(quantitySaying(ambient, true).read('9')).toBe(5)
    expect(numberSaying(ambient).read('20 °C')).toBe(20)
  })
  test('a step goes along the unit that is said, and stops at the exact bound of the document', () => {
    measure.value = inches
    const width = fieldAt('rotor.magnet.width_mm')
    const { stepped } = numberSaying(width)
    expect(stepped(6.35, 1)).toBe(6.746875)
    expect(stepped(width.maximum, 10)).toBe(width.maximum)
    expect(stepped(width.minimum, -10)).toBe(width.minimum)
    expect(stepped('a lot', 1)).toBe('a lot')
    expect(stepped(undefined, 1)).toBeUndefined()
  })
  test('a section of cable by its gauge', () => {
    const area = fieldAt('cable.area_mm2')
    expect(numberSaying(area).read('12 AWG')).toBe(3.309)
    expect(numberSaying(area).show(3.309)).toBe('3.309')
    measure.value = inches
    expect(numberSaying(area).show(3.309)).toBe('AWG 12')
    expect(numberSaying(area).unit(3.309)).toBe('')
    expect(numberSaying(area).read('AWG 12')).toBe(3.309)
    expect(numberSaying(area).show(2.5)).toBe('2.5')
    expect(numberSaying(area).unit(2.5)).toBe('mm²')
  })
  test('every number of every field is said and read back, in every choice', () => {
    const numbers = fields.filter(({ kind }) => kind === 'quantity' || kind === 'count')
    for (const choice of [metricMeasure, inches, { ...metricMeasure, wind: 'km/h', wire: 'SWG' } as const])
      for (const name of ['en', 'de'] as const) {
        measure.value = choice
        language.value = name
        for (const { path } of numbers) {
          const { show, read, fault, stepped } = numberSaying(fieldAt(path))
          for (const value of [1, 2.5, 12, 240]) {
            const back = read(show(value))
            expect(fault(show(value)), `${path} ${show(value)}`).toBeUndefined()
            expect(Math.abs(Number(back) - value), `${path} ${show(value)}`).toBeLessThan(1e-3 * value)
            // said again it reads the same: it does not creep
            expect(show(back)).toBe(show(value))
            expect(Number.isFinite(stepped(value, 1)), path).toBe(true)
          }
        }
      }
  })
})

describe('law: lists', () => {
  const months = fieldAt('site.monthlyMean_m_per_s')
  test('typed and shown in either language', () => {
    expect(numberList(months, '3.5, 4.2 5', '.')).toEqual([3.5, 4.2, 5])
    expect(numberList(months, '3.5,4.2', '.')).toEqual([3.5, 4.2])
    expect(listText(months, [3.5, 4.2], '.')).toBe('3.5, 4.2')
    language.value = 'de'
    expect(numberList(months, '3,5; 4,2 5', ',')).toEqual([3.5, 4.2, 5])
    expect(numberList(months, '1,3,5', ',')).toEqual([1, 3, 5])
    expect(listText(months, [3.5, 4.2], ',')).toBe('3,5; 4,2')
    expect(numberList(months, ' ', ',')).toBeUndefined()
  })
})

describe('law: what was typed wrong is told with its way out', () => {
  test('in the wording of the house, the text as it was typed', () => {
    const wind = fieldAt('site.meanWind_m_per_s')
    const bare = (text: string) => text.replaceAll('\u2060', '')
    expect(bare(faultSentence(wind, '1,200', 'mark of thousands'))).toBe(
      'site.meanWind_m_per_s must be a number that reads one way only: type 1200 for thousands, or 1.200 for decimals; received "1,200" (wrong-type)',
    )
    language.value = 'de'
    const german = bare(faultSentence(wind, '1.200', 'mark of thousands'))
    expect(german).toContain('1,200')
    expect(german).toContain('"1.200"')
  })
})

describe('law: figures outside fields', () => {
  test('a value, its spread, its interval, a sentence', () => {
    expect(inMeasure(0.0123, 'mm')).toBe('12.3 mm')
    measure.value = inches
    expect(inMeasure(0.0254, 'mm')).toBe('1.00 in')
    expect(inMeasure(293.15, 'degC')).toBe('68.0 °F')
    expect(spreadInMeasure(353.15, 5, 'degC')).toBe('176.0 ± 9.0 °F')
    expect(intervalInMeasure(4.4704, 'm_per_s', undefined)).toBe('10.0 mph')
    expect(measured('at least 25.4 mm')).toBe('at least 1.00 in')
    language.value = 'de'
    expect(inMeasure(0.0254, 'mm')).toBe('1,00 in')
  })
})
