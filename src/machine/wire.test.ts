/** Checks of the wire as the document gives it: round or strip, reels by length or by weight. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { exampleText } from '../../test/example.ts'
import { faultText } from './fault.ts'
import { parseDesign } from './parse.ts'
import { resolveDesign } from './resolve.ts'
import { neighbourThicknesses_mm, stripEdgeRadius_mm, stripEnamel_mm } from './wire-strip.ts'

type Fields = Record<string, unknown>

function parsed(wire: Fields, stator: Fields = {}) {
  const document = JSON.parse(exampleText('boathouse-two-disc')) as { stator: { wire: Fields } & Fields }
  document.stator.wire = wire
  Object.assign(document.stator, stator)
  return parseDesign(document)
}

function wireOf(wire: Fields) {
  const result = parsed(wire)
  if (!result.ok) throw new Error(result.faults.map(faultText).join('\n'))
  return resolveDesign(result.design).stator.wire
}

function faults(wire: Fields, stator: Fields = {}): string[] {
  const result = parsed(wire, stator)
  return result.ok ? [] : result.faults.map(faultText)
}

const strip = { width_mm: 4, thickness_mm: 1.5 }

describe('law: exactly one of size and strip', () => {
  test('neither', () =>
    expect(faults({ enamelGrade: 2 })).toEqual([
      'stator.wire.size must be given, or strip in its place; received nothing (missing-key)',
    ]))
  test('both', () =>
    expect(faults({ size: 1, strip })).toEqual([
      'stator.wire.strip must be left out where a round size is given; received an object with 2 keys (conflict)',
    ]))
  test('either', () => {
    expect(faults({ size: 'AWG 18' })).toEqual([])
    expect(faults({ strip })).toEqual([])
  })
})

describe('law: strip', () => {
  test('sides that cannot stand together are faults', () => {
    expect(faults({ strip: { width_mm: 1, thickness_mm: 2 } })[0]).toMatch(
      /^stator\.wire\.strip\.thickness_mm must be at most 1 mm, the width/,
    )
    expect(faults({ strip: { ...strip, edgeRadius_mm: 0.8 } })[0]).toMatch(
      /^stator\.wire\.strip\.edgeRadius_mm must be at most 0.75 mm/,
    )
  })
  test('has a section, an outer size, and round wire of as much copper', () => {
    const wire = wireOf({ strip: { ...strip, lies: 'on edge' } })
    expect(wire.shape).toMatchObject({ kind: 'strip', edgewise: true })
    expect((Math.PI * wire.diameter ** 2) / 4 / wire.section.area).toBeCloseTo(1, 12)
    expect(wire.section.meanSquareWidth).toBeGreaterThan(wire.section.meanSquareThickness)
  })
  test('any strip the document allows has edges that fit it, and neighbours in order', () => {
    for (let t = 0.1; t <= 10; t *= 1.1) {
      expect(stripEdgeRadius_mm(t)).toBeLessThanOrEqual(t / 2)
      const { thinner, thicker } = neighbourThicknesses_mm(t, 3)
      for (const other of thinner) expect(other).toBeLessThan(t)
      for (const other of thicker) expect(other).toBeGreaterThan(t)
    }
  })
})

describe('source: iec-60317-0-2, edges and enamel of strip (from memory, not opened)', () => {
  check('edge of 0.9 mm', stripEdgeRadius_mm(0.9), '0.45')
  check('edge of 1.5 mm', stripEdgeRadius_mm(1.5), '0.50')
  check('edge of 2.24 mm', stripEdgeRadius_mm(2.24), '0.65')
  check('edge of 5 mm', stripEdgeRadius_mm(5), '1.00')
  check('grade 1', stripEnamel_mm(1), '0.085')
  check('grade 2', stripEnamel_mm(2), '0.145')
})

describe('law: reels', () => {
  test('a weight is a length of that wire, its enamel included', () => {
    const byMass = wireOf({ size: 0.5, reelMass_g: 250 })
    // bare copper of 0.5 mm weighs 1.746 g a metre; the enamel makes the same weight a little shorter
    const bare = 0.25 / (((Math.PI * 0.5e-3 ** 2) / 4) * 8890)
    expect(byMass.reelLength!).toBeLessThan(bare)
    expect(byMass.reelLength!).toBeGreaterThan(0.95 * bare)
    expect(wireOf({ size: 0.5, reelLength_m: 120 }).reelLength).toBe(120)
    expect(wireOf({ size: 0.5 }).reelLength).toBeUndefined()
  })
  test('not both at once', () =>
    expect(faults({ size: 0.5, reelLength_m: 1, reelMass_g: 1 })[0]).toMatch(
      /^stator\.wire\.reelMass_g must be left out where reelLength_m is given/,
    ))
})

describe('law: metal parts stand where there is room', () => {
  const wire = { size: 1 }
  const plate = { kind: 'plate', material: 'aluminium', thickness_mm: 3, distance_mm: 5, length_mm: 40 }
  const bolt = { kind: 'bolt', material: 'brass', diameter_mm: 5, length_mm: 12, distance_mm: 8.5 }
  const of = (...metalParts: Fields[]) => faults(wire, { metalParts })
  test('between the discs', () => {
    expect(of(plate, bolt)).toEqual([])
    expect(of({ ...plate, distance_mm: 15 })[0]).toMatch(
      /^stator\.metalParts\[0\]\.distance_mm must be at most 14 mm, or it reaches what stands opposite/,
    )
    expect(of({ ...bolt, distance_mm: 2 })[0]).toMatch(
      /must be at least 6 mm, or it reaches into the magnets/,
    )
  })
  test('not over the shaft, of a metal that is known', () => {
    expect(of({ ...plate, length_mm: 300 })[0]).toMatch(/reaches over the shaft/)
    expect(of({ ...bolt, offset_mm: -99 })[0]).toMatch(/^stator\.metalParts\[0\]\.offset_mm must be at least/)
    expect(of({ ...plate, material: 'cheese' })[0]).toMatch(/not-a-choice/)
  })
  test('a ring goes all round', () => {
    const { covers_deg: _, ...ring } = { ...plate, kind: 'ring', covers_deg: undefined }
    const result = parsed(wire, { metalParts: [ring] })
    if (!result.ok) throw new Error(result.faults.map(faultText).join('\n'))
    expect(resolveDesign(result.design).stator.metalParts[0]).toMatchObject({ covers: 2 * Math.PI })
  })
})
