/** Checks of the page of the match: all its parts, numbers a reader can trust, JSON without holes. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { generatorTarget } from '../analysis/generator-target.ts'
import { matchMap } from '../analysis/match-map.ts'
import { matchRemedies } from '../analysis/match-remedies.ts'
import { finished } from '../analysis/step.ts'
import { fromSi, unit } from '../units/unit.ts'
import { type MatchPageParts, matchPage, matchResult } from './match-page.ts'
import { remedySentence } from './remedy-words.ts'

function partsOf(name: string): MatchPageParts {
  const chain = exampleChain(name)
  const map = finished(matchMap(chain))
  const design = designOf(exampleDocument(name))
  const report = finished(matchRemedies(design, { chain, kinds: ['cable', 'connection'] }))
  return { name: design.name, map, target: generatorTarget(chain, map), report }
}

describe('law: the page of the match', () => {
  const parts = partsOf('hen-house-drum')
  const text = matchPage(parts).map((line) => line.text)
  test('it has the winds, the zones, the sheet and the remedies, and no number that is none', () => {
    for (const head of ['Zones', 'What blades and load ask of the generator', 'Remedies, each alone'])
      expect(text).toContain(head)
    expect(text.join('\n')).not.toMatch(/NaN|undefined|Infinity|\[object/)
    const winds = text.filter((line) => /^\s+\d+\.\d+ {2}(at rest|turning|charging|stalled)/.test(line))
    expect(winds).toHaveLength(parts.map.winds.length)
  })
  test('a remedy says its document change, its gain and its price', () => {
    const cable = parts.report.remedies.find(({ kind }) => kind === 'cable')!
    expect(text.join('\n')).toMatch(/cable\.area_mm2 1\.5 → \d/)
    expect(text.join(' ').replace(/\s+/g, ' ')).toContain(remedySentence(parts.report, cable))
    expect(text.join('\n')).toMatch(/price: .* more copper/)
  })
  test('JSON in workshop units says the same and holds only what JSON can', () => {
    const result = matchResult(parts)
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
    expect(result.before.energy_kWh).toBeCloseTo(fromSi(parts.report.before.energy, unit('kWh')), 9)
    for (const { states } of result.winds)
      for (const { stable, holding_W_per_rpm } of states)
        if (stable) expect(holding_W_per_rpm).toBeGreaterThan(0)
  })
})

describe('law: a machine with nothing connected', () => {
  test('it has a map, no sheet, and every remedy says why it is none', () => {
    const document = exampleDocument('class-room-fan')
    document.load = { kind: 'open' }
    const report = finished(matchRemedies(designOf(document)))
    expect(report.remedies).toEqual([])
    expect(report.without.every(({ reason }) => reason === 'nothing is connected')).toBe(true)
  })
})
