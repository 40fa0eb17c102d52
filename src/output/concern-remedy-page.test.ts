/** Checks of the page of tried remedies: sentences, widths, and JSON that says the same. */
import { describe, expect, test } from 'vitest'
import { exampleDocument } from '../../test/example.ts'
import { concernRemedies } from '../analysis/concern-remedies.ts'
import { finished } from '../analysis/step.ts'
import { parseDesign } from '../machine/parse.ts'
import { concernRemedyPage, concernRemedyResult } from './concern-remedy-page.ts'
import { triedSentences } from './concern-remedy-words.ts'

const parsed = parseDesign(exampleDocument('class-room-fan'))
if (!parsed.ok) throw new Error('the example has faults')
const report = finished(concernRemedies(parsed.design))
const text = concernRemedyPage(report)
  .map((line) => line.text)
  .join('\n')

describe('law: the page of tried remedies', () => {
  test('names every concern and every remedy, without a gap', () => {
    const flat = text.replace(/\s+/g, ' ')
    for (const { concern, tried, advice } of report.concerns) {
      expect(flat).toContain(concern.code)
      for (const { words } of tried) expect(flat).toContain(words)
      for (const sentence of advice) expect(flat).toContain(sentence)
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/)
  })

  test('fits the terminal', () => {
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(96)
  })

  test('is made of sentences', () => {
    for (const trials of report.concerns)
      for (const tried of trials.tried)
        for (const sentence of triedSentences(trials, tried, report.before)) expect(sentence).toMatch(/\.$/)
  })
})

describe('agrees: JSON with the report', () => {
  test('the same remedies in the same order, every number finite', () => {
    const result = concernRemedyResult(report)
    expect(result.concerns.map(({ code }) => code)).toEqual(
      report.concerns.map(({ concern }) => concern.code),
    )
    result.concerns.forEach(({ remedies }, k) => {
      expect(remedies.map(({ words }) => words)).toEqual(report.concerns[k]!.tried.map(({ words }) => words))
    })
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  })
})
