/** Checks of the year and of a wind logger's file on the page: read aside, asked about, taken over, open to all. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { logRows, logText, plainForm } from '../sample-log.ts'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('wind', (page) => enterRoom(page, 'wind'))

const year = logText(logRows(8760, { from: Date.UTC(2023, 0, 1) / 1000, step: 3600 }), {
  ...plainForm,
  separator: ';',
  decimal: ',',
  dates: 'day first',
  unit: 'km/h',
})

async function open(page: Page, name: string, text: string): Promise<void> {
  const record = page.locator('#record')
  if ((await record.getAttribute('open')) === null) await record.locator('summary').first().click()
  await record
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })
}

const report = (page: Page) => page.locator('.record-report')

describe('law: a record on the page', () => {
  check('a year is read, every row counted, and goes into the design with its months', async (page) => {
    expect(await page.getByText('Months are not known').count()).toBeGreaterThan(0)
    await open(page, 'year.csv', year)
    await report(page).waitFor()
    const text = await report(page).innerText()
    expect(text).toContain('a reading every 60 minutes')
    expect(text).toMatch(/readings\s+8760/)
    expect(text).toMatch(/together\s+8762/)
    expect(text).not.toMatch(/NaN|undefined/)
    await report(page).getByRole('button', { name: 'Put this wind into the design' }).click()
    await page.locator('.chart-months svg').waitFor()
    await computed(page)
    expect(await page.locator('.chart-months svg .bar').count()).toBe(12)
  })
  check(
    'what the file does not say is asked, and the answer is heard; a file of nothing is refused',
    async (page) => {
      const bare = year
        .split('\n')
        .slice(2, 900)
        .map((line) => line.split(';').slice(0, 2).join(';'))
        .join('\n')
      await open(page, 'bare.csv', bare)
      await report(page).waitFor()
      const mean = await report(page).locator('p').first().innerText()
      await page.locator('.record-question select').first().selectOption('km/h')
      await page.waitForFunction((before) => {
        const now = document.querySelector('.record-report p')
        return now !== null && now.textContent !== before && now.textContent?.includes('mean')
      }, mean)
      await open(page, 'nothing.csv', 'nothing\nat all\n')
      await page.locator('#record').getByText('none was found').waitFor()
    },
  )
  check(
    'the page answers while two hundred thousand rows are read, and reading can be stopped',
    async (page) => {
      const rows = Array.from(
        { length: 200_000 },
        (_, k) =>
          `${new Date(1.6e12 + k * 60_000).toISOString().slice(0, 19)},${(5 + 3 * Math.sin(k / 90)).toFixed(2)}`,
      )
      await open(page, 'long.csv', `time,wind m/s\n${rows.join('\n')}`)
      await page.locator('#record progress').waitFor()
      // turns that the page takes while the rows are being read, however long either lasts
      const turns = await page.evaluate(async () => {
        let count = 0
        while (count < 6 && document.querySelector('#record progress') !== null) {
          await new Promise((resolve) => setTimeout(resolve, 0))
          count++
        }
        return count
      })
      expect(turns).toBeGreaterThan(5)
      await report(page)
        .or(page.locator('#record').getByRole('button', { name: 'Stop' }))
        .first()
        .waitFor()
      const stop = page.locator('#record').getByRole('button', { name: 'Stop' })
      if ((await stop.count()) > 0) await stop.click({ timeout: 2000 }).catch(() => {})
      await page.locator('#record progress').waitFor({ state: 'detached' })
    },
  )
  check('a need is added, and answered in words', async (page) => {
    await enterRoom(page, 'store')
    const station = page.locator('#station-need')
    await station.getByRole('button', { name: 'Add: What it is to run' }).click()
    await station.getByRole('button', { name: 'Add a use' }).click()
    await computed(page)
    expect(await page.locator('.fault-summary').count()).toBe(0)
    await enterRoom(page, 'wind')
    await page.getByRole('heading', { name: 'Is it worth it?' }).waitFor()
    expect(await page.locator('.worth').innerText()).toMatch(/days without wind|capacity of the battery/)
  })
})

describe('source: wcag22, levels A and AA — year and record break no rule that a reader of pages can tell', () => {
  forEverybody(check, 'wind', ['#record', '.chart-months', '.chart-year'], async (page) => {
    await open(page, 'year.csv', year)
    await report(page).getByRole('button', { name: 'Put this wind into the design' }).click()
    await page.locator('.chart-months svg').waitFor()
    await computed(page)
  })
})
