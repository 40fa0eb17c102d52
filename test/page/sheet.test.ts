/** Checks of paper: the sheet of every example is one page of A4 and of Letter, legible and whole; rooms print without their buttons. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { allGerman } from '../../scripts/text.ts'
import { type Chain, computeDesign } from '../../src/analysis/compute.ts'
import { isOpen } from '../../src/analysis/concern/concern.ts'
import { spreadsOf } from '../../src/analysis/spread.ts'
import { finished } from '../../src/analysis/step.ts'
import { designSheet } from '../../src/output/sheet/design-sheet.ts'
import { toldBy } from '../../src/output/telling.ts'
import { inGerman } from '../../web/text/german-number.ts'
import { sentenceBook } from '../../web/text/sentence-book.ts'
import { isUnit } from '../../web/text/unit-word.ts'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../example.ts'
import { launchBrowser } from './browser.ts'
import { pageCheck } from './page-check.ts'

const german = sentenceBook(allGerman(), inGerman, isUnit)

const formats = ['A4', 'Letter'] as const

const pageCount = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0

/** Concerns that have a line of their own at the least, where so many are open. */
const leastLines = 3

interface Looked {
  readonly cut: readonly string[]
  readonly smallest: number
  /** Of words that stand outside of drawings. */
  readonly smallestWords: number
  readonly texts: number
  /** Codes of the concerns that have a line, and how much of the paper stays empty [mm]. */
  readonly lines: readonly string[]
  readonly empty: number
}

/** What of a sheet is cut off, and its smallest type in points; told by the browser that prints it. */
function looked(): Looked {
  const place = document.querySelector('.sheet-paper')?.shadowRoot ?? document
  const sheet = place.querySelector<HTMLElement>('.sheet')!
  const cut: string[] = []
  const overflows = (element: Element) =>
    element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1
  for (const element of [sheet, ...sheet.querySelectorAll('.concerns > li')])
    if (overflows(element)) cut.push(element.textContent?.slice(0, 60) ?? '')
  const paper = sheet.getBoundingClientRect()
  let smallest = Number.POSITIVE_INFINITY
  let smallestWords = Number.POSITIVE_INFINITY
  let texts = 0
  for (const element of sheet.querySelectorAll('*')) {
    const own = [...element.childNodes].some(
      (node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '',
    )
    if (!own || element.closest('title, desc') !== null) continue
    texts += 1
    const matrix = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null
    const scale = matrix === null ? 1 : Math.hypot(matrix.a, matrix.b)
    const size = Number.parseFloat(getComputedStyle(element).fontSize) * scale * 0.75
    smallest = Math.min(smallest, size)
    if (matrix === null) smallestWords = Math.min(smallestWords, size)
    const around = (element.closest('svg.picture') ?? sheet).getBoundingClientRect()
    const box = element.getBoundingClientRect()
    const outside =
      box.left < around.left - 1 ||
      box.right > around.right + 1 ||
      box.bottom > around.bottom + 1 ||
      box.right > paper.right + 1
    if (outside) cut.push(element.textContent ?? '')
  }
  const lines = [...sheet.querySelectorAll('.concerns > li:not(.rest)')].map(
    (line) => /^\S+ ([a-z-]+): \S/.exec(line.textContent ?? '')?.[1] ?? 'no code',
  )
  const [foot, last] = [sheet.lastElementChild!, sheet.lastElementChild!.previousElementSibling!]
  const empty = foot.getBoundingClientRect().top - last.getBoundingClientRect().bottom
  return { cut, smallest, smallestWords, texts, lines, empty: (empty * 25.4) / 96 }
}

/** Designs that ask for more room than any example. */
const large: Readonly<Record<string, () => Chain>> = {
  'long words and many poles': () => {
    const document = exampleDocument('garden-vertical')
    document.name = 'A name that goes on and on '.repeat(4).trim()
    document.note = 'And what is noted about it takes its time as well. '.repeat(12).trim()
    document.purpose.goal = 'Whatever there is to be lit, pumped, charged and heated. '.repeat(6).trim()
    document.rotor.poleCount = 28
    Object.assign(document.rotor, { pitchRadius_mm: 150 })
    Object.assign(document.rotor.magnet, { width_mm: 20 })
    Object.assign(document.stator.winding, { coilCount: 24, legWidth_mm: 9, reversedCoils: [9] })
    Object.assign(document.stator.winding.hole, { holeInnerWidth_mm: 8, holeOuterWidth_mm: 16 })
    return computeDesign(designOf(document))
  },
  'two layers and bridges of their own': () => {
    const document = exampleDocument('hen-house-drum')
    const { winding } = document.stator
    Object.assign(winding, { layers: 2, layerPitch_mm: 2.3 })
    winding.phases = [
      { offset_deg: 0, distance_mm: 3.6 },
      { offset_deg: 20, distance_mm: 8.2, sense: 'reversed' },
    ]
    document.stator.connection = 'separate'
    document.blades = { kind: 'drag-rotor', diameter_m: 0.8, height_m: 1.2, bucketCount: 'two' }
    document.load = { kind: 'capacitor', capacitance_F: 50, ratedVoltage_V: 16, drawn_ohm: 20 }
    return computeDesign(designOf(document))
  },
}

describe('law: the sheet is one page, whole and legible', () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launchBrowser()
  }, 120_000)
  afterAll(async () => {
    await browser?.close()
  })
  const chains: Readonly<Record<string, () => Chain>> = {
    ...Object.fromEntries(exampleNames.map((name) => [name, () => exampleChain(name)])),
    ...large,
  }
  for (const [name, chainOf] of Object.entries(chains))
    test(name, async () => {
      const chain = chainOf()
      const spreads = finished(spreadsOf(chain, { samples: 16 }))
      const set = () => designSheet({ chain, spreads, date: '2026-05-31' })
      const open = chain.concerns.filter(isOpen)
      const blocking = open.filter(({ severity }) => severity === 'blocking').length
      for (const [language, markup] of [
        ['English', set()],
        ['German', toldBy(german.told, set)],
      ] as const) {
        const page = await browser.newPage()
        try {
          await page.setContent(markup)
          for (const format of formats)
            expect(pageCount(await page.pdf({ format })), `${language}, ${format}`).toBe(1)
          await page.emulateMedia({ media: 'print' })
          const { cut, smallest, smallestWords, texts, lines, empty } = await page.evaluate(looked)
          // one width and one height for either paper: what has a line on one has it on the other
          expect(lines.length, language).toBeGreaterThanOrEqual(Math.min(open.length, leastLines))
          expect(lines, language).toEqual(open.slice(0, lines.length).map(({ code }) => code))
          if (blocking <= 6) expect(lines.length, language).toBeGreaterThanOrEqual(blocking)
          // a line would still find room
          if (lines.length < open.length) expect(empty, language).toBeLessThan(16)
          expect(smallestWords, language).toBeGreaterThan(7.99)
          expect(cut, language).toEqual([])
          expect(texts, language).toBeGreaterThan(100)
          expect(smallest, language).toBeGreaterThan(7.49)
        } finally {
          await page.close()
        }
      }
      // the words of whoever made the design stay theirs
      const { name: own, design } = chain.machine
      const ownWords = [own, design.note, design.purpose.goal].flatMap((text) => text ?? [])
      expect(
        [...german.unknown.keys()].filter((text) => !ownWords.some((word) => text.includes(word))),
      ).toEqual([])
    }, 300_000)
})

const enter = async (page: Page, room: string) => {
  await page.evaluate((key) => {
    location.hash = `#/${key}`
  }, room)
  await page.locator(`.room-${room}`).waitFor()
}

const check = pageCheck('sheet')

describe('law: the page shows and prints the sheet', () => {
  check('it comes by itself, prints as one page, and is made anew after an edit', async (page) => {
    await enter(page, 'sheet')
    const paper = page.locator('.sheet-paper .sheet')
    await paper.waitFor({ timeout: 300_000 })
    expect(await paper.textContent()).toMatch(/Wind by wind/)
    for (const format of formats) expect(pageCount(await page.pdf({ format })), format).toBe(1)
    const { violations } = await new AxeBuilder({ page }).include('.sheet-keys').analyze()
    expect(violations.map(({ id }) => id)).toEqual([])
    const before = await page.locator('.sheet-paper footer').textContent()
    await enter(page, 'winding')
    const turns = page.locator('#field-stator-winding-turns')
    await turns.fill('31')
    await enter(page, 'sheet')
    await page.waitForFunction(
      (old) =>
        (document.querySelector<HTMLElement>('.sheet-paper')?.shadowRoot?.querySelector('footer')
          ?.textContent ?? old) !== old,
      before,
      { timeout: 300_000 },
    )
    expect(await page.locator('.sheet-paper .sheet').textContent()).toContain('31 a wave')
  })
  check(
    'a phone shows it whole without scrolling sideways',
    async (page) => {
      await enter(page, 'sheet')
      await page.locator('.sheet-paper .sheet').waitFor({ timeout: 300_000 })
      const wide = await page.evaluate(() => ({
        page: document.documentElement.scrollWidth,
        screen: innerWidth,
        paper: document.querySelector('.sheet-paper')!.getBoundingClientRect().right,
      }))
      expect(wide.page).toBeLessThanOrEqual(wide.screen)
      expect(wide.paper).toBeLessThanOrEqual(wide.screen)
      for (const format of formats) expect(pageCount(await page.pdf({ format })), format).toBe(1)
    },
    { viewport: { width: 360, height: 740 } },
  )
})

describe('law: a room prints as a plain page', () => {
  check(
    'no buttons, light colours, tables and concerns opened, and afterwards all is as before',
    async (page) => {
      await enter(page, 'whole')
      await page.locator('.chart-power svg.picture').waitFor()
      const state = () =>
        page.evaluate(() => ({
          theme: document.documentElement.dataset.theme,
          open: document.querySelectorAll('details.as-table[open]').length,
          rows: document.querySelectorAll('.as-table tr').length,
        }))
      const before = await state()
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
      await page.emulateMedia({ media: 'print' })
      await page.locator('.as-table tr').first().waitFor()
      const during = await state()
      expect(during.theme).toBe('light')
      expect(during.open).toBeGreaterThan(0)
      expect(during.rows).toBeGreaterThan(10)
      const seen = await page.evaluate(() => ({
        buttons: [...document.querySelectorAll('button, input[type="range"]')].filter(
          // a number that can be asked where it comes from is a number on paper
          (each) =>
            each.getBoundingClientRect().height > 0 && !each.matches('.row-button, .figure-number, .term'),
        ).length,
        head: document.querySelector<HTMLElement>('.print-head')?.textContent ?? '',
        strip: document.querySelector('section.strip')?.getBoundingClientRect().height ?? 0,
        ground: getComputedStyle(document.body).backgroundColor,
      }))
      expect(seen).toMatchObject({ buttons: 0, strip: 0, ground: 'rgb(255, 255, 255)' })
      expect(seen.head).toMatch(/Hen-house lamp drum.*m\/s/s)
      await page.emulateMedia({ media: 'screen' })
      await page.evaluate(() => dispatchEvent(new Event('afterprint')))
      expect(await state()).toMatchObject({ theme: before.theme, open: before.open })
    },
    { colorScheme: 'dark' },
  )
})
