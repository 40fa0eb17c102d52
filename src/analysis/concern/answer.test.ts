/** Checks of answers: they hold for what was read, and tell when they do no work. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { concernRules, concernsOf } from '../concerns.ts'
import { answerFigure, hasMoved } from './answer.ts'
import { type ConcernMeasure, isOpen } from './concern.ts'

const measureOf = (fields: Readonly<Record<string, unknown>>) =>
  concernRules.find(({ code }) => code === 'cable-drop')!.measure!(sampleChain(fields))!

const thin = { 'cable.area_mm2': 2.5 }
const given = (answers: readonly object[], fields: Readonly<Record<string, unknown>> = thin) =>
  concernsOf(sampleChain({ ...fields, answers }))

const reading = { concern: 'cable-drop', note: '24.1 V at the bridge, 23.6 V at the battery, 18 A' }
const find = (concerns: ReturnType<typeof given>, code: string) => concerns.find((each) => each.code === code)

describe('law: answers', () => {
  test('an answered concern stays, with its severity, and is no longer open', () => {
    const plain = find(concernsOf(sampleChain(thin)), 'cable-drop')!
    const one = find(given([{ ...reading, date: '2026-05-02', file: 'cable.csv' }]), 'cable-drop')!
    expect(isOpen(plain)).toBe(true)
    expect(isOpen(one)).toBe(false)
    expect(one.severity).toBe(plain.severity)
    expect(one.answer).toEqual({
      note: reading.note,
      file: 'cable.csv',
      date: '2026-05-02',
      unfit: undefined,
    })
    expect(find(given([reading]), 'idle-answer')).toBeUndefined()
  })

  test('it holds while its figure stays, and says so when that has moved', () => {
    const figure = answerFigure(measureOf(thin))
    expect(isOpen(find(given([{ ...reading, figure }]), 'cable-drop')!)).toBe(false)
    const moved = given([{ ...reading, figure: { ...figure, value: 2 * figure.value } }])
    const one = find(moved, 'cable-drop')!
    expect(isOpen(one)).toBe(true)
    expect(one.answer?.unfit).toMatch(/^Answered for .+, now .+: answer again\.$/)
    expect(find(moved, 'idle-answer')).toMatchObject({ severity: 'warning', path: 'answers[0]' })
  })

  test('of two to one concern the later holds and the earlier is told of', () => {
    const concerns = given([{ ...reading, note: 'old' }, reading])
    expect(find(concerns, 'cable-drop')?.answer?.note).toBe(reading.note)
    expect(find(concerns, 'idle-answer')).toMatchObject({ severity: 'note', path: 'answers[0]' })
  })

  test('one to a concern that is not raised is a note, never lost', () => {
    const concerns = given([reading], {})
    expect(find(concerns, 'cable-drop')).toBeUndefined()
    expect(find(concerns, 'idle-answer')).toMatchObject({ severity: 'note' })
    expect(find(concerns, 'idle-answer')?.figures).toContain('cable-drop: not raised')
  })

  test('what no reading settles, and what does not exist, cannot be answered', () => {
    const unlimited = { 'protection.mechanical': 'none', 'protection.electrical': 'none' }
    const concerns = given(
      [
        { concern: 'load-loss', note: 'it has always stood' },
        { concern: 'no-such-thing', note: 'read' },
      ],
      unlimited,
    )
    const loss = find(concerns, 'load-loss')!
    expect(loss.severity).toBe('blocking')
    expect(isOpen(loss)).toBe(true)
    const idle = find(concerns, 'idle-answer')!
    expect(idle.severity).toBe('warning')
    expect(idle.figures).toContain('load-loss: no reading settles this')
    expect(idle.figures).toContain('no-such-thing: there is no such concern')
  })

  test('without answers the rule is silent', () => {
    expect(find(concernsOf(sampleChain(thin)), 'idle-answer')).toBeUndefined()
  })
})

describe('law: a figure has moved by more than a tenth', () => {
  const measure = (value: number, limit: number): ConcernMeasure => ({
    name: 'drop',
    value,
    limit,
    unit: 'V',
    sound: 'below',
  })
  test('of the larger of figure and limit, either way', () => {
    expect(hasMoved({ value: 10, unit: 'V' }, measure(10.9, 5))).toBe(false)
    expect(hasMoved({ value: 10, unit: 'V' }, measure(11.1, 5))).toBe(true)
    expect(hasMoved({ value: 10, unit: 'V' }, measure(8.9, 5))).toBe(true)
    // near zero the limit is what a change is measured by
    expect(hasMoved({ value: 0, unit: 'V' }, measure(0.4, 5))).toBe(false)
    expect(hasMoved({ value: 0, unit: 'V' }, measure(0.6, 5))).toBe(true)
  })
  test('in the unit that people read: 96 °C to 131 °C, not 369 K to 404 K', () => {
    const hot = { name: 'copper', value: 404.15, limit: 388.15, unit: 'degC', sound: 'below' } as const
    expect(hasMoved({ value: 96, unit: 'degC' }, hot)).toBe(true)
  })
  test('another quantity of the same rule is another answer', () => {
    expect(hasMoved({ value: 10, unit: 'A' }, measure(10, 5))).toBe(true)
  })
})

describe('law: rules that can be answered', () => {
  test('say with which reading, in a sentence', () => {
    const answerable = concernRules.filter(({ answeredBy }) => answeredBy !== undefined)
    expect(answerable.length).toBeGreaterThan(20)
    for (const { answeredBy } of answerable) expect(answeredBy).toMatch(/^[A-Z].*\.$/)
  })
  test('leave out what only another design can mend', () => {
    for (const code of [
      'load-loss',
      'brake-order',
      'dump-path',
      'coil-pole-balance',
      'small-magnet',
      'pole-map',
    ])
      expect(concernRules.find((rule) => rule.code === code)?.answeredBy).toBeUndefined()
  })
})
