/** Checks of keeping at once: visits one after another and side by side, over stores that work, refuse or vanish. */
import * as memory from 'fake-indexeddb'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Held } from './autosave.ts'
import type { RawObject } from './raw-document.ts'

const storeOf = (refuses: () => boolean) => {
  const kept = new Map<string, string>()
  const guard = () => {
    if (refuses()) throw new DOMException('denied', 'SecurityError')
  }
  return {
    kept,
    get length() {
      guard()
      return kept.size
    },
    key: (k: number) => [...kept.keys()][k] ?? null,
    getItem: (place: string) => kept.get(place) ?? null,
    setItem: (place: string, text: string) => {
      guard()
      kept.set(place, text)
    },
    removeItem: (place: string) => {
      kept.delete(place)
    },
  }
}

let refusing = false
let small = storeOf(() => refusing)

/** What one page tells is heard by the others at once. */
let channels: { onmessage?: (event: { data: unknown }) => void; postMessage: (data: unknown) => void }[] = []
const channel = function channel() {
  const own: (typeof channels)[number] = {
    postMessage: (data) => {
      for (const other of channels) if (other !== own) other.onmessage?.({ data })
    },
  }
  channels.push(own)
  return own
}

beforeEach(() => {
  refusing = false
  channels = []
  small = storeOf(() => refusing)
  vi.stubGlobal('localStorage', small)
  for (const [name, value] of Object.entries(memory)) if (name.startsWith('IDB')) vi.stubGlobal(name, value)
  vi.stubGlobal('indexedDB', new memory.IDBFactory())
  vi.stubGlobal('BroadcastChannel', channel)
  vi.stubGlobal('addEventListener', () => {})
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.useRealTimers()
  vi.resetModules()
})

const state = (turns: number): RawObject => ({ gustloom: 2, name: 'x', turns })

/** A page opened in a tab of its own, or in the tab that `tab` is. */
async function visit(tab = storeOf(() => refusing)) {
  vi.stubGlobal('sessionStorage', tab)
  vi.resetModules()
  const autosave = await import('./autosave.ts')
  const { foundCopies } = await import('./keeping.ts')
  const copies = foundCopies()
  const copy = autosave.startCopy(copies)
  let held: Held = copy ?? { id: 'example', document: state(0) }
  autosave.begin(held, copies, (arrived) => {
    held = arrived
    autosave.hold(arrived, arrived)
  })
  const at = (): unknown => held.document['turns']
  return {
    autosave,
    tab,
    turns: at,
    edit: (
      turns: number,
      ...what: Parameters<typeof autosave.hold> extends [unknown, unknown, ...infer W] ? W : never
    ) => {
      const next = { id: held.id, document: state(turns) }
      autosave.hold(next, held, ...what)
      held = next
    },
    open: (id: string, turns: number) => {
      const next = { id, document: state(turns) }
      autosave.hold(next, held)
      held = next
    },
    settled: async () => {
      await autosave.theShelf()
      await autosave.saved()
    },
    versions: async () => {
      const { versionsOf } = await import('./shelf.ts')
      const found = await versionsOf(await autosave.theShelf(), held.id)
      return found.map(({ what, document }) => [what, document['turns']])
    },
  }
}

const copies = () =>
  [...small.kept].filter(([place]) => place.startsWith('gustloom.copy.')).map(([, text]) => JSON.parse(text))

describe('law: a visit begins where the last one ended', () => {
  test('an edit is in the small store before anything else happens, and on the shelf soon after', async () => {
    const first = await visit()
    first.edit(1)
    expect(copies()).toMatchObject([{ document: state(1), stored: false }])
    await first.settled()
    expect(copies()).toMatchObject([{ document: state(1), stored: true }])
    const { designOn } = await import('./shelf.ts')
    expect((await designOn(await first.autosave.theShelf(), 'example'))?.document).toEqual(state(1))
  })

  test('killed before the shelf had it: the next visit has it at once and puts it on the shelf', async () => {
    const first = await visit()
    first.edit(1)
    await first.settled()
    const [copy] = copies()
    small.kept.set(
      `gustloom.copy.${copy.page}`,
      JSON.stringify({ ...copy, document: state(2), changedAt: copy.changedAt + 5, stored: false }),
    )
    const next = await visit()
    expect(next.turns()).toBe(2)
    await next.settled()
    const { designOn } = await import('./shelf.ts')
    expect((await designOn(await next.autosave.theShelf(), 'example'))?.document).toEqual(state(2))
    expect(copies()).toHaveLength(1)
  })

  test('the small store was emptied: the shelf brings the design', async () => {
    const first = await visit()
    first.edit(1)
    await first.settled()
    small.kept.clear()
    const next = await visit()
    expect(next.turns()).toBe(0)
    await next.settled()
    expect(next.turns()).toBe(1)
  })

  test('a tab comes back to its own design, whatever another one did last', async () => {
    const one = await visit()
    one.edit(1)
    await one.settled()
    const two = await visit()
    two.open('other', 50)
    await two.settled()
    const again = await visit(one.tab)
    await again.settled()
    expect(again.turns()).toBe(1)
    const fresh = await visit()
    await fresh.settled()
    expect([1, 50]).toContain(fresh.turns())
  })

  test('an example nobody has changed is not put on the shelf', async () => {
    const first = await visit()
    first.autosave.notYetOwn('fan')
    first.open('fan', 7)
    await first.settled()
    const { designsOn } = await import('./shelf.ts')
    const names = async () => (await designsOn(await first.autosave.theShelf())).map(({ id }) => id)
    expect(await names()).toEqual([])
    const next = await visit(first.tab)
    expect(next.turns()).toBe(7)
    next.edit(8)
    await next.settled()
    expect(await names()).toEqual(['fan'])
  })
})

describe('law: versions are kept at turning points', () => {
  test('before the first change, every ten minutes of work, and where another state takes over', async () => {
    vi.useFakeTimers({ toFake: ['Date'] })
    const page = await visit()
    const later = (minutes: number) => vi.setSystemTime(Date.now() + minutes * 60_000)
    page.edit(1)
    later(4)
    page.edit(2)
    later(7)
    page.edit(3)
    later(1)
    page.edit(4, 'remedy')
    await page.settled()
    expect(await page.versions()).toEqual([
      ['remedy', 3],
      ['working', 2],
      ['opened', 0],
    ])
    const next = await visit(page.tab)
    later(1)
    next.edit(5)
    next.edit(6)
    await next.settled()
    expect((await next.versions()).slice(0, 2)).toEqual([
      ['opened', 4],
      ['remedy', 3],
    ])
  })
})

describe('law: two pages with one design lose nothing of each other', () => {
  test('the state that is written over is a version, and both are told', async () => {
    const one = await visit()
    one.edit(1)
    await one.settled()
    const two = await visit()
    await two.settled()
    expect(two.turns()).toBe(1)
    two.edit(2)
    await two.settled()
    expect(one.autosave.changedElsewhere.value).toBeDefined()
    expect(two.autosave.keptForOther.value).toBe(false)
    one.edit(3)
    await one.settled()
    expect(one.autosave.keptForOther.value).toBe(true)
    expect(two.autosave.changedElsewhere.value).toBeDefined()
    expect(await one.versions()).toContainEqual(['other-window', 2])
  })
})

describe('law: stores that refuse are told of, and the design goes on', () => {
  test('no database: told, and the small store brings the design back', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('not in private windows', 'InvalidStateError')
      },
    })
    const page = await visit()
    page.edit(1)
    await page.autosave.saved()
    expect(page.autosave.trouble.value).toMatch(
      /does not let the page keep designs \(not in private windows\)/,
    )
    expect(page.autosave.trouble.value).toContain('save the design as a file')
    expect((await visit()).turns()).toBe(1)
  })

  test('no small store: the shelf has it, nothing is told', async () => {
    refusing = true
    const page = await visit()
    page.edit(1)
    await page.settled()
    expect(page.autosave.trouble.value).toBe('')
    const next = await visit()
    await next.settled()
    expect(next.turns()).toBe(1)
  })

  test('neither: told that nothing is kept, and it goes on', async () => {
    refusing = true
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('denied', 'SecurityError')
      },
    })
    const page = await visit()
    page.edit(1)
    await page.autosave.saved()
    page.edit(2)
    await page.autosave.saved()
    expect(page.turns()).toBe(2)
    expect(page.autosave.trouble.value).toMatch(/does not let the page keep anything \(denied\)/)
  })

  test('an unreadable copy is put aside, and the others are read', async () => {
    const page = await visit()
    page.edit(1)
    await page.settled()
    small.kept.set('gustloom.copy.torn', '{"id": "x"')
    vi.resetModules()
    const { foundCopies } = await import('./keeping.ts')
    const found = foundCopies()
    expect(found.unreadable).toBe(1)
    expect(found.found).toHaveLength(1)
    expect(small.kept.get('gustloom.unreadable')).toBe('{"id": "x"')
    expect(small.kept.has('gustloom.copy.torn')).toBe(false)
  })
})
