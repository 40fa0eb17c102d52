/** Checks of keeping what says the same: equal parts stay the same object, others come whole. */
import { describe, expect, test } from 'vitest'
import { changedParts, keptParts } from './same-parts.ts'

const state = () => ({
  name: 'a',
  rows: [
    { wind: 3, watts: { copper: 1 } },
    { wind: 4, watts: { copper: 2 } },
  ],
  hours: Float64Array.of(1, 2, Number.NaN),
  wanted: undefined as { power: number } | undefined,
})

describe('law: what says the same stays the same', () => {
  test('equal data is what stood there before, down to not-a-number', () => {
    const before = state()
    expect(keptParts(before, state())).toBe(before)
  })
  test('one number that differs brings the records around it, and nothing beside them', () => {
    const before = state()
    const next = state()
    next.rows[1]!.watts.copper = 2.5
    const kept = keptParts(before, next)
    expect(kept).toEqual(next)
    expect(kept.rows[0]).toBe(before.rows[0])
    expect(kept.hours).toBe(before.hours)
    expect(kept.rows[1]!.watts).not.toBe(before.rows[1]!.watts)
    expect(before).toEqual(state())
    expect(changedParts(before, kept)).toEqual({ rows: next.rows })
  })
  test('longer and shorter lists, a key that comes or goes, another kind', () => {
    for (const next of [
      { ...state(), rows: state().rows.slice(0, 1) },
      { ...state(), rows: [...state().rows, { wind: 5, watts: { copper: 3 } }] },
      { ...state(), wanted: { power: 5 } },
      { ...state(), hours: Float64Array.of(1, 2) },
    ])
      expect(keptParts(state(), next)).toEqual(next)
    const { wanted: _, ...less } = state()
    expect(Object.keys(keptParts<object>(state(), less))).toEqual(Object.keys(less))
    expect(keptParts<unknown>([1, 2], { 0: 1, 1: 2 })).toEqual({ 0: 1, 1: 2 })
    expect(keptParts<unknown>(undefined, [])).toEqual([])
  })
  test('changes laid on what stood before give what stands now', () => {
    const before = { ...state(), wanted: { power: 5 } }
    const next = keptParts(before, { ...state(), name: 'b' })
    expect({ ...before, ...changedParts(before, next) }).toEqual(next)
    expect({ ...changedParts(undefined, next) }).toEqual(next)
  })
})
