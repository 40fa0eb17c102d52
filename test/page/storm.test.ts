/** Checks of the storm on the page: it is computed, can be stopped, and all can use it. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('storm', (page) => enterRoom(page, 'storm'))

const start = (page: Page) => page.getByRole('button', { name: 'Compute the storm' }).click()
const report = (page: Page) => page.locator('.storm-report')

describe('law: the page shows a storm', () => {
  check(
    'it can be stopped; then verdict, traces and tables come, and a choice changes them',
    async (page) => {
      await start(page)
      await page.locator('.storm').getByRole('button', { name: 'Stop', exact: true }).click()
      expect(await page.locator('.storm progress').count()).toBe(0)
      await page.locator('.storm input').fill('18')
      await start(page)
      await report(page).waitFor({ timeout: 300_000 })
      expect(await report(page).innerText()).toContain('up to 18.0 m/s')
      const first = await page.locator('.storm-sentences').innerText()
      expect(await page.locator('.storm svg .line').count()).toBeGreaterThan(5)
      expect(await report(page).innerText()).not.toMatch(/NaN|undefined/)
      await page.locator('.storm-report select').selectOption('nothing')
      expect(await page.locator('.storm-sentences').innerText()).not.toBe(first)
      await enterRoom(page, 'winding')
      await page.getByLabel('Turns', { exact: true }).first().fill('31')
      await enterRoom(page, 'storm')
      await report(page).getByText('The design has been changed since').waitFor()
    },
  )
})

describe('source: wcag22, levels A and AA — the storm breaks no rule that a reader of pages can tell', () => {
  forEverybody(check, 'storm', ['.storm'], async (page) => {
    await start(page)
    await report(page).waitFor({ timeout: 300_000 })
  })
})
