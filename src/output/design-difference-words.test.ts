/** Checks of the words for differences: sign, unit, share and sureness of every figure. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { figureDifferences } from '../analysis/design-difference.ts'
import { designFigures, figureNames } from '../analysis/design-figure.ts'
import type { DifferenceSpread } from '../analysis/paired-spread.ts'
import {
  aloneText,
  differenceText,
  figureText,
  figureWords,
  shareText,
  signedText,
  surenessText,
} from './design-difference-words.ts'

const spread = (part: Partial<DifferenceSpread>): DifferenceSpread => ({
  difference: 2,
  low: 1,
  high: 3,
  spread: 1,
  alone: [10, 12],
  never: 0,
  verdict: 'told',
  ...part,
})

describe('law: words of a difference', () => {
  test('every figure has a title of its own, a unit, and no word that is no number', () => {
    expect(new Set(Object.values(figureWords).map(({ title }) => title)).size).toBe(figureNames.length)
    const [one, other] = ['hen-house-drum', 'class-room-fan'].map((name) =>
      designFigures(exampleChain(name), 6),
    )
    for (const each of figureDifferences(one!, other!)) {
      const text = `${figureText(each.name, each.from)} ${figureText(each.name, each.to)} ${differenceText(each)}`
      expect(text).not.toMatch(/NaN|undefined|Infinity/)
      expect(figureText(each.name, each.to)).toMatch(/\s\S|never/)
    }
  })

  test('a difference of temperatures is in kelvin and has no zero of its own', () => {
    expect(signedText('hottestCopper', 3.75)).toBe('+3.75 K')
    expect(signedText('hottestCopper', -3.75)).toBe('−3.75 K')
    expect(figureText('hottestCopper', 293.15)).toBe('20.0 °C')
  })

  test('a year in kilowatt-hours, with its sign and its share', () => {
    const each = { name: 'energy', from: 3.6e8, to: 3.96e8, difference: 3.6e7, share: 0.1 } as const
    expect(differenceText(each)).toBe('+10.0 kWh (+10 %)')
    expect(shareText(-1e-6)).toBe('−under 0.01 %')
  })

  test('what never happened or never will is told in words', () => {
    const base = { name: 'cutInWind', share: undefined } as const
    const never = Number.POSITIVE_INFINITY
    expect(differenceText({ ...base, from: never, to: 3, difference: -never })).toBe('never before')
    expect(differenceText({ ...base, from: 3, to: never, difference: never })).toBe('never any more')
    expect(differenceText({ ...base, from: never, to: never, difference: 0 })).toBe('the same')
  })

  test('each verdict has its own words, with the interval where there is one', () => {
    expect(surenessText('usefulPower', spread({}))).toBe('sure: +1.0 to +3.0 W')
    expect(surenessText('usefulPower', spread({ low: -1, verdict: 'open' }))).toBe(
      'may go either way: −1.0 to +3.0 W',
    )
    expect(surenessText('energy', spread({ low: -6.5e6, high: -52 }))).toBe('sure: −1.8 to 0 kWh')
    expect(surenessText('usefulPower', spread({ verdict: 'small' }))).toContain('hand-made')
    expect(surenessText('usefulPower', spread({ verdict: 'none' }))).toBe('the same in every draw')
    expect(aloneText('usefulPower', spread({}))).toBe('± 10 and ± 12 W')
  })
})
