/** Checks the page of the mechanics and its figures for other programs. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { computeDesign } from '../analysis/compute.ts'
import { mechanicsStudy } from '../analysis/mechanics/mechanics-study.ts'
import { finished } from '../analysis/step.ts'
import { mechanicsPage, mechanicsResult } from './mechanics-page.ts'

const studyOf = (document: unknown) => finished(mechanicsStudy(computeDesign(designOf(document))))
const bare = studyOf(exampleDocument('boathouse-two-disc'))
const described = exampleDocument('boathouse-two-disc')
Object.assign(described.shaft, {
  diameter_mm: 25,
  bearings: { spacing_mm: 80, bladeOverhang_mm: 90, magnetOverhang_mm: 40, bore_mm: 25 },
  key: { width_mm: 8, height_mm: 7, length_mm: 30 },
})
described.stator.mounting = { radius_mm: 150, count: 6 }
const full = studyOf(described)

describe('law: the page', () => {
  const text = (study: typeof bare) => mechanicsPage(study).map((line) => line.text)
  test('no line is too wide for a terminal, none holds what is no number', () => {
    for (const study of [bare, full, studyOf(exampleDocument('hen-house-drum'))])
      for (const line of text(study)) {
        expect([...line].length, line).toBeLessThanOrEqual(100)
        expect(line).not.toMatch(/NaN|undefined|Infinity|— (N|mm|MPa|kg|J|rpm)/)
      }
  })
  test('what is not described is asked for, and told once it is', () => {
    expect(text(bare).join(' ')).toContain('not asked: enter shaft.bearings')
    expect(text(full).join(' ')).not.toContain('not asked')
    expect(text(full).join(' ')).toContain('first critical speed')
  })
  test('warns of crushed fingers and sends to those who sign', () => {
    expect(text(bare).join(' ')).toContain('Fingers')
    expect(text(bare).join(' ')).toContain('competent engineers')
  })
})

describe('law: figures for other programs', () => {
  test('every row has a unit and how it is known; margins follow from limit and value', () => {
    for (const { rows } of [mechanicsResult(bare), mechanicsResult(full)])
      for (const row of rows) {
        expect(row.known).not.toBe('')
        expect(row.unit).not.toBe('')
        if (row.value === null) continue
        expect(Number.isFinite(row.value)).toBe(true)
        if (row.limit === null || row.margin === null) continue
        const sound = row.sound === 'below' ? row.value <= row.limit : row.value >= row.limit
        expect(row.margin >= 1 - 1e-9).toBe(sound)
      }
  })
  test('the table of force against distance falls', () => {
    const { pull, handsHoldBeyond_mm } = mechanicsResult(bare)
    for (let k = 1; k < pull.length; k++) expect(pull[k]!.pull_N).toBeLessThan(pull[k - 1]!.pull_N)
    expect(handsHoldBeyond_mm).toBeGreaterThan(17)
  })
})
