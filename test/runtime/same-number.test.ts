/** Checks that the page's worker and Node compute the same numbers. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { computeDesign, parseDesignText } from '../../src/index.ts'
import { snapshotOf, windSnapshotOf } from '../../web/snapshot.ts'
import { launchBrowser, openPage, root, type Served, servePage } from '../page/browser.ts'

let browser: Browser
let served: Served

beforeAll(async () => {
  served = await servePage('same-number')
  browser = await launchBrowser()
}, 300_000)

afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

/** Numbers by their place, so that a difference says where it is. */
function* numbersIn(value: unknown, place = ''): Generator<readonly [string, number | string]> {
  if (typeof value === 'number') yield [place, value]
  else if (typeof value === 'string' || typeof value === 'boolean') yield [place, String(value)]
  else if (ArrayBuffer.isView(value) || Array.isArray(value))
    for (const [k, inner] of Array.from(value as ArrayLike<unknown>).entries())
      yield* numbersIn(inner, `${place}[${k}]`)
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) yield* numbersIn(inner, `${place}.${key}`)
}

/** What the built worker answers, as JSON; infinities in words, because JSON has none. */
async function fromBrowser(text: string, row: number): Promise<{ snapshot: unknown; wind: unknown }> {
  const worker = readdirSync(join(served.folder, 'assets')).find((name) => /^worker-.*\.js$/.test(name))
  if (worker === undefined) throw new Error('the built page has no worker')
  const { page, close } = await openPage(browser, served.address)
  try {
    const json = await page.evaluate(
      ({ address, text, row }) =>
        new Promise<string>((resolve, reject) => {
          const engine = new Worker(address, { type: 'module' })
          let snapshot: unknown
          const plain = (_: string, value: unknown) =>
            ArrayBuffer.isView(value)
              ? Array.from(value as unknown as ArrayLike<number>)
              : typeof value === 'number' && !Number.isFinite(value)
                ? `number ${value}`
                : value
          engine.onerror = (event) => reject(new Error(event.message))
          engine.onmessage = ({ data }) => {
            if (data.kind === 'faults') reject(new Error(data.faults[0].text))
            if (data.kind === 'result') {
              snapshot = data.changed
              engine.postMessage({ kind: 'wind', row })
            }
            if (data.kind === 'wind') {
              engine.terminate()
              resolve(JSON.stringify({ snapshot, wind: data.wind }, plain))
            }
          }
          engine.postMessage({ kind: 'edit', id: 1, text })
        }),
      { address: `./assets/${worker}`, text, row },
    )
    return JSON.parse(json, (_, value) =>
      typeof value === 'string' && value.startsWith('number ') ? Number(value.slice(7)) : value,
    )
  } finally {
    await close()
  }
}

/** A number is the same when it differs by less than this share of itself. */
const share = 1e-9

describe('agrees: one computation in Node and in the worker of the page', () => {
  const texts = readdirSync(join(root, 'examples'))
    .filter((name) => name.endsWith('.json'))
    .map((name) => [name, readFileSync(join(root, 'examples', name), 'utf8')] as const)
    .filter(([, text]) => parseDesignText(text).ok)
  for (const [name, text] of texts)
    test(name, async () => {
      const parsed = parseDesignText(text)
      if (!parsed.ok) throw new Error('the example has faults')
      const chain = computeDesign(parsed.design)
      const row = Math.floor(chain.rows.length / 3)
      const there = await fromBrowser(text, row)
      const mine = new Map(numbersIn({ snapshot: snapshotOf(chain), wind: windSnapshotOf(chain, row) }))
      const theirs = new Map(numbersIn(there))
      expect(theirs.size).toBe(mine.size)
      expect(mine.size).toBeGreaterThan(2000)
      const scale = (place: string) => place.replace(/\d+/g, '#')
      // beside zero crossings a list's own size is the measure
      const sizes = new Map<string, number>()
      for (const [place, value] of mine)
        if (typeof value === 'number' && Number.isFinite(value))
          sizes.set(scale(place), Math.max(sizes.get(scale(place)) ?? 0, Math.abs(value)))
      const different = [...mine].filter(([place, value]) => {
        const other = theirs.get(place)
        if (typeof value === 'string' || typeof other !== 'number') return other !== value
        if (value === other) return false
        return !(Math.abs(value - other) <= share * Math.max(Math.abs(value), sizes.get(scale(place)) ?? 0))
      })
      expect(different.slice(0, 5)).toEqual([])
    }, 400_000)
})
