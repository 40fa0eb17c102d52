/** Checks of the pictures on the page: what is taken along stands alone and says the same, and pointing looks at another wind. */
import { readFile } from 'node:fs/promises'
import type { Locator, Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { markupFaults } from '../markup.ts'
import { computed } from './browser.ts'
import { pageCheck } from './page-check.ts'

const enter = (page: Page, key: string) =>
  page.evaluate((fragment) => {
    location.hash = fragment
  }, key)

const whole = pageCheck('picture', async (page) => {
  await enter(page, 'whole')
  await chart(page, 'power').locator('.drawing > svg').waitFor()
})

const chart = (page: Page, name: string): Locator => page.locator(`.chart-${name}`)

async function taken(page: Page, name: string, kind: 'SVG' | 'PNG' | 'CSV') {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    chart(page, name)
      .getByRole('button', { name: new RegExp(`as ${kind}$`) })
      .click(),
  ])
  return { name: download.suggestedFilename(), bytes: await readFile((await download.path())!) }
}

/** What a viewer shows that has the file and nothing else. */
const alone = async (page: Page, bytes: Buffer, kind: string): Promise<[number, number]> =>
  page.evaluate(
    async ([data, type]) => {
      const image = new Image()
      image.src = `data:${type};base64,${data}`
      await image.decode()
      return [image.naturalWidth, image.naturalHeight]
    },
    [bytes.toString('base64'), kind] as const,
  )

describe('law: a picture that is taken along stands alone', () => {
  for (const theme of ['light', 'dark'])
    whole(`SVG in the ${theme} theme: sound, titled, light, its style in every element`, async (page) => {
      await page.evaluate((name) => {
        document.documentElement.dataset['theme'] = name
      }, theme)
      const { name, bytes } = await taken(page, 'power', 'SVG')
      expect(name).toMatch(/^[a-z0-9-]+-power\.svg$/)
      const text = bytes.toString('utf8')
      expect(markupFaults(text)).toEqual([])
      // no other file, style sheet, script or property of the page is needed
      expect(text).not.toMatch(/var\(|class=|data-|style=|<script|<style|href=/)
      expect(text).not.toMatch(/NaN|undefined/)
      expect(text).toMatch(/font-family="[^"]*sans-serif"/)
      expect(text).toMatch(/<title [^>]*>Power against wind<\/title><desc [^>]*>[^<]*greatest at/)
      // the lines bear the light theme’s green, whatever the screen shows
      expect(text).toContain('stroke="#2c6530"')
      expect(text).toMatch(/>Power in every wind<\/text>/)
      const [width, height] = await alone(page, bytes, 'image/svg+xml')
      expect(width).toBeGreaterThanOrEqual(720)
      expect(height).toBeGreaterThan(300)
    })
  whole('PNG: twice as many points as the drawing', async (page) => {
    const svg = await taken(page, 'power', 'SVG')
    const png = await taken(page, 'power', 'PNG')
    expect(png.name.replace('.png', '')).toBe(svg.name.replace('.svg', ''))
    expect([...png.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')])
    const [wide, tall] = await alone(page, svg.bytes, 'image/svg+xml')
    expect([png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20)]).toEqual([2 * wide, 2 * tall])
    expect(png.bytes.length).toBeGreaterThan(10_000)
  })
  whole('CSV: a line for every row of the table, the same numbers', async (page) => {
    const { bytes } = await taken(page, 'power', 'CSV')
    const [heads, ...lines] = bytes.toString('utf8').replace('\uFEFF', '').trimEnd().split('\r\n')
    await chart(page, 'power').getByText('The same as a table').click()
    const rows = chart(page, 'power').locator('tbody tr')
    expect(heads).toContain('useful, W')
    // the rows are drawn once somebody looks at them
    await expect.poll(() => rows.count()).toBe(lines.length)
    const shown = await rows.nth(9).locator('th, td').allInnerTexts()
    const cells = lines[9]!.match(/("[^"]*"|[^,]*)(,|$)/g)!.map((cell) => cell.replace(/,$/, ''))
    for (const [k, text] of shown.entries())
      if (/^−?[\d.]+$/.test(text)) {
        const value = Number(text.replace('−', '-'))
        expect(Math.abs(Number(cells[k]) - value)).toBeLessThanOrEqual(6e-4 * Math.abs(value))
      }
  })
})

describe('law: looking at another wind', () => {
  whole('pointing along a chart of winds moves the wind; its table does so by keyboard', async (page) => {
    const plot = chart(page, 'power').locator('.wind-plot')
    const to = Number(await plot.getAttribute('data-wind-to'))
    const box = (await plot.boundingBox())!
    const marked = () => chart(page, 'power').locator('.line-label.ink-chosen').first().textContent()
    const at = async (wind: number) => {
      await plot.click({ position: { x: (box.width * wind) / to, y: box.height / 2 } })
      await expect.poll(marked).toBe(`${wind} m/s`)
    }
    await at(8)
    await at(4.5)
    await chart(page, 'power').getByText('The same as a table').click()
    await chart(page, 'power').getByRole('button', { name: '9', exact: true }).press('Enter')
    await expect.poll(marked).toBe('9 m/s')
  })
})

const winding = pageCheck('picture-winding', async (page) => {
  // four coils to a phase
  await page.getByLabel('Open an example').selectOption('garden-vertical')
  await computed(page)
  await enter(page, 'winding')
  await player(page).waitFor()
})

const player = (page: Page) => chart(page, 'phasors').getByRole('toolbar')
const coils = (page: Page) => chart(page, 'phasors').locator('.drawing .coil').count()
const place = (page: Page) => player(page).locator('output').textContent()

describe('law: phasors are put down coil by coil', () => {
  winding(
    'step by step by keyboard and by button, and by themselves',
    async (page) => {
      await expect.poll(() => coils(page)).toBe(12)
      await player(page).getByRole('button', { name: 'One on' }).focus()
      await page.keyboard.press('Home')
      await expect.poll(() => coils(page)).toBe(0)
      await page.keyboard.press('ArrowRight')
      await page.keyboard.press('ArrowRight')
      await expect.poll(() => coils(page)).toBe(6)
      expect(await place(page)).toContain('Step 2 of 4: coil')
      await player(page).getByRole('button', { name: 'One back' }).click()
      await expect.poll(() => coils(page)).toBe(3)
      await player(page).getByRole('button', { name: 'Play' }).click()
      await expect.poll(() => coils(page), { timeout: 30_000 }).toBe(12)
      expect(await place(page)).toBe('All 4 steps.')
    },
    { reducedMotion: 'no-preference' },
  )
  winding(
    'nothing moves by itself for whoever asked for that',
    async (page) => {
      expect(await player(page).getByRole('button', { name: 'Play' }).count()).toBe(0)
      await player(page).getByRole('button', { name: 'One back' }).click()
      await expect.poll(() => coils(page)).toBe(9)
    },
    { reducedMotion: 'reduce' },
  )
})
