/** Checks of the defects on the page: they are computed, can be stopped, and all can use them. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('fault', (page) => enterRoom(page, 'faults'))

const start = (page: Page) => page.getByRole('button', { name: 'Compute the defects' }).click()
const report = (page: Page) => page.locator('.fault-report')

describe('law: the page shows defects', () => {
  check(
    'it can be stopped; then picture, sentence and tables come, and a choice changes them',
    async (page) => {
      await start(page)
      await page.locator('#faults').getByRole('button', { name: 'Stop', exact: true }).click()
      expect(await page.locator('.faults progress').count()).toBe(0)
      await start(page)
      await report(page).waitFor({ timeout: 300_000 })
      const first = await page.locator('.fault-sentence').innerText()
      expect(await page.locator('.faults svg .line').count()).toBeGreaterThan(1)
      expect(await report(page).innerText()).not.toMatch(/NaN|undefined/)
      await page.locator('.fault-report select').selectOption({ index: 2 })
      expect(await page.locator('.fault-sentence').innerText()).not.toBe(first)
      await enterRoom(page, 'winding')
      await page.getByLabel('Turns', { exact: true }).first().fill('31')
      await enterRoom(page, 'faults')
      await report(page).getByText('The design has been changed since').waitFor()
    },
  )

  check('the form takes defects: added, changed to any kind, taken out again', async (page) => {
    const station = page.locator('#station-defects')
    await station.getByRole('button', { name: 'Add a defect' }).click()
    const kind = page.locator('#field-defects-0-kind')
    await kind.waitFor()
    const kinds = await kind
      .locator('option')
      .evaluateAll((options) =>
        options.map((option) => option.getAttribute('value') ?? option.textContent ?? ''),
      )
    expect(kinds.filter((word) => word !== '')).toHaveLength(14)
    for (const word of kinds.filter((each) => each !== '')) {
      await kind.selectOption(word)
      // the example has one strand in hand, which cannot break
      if (word === 'open strand') await station.locator('.fault').first().waitFor({ timeout: 30_000 })
      else {
        await computed(page)
        expect(await page.locator('.fault-summary').count(), word).toBe(0)
      }
    }
    await kind.selectOption('flipped magnet')
    await station.getByRole('button', { name: 'Remove defect 1' }).click()
    await computed(page)
    expect(await kind.count()).toBe(0)
  })
})

describe('source: wcag22, levels A and AA — the defects break no rule that a reader of pages can tell', () => {
  forEverybody(check, 'fault', ['#faults'], async (page) => {
    await start(page)
    await report(page).waitFor({ timeout: 300_000 })
    await page.locator('.fault-report select').selectOption({ index: 0 })
  })
})
