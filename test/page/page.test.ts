/** Checks of the page in a browser: it computes, it follows edits, it keeps what was typed. */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  computed,
  enterRoom,
  launchBrowser,
  type OpenPage,
  openPage,
  roomKeys,
  root,
  type Served,
  servePage,
} from './browser.ts'
import { keptDesign, plantFormer } from './kept-design.ts'

let browser: Browser
let served: Served
let opened: OpenPage
let page: Page

beforeAll(async () => {
  served = await servePage('page')
  browser = await launchBrowser()
}, 300_000)

afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

const fresh = async (run: () => Promise<void>, options: BrowserContextOptions = {}) => {
  opened = await openPage(browser, served.address, options)
  page = opened.page
  try {
    await computed(page)
    await run()
    expect(opened.complaints.filter((line) => !line.includes('GL Driver Message'))).toEqual([])
    expect(opened.strangers).toEqual([])
  } finally {
    await opened.close()
  }
}

const check = (title: string, run: () => Promise<void>, options?: BrowserContextOptions) =>
  test(title, () => fresh(run, options), 400_000)

/** A key figure once its spread has been worked out, which follows the number itself. */
async function figure(name: string): Promise<string> {
  await enterRoom(page, 'whole')
  const value = page.locator('.figures div', { hasText: name }).locator('b')
  await value.filter({ hasText: '±' }).waitFor()
  return value.innerText()
}

const meanWind = () => page.getByLabel('Mean wind', { exact: true })
const turns = () => page.getByLabel('Turns', { exact: true })
const openedDesign = (name: string) => page.locator('.design-name').getByText(name, { exact: true }).waitFor()
const faultOf = (path: string) => page.locator(`#field-${path.replace(/[^A-Za-z0-9]+/g, '-')}-fault`)

describe('law: the page computes and follows', () => {
  check('it opens with the hen-house example computed', async () => {
    await openedDesign('Hen-house lamp drum')
    expect(await figure('A year brings')).toMatch(/^\d[\d.]* ± \d[\d.]* kWh$/)
    const words = await page.locator('.chart-river .drawing svg desc').textContent()
    expect(words).toMatch(
      /^Wind: [\d.]+ W arrive\. Blades: [\d.]+ W arrive, past the blades [\d.]+ W lost\. Shaft: /,
    )
  })

  check('an edit changes the numbers', async () => {
    const before = await figure('A year brings')
    await enterRoom(page, 'wind')
    await meanWind().fill('6')
    await computed(page)
    const after = await figure('A year brings')
    expect(Number.parseFloat(after)).toBeGreaterThan(Number.parseFloat(before) * 1.3)
  })

  check('a fault stands under its field, and the last good result stays', async () => {
    const before = await figure('A year brings')
    await enterRoom(page, 'wind')
    await meanWind().fill('-3')
    await faultOf('site.meanWind_m_per_s').waitFor()
    expect(await faultOf('site.meanWind_m_per_s').innerText()).toBe(
      'site.meanWind_m_per_s.value must be at least 0.1 m/s; received -3 m/s (below-minimum)',
    )
    expect(await meanWind().getAttribute('aria-invalid')).toBe('true')
    expect(await figure('A year brings')).toBe(before)
    expect(await page.locator('.stale-mark').innerText()).toBe('Numbers of the last valid design')
    await enterRoom(page, 'wind')
    await meanWind().fill('4.2')
    await computed(page)
    expect(await page.locator('.fault').count()).toBe(0)
    expect(await figure('A year brings')).toBe(before)
  })

  check('a reload keeps what was typed, wrong or right', async () => {
    await enterRoom(page, 'winding')
    await turns().fill('47')
    await computed(page)
    await enterRoom(page, 'wind')
    await meanWind().fill('a lot')
    await page.keyboard.press('Tab')
    await faultOf('site.meanWind_m_per_s').waitFor()
    await page.reload()
    await faultOf('site.meanWind_m_per_s').waitFor()
    expect(await meanWind().inputValue()).toBe('a lot')
    await enterRoom(page, 'winding')
    expect(await turns().inputValue()).toBe('47')
  })

  check('a store that cannot be read does not break the page', async () => {
    await plantFormer(page, '{"gustloom": 1, ')
    await page.reload()
    await computed(page)
    expect(await page.locator('.notice').innerText()).toContain('cannot be read')
    expect(await page.evaluate(() => localStorage.getItem('gustloom.unreadable'))).toBe('{"gustloom": 1, ')
  })

  check('a document of nonsense shows its faults, and an example leads out', async () => {
    await plantFormer(
      page,
      '{"gustloom":1,"name":{"a":1},"site":5,"rotor":[1],"stator":{"winding":{"kind":"coils","hole":null}},"blades":{"kind":"stations","stations":"none"},"load":{"kind":"sun"}}',
    )
    await page.reload()
    await page.locator('.fault-summary li').first().waitFor()
    await page.locator('.status.wrong').waitFor()
    expect(await page.locator('.strip').count()).toBe(0)
    for (const key of roomKeys) {
      await enterRoom(page, key)
      expect(await page.locator('#room').innerText(), key).not.toMatch(/NaN|undefined|\[object/)
    }
    await page.locator('.design-menu select').selectOption('hen-house-drum')
    await computed(page)
  })

  check('a store that refuses is told', async () => {
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new Error('no room')
      }
      IDBObjectStore.prototype.put = () => {
        throw new Error('no room')
      }
    })
    await enterRoom(page, 'wind')
    await meanWind().fill('5')
    await page.getByText('This browser does not let the page keep anything (no room).').waitFor()
    await computed(page)
  })

  check('the slider changes watts and waveforms', async () => {
    const wave = () => page.locator('.chart-waveform .drawing > svg').innerHTML()
    await enterRoom(page, 'whole')
    await page.getByLabel('Wind, m/s').fill('9')
    await page.getByRole('heading', { name: 'Where the watts go at 9 m/s' }).waitFor()
    await page.getByLabel('Wind, m/s').fill('6')
    await enterRoom(page, 'winding')
    const before = await wave()
    await page.getByLabel('Wind, m/s').fill('9')
    await page.locator('.chart-waveform', { hasText: 'At 9 m/s: ' }).waitFor()
    await expect.poll(wave, { timeout: 60_000 }).not.toBe(before)
    await page.getByLabel('Wind, m/s').fill('0.5')
    await page.getByText('there is no period to draw').waitFor()
  })
})

describe('law: newer edits win', () => {
  check('a second edit supersedes the first while it is computed', async () => {
    const before = await figure('A year brings')
    // the first edit asks for a new field along the wire and cannot be done when the second comes
    await enterRoom(page, 'winding')
    await turns().fill('31')
    await turns().fill('30')
    await computed(page)
    expect(await figure('A year brings')).toBe(before)
  })
})

describe('law: the page is light, and the picture in three dimensions comes when it is looked at', () => {
  check('what is fetched until the first numbers stand is at most 300 kB, compressed', async () => {
    await page.locator('#concerns').waitFor()
    const compressed = (file: string) => {
      const content = readFileSync(join(served.folder, file))
      return /\.(?:woff2|png)$/.test(file) ? content.length : gzipSync(content).length
    }
    const visit = served.asked.slice(served.asked.lastIndexOf('index.html'))
    // the rules are asked for as soon as the numbers have been told
    const numbers = visit.findIndex((file) => /judgement-/.test(file))
    expect(numbers).toBeGreaterThan(0)
    const first = [...new Set(visit.slice(0, numbers))]
    for (const part of [/index-.*js$/, /worker-.*js$/, /\.css$/, /\.woff2$/])
      expect(first.filter((file) => part.test(file)).length, String(part)).toBeGreaterThan(0)
    const sum = first.reduce((whole, file) => whole + compressed(file), 0)
    expect(sum, first.map((file) => `${file} ${compressed(file)}`).join('\n')).toBeLessThan(300_000)
    // neither the reader of documents nor the picture in three dimensions nor another language is on the page’s own thread
    for (const file of first.filter((name) => /\.js$/.test(name) && !/worker-/.test(name)))
      expect(readFileSync(join(served.folder, file), 'utf8'), file).not.toMatch(
        /invalid_type|WebGLRenderer|fallbackLng/,
      )
  })

  check(
    'it is fetched late, and draws',
    async () => {
      const fetched = () =>
        page.evaluate(() =>
          performance.getEntriesByType('resource').some(({ name }) => name.includes('solid-scene')),
        )
      // where the page is narrow it stands under everything else
      expect(await fetched()).toBe(false)
      await page.locator('.solid-view').scrollIntoViewIfNeeded()
      await page.locator('.solid-view canvas').waitFor()
      expect(await fetched()).toBe(true)
      // north red and south blue are both there, and the picture follows a button
      const photograph = () => page.locator('.solid-view').screenshot()
      const shares = async () =>
        page.evaluate(
          async (png) => {
            const image = new Image()
            image.src = `data:image/png;base64,${png}`
            await image.decode()
            const copy = document.createElement('canvas')
            copy.width = image.width
            copy.height = image.height
            const pen = copy.getContext('2d')!
            pen.drawImage(image, 0, 0)
            const { data } = pen.getImageData(0, 0, copy.width, copy.height)
            let red = 0
            let blue = 0
            for (let k = 0; k < data.length; k += 4) {
              if (data[k]! > data[k + 2]! + 60 && data[k]! > data[k + 1]! + 80) red += 1
              if (data[k + 2]! > data[k]! + 60) blue += 1
            }
            return { red: (4 * red) / data.length, blue: (4 * blue) / data.length }
          },
          (await photograph()).toString('base64'),
        )
      await page.getByLabel('wire', { exact: true }).uncheck()
      await expect
        .poll(async () => Math.min(...Object.values(await shares())), { timeout: 60_000 })
        .toBeGreaterThan(0.01)
      const still = await photograph()
      await page.locator('.solid-ways > summary').click()
      await page.getByRole('button', { name: 'Turn left' }).click()
      await expect.poll(async () => (await photograph()).equals(still), { timeout: 60_000 }).toBe(false)
    },
    { viewport: { width: 800, height: 700 } },
  )
})

describe('law: files go in and come out unchanged', () => {
  check('a file opens, and what is saved is what was opened', async () => {
    const text = readFileSync(join(root, 'examples', 'boathouse-two-disc.json'), 'utf8')
    const chooser = page.locator('.design-menu input[type=file]')
    await chooser.setInputFiles({
      name: 'mine.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    })
    await openedDesign('Boathouse two-disc machine')
    await computed(page)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ])
    expect(download.suggestedFilename()).toBe('boathouse-two-disc-machine.json')
    const saved = readFileSync(await download.path(), 'utf8')
    expect(JSON.parse(saved)).toEqual(JSON.parse(text))
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    await openedDesign('Hen-house lamp drum')
  })

  check('a file that is no design is refused in words', async () => {
    const put = (name: string, text: string) =>
      page
        .locator('.design-menu input[type=file]')
        .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })
    await put('broken.json', '{"name": ')
    await page.getByText('broken.json must be JSON').waitFor()
    await put('list.json', '[1, 2]')
    await page.getByText('list.json must be an object').waitFor()
    await openedDesign('Hen-house lamp drum')
  })

  const names = readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.json'))
  for (const file of names)
    check(`${file} opens`, async () => {
      await page.locator('.design-menu select').selectOption(file.replace(/\.json$/, ''))
      await page.getByText('Opened the example').waitFor()
      await page.locator('.status.done, .status.wrong').waitFor()
      await expect
        .poll(() => page.locator('#status').innerText(), { timeout: 120_000 })
        .not.toContain('Computing')
      const wrong = await page.locator('.status.wrong').count()
      const text = readFileSync(join(root, 'examples', file), 'utf8')
      const { parseDesignText } = await import('../../src/index.ts')
      const parsed = parseDesignText(text)
      expect(wrong).toBe(parsed.ok ? 0 : 1)
      if (!parsed.ok) expect(await page.locator('.fault-summary li').count()).toBe(parsed.faults.length)
      mkdirSync(join(root, 'artefacts', 'page'), { recursive: true })
      await page.screenshot({ path: join(root, 'artefacts', 'page', `${file.replace(/\.json$/, '')}.png`) })
    })
})

const roomOf: Readonly<Record<string, string>> = {
  stator: 'winding',
  blades: 'blades',
  load: 'store',
  rotor: 'magnets',
}

describe('law: every choice leads to a design that computes or says what is missing', () => {
  check('each kind of blades, rotor, winding and load', async () => {
    const choose = async (path: string, word: string) => {
      await enterRoom(page, roomOf[path.split('.')[0]!]!)
      await page.locator(`#field-${path.replace(/[^A-Za-z0-9]+/g, '-')}`).selectOption(word)
      await expect
        .poll(() => page.locator('#status').textContent(), { timeout: 60_000 })
        .not.toContain('Computing')
      expect(await page.locator('.fault-summary li').allTextContents(), `${path} = ${word}`).toEqual([])
    }
    await choose('stator.winding.kind', 'coils')
    for (const shape of ['round', 'wedge', 'rectangular']) await choose('stator.winding.hole.shape', shape)
    await choose('stator.winding.kind', 'serpentine')
    for (const kind of ['stations', 'table', 'optimum']) await choose('blades.kind', kind)
    for (const kind of ['resistor', 'open', 'battery']) await choose('load.kind', kind)
    for (const word of ['disc', 'two-discs', 'drum']) await choose('rotor.arrangement', word)
  })

  check('a list gains and loses entries', async () => {
    await enterRoom(page, 'blades')
    await page.locator('#field-blades-kind').selectOption('stations')
    await computed(page)
    const count = () => page.getByRole('button', { name: /^Remove station/ }).count()
    const before = await count()
    await page.getByRole('button', { name: 'Remove station 2' }).click()
    await expect.poll(count).toBe(before - 1)
    await computed(page)
    await page.getByRole('button', { name: 'Add a station' }).click()
    await expect.poll(count).toBe(before)
  })

  check('a spread and how it is known can be said of a number', async () => {
    await enterRoom(page, 'wind')
    await page.getByRole('button', { name: 'How sure is Hub height' }).click()
    await page.getByLabel('Hub height: give or take').fill('0.5')
    await page.getByLabel('Hub height: how known').selectOption('measured')
    const stored = async () => (await keptDesign(page)).site.hubHeight_m
    expect(await stored()).toEqual({ value: 7, spread: 0.5, known: 'measured' })
    await page.getByLabel('Hub height: give or take').fill('')
    await page.getByLabel('Hub height: how known').selectOption('')
    expect(await stored()).toBe(7)
  })
})
