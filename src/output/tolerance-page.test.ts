/** Checks of the page and the JSON of many builds. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { buildTolerance } from '../analysis/build-tolerance.ts'
import { chainOf } from '../analysis/compute.ts'
import { finished } from '../analysis/step.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { toleranceNames } from '../machine/tolerance.ts'
import { tolerancePage, toleranceResult } from './tolerance-page.ts'
import { lossSentence, tightenSentence, toleranceReport, toleranceWords } from './tolerance-report.ts'

const parsed = parseDesign(fixedDocument('disc'))
if (!parsed.ok) throw new Error('the document of checks is sound')
const study = finished(buildTolerance(finished(chainOf(resolveDesign(parsed.design))), { builds: 64 }))

describe('law: the page of many builds', () => {
  const text = tolerancePage(study)
    .map((line) => line.text)
    .join('\n')
  test('every tolerance has words of its own, and those at work stand on the page', () => {
    expect(new Set(Object.values(toleranceWords)).size).toBe(toleranceNames.length)
    expect(study.tolerances.length).toBeGreaterThan(12)
    for (const { name } of study.tolerances) expect(text).toContain(toleranceWords[name])
  })
  test('no line is wider than a terminal takes, nothing is undefined', () => {
    expect(text).not.toMatch(/NaN|undefined|Infinity/)
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(104)
  })
  test('nothing circulates in a star, and nothing is told of it', () =>
    expect(text).not.toContain('circulating'))
  test('the sentence names what lifts the yield, and nothing where all builds reach the target', () => {
    const [first] = study.tolerances
    expect(tightenSentence({ ...study, yield: 1 })).toBe('Nothing needs to be tightened for this target.')
    const lifted = { ...study, builds: 1000, yield: 0.5, tolerances: [{ ...first!, yieldHalved: 0.7 }] }
    expect(tightenSentence(lifted)).toContain(`Tighten first: ${toleranceWords[first!.name]}`)
    const chance = { ...lifted, tolerances: [{ ...first!, yieldHalved: 0.502 }] }
    expect(tightenSentence(chance)).toContain('No single tolerance')
    expect(tightenSentence({ ...study, tolerances: [] })).toContain('No tolerance is above zero')
  })
  test('the mean loss is told with its sign', () => {
    const with_ = (mean: number) => ({
      ...study,
      scatter: { ...study.scatter, useful: { ...study.scatter.useful, drawn: 100, mean } },
    })
    expect(lossSentence(with_(97))).toContain('3.0 % less')
    expect(lossSentence(with_(102))).toContain('2.0 % more')
    expect(lossSentence(with_(100))).toContain('what the drawing gives')
  })
})

describe('law: the report of many builds', () => {
  const report = toleranceReport(study)
  test('what is told over the drawing’s lies in order, about what the drawing gives', () => {
    expect(report.scatter.map(({ label }) => label)).toContain('mean volts of the phases')
    for (const { low, middle, high } of report.scatter) {
      expect(low).toBeLessThanOrEqual(middle)
      expect(middle).toBeLessThanOrEqual(high)
      expect(Math.abs(middle - 1)).toBeLessThan(0.2)
    }
  })
  test('volts may be off to both sides, watts to one, the others are not asked for', () => {
    const { volts, power } = study.target
    for (const { label, least, most } of report.scatter) {
      const asked = label.includes('volts') ? volts : label.includes('watts') ? power : undefined
      expect(least).toEqual(asked === undefined ? undefined : 1 - asked)
      expect(most).toEqual(label.includes('volts') ? 1 + volts : undefined)
    }
  })
  test('every tolerance names its field', () => {
    expect(report.tolerances.map(({ path }) => path)).toEqual(
      study.tolerances.map(({ name }) => `tolerance.${name}`),
    )
  })
})

describe('law: JSON for other programs', () => {
  test('every number is finite or null, units in the names', () => {
    const json = JSON.stringify(toleranceResult(study))
    expect(json).not.toMatch(/NaN|Infinity|undefined/)
    const { scatter } = toleranceResult(study)
    expect(Object.keys(scatter)).toEqual(
      expect.arrayContaining(['voltsOverDrawing', 'useful_W', 'yearEnergy_kWh', 'leastAir_mm']),
    )
    expect(scatter.leastAir_mm!.quantile50).toBeCloseTo(1000 * study.scatter.clearance.middle, 9)
  })
})
