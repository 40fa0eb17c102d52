/** Checks the page of wire sizes. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { finished } from '../analysis/step.ts'
import { wireChoices } from '../analysis/wire-choice.ts'
import { wirePage, wireResult } from './wire-page.ts'

const choices = finished(wireChoices(exampleChain('class-room-fan'), { count: 1 }))
const lacking = {
  ...choices,
  choices: choices.choices.map((choice, k) => (k === 0 ? { ...choice, outcome: undefined } : choice)),
}

describe('law: the page of wires', () => {
  test('a row for each size, the design marked, no line too long', () => {
    const lines = wirePage('Fan', choices)
    const text = lines.map((line) => line.text)
    for (const { name } of choices.choices) expect(text.some((line) => line.includes(name))).toBe(true)
    expect(text.filter((line) => line.startsWith('  →  '))).toHaveLength(1)
    expect(text.join('\n')).not.toMatch(/NaN|undefined|Infinity/)
  })
  test('a size that does not go in says so', () => {
    expect(wirePage('Fan', lacking).some((line) => line.text.includes('does not go in'))).toBe(true)
    expect(wireResult(lacking).choices[0]).toMatchObject({ fits: false })
  })
  test('the result is JSON with finite numbers', () => {
    expect(JSON.stringify(wireResult(choices))).not.toMatch(/NaN|Infinity|null,null/)
    expect(wireResult(choices).choices.filter(({ asDrawn }) => asDrawn)).toHaveLength(1)
  })
})
