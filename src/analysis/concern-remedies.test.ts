/** Checks of the tried remedies: no effect but what a chain from scratch shows, possible documents, honest ranks. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleDocument } from '../../test/example.ts'
import { variedDocument } from '../../test/varied-document.ts'
import type { Design } from '../machine/design.ts'
import { parseDesign } from '../machine/parse.ts'
import { Refusal } from '../refusal/require.ts'
import { units } from '../units/unit.ts'
import { type Chain, computeDesign } from './compute.ts'
import {
  type ConcernRemedyReport,
  concernRemedies,
  outcomeOf,
  remedyOutcomes,
  type TriedRemedy,
} from './concern-remedies.ts'
import { concernRules, remedyWords } from './concerns.ts'
import { withChanges } from './remedy/change.ts'
import { matchFigures } from './remedy/figures.ts'
import { finished } from './step.ts'

function designOf(document: unknown): Design {
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return parsed.design
}

const example = (name: string) => designOf(exampleDocument(name))

const severityOf = (chain: Chain, code: string) => chain.concerns.find((each) => each.code === code)?.severity

/** The changed document computed as if nothing had been known before. */
const fromScratch = (design: Design, { changes }: Pick<TriedRemedy, 'changes'>): Chain =>
  computeDesign(designOf(withChanges(design, changes)))

const made = (report: ConcernRemedyReport) =>
  report.concerns.flatMap((trials) =>
    trials.tried.flatMap((tried) =>
      tried.after === undefined ? [] : [{ trials, tried, code: trials.concern.code, after: tried.after }],
    ),
  )

/** Cheap to compute, and all kinds of machine but the faulty one. */
const told = {
  'class-room-fan': undefined,
  'hen-house-drum': ['magnet-demagnetization', 'wire-fit', 'blade-reynolds'],
  'garden-vertical': ['cable-drop', 'battery-fuse', 'switch-rating'],
} as const satisfies Readonly<Record<string, readonly string[] | undefined>>

describe('agrees: every remedy told, with the changed document computed from scratch', () => {
  for (const [name, codes] of Object.entries(told))
    test(name, () => {
      const design = example(name)
      const before = JSON.stringify(design)
      const report = finished(concernRemedies(design, codes === undefined ? {} : { codes }))
      expect(JSON.stringify(design)).toBe(before)
      const original = computeDesign(design)
      expect(report.before).toEqual({ ...matchFigures(original, report.wind), price: original.wound.price })
      const all = made(report)
      expect(all.some(({ tried }) => tried.outcome === 'settles')).toBe(true)
      for (const { tried, code, after, trials } of all) {
        const chain = fromScratch(design, tried)
        expect(severityOf(chain, code)).toBe(after.severity)
        expect(tried.figures).toEqual({ ...matchFigures(chain, report.wind), price: chain.wound.price })
        expect(outcomeOf(trials.before, after)).toBe(tried.outcome)
        if (tried.outcome === 'settles') expect([undefined, 'note']).toContain(severityOf(chain, code))
        const moved = new Map(
          [...original.concerns, ...chain.concerns]
            .filter((each) => each.code !== code)
            .map((each) => [
              each.code,
              [severityOf(original, each.code), severityOf(chain, each.code)] as const,
            ]),
        )
        const expected = [...moved].filter(([, [from, to]]) => from !== to).map(([each]) => each)
        expect([...tried.worse, ...tried.better].map((shift) => shift.code).sort()).toEqual(expected.sort())
      }
    }, 120_000)
})

describe('law: tried remedies', () => {
  test('the step below one that settles does not settle, or makes no machine', () => {
    const design = example('garden-vertical')
    const report = finished(concernRemedies(design, { codes: ['cable-drop'] }))
    const [trials] = report.concerns
    let compared = 0
    for (const { tried, code } of made(report)) {
      if (tried.outcome !== 'settles') continue
      const remedy = trials!.concern.remedies.find((each) => remedyWords(each) === tried.words)!
      const ladder = typeof remedy === 'string' ? [] : remedy.ladder
      const place = ladder.findIndex((step) => JSON.stringify(step) === JSON.stringify(tried.changes))
      expect(place).toBeGreaterThanOrEqual(0)
      if (place === 0) continue
      const gentler = parseDesign(withChanges(design, ladder[place - 1]!))
      if (gentler.ok) expect(severityOf(computeDesign(gentler.design), code)).toBe('warning')
      compared++
    }
    expect(compared).toBeGreaterThan(0)
  }, 60_000)

  test('what blocks the faulty example is settled one by one, the cleanest way first', () => {
    const codes = [
      'load-loss',
      'battery-disconnect',
      'battery-fuse',
      'switch-rating',
      'pole-map',
      'energy-balance',
      'volts-not-power',
    ]
    const report = finished(concernRemedies(example('many-faults'), { codes }))
    expect(report.concerns.every(({ concern }) => concern.severity === 'blocking')).toBe(true)
    const settled = report.concerns.filter(({ tried }) => tried[0]?.outcome === 'settles')
    expect(settled.map(({ concern }) => concern.code)).toEqual(
      report.concerns.map(({ concern }) => concern.code),
    )
    expect(settled.length).toBe(codes.length)
    // none of them is bought with another one that blocks
    for (const { tried } of settled)
      expect(tried[0]!.worse.filter(({ after }) => after === 'blocking')).toEqual([])
    const rank = ({ outcome, worse }: TriedRemedy) =>
      outcome === 'settles' && worse.every(({ after }) => after !== 'blocking')
        ? -1
        : remedyOutcomes.indexOf(outcome)
    for (const { tried } of report.concerns) {
      const ranks = tried.map(rank)
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    }
  }, 240_000)

  test('the fraction done rises from zero to one, and it can be given up at any step', () => {
    const steps = concernRemedies(example('class-room-fan'))
    let last = 0
    for (;;) {
      const step = steps.next()
      if (step.done === true) break
      expect(step.value).toBeGreaterThanOrEqual(last - 1e-12)
      expect(step.value).toBeLessThanOrEqual(1)
      last = step.value
    }
    const given = concernRemedies(example('class-room-fan'))
    given.next()
    expect(given.return(undefined as never).done).toBe(true)
  }, 60_000)
})

/** What stands at a path of a document. */
const at = (document: unknown, path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>(
    (place, key) => (place as Record<string | number, unknown> | undefined)?.[key],
    document,
  )

function chainOrNone(document: unknown): Chain | undefined {
  const parsed = parseDesign(document)
  if (!parsed.ok) return undefined
  try {
    return computeDesign(parsed.design)
  } catch (error) {
    if (error instanceof Refusal) return undefined
    throw error
  }
}

describe('law: remedies of varied documents', () => {
  test('every step starts from what stands there, changes it, and makes a document or a fault', () => {
    let steps = 0
    fc.assert(
      fc.property(variedDocument(6), ({ document }) => {
        const chain = chainOrNone(document)
        if (chain === undefined) return
        const { design } = chain.machine
        for (const { remedies } of chain.concerns)
          for (const remedy of remedies) {
            expect(remedyWords(remedy)).toMatch(/\.$/)
            if (typeof remedy === 'string') continue
            expect(remedy.ladder.length).toBeGreaterThan(0)
            for (const changes of remedy.ladder) {
              expect(changes.length).toBeGreaterThan(0)
              for (const { path, from, to } of changes) {
                expect(at(design, path)).toEqual(from)
                expect(to).not.toEqual(from)
              }
              const changed = withChanges(design, changes)
              for (const { path, to } of changes) expect(at(changed, path)).toEqual(to)
              const parsed = parseDesign(changed)
              if (!parsed.ok) expect(parsed.faults.length).toBeGreaterThan(0)
              steps++
            }
          }
      }),
      { numRuns: 25, seed: 5 },
    )
    expect(steps).toBeGreaterThan(100)
  }, 240_000)

  test('every rule tells its quantity as a number in a known unit, or not at all', () => {
    fc.assert(
      fc.property(variedDocument(6), ({ document }) => {
        const chain = chainOrNone(document)
        if (chain === undefined) return
        for (const { measure } of concernRules) {
          const told = measure?.(chain)
          if (told === undefined) continue
          expect(units.has(told.unit)).toBe(true)
          expect(Number.isNaN(told.value) || Number.isNaN(told.limit)).toBe(false)
        }
      }),
      { numRuns: 15, seed: 6 },
    )
  }, 240_000)

  test('trying them never fails', () => {
    fc.assert(
      fc.property(variedDocument(3, ['class-room-fan']), fc.nat({ max: 99 }), ({ document }, pick) => {
        const chain = chainOrNone(document)
        if (chain === undefined) return
        const triable = chain.concerns.filter(({ remedies }) =>
          remedies.some((each) => typeof each !== 'string'),
        )
        const one = triable[pick % Math.max(1, triable.length)]
        if (one === undefined) return
        const report = finished(concernRemedies(chain.machine.design, { chain, codes: [one.code] }))
        expect(report.concerns.length).toBe(1)
      }),
      { numRuns: 5, seed: 8 },
    )
  }, 240_000)
})
