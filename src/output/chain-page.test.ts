/** Checks of the page of text: what a reader must find on it. */
import { describe, expect, test } from 'vitest'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { remedyWords } from '../analysis/concerns.ts'
import { spreadsOf } from '../analysis/spread.ts'
import { finished } from '../analysis/step.ts'
import { chainPage } from './chain-page.ts'
import { designResult, resultFields } from './result.ts'

const textOf = (name: string) =>
  chainPage(exampleChain(name))
    .map(({ text }) => text)
    .join('\n')

describe('law: the page of every example', () => {
  for (const name of exampleNames)
    test(`${name} names the design, its watts, its year, and every concern with its remedies`, () => {
      const chain = exampleChain(name)
      const text = textOf(name)
      expect(text).toContain(chain.machine.name)
      expect(text).toContain('Where the watts go')
      expect(text).toMatch(/A year at [\d.]+ m\/s mean wind at the hub: [\d.]+ k?Wh|never/)
      for (const { code, remedies } of chain.concerns) {
        expect(text).toContain(code)
        expect(text).toContain(remedyWords(remedies[0]!).split(' ').slice(0, 3).join(' '))
      }
      expect(text).not.toMatch(/NaN|Infinity|undefined/)
    })
  test('no line is wider than a hundred letters', () => {
    for (const name of exampleNames)
      for (const { text } of chainPage(exampleChain(name))) expect([...text].length).toBeLessThanOrEqual(100)
  })
})

describe('law: the result for other programs', () => {
  test('has every declared field, survives JSON, and carries the spreads when they are given', () => {
    const chain = exampleChain('class-room-fan')
    const bare = designResult(chain)
    expect(Object.keys(bare)).toEqual(resultFields.map(({ name }) => name))
    expect(JSON.parse(JSON.stringify(bare))).toEqual(bare)
    expect(bare.spreads).toBeNull()
    const full = designResult(chain, finished(spreadsOf(chain, { samples: 32 })))
    expect(JSON.stringify(full)).toContain('energy_kWh')
    expect(full.spreads).not.toBeNull()
  })
})
