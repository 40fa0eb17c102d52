/** Times the page in a browser: from an edit to the frame that shows its numbers, and from the address to the first ones. */
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { basename } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { textTable } from '../src/output/text-table.ts'
import { launchBrowser, openPage, root, servePage } from '../test/page/browser.ts'
import { shareFragment } from '../web/store/share-link.ts'
import { referenceLoop } from './measure.ts'
import { slowServer } from './slow-server.ts'

/** A field and what is typed into it, over and over: every time another value. */
interface Kind {
  readonly what: string
  /** The first of these fields that the design has. */
  readonly paths: readonly string[]
  readonly typed: (value: number, k: number) => number
  /** Where the page keeps its field. */
  readonly room: string
}

const times = 4
const wider = (share: number) => (value: number, k: number) => value * (1 + share * (k + 1))
const more = (step: number) => (value: number, k: number) => value + step * (k + 1)

const kinds: readonly Kind[] = [
  {
    what: 'turns',
    paths: ['stator.winding.turns', 'stator.winding.laps'],
    typed: more(1),
    room: 'winding',
  },
  { what: 'wire', paths: ['stator.wire.size', 'stator.wire'], typed: wider(-0.01), room: 'winding' },
  {
    what: 'air gap',
    paths: ['rotor.faceDistance_mm', 'stator.winding.distance_mm', 'stator.winding.clearance_mm'],
    typed: more(0.1),
    room: 'magnets',
  },
  { what: 'magnet', paths: ['rotor.magnet.thickness_mm'], typed: wider(-0.005), room: 'magnets' },
  {
    what: 'blades',
    paths: ['blades.diameter_m', 'blades.radius_m'],
    typed: wider(0.004),
    room: 'blades',
  },
  { what: 'mean wind', paths: ['site.meanWind_m_per_s'], typed: more(0.1), room: 'wind' },
  {
    what: 'load',
    paths: ['load.voltage_V', 'load.resistance_ohm', 'load.ratedPower_W'],
    typed: wider(0.004),
    room: 'store',
  },
  { what: 'cable', paths: ['cable.length_m'], typed: more(0.5), room: 'cable' },
  { what: 'name', paths: ['name'], typed: more(1), room: 'whole' },
]

interface Timed {
  readonly kind: string
  readonly round: number
  /** A hundred thousand rounds of the reference loop on the main thread, just before [ms]. */
  readonly loop: number
  /** From the input event to the message with the numbers, to the frame that shows them, and to that of the rules [ms]. */
  readonly result: number
  readonly painted: number
  readonly judged: number
}

/** Every kind is typed in the first round, in which the browser still compiles the page, and again in the second. */
const rounds = 2

const median = (values: readonly number[], share = 0.5): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN

const fieldId = (path: string) => `field-${path.replace(/[^A-Za-z0-9]+/g, '-')}`

/** The field's identifier, its room opened where the page shows one room at a time. */
async function fieldOf(page: Page, { paths, room }: Kind): Promise<string | undefined> {
  for (const path of paths) {
    const id = fieldId(path)
    if ((await page.locator(`#${id}`).count()) > 0) return id
    await page.evaluate((key) => {
      if (location.hash !== `#${key}`) location.hash = key
    }, room)
    await page.waitForTimeout(300)
    if ((await page.locator(`#${id}`).count()) > 0) return id
  }
  return undefined
}

/** Types into a field and waits for the frame that shows what came of it; undefined where the value is refused. */
const typedInto = (page: Page, id: string, text: string) =>
  page.evaluate(
    ({ id, text }) =>
      new Promise<Omit<Timed, 'kind' | 'round'> | undefined>((resolve) => {
        const field = document.getElementById(id) as HTMLInputElement
        const begun = performance.now()
        let x = 1.5
        for (let k = 0; k < 100_000; k++) x = Math.sqrt(x * 1.25 + 0.5)
        const loop = performance.now() - begun
        let from = x - x
        const late = setTimeout(() => resolve(undefined), 20_000)
        new PerformanceObserver((list, observer) => {
          const judged = list.getEntriesByName('judged').at(-1)?.startTime ?? 0
          const [result, painted] = ['result', 'painted'].map(
            (name) => performance.getEntriesByName(name).at(-1)?.startTime ?? 0,
          ) as [number, number]
          if (judged < from || painted < from) return
          observer.disconnect()
          clearTimeout(late)
          resolve({ loop, result: result - from, painted: painted - from, judged: judged - from })
        }).observe({ type: 'mark' })
        field.focus()
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!.call(field, text)
        from = performance.now()
        field.dispatchEvent(new InputEvent('input', { bubbles: true }))
      }),
    { id, text },
  )

/** Somebody types about so fast [ms]. */
const pace = 150

interface EditTimes {
  readonly timed: readonly Timed[]
  /** Of the main thread while edits were typed [ms]. */
  readonly longTasks: readonly number[]
  readonly refused: readonly string[]
}

/** Opens a design without its picture in three dimensions, which a browser without a graphics processor draws slowly. */
async function flatPage(browser: Browser, address: string) {
  const opened = await openPage(browser, 'about:blank')
  await opened.page.addInitScript(() => {
    const given = HTMLCanvasElement.prototype.getContext as (kind: string, ...more: unknown[]) => unknown
    Object.assign(HTMLCanvasElement.prototype, {
      getContext(this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
        return kind.startsWith('webgl') ? null : given.call(this, kind, ...more)
      },
    })
  })
  await opened.page.goto(address)
  return opened
}

async function editTimes(browser: Browser, address: string): Promise<EditTimes> {
  const opened = await flatPage(browser, address)
  const { page } = opened
  await page.waitForFunction(() => performance.getEntriesByName('painted').length > 0)
  const timed: Timed[] = []
  const refused: string[] = []
  await page.evaluate(() => {
    const long: number[] = []
    Object.assign(globalThis, { long })
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) long.push(duration)
    }).observe({ type: 'longtask' })
  })
  for (let round = 0; round < rounds; round++)
    for (const kind of kinds) {
      const id = await fieldOf(page, kind)
      if (id === undefined) continue
      const first = await page.locator(`#${id}`).inputValue()
      for (let k = 0; k < times; k++) {
        const value =
          kind.what === 'name' ? `${first} ${k}` : Number(kind.typed(Number(first), k).toPrecision(5))
        const took = Number.isNaN(value) ? undefined : await typedInto(page, id, String(value))
        if (took === undefined) refused.push(`${kind.what} ${value}`)
        else timed.push({ kind: kind.what, round, ...took })
        await page.waitForTimeout(pace)
      }
      await typedInto(page, id, first)
      await page.waitForTimeout(pace)
    }
  const longTasks = await page.evaluate(() => (globalThis as unknown as { long: number[] }).long)
  await opened.close()
  return { timed, longTasks, refused }
}

interface FirstVisit {
  /** From the address to the first field that takes an entry, and to the first numbers [ms]. */
  readonly fields: number
  readonly numbers: number
}

/** Of a middling phone: the processor's main thread so many times slower, a poor line. */
const phone = { slower: 4, roundTrip: 150, rate: 1.6e6 } as const

async function firstVisit(browser: Browser, address: string): Promise<FirstVisit> {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 } })
  const page = await context.newPage()
  const session = await context.newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: phone.slower })
  await page.addInitScript(() => {
    Object.assign(globalThis, { firstField: Number.NaN })
    new MutationObserver((_, observer) => {
      if (document.querySelector('[id^="field-"], [role="tab"], nav a, nav button') === null) return
      Object.assign(globalThis, { firstField: performance.now() })
      observer.disconnect()
    }).observe(document, { childList: true, subtree: true })
  })
  await page.goto(address)
  await page.waitForFunction(() => performance.getEntriesByName('painted').length > 0, undefined, {
    timeout: 60_000,
  })
  const visit = await page.evaluate(() => ({
    fields: (globalThis as unknown as { firstField: number }).firstField,
    numbers: performance.getEntriesByName('painted')[0]!.startTime,
  }))
  await context.close()
  return visit
}

/** Holds this process, and what it starts, to one core; says whether it could. */
function heldToOneCore(): boolean {
  if (cpus().length === 1) return true
  return spawnSync('taskset', ['-a', '-c', '-p', '0', String(process.pid)]).status === 0
}

const released = () => spawnSync('taskset', ['-a', '-c', '-p', `0-${cpus().length - 1}`, String(process.pid)])

const number = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3))
interface Column {
  readonly head: string
  readonly align: 'left' | 'right'
}
const right = (head: string): Column => ({ head, align: 'right' })

const wished = process.argv.slice(2)
const examples = readdirSync(`${root}/examples`)
  .filter((file) => file.endsWith('.json') && (wished.length === 0 || wished.some((w) => file.includes(w))))
  .sort()

const served = await servePage('bench')
const held = heldToOneCore()
const browser = await launchBrowser()
const blank = await browser.newPage()
const loops = await blank.evaluate(
  `(() => { const loop = ${referenceLoop.toString()}; return [1, 2, 3, 4, 5].map(() => { const t = performance.now(); loop(); return performance.now() - t }) })()`,
)
await blank.close()
const loop = median(loops as number[])

const rows: string[][] = []
const notes: string[] = []
for (const file of examples) {
  const document = JSON.parse(readFileSync(`${root}/examples/${file}`, 'utf8')) as Record<string, unknown>
  const name = basename(file, '.json')
  const { timed, longTasks, refused } = await editTimes(
    browser,
    served.address + (await shareFragment(document)),
  )
  const row = (what: string, list: readonly Timed[]) => {
    const painted = list.map((one) => one.painted)
    rows.push([
      what,
      String(list.length),
      number(median(list.map(({ result }) => result))),
      number(median(painted)),
      number(median(painted, 0.9)),
      number(median(list.map(({ judged }) => judged))),
      number(median(list.map(({ painted, loop }) => painted / (100 * loop)))),
    ])
  }
  const settled = timed.filter(({ round }) => round > 0)
  row(name, settled)
  row(
    '  first round of the visit',
    timed.filter(({ round }) => round === 0),
  )
  for (const { what } of kinds) {
    const list = settled.filter(({ kind }) => kind === what)
    if (list.length > 0) row(`  ${what}`, list)
  }
  notes.push(
    `${name}: ${longTasks.length} tasks over 50 ms on the main thread, the longest ${number(Math.max(0, ...longTasks))} ms${refused.length > 0 ? `; refused: ${refused.join(', ')}` : ''}`,
  )
}
await browser.close()
released()

const columns: Column[] = [
  { head: 'edit to the frame that shows it', align: 'left' },
  right('edits'),
  right('numbers ms'),
  right('median ms'),
  right('90 % ms'),
  right('rules ms'),
  right('ratio'),
]
const print = (line: string) => process.stdout.write(`${line}\n`)
print(textTable(columns, rows).join('\n'))
print('')
for (const note of notes) print(note)
print(
  `ratio: to ten million multiplications, additions and square roots on the page’s own thread, timed just before each edit (${number(loop)} ms at the start); ${held ? 'all of the browser on one core' : 'taskset is not installed: the browser had every core'}; no picture in three dimensions, which needs a graphics processor`,
)
print('')

const slow = await slowServer(served.folder, phone)
const fresh = await launchBrowser()
const visit = await firstVisit(fresh, slow.address)
await fresh.close()
await slow.stop()
await served.stop()
print(
  `first visit, main thread ${phone.slower} × slower, ${phone.rate / 1e6} Mbit/s, ${phone.roundTrip} ms there and back:`,
)
print(
  `  something to press after ${number(visit.fields)} ms (${number(visit.fields / loop)} loops), numbers after ${number(visit.numbers)} ms (${number(visit.numbers / loop)} loops)`,
)
let sum = 0
for (const { file, bytes } of slow.sent) {
  sum += bytes
  print(`  ${(bytes / 1000).toFixed(1).padStart(7)} kB ${file}`)
}
print(`  ${(sum / 1000).toFixed(1).padStart(7)} kB compressed by the time the numbers stand`)
