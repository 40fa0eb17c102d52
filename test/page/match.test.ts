/** Checks of the match on the page: the map, its wind, the remedies and their trial; all can use them. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('match', async (page) => {
  await enterRoom(page, 'blades')
  await page.locator('.chart-match .drawing > svg').waitFor()
})

const label = (page: Page) => page.locator('.chart-match text.ink-chosen').allTextContents()
const report = (page: Page) => page.locator('.remedy-report')
const yearBrings = (page: Page) =>
  page.locator('.figures div', { hasText: 'A year brings' }).locator('b').innerText()

async function tryAll(page: Page): Promise<void> {
  await page.getByText('What would make them suit each other better').click()
  await page.getByRole('button', { name: 'Try the remedies' }).click()
}

describe('law: the page shows the match', () => {
  check('the wind is chosen by keyboard; the picture, its words and its table follow', async (page) => {
    const slider = page.locator('#match-wind')
    await slider.focus()
    const before = (await label(page)).join()
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('ArrowLeft')
    await expect.poll(async () => (await label(page)).join()).not.toBe(before)
    expect((await label(page)).some((text) => /^S .* rpm, .* W$/.test(text))).toBe(true)
    await page.locator('.chart-match').getByText('The same as a table').click()
    const table = page.locator('.chart-match table')
    expect(await table.locator('tr.chosen').count()).toBe(1)
    expect(await page.locator('.chart-match').innerText()).not.toMatch(/NaN|undefined|Infinity/)
    await page.getByText('What blades and load ask of the generator').click()
    expect(await page.locator('.target-sheet dt').count()).toBeGreaterThan(5)
  })

  check(
    'remedies can be stopped; then one is tried, shows its effect, and can be taken back',
    async (page) => {
      await tryAll(page)
      await page.locator('.remedies').getByRole('button', { name: 'Stop', exact: true }).click()
      expect(await page.locator('.remedies progress').count()).toBe(0)
      await page.getByRole('button', { name: 'Try the remedies' }).click()
      await report(page).waitFor({ timeout: 300_000 })
      expect(await report(page).innerText()).not.toMatch(/NaN|undefined/)
      const first = page
        .locator('.remedy-list li')
        .filter({ has: page.getByRole('button') })
        .first()
      const change = await first.locator('.remedy-change').innerText()
      const promised = await first.locator('p').nth(1).innerText()
      await first.getByRole('button', { name: /^Take it/ }).click()
      await computed(page)
      await page.locator('.notice').getByText(change, { exact: false }).waitFor()
      // the year's energy on the page is the one that the remedy promised
      const energy = /→ (\S+ k?Wh) a year/.exec(promised)![1]!
      await enterRoom(page, 'whole')
      await expect.poll(() => yearBrings(page)).toContain(energy)
      await page.getByRole('button', { name: 'Undo', exact: true }).click()
      await computed(page)
      await expect.poll(() => yearBrings(page)).not.toContain(energy)
    },
  )
})

describe('source: wcag22, levels A and AA — the match breaks no rule that a reader of pages can tell', () => {
  forEverybody(check, 'match', ['.chart-match', '.remedies'], async (page) => {
    await tryAll(page)
    await report(page).waitFor({ timeout: 300_000 })
  })
})
