/** Checks of defects of the bridge that cannot be, or not together. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { faultText } from './fault.ts'
import { parseDesign } from './parse.ts'
import { resolveDesign } from './resolve.ts'

function told(defects: readonly object[], connection = 'star'): string[] {
  const document = fixedDocument('twoDiscs')
  document.stator.connection = connection
  document.defects = defects
  const parsed = parseDesign(document)
  return parsed.ok ? [] : parsed.faults.map(faultText)
}
const open = { kind: 'open diode', line: 1, side: 'positive' }
const shorted = { kind: 'shorted diode', line: 2, side: 'negative' }

describe('law: defects of the bridge', () => {
  test('any of them alone, and those that can be together', () => {
    expect(told([open])).toEqual([])
    expect(told([open, shorted, { kind: 'open line', line: 3 }])).toEqual([])
    expect(told([{ ...open, end: 'finish' }, open], 'separate')).toEqual([])
  })
  test('a diode twice, an end where there is none, a line twice', () => {
    expect(told([open, { ...open, kind: 'shorted diode' }])).toEqual([
      'defects[1].line must be another diode than those before it; received 1 (conflict)',
    ])
    expect(told([{ ...open, end: 'finish' }])).toEqual([
      'defects[0].end must be left out: a star has one bridge for all phases; received "finish" (conflict)',
    ])
    expect(told([open, { kind: 'open line', line: 1 }])).toEqual([
      'defects[1].line must be another line than those of other defects of the bridge; received 1 (conflict)',
    ])
  })
  test('shorted towards both rails the battery would burn the winding: not computed', () => {
    expect(told([shorted, { ...shorted, line: 1, side: 'positive' }])).toEqual([
      'defects[1].side must be that of the other shorted diodes: shorted towards both rails they short what the bridge feeds; received "positive" (conflict)',
    ])
  })
  test('the machine counts lines from 0 and holds an open line as both of its diodes', () => {
    const document = fixedDocument('twoDiscs')
    document.defects = [shorted, { kind: 'open line', line: 3 }]
    const parsed = parseDesign(document)
    expect(parsed.ok && resolveDesign(parsed.design).defects.diodeFaults).toEqual([
      { line: 1, side: 'negative', kind: 'shorted' },
      { line: 2, side: 'positive', kind: 'open' },
      { line: 2, side: 'negative', kind: 'open' },
    ])
  })
})
