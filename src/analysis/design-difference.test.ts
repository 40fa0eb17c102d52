/** Checks of the differences between two designs: laws that hold whatever is compared. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../../test/example.ts'
import { setAt } from '../../test/varied-document.ts'
import { computeDesign } from './compute.ts'
import { concernDifferences, documentDifferences, figureDifferences } from './design-difference.ts'
import { designFigures, type FigureName, figureKinds, figureNames } from './design-figure.ts'
import { withChanges } from './remedy/change.ts'

const pairs = exampleNames.flatMap((one) => exampleNames.map((other) => [one, other] as const))

describe('law: fields that differ between two documents', () => {
  test('a document against itself has none, in whatever order its keys stand', () => {
    const turned = (value: unknown): unknown =>
      typeof value !== 'object' || value === null
        ? value
        : Array.isArray(value)
          ? value.map(turned)
          : Object.fromEntries(
              Object.entries(value)
                .map(([key, part]) => [key, turned(part)] as const)
                .reverse(),
            )
    for (const name of exampleNames) {
      const document = exampleDocument(name)
      expect(documentDifferences(document, exampleDocument(name))).toEqual([])
      expect(documentDifferences(document, turned(document))).toEqual([])
    }
  })

  test('swapped documents swap old and new, place by place', () => {
    const places = (list: ReturnType<typeof documentDifferences>) =>
      list.map((each) => JSON.stringify(each)).sort()
    for (const [one, other] of pairs) {
      const there = documentDifferences(exampleDocument(one), exampleDocument(other))
      const back = documentDifferences(exampleDocument(other), exampleDocument(one))
      expect(places(back.map(({ path, from, to }) => ({ path, from: to, to: from })))).toEqual(
        places(there.map(({ path, from, to }) => ({ path, from, to }))),
      )
    }
  })

  test('every changed field is listed once, and the list leads from the old document to the new', () => {
    const places = [
      ['name'],
      ['stator', 'winding', 'turns'],
      ['site', 'meanWind_m_per_s'],
      ['cable', 'length_m'],
      ['rotor', 'polePairs'],
      ['purpose', 'power_W'],
    ] as const
    const value = fc.oneof(
      fc.integer({ min: 1, max: 999 }),
      fc.string(),
      fc.record({ value: fc.integer({ min: 1, max: 99 }), spread: fc.integer({ min: 1, max: 9 }) }),
    )
    const edits = fc.uniqueArray(fc.tuple(fc.constantFrom(...places), value), {
      selector: ([place]) => place,
    })
    fc.assert(
      fc.property(edits, (list) => {
        const before = exampleDocument('hen-house-drum')
        const after = exampleDocument('hen-house-drum')
        for (const [place, next] of list) setAt(after, place, next)
        const expected = list
          .filter(([place]) => {
            const at = (document: unknown) =>
              place.reduce<unknown>((inner, key) => (inner as Record<string, unknown>)?.[key], document)
            return JSON.stringify(at(before)) !== JSON.stringify(at(after))
          })
          .map(([place]) => place.join('.'))
        const found = documentDifferences(before, after)
        expect(found.map(({ path }) => path.join('.')).sort()).toEqual(expected.sort())
        expect(withChanges(before, found)).toEqual(after)
      }),
    )
  })

  test('an entry that a list has more is told field by field, one that it has less likewise', () => {
    const one = { list: [{ a: 1 }] }
    const two = { list: [{ a: 1 }, { a: 2, b: { value: 3, spread: 1 } }] }
    expect(documentDifferences(one, two)).toEqual([
      { path: ['list', 1, 'a'], from: undefined, to: 2 },
      { path: ['list', 1, 'b'], from: undefined, to: { value: 3, spread: 1 } },
    ])
    expect(documentDifferences(two, one).map(({ path }) => path.join('.'))).toEqual(['list.1.a', 'list.1.b'])
  })

  test('a list of numbers is one field, a quantity is one field, one without a spread is its value', () => {
    expect(documentDifferences({ months: [1, 2] }, { months: [1, 3, 4] })).toHaveLength(1)
    expect(documentDifferences({ gap: 1 }, { gap: { value: 1, spread: 0.1 } })).toHaveLength(1)
    expect(documentDifferences({ gap: 1 }, { gap: { value: 1 } })).toEqual([])
  })

  test('a key with a point in it is another place than two keys', () => {
    expect(documentDifferences({ 'a.b': 1 }, { a: { b: 1 } })).toHaveLength(2)
  })
})

describe('law: figures that differ between two machines', () => {
  const wind = 6
  const figures = (name: string) => designFigures(exampleChain(name), wind)

  test('a machine against itself differs in none', () => {
    for (const name of exampleNames)
      for (const { difference, share } of figureDifferences(figures(name), figures(name))) {
        expect(difference).toBe(0)
        expect(share ?? 0).toBe(0)
      }
  })

  test('swapped machines turn the sign of every difference, and their shares cancel', () => {
    for (const [one, other] of pairs) {
      const there = figureDifferences(figures(one), figures(other))
      const back = figureDifferences(figures(other), figures(one))
      expect(back.map(({ name }) => name)).toEqual(there.map(({ name }) => name))
      there.forEach(({ difference, share }, k) => {
        expect(back[k]!.difference).toBe(difference === 0 ? 0 : -difference)
        const turned = back[k]!.share
        if (share !== undefined && turned !== undefined) expect((1 + share) * (1 + turned)).toBeCloseTo(1, 12)
      })
    }
  })

  test('turns scale the volts, leave the magnets alone, and change k_m² as the copper', () => {
    const document = exampleDocument('hen-house-drum')
    document.stator.winding.turns = 33
    const more = designFigures(computeDesign(designOf(document)), wind)
    const list = figureDifferences(figures('hen-house-drum'), more)
    const share = (wanted: FigureName) => list.find(({ name }) => name === wanted)!.share
    expect(share('phaseVoltage')).toBeCloseTo(0.1, 9)
    expect(share('magnetMass')).toBe(0)
    expect((1 + share('motorConstant')!) ** 2).toBeCloseTo(1 + share('copperMass')!, 2)
  })

  test('every figure says which way is ahead or that none is, and is a number or never', () => {
    for (const name of exampleNames)
      for (const figure of figureNames) {
        expect(['more', 'less', undefined]).toContain(figureKinds[figure].better)
        const value = figures(name)[figure]
        expect(value === undefined || !Number.isNaN(value)).toBe(true)
      }
  })
})

describe('law: concerns that come, go or change', () => {
  const raised = (name: string) => exampleChain(name).concerns

  test('none between a machine and itself', () => {
    for (const name of exampleNames) expect(concernDifferences(raised(name), raised(name))).toEqual([])
  })

  test('swapped machines swap before and after', () => {
    const key = ({ code, before, after }: { code: string; before?: unknown; after?: unknown }) =>
      `${code} ${before} ${after}`
    for (const [one, other] of pairs) {
      const there = concernDifferences(raised(one), raised(other)).map(key)
      const back = concernDifferences(raised(other), raised(one)).map(({ code, before, after }) =>
        key({ code, before: after, after: before }),
      )
      expect(back.sort()).toEqual(there.sort())
    }
  })
})
