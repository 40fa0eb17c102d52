/** Checks of the contest on the page: it compares, it can be stopped, it tells what it refuses, and all can use it. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('contest', (page) => enterRoom(page, 'compare'))

const choose = (page: Page, name: string) =>
  page.locator('.contest select').first().selectOption({ label: name })
const compareButton = (page: Page) => page.getByRole('button', { name: 'Compare', exact: true })
const verdict = (page: Page) => page.locator('.contest-report li').filter({ hasText: / wins\./ })

describe('law: the page holds a contest', () => {
  check('nothing can be asked before a rival is chosen', async (page) => {
    expect(await compareButton(page).isDisabled()).toBe(true)
  })

  check('the verdict, the picture and the tables come; an edit makes them old', async (page) => {
    await choose(page, 'Hen-house drum, coils')
    await compareButton(page).click()
    await verdict(page).waitFor({ timeout: 200_000 })
    const text = await page.locator('.contest-report').innerText()
    expect(text).toContain('At equal copper mass B, “Hen-house drum, coils”, wins.')
    expect(text).not.toMatch(/NaN|undefined/)
    expect(await page.locator('.contest svg .line').count()).toBe(2)
    expect(await page.locator('.contest-status output').innerText()).toBe('Compared.')
    await enterRoom(page, 'winding')
    await page.getByLabel('Turns', { exact: true }).first().fill('31')
    await enterRoom(page, 'compare')
    await page.getByText('The design has been changed since').waitFor()
    await computed(page)
  })

  check('a contest can be stopped, and the next one still comes', async (page) => {
    await choose(page, 'Hen-house drum, coils')
    await compareButton(page).click()
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    expect(await page.locator('.contest progress').count()).toBe(0)
    await page.locator('.contest select').nth(1).selectOption('as-they-are')
    await compareButton(page).click()
    await verdict(page).waitFor({ timeout: 200_000 })
    expect(await page.locator('.contest-report').innerText()).toContain('The designs as they are')
  })

  check('a file that is no design is told', async (page) => {
    await page.locator('.contest input[type="file"]').setInputFiles({
      name: 'other.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"gustloom": 2, "name": "Nothing"}'),
    })
    await compareButton(page).click()
    await page.locator('.contest-status output').filter({ hasText: 'The other design: ' }).waitFor()
  })
})

describe('source: wcag22, levels A and AA — the contest breaks no rule that a reader of pages can tell', () => {
  forEverybody(check, 'contest', ['.contest'], async (page) => {
    await choose(page, 'Hen-house drum, coils')
    await compareButton(page).click()
    await verdict(page).waitFor({ timeout: 200_000 })
  })
})
