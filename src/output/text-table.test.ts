/** Checks of columns and broken lines. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { textTable, wrapped } from './text-table.ts'

describe('law: columns line up', () => {
  test('numbers to the right, words to the left, no line ends in a space', () => {
    const lines = textTable(
      [
        { head: 'state', align: 'left' },
        { head: 'rpm', align: 'right' },
      ],
      [
        ['at rest', '0'],
        ['held', '1390'],
      ],
    )
    expect(lines).toEqual(['state     rpm', 'at rest     0', 'held     1390'])
  })
  test('a cell left out is empty', () => {
    expect(textTable([{ head: 'a', align: 'left' }], [[]])).toEqual(['a', ''])
  })
})

describe('law: broken lines', () => {
  test('hold all words in order, none longer than asked unless a single word is', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1 }), (words) => {
        const lines = wrapped(words.join(' '), 20, '  ')
        expect(lines.join(' ').split(/\s+/).filter(Boolean)).toEqual(words)
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(20)
      }),
    )
  })
  test('keep their lead, and set in what follows', () => {
    expect(wrapped('  one two three', 9, '    ')).toEqual(['  one two', '    three'])
  })
})
