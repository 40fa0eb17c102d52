/** Checks of the choice of units. */
import { describe, expect, test } from 'vitest'
import { measureChoice, metricMeasure, saidUnit, withSystem } from './measure-choice.ts'
import { unitsOfKind } from './spoken-unit.ts'
import { units } from './unit.ts'

describe('law: a choice is whole, whatever was kept', () => {
  test('nonsense gives the metric one', () => {
    for (const kept of [undefined, null, 5, 'inch', [], { system: 'cubit' }, { wind: 7 }])
      expect(measureChoice(kept)).toEqual(metricMeasure)
  })
  test('what can be read stays', () => {
    expect(measureChoice({ system: 'inch and pound', wind: 'knots' })).toEqual({
      system: 'inch and pound',
      wind: 'knots',
      temperature: '°F',
      wire: 'AWG',
    })
  })
  test('another system takes along what was not chosen apart', () => {
    const sailor = { ...metricMeasure, wind: 'knots' } as const
    const inches = withSystem(sailor, 'inch and pound')
    expect(inches).toEqual({ system: 'inch and pound', wind: 'knots', temperature: '°F', wire: 'AWG' })
    expect(withSystem(inches, 'metric')).toEqual(sailor)
  })
})

describe('law: every quantity of the document has a unit of its kind in every choice', () => {
  test('metric leaves all as they are kept', () => {
    for (const suffix of units.keys()) expect(saidUnit(suffix, metricMeasure).suffix).toBe(suffix)
  })
  test('inch and pound, with every wind', () => {
    const inches = withSystem(metricMeasure, 'inch and pound')
    for (const wind of ['m/s', 'km/h', 'mph', 'knots'] as const)
      for (const suffix of units.keys())
        expect(unitsOfKind(suffix).map(({ unit }) => unit.suffix)).toContain(
          saidUnit(suffix, { ...inches, wind }).suffix,
        )
    expect(saidUnit('mm', inches).suffix).toBe('in')
    expect(saidUnit('Nm', inches).suffix).toBe('lbf_ft')
    expect(saidUnit('V', inches).suffix).toBe('V')
  })
})
