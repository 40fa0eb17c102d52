/** Checks of the page of a storm: every number is one, every failure is told, the values can be read back. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { computeDesign } from '../analysis/compute.ts'
import { finished } from '../analysis/step.ts'
import { stormStudy } from '../analysis/storm-study.ts'
import { parseDesign } from '../machine/parse.ts'
import { stormTraceChart } from './chart/storm-trace.ts'
import { gravest, stormCsv, stormPage, stormResult } from './storm-page.ts'
import { brakeColumns, stormColumns, stormReport } from './storm-report.ts'

const chain = (() => {
  const document = fixedDocument('disc')
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
})()
const study = finished(stormStudy(chain, { top: 6 }))
const report = stormReport(study)
const page = stormPage(report)

describe('law: the page of a storm', () => {
  test('tells every failure, has no line wider than its columns, and no number that is none', () => {
    const text = page.map((line) => line.text).join('\n')
    for (const { words } of report.rows) expect(text).toContain(words)
    expect(text).not.toMatch(/NaN|undefined|Infinity/)
    for (const { cells } of report.rows) expect(cells).toHaveLength(stormColumns.length)
    for (const row of report.brake!.rows) expect(row).toHaveLength(brakeColumns.length)
    for (const { most } of stormResult(study).failures)
      for (const value of Object.values(most)) expect(Number.isFinite(value)).toBe(true)
    expect(text).toContain('Never stand in the plane of the rotor')
  })
  test('begins the traces with the gravest failure', () => {
    const rank = ['held', 'survived', 'damaged', 'runs away']
    const worst = Math.max(...report.rows.map(({ outcome }) => rank.indexOf(outcome)))
    expect(rank.indexOf(gravest(report.rows).outcome)).toBe(worst)
  })
  test('gives values that read back, sample by sample', () => {
    const { trace } = report.rows[0]!
    const [heads, ...rows] = stormCsv(trace).trimEnd().split('\r\n')
    expect(heads).toBe('time_s,wind_m_per_s,speed_rpm,direct_V,direct_A,phase_A,copper_degC,windKept')
    expect(rows).toHaveLength(trace.time.length)
    const middle = rows[100]!.split(',').map(Number)
    expect(middle[1]).toBeCloseTo(trace.wind[100]!, 4)
    expect(middle[2]).toBeCloseTo((trace.speed[100]! * 60) / (2 * Math.PI), 3)
  })
  test('draws five panels', () => {
    const { trace, words } = report.rows[0]!
    const svg = stormTraceChart({ width: 600, trace, words })
    expect(svg.match(/class="line /g)!.length).toBeGreaterThanOrEqual(6)
    expect(svg).not.toMatch(/NaN|undefined/)
  })
  test('takes one failure alone, and refuses one that the machine cannot have', () => {
    const one = finished(stormStudy(chain, { only: 'winding-open' }))
    expect(one.table.rows.map(({ failure }) => failure.key)).toEqual(['winding-open'])
    expect(one.brake).toBeUndefined()
    expect(() => finished(stormStudy(chain, { only: 'dump-dead' }))).toThrow(/one of nothing, load-lost/)
  })
})
