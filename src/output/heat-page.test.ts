/** Checks the page of heat and its JSON against the study they tell of. */
import { describe, expect, test } from 'vitest'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { heatStudy } from '../analysis/heat-study.ts'
import { finished } from '../analysis/step.ts'
import { heatPage, heatResult } from './heat-page.ts'
import { duration } from './heat-report.ts'

describe('law: the page of heat', () => {
  for (const name of exampleNames)
    test(`${name}: every limit and case is told, no line too wide, no number missing`, () => {
      const study = finished(heatStudy(exampleChain(name)))
      const lines = heatPage(study)
      const text = lines.map((line) => line.text).join('\n')
      for (const { name: material } of study.limits) expect(text).toContain(material)
      expect(text).not.toMatch(/NaN|undefined|Infinity/)
      for (const line of lines) expect(line.text.length).toBeLessThanOrEqual(100)
      expect(lines.at(-1)!.tone).toBe('warning')
      const result = heatResult(study)
      expect(result.cases.length).toBe(study.cases.length)
      expect(result.rows.length).toBe(study.rows.length)
      expect(JSON.parse(JSON.stringify(result))).toEqual(result)
    })
  test('durations as people say them', () => {
    expect([3, 600, 7200].map(duration)).toEqual(['3.0 s', '10 min', '2.0 h'])
  })
})
