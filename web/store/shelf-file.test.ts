/** Checks of the file with all designs: what goes out comes in again, and the good of a bad file is taken. */
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleText } from '../../test/example.ts'
import type { RawObject } from './raw-document.ts'
import { designsInFile, type FiledDesign, shelfFileText } from './shelf-file.ts'
import { turningPoints } from './turning-point.ts'

const now = Date.parse('2026-05-01T12:00:00Z')
const fan = exampleDocument('class-room-fan') as RawObject
const drum = exampleDocument('hen-house-drum') as RawObject

describe('law: a shelf goes into a file and comes out of it', () => {
  test('designs, what was put aside, versions, moments and reasons', () => {
    const designs: FiledDesign[] = [
      {
        document: fan,
        changedAt: now - 1000,
        aside: false,
        versions: turningPoints.map((what, k) => ({ at: now - 5000 + k, what, document: drum })),
      },
      { document: drum, changedAt: now - 2000, aside: true, versions: [] },
    ]
    expect(designsInFile(shelfFileText(designs), 'shelf.json', now)).toEqual({ designs, refusals: [] })
  })

  test('one design alone is a file too', () => {
    expect(designsInFile(exampleText('class-room-fan'), 'fan.json', now)).toEqual({
      designs: [{ document: fan, changedAt: now, aside: false, versions: [] }],
      refusals: [],
    })
  })
})

describe('law: of a bad file the good is taken, and the rest is told', () => {
  const read = (value: unknown) => designsInFile(JSON.stringify(value), 'x.json', now)
  test('one bad design among good ones, a bad version of a good one', () => {
    const { designs, refusals } = read({
      gustloomShelf: 1,
      designs: [
        {
          design: fan,
          versions: [{ design: { gustloom: 99 } }, { design: drum, what: 'by magic', kept: 'then' }],
        },
        { design: [1] },
        { design: drum, changed: '2999-01-01T00:00:00Z', aside: 'perhaps' },
        7,
      ],
    })
    expect(designs.map(({ document }) => document)).toEqual([fan, drum])
    expect(designs[0]!.versions).toEqual([{ at: now, what: 'left-over', document: drum }])
    expect(designs[1]).toMatchObject({ changedAt: now, aside: false })
    expect(refusals).toEqual([
      '“gustloom” in Version 1 of design 1 in x.json must be the version number 2 or an older one; received 99 (unknown-version)',
      'design 2 in x.json must be an object; received a list (wrong-type)',
      'design 4 in x.json must be an object; received a number (wrong-type)',
    ])
  })

  const cases: readonly (readonly [string, unknown, RegExp])[] = [
    ['a later form', { gustloomShelf: 2, designs: [] }, /unknown-version/],
    ['no list', { gustloomShelf: 1, designs: { length: 1 } }, /wrong-length/],
    ['more than anybody has', { gustloomShelf: 1, designs: Array(2001).fill(0) }, /wrong-length/],
    ['another thing', { hello: 1 }, /missing-key/],
  ]
  for (const [name, value, sentence] of cases)
    test(name, () => {
      const { designs, refusals } = read(value)
      expect(designs).toEqual([])
      expect(refusals.join()).toMatch(sentence)
    })
})
