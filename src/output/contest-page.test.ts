/** Checks of a contest in words, tables, picture and JSON. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { type Contest, type ContestOptions, fairContest, scoreNames } from '../analysis/fair-contest.ts'
import { finished } from '../analysis/step.ts'
import { contestChart } from './chart/contest.ts'
import { contestPage } from './contest-page.ts'
import { contestReport } from './contest-report.ts'
import { contestResult } from './contest-result.ts'
import { verdictOf } from './contest-verdict.ts'

type Document = ReturnType<typeof fixedDocument>

function designFrom(change: (document: Document) => void) {
  const document = fixedDocument('drum')
  document.site.meanWind_m_per_s = 4.5
  document.site.shearExponent = 0.2
  document.shaft = { friction_mNm: { value: 8, spread: 2 } }
  delete document.rotor.magnet.grade
  document.rotor.magnet.polarization_T = 1.3
  change(document)
  return designOf(document)
}

const known = new Map<string, Contest>()
function contestOf(rule: ContestOptions['rule'], change: (document: Document) => void): Contest {
  const key = `${rule} ${change}`
  const contest =
    known.get(key) ?? finished(fairContest([designFrom(() => {}), designFrom(change)], { rule }))
  known.set(key, contest)
  return contest
}

const farther = (document: Document) => {
  document.name = 'Farther'
  for (const phase of document.stator.winding.phases) phase.distance_mm += 2
}
const same = () => {}

const textOf = (contest: Contest) =>
  contestPage(contest)
    .map(({ text }) => text)
    .join('\n')

describe('law: the page says who wins, by how much, and on which terms', () => {
  test('a winding farther from the same magnets loses k_m at equal copper', () => {
    const text = textOf(contestOf('equal-copper-mass', farther))
    expect(text).toMatch(
      /^Under equal copper mass: \d+ g of copper each\.\n {2}A Drum of checks: as it stands\n/,
    )
    expect(text.replace(/\s+/g, ' ')).toMatch(
      /At equal copper mass A, “Drum of checks”, wins\. Torque .* more than B\./,
    )
    for (const part of ['Side by side', 'Watts into the load', 'Conditions', 'k_m = K_t/√R'])
      expect(text).toContain(part)
    expect(text).not.toMatch(/NaN|Infinity|undefined/)
  })
  test('alike designs: nobody wins, and nobody is ahead on anything', () => {
    const verdict = verdictOf(contestOf('equal-copper-mass', same))
    expect(verdict[0]).toMatch(
      /^At equal copper mass nobody wins\. .*A is not to be told apart from B \(the same\)\.$/,
    )
    for (const text of verdict.slice(1, -1)) expect(text).toMatch(/nobody is ahead/)
  })
  test('at equal loss the copper decides, and k_m is not told', () => {
    const verdict = verdictOf(contestOf('equal-loss', farther))
    expect(verdict[0]).toMatch(/^At equal loss A, .*Copper needed: [\d.]+ % less than B\.$/)
    expect(verdict.join(' ')).not.toContain('(k_m)')
  })
  test('as they are, the page warns that nothing is equal', () => {
    expect(textOf(contestOf('as-they-are', farther))).toMatch(/^The designs as they are: no resource/)
  })
  test('no line is wider than a hundred letters', () => {
    for (const { text } of contestPage(contestOf('equal-copper-mass', farther)))
      expect([...text].length).toBeLessThanOrEqual(100)
  })
  test('what never happens is said so', () => {
    const contest = contestOf('as-they-are', (document) => {
      document.name = 'Barely turning'
      document.stator.winding.turns = 1
      document.stator.wire.size = 0.2
    })
    const text = textOf(contest)
    expect(contest.contestants[1]!.scores.energy).toBe(0)
    expect(text.replace(/\s+/g, ' ')).toContain('B never comes to any')
    expect(text).not.toMatch(/NaN|Infinity|undefined/)
  })
})

describe('law: the report names what was changed', () => {
  test('width, turns, wire and the nearest size sold', () => {
    const { changes } = contestReport(contestOf('equal-copper-mass', farther))
    expect(changes[0]).toBe('as it stands')
    expect(changes[1]).toMatch(
      /^bundle .* wide in place of .*; \d+ turns in place of 40, .*; wire .*\(nearest sold /,
    )
  })
  test('every figure has a value for every design', () => {
    const { figures, letters } = contestReport(contestOf('equal-copper-mass', farther))
    expect(letters).toEqual(['A', 'B'])
    for (const { values } of figures) expect(values).toHaveLength(2)
  })
})

describe('law: JSON has the same numbers, all finite', () => {
  test('scores, pairs and the documents that competed', () => {
    const contest = contestOf('equal-copper-mass', farther)
    const text = JSON.stringify(contestResult(contest))
    expect(text).not.toMatch(/NaN|Infinity|undefined/)
    const result = JSON.parse(text)
    expect(Object.keys(result.scores)).toEqual([...scoreNames])
    expect(result.scores.copperMass.values[0]).toBeCloseTo(
      1000 * contest.contestants[0]!.scores.copperMass,
      9,
    )
    expect(result.scores.motorConstant.pairs[0].ratio).toBe(contest.pairs.motorConstant[0]![1]!.ratio)
    // a competitor's document is a design of its own
    expect(designOf(result.contestants[1].design).name).toBe('Farther')
  })
})

describe('law: the picture has a line for every design, told apart by dashes', () => {
  for (const size of [0, 1e-6, 3000])
    test(`watts of ${size}`, () => {
      const svg = contestChart({
        width: 500,
        height: 300,
        letters: ['A', 'B', 'C'],
        winds: [1, 2, 3].map((wind) => ({ wind, watts: [size * wind, size, 0] })),
      })
      expect(svg).not.toMatch(/NaN|Infinity|undefined/)
      const dashes = [...svg.matchAll(/class="line ink-[^"]+"[^>]*?(stroke-dasharray="[^"]*")?\/>/g)].map(
        (match) => match[1],
      )
      expect(dashes).toHaveLength(3)
      expect(new Set(dashes).size).toBe(3)
      expect(svg).toContain('power into the load, W')
    })
})
