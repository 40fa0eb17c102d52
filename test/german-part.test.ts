/** Checks of the German that a visit fetches: its parts are the whole catalogue, and the first is small and holds what is said at once. */
import { gzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { filesBefore, germanParts } from '../scripts/german-plugin.ts'
import { allGerman } from '../scripts/text.ts'

const parts = germanParts()

describe('law: German comes in parts', () => {
  test('together they are the catalogue, and no sentence comes twice', () => {
    const keys = Object.values(parts).flatMap((part) => Object.keys(part))
    expect(new Set(keys)).toEqual(new Set(Object.keys(allGerman())))
    expect(keys.length).toBe(new Set(keys).size)
  })
  test('the first holds what the page says with its first numbers, and is the smallest', () => {
    for (const word of ['Power', 'Wind', 'Shaft', 'Charging begins', 'The whole machine', 'A first machine'])
      expect(Object.keys(parts.first), word).toContain(word)
    const sizes = Object.values(parts).map((part) => gzipSync(JSON.stringify(part)).length)
    expect(Math.min(...sizes)).toBe(sizes[0])
    expect(sizes[0]).toBeLessThan(60_000)
  })
  test('what a script needs before it runs is followed through all that it imports', () => {
    const files = filesBefore(['web/main.tsx'])
    for (const file of ['web/page.tsx', 'web/text/language.ts', 'web/text/say.ts'])
      expect(files).toContain(file)
    // fetched later, and named for its types alone
    expect(files).not.toContain('web/room/storm.tsx')
    expect(files).not.toContain('src/index.ts')
  })
})
