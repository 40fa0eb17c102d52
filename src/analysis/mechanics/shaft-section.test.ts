/** Checks of the cut along the shaft and of the line of speeds against the document and the rows of the mechanics. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../../test/example.ts'
import { computeDesign } from '../compute.ts'
import { clearances } from './clearance.ts'
import { rowsBesidePull } from './mechanics-study.ts'
import { shaftSection } from './shaft-section.ts'
import { speedLine } from './speed-line.ts'

const described = exampleDocument('boathouse-two-disc')
Object.assign(described.shaft, {
  diameter_mm: 25,
  bearings: { spacing_mm: 80, bladeOverhang_mm: 90, magnetOverhang_mm: 40, bore_mm: 25 },
})
const full = computeDesign(designOf(described))
const bare = exampleChain('boathouse-two-disc')

describe('law: the cut along the shaft', () => {
  test('bearings, blades and magnets stand where the document says', () => {
    const { bodies, bearings, blades, diameter } = shaftSection(full)
    expect(bearings).toEqual({ front: 0, rear: -0.08, sized: true })
    expect(blades?.at).toBeCloseTo(0.09, 12)
    expect(diameter).toBeCloseTo(0.025, 12)
    const magnets = bodies.filter(({ kind }) => kind === 'magnet')
    const middle = magnets.reduce((sum, { rear, front }) => sum + (rear + front) / 2, 0) / magnets.length
    expect(magnets.length).toBe(2)
    expect(middle).toBeCloseTo(0.04, 9)
  })
  test('two discs mirror each other about the middle of the magnets', () => {
    const { bodies } = shaftSection(bare)
    for (const kind of ['steel', 'magnet'] as const) {
      const [one, other] = bodies.filter((body) => body.kind === kind)
      expect(one!.rear).toBeCloseTo(-other!.front, 9)
      expect(one!.outer).toBeCloseTo(other!.outer, 12)
    }
  })
  test('a drum’s magnets lie about the pitch radius, its winding on the side it is on', () => {
    const drum = exampleChain('hen-house-drum')
    const { pitchRadius, magnet, windingSide } = drum.machine.rotor
    const { bodies } = shaftSection(drum)
    const own = bodies.find(({ kind }) => kind === 'magnet')!
    expect((own.inner + own.outer) / 2).toBeCloseTo(pitchRadius, 9)
    expect(own.outer - own.inner).toBeCloseTo(magnet.thickness, 9)
    const wound = bodies.filter(({ kind }) => kind === 'winding')
    expect(windingSide).toBe('outside')
    for (const { inner } of wound) expect(inner).toBeGreaterThan(own.outer)
  })
  test('names what is missing, and nothing once all is said', () => {
    expect(shaftSection(bare).enter).toEqual(['shaft.diameter_mm', 'shaft.bearings'])
    expect(shaftSection(full).enter).toEqual([])
  })
})

describe('law: the line of speeds', () => {
  test('work lies between where current begins and runaway, and the limiter holds its end', () => {
    for (const chain of [bare, full, exampleChain('hen-house-drum'), exampleChain('garden-vertical')]) {
      const { cutIn, work, limiter, runaway } = speedLine(chain)
      expect(work!.slowest).toBeLessThanOrEqual(work!.fastest)
      expect(work!.fastest).toBeLessThanOrEqual(runaway.speed)
      expect(work!.slowest).toBeGreaterThanOrEqual(0.9 * cutIn!)
      expect(limiter!.speed).toBeLessThanOrEqual(work!.fastest)
    }
  })
})

describe('law: the rows of the mechanics', () => {
  const rows = rowsBesidePull(full, clearances(full))
  test('have the same first critical speed', () => {
    const row = rows.find(({ name }) => name === 'first critical speed')!
    expect(speedLine(full).critical!.speed).toBe(row.value)
    expect(speedLine(bare).critical).toBeUndefined()
  })
  test('every row that cannot be told names a field of the document, and no told one is empty', () => {
    const open = rowsBesidePull(bare, clearances(bare)).filter(({ value }) => value === undefined)
    expect(open.length).toBeGreaterThan(2)
    for (const { enter } of open) {
      expect(enter.length).toBeGreaterThan(0)
      for (const path of enter) expect(path).toMatch(/^(shaft|stator|rotor)\.[A-Za-z_.]+$/)
    }
  })
})
