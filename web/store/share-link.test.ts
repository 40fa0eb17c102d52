/** Checks of the link: every example survives it, its letters are those of the standard, hostile ones are refused. */
import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleNames } from '../../test/example.ts'
import type { RawObject } from './raw-document.ts'
import { mostPressed, sharedDocument, shareFragment } from './share-link.ts'

const link = (text: string) => `#design=${deflateRawSync(text).toString('base64url')}`

describe('agrees: a link against another program’s compression and letters', () => {
  for (const name of exampleNames)
    test(`${name} comes back as it went, in fewer than 4000 letters`, async () => {
      const document = exampleDocument(name) as RawObject
      const fragment = await shareFragment(document)
      expect(fragment.length).toBeLessThan(4000)
      expect(await sharedDocument(fragment)).toEqual({ kind: 'document', document })
      expect(await sharedDocument(link(JSON.stringify(document)))).toEqual({ kind: 'document', document })
    })
})

describe('law: whatever stands in a link, it is told and nothing breaks', () => {
  test('any object survives', async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.string(), fc.jsonValue()), async (object) => {
        const document = JSON.parse(JSON.stringify(object)) as RawObject
        expect(await sharedDocument(await shareFragment(document))).toEqual({ kind: 'document', document })
      }),
      { seed: 6, numRuns: 60 },
    )
  })

  test('any text is a document or a refusal', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary' }), async (text) => {
        expect(['none', 'refused', 'document']).toContain((await sharedDocument(`#design=${text}`)).kind)
      }),
      { seed: 6, numRuns: 200 },
    )
  })

  const cases: readonly [name: string, fragment: string, reason: string][] = [
    ['cut off', link(JSON.stringify({ a: 'long enough to be cut' })).slice(0, -6), 'cut off'],
    ['other letters', '#design=%3Cscript%3E', 'letters'],
    ['a bomb', link('0'.repeat(50_000_000)), 'more than any design'],
    ['too long', `#design=${'A'.repeat(mostPressed * 2)}`, 'longer than any design'],
    ['a list', link('[1, 2]'), 'no design'],
    ['not JSON', link('{'), 'no design'],
    ['nothing', '#design=', 'letters'],
  ]
  for (const [name, fragment, reason] of cases)
    test(name, async () => {
      const shared = await sharedDocument(fragment)
      expect(shared.kind).toBe('refused')
      expect(shared.kind === 'refused' ? shared.reason : '').toContain(reason)
    })

  test('another fragment is none of ours', async () => {
    for (const fragment of ['', '#', '#numbers', '#designs=x'])
      expect((await sharedDocument(fragment)).kind).toBe('none')
  })
})
