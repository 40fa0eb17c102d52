/** Checks of the page of scenarios: every number is one, every scenario is told, the values can be read back. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { computeDesign } from '../analysis/compute.ts'
import { scenarioStudy } from '../analysis/scenario-study.ts'
import { finished } from '../analysis/step.ts'
import { parseDesign } from '../machine/parse.ts'
import { brakeColumns } from './brake-report.ts'
import { stormTraceChart } from './chart/storm-trace.ts'
import { gravest, scenarioPage, traceCsv } from './scenario-page.ts'
import { numberColumns, scenarioReport, verdictColumns } from './scenario-report.ts'
import { scenarioResult } from './scenario-result.ts'

const chain = (() => {
  const document = fixedDocument('disc')
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
})()
const study = finished(scenarioStudy(chain, { top: 6 }))
const report = scenarioReport(study)
const page = scenarioPage(report)

describe('law: the page of scenarios', () => {
  test('tells every scenario, and no number that is none', () => {
    const text = page.map((line) => line.text).join('\n')
    const told = text.replace(/\s+/g, ' ')
    for (const { words } of report.rows) expect(told).toContain(words)
    expect(text).not.toMatch(/NaN|undefined|Infinity/)
    for (const { numbers, verdicts } of report.rows) {
      expect(numbers).toHaveLength(numberColumns.length)
      expect(verdicts).toHaveLength(verdictColumns.length)
    }
    for (const row of report.brake!.rows) expect(row).toHaveLength(brakeColumns.length)
    for (const { run } of scenarioResult(study).scenarios)
      for (const value of Object.values(run?.most ?? {})) expect(Number.isFinite(value)).toBe(true)
    expect(told).toContain('Never stand in the plane of the rotor')
    expect(told).toContain('a competent engineer must judge')
  })
  test('has no line wider than a terminal', () => {
    for (const { text } of page) expect([...text].length).toBeLessThanOrEqual(96)
  })
  test('says of a scenario that cannot happen why', () => {
    const frost = report.rows.find(({ key }) => key === 'frost')!
    expect(frost.outcome).toBe('cannot happen')
    expect(frost.sentences).toEqual([expect.stringMatching(/^It cannot happen here: /)])
    expect(frost.trace).toBeUndefined()
  })
  test('begins the traces with the gravest failure', () => {
    const rank = ['cannot happen', 'held', 'survived', 'never begins', 'damaged', 'runs away']
    const worst = Math.max(...report.rows.map(({ outcome }) => rank.indexOf(outcome)))
    expect(rank.indexOf(gravest(report.rows).outcome)).toBe(worst)
  })
  test('gives values that read back, sample by sample', () => {
    const trace = report.rows[0]!.trace!
    const [heads, ...rows] = traceCsv(trace).trimEnd().split('\r\n')
    expect(heads).toBe('time_s,wind_m_per_s,speed_rpm,direct_V,direct_A,phase_A,copper_degC,windKept')
    expect(rows).toHaveLength(trace.time.length)
    const middle = rows[100]!.split(',').map(Number)
    expect(middle[1]).toBeCloseTo(trace.wind[100]!, 4)
    expect(middle[2]).toBeCloseTo((trace.speed[100]! * 60) / (2 * Math.PI), 3)
  })
  test('draws five panels', () => {
    const { trace, words } = report.rows[0]!
    const svg = stormTraceChart({ width: 600, trace: trace!, words })
    expect(svg.match(/class="line /g)!.length).toBeGreaterThanOrEqual(6)
    expect(svg).not.toMatch(/NaN|undefined/)
  })
  test('takes one scenario alone, and refuses one that the machine cannot have', () => {
    const one = finished(scenarioStudy(chain, { only: 'winding-open' }))
    expect(one.table.rows.map(({ scenario }) => scenario.key)).toEqual(['winding-open'])
    expect(one.brake).toBeUndefined()
    expect(() => finished(scenarioStudy(chain, { only: 'dump-dead' }))).toThrow(
      /one of cut-in, rated, operating-gust/,
    )
  })
})
