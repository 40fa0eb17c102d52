/** Checks of the link: every example survives it, its letters are those of the standard, hostile ones are refused. */
import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { designVersion } from '../../src/machine/migration.ts'
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
  test('any object of the present version survives', async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.stringMatching(/^[a-zäß ]+$/), fc.jsonValue()), async (object) => {
        const document = JSON.parse(JSON.stringify({ ...object, gustloom: designVersion })) as RawObject
        const reached = await sharedDocument(await shareFragment(document))
        if (JSON.stringify(document).includes('proto') || 'constructor' in object) return
        expect(reached).toEqual({ kind: 'document', document })
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
    ['a bomb', link('0'.repeat(50_000_000)), '(too-large)'],
    ['too long', `#design=${'A'.repeat(mostPressed * 2)}`, '(too-large)'],
    ['a list', link('[1, 2]'), 'must be an object; received a list (wrong-type)'],
    ['not JSON', link('{'), '(not-json)'],
    [
      'no text',
      `#design=${deflateRawSync(Buffer.from([0xff, 0xfe, 0x80])).toString('base64url')}`,
      'bytes that are none',
    ],
    ['a prototype', link('{"gustloom": 2, "__proto__": {"x": 1}}'), '(unknown-key)'],
    ['of the future', link('{"gustloom": 99}'), '(unknown-version)'],
    ['nested', link(`${'{"a":'.repeat(200)}1${'}'.repeat(200)}`), '(too-deep)'],
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
