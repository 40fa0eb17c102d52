/** Checks how settings of a logger's clock are told from late rows, gaps and the change of the season. */
import { describe, expect, test } from 'vitest'
import { clockSettings } from './clock-setting.ts'
import { importWind, type WindImport } from './wind-import.ts'

/** Rows every ten minutes, the clock changed by so many seconds at some of them. */
const rows = (count: number, changes: Readonly<Record<number, number>>): Float64Array => {
  let offset = 0
  return Float64Array.from({ length: count }, (_, k) => {
    offset += changes[k] ?? 0
    return 600 * k + offset
  })
}

describe('law: what was put in is found', () => {
  test('settings forward and back', () => {
    expect(clockSettings(rows(100, {}), 600, 1)).toEqual([])
    expect(clockSettings(rows(100, { 40: -13, 70: 25 }), 600, 0.98)).toEqual([
      { at: 600 * 40 - 13, by: -13 },
      { at: 600 * 70 + 12, by: 25 },
    ])
  })
  test('a late row, a gap, a second of jitter and a changed hour are none', () => {
    const late = rows(100, {})
    late[50]! += 40
    expect(clockSettings(late, 600, 0.98)).toEqual([])
    expect(clockSettings(rows(100, { 50: 4 * 600 + 77 }), 600, 0.99)).toEqual([])
    expect(clockSettings(rows(100, { 50: 1 }), 600, 0.99)).toEqual([])
    expect(clockSettings(rows(100, { 50: 3600 }), 600, 0.99)).toEqual([])
  })
  test('rows without a pace say nothing', () => {
    expect(clockSettings(rows(100, { 40: -13 }), 600, 0.5)).toEqual([])
    expect(clockSettings(rows(3, { 1: -13 }), 600, 1)).toEqual([])
    expect(clockSettings(rows(100, { 40: -13 }), 0, 1)).toEqual([])
  })
})

describe('law: the report tells it', () => {
  const text = (changes: Readonly<Record<number, number>>) =>
    [
      'time,wind m/s',
      ...Array.from(rows(300, changes), (t, k) => {
        const clock = new Date(Date.UTC(2026, 4, 1) + 1000 * t).toISOString().slice(0, 19).replace('T', ' ')
        return `${clock},${(5 + 2 * Math.sin(k / 7)).toFixed(2)}`
      }),
    ].join('\n')
  const remarks = (changes: Readonly<Record<number, number>>) => {
    const steps = importWind(text(changes))
    let step = steps.next()
    while (step.done !== true) step = steps.next()
    const found: WindImport = step.value
    if (!found.ok) throw new Error(found.reason)
    return found.report.remarks.join(' ')
  }
  test('how often, by how much, and nothing where it never was', () => {
    expect(remarks({})).not.toContain('clock was set')
    expect(remarks({ 100: -45, 200: -30 })).toContain(
      'The clock was set 2 times, by up to 45 s (2026-05-01 16:39): until then it was ahead by that.',
    )
    expect(remarks({ 100: 45 })).toContain('it was behind by that')
  })
})
