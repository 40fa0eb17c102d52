/** Checks of the spread on the page: it comes by several workers, is told in words and tables, and all can use it. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('spread', (page) => enterRoom(page, 'sure'))

const view = (page: Page) => page.locator('.spread')
const table = (page: Page, draws: number) => view(page).getByText(`${draws} draws of`).first()

describe('law: the page tells how far the guesses let it be off', () => {
  check('a few draws first, then all; causes and what to measure next; an edit begins anew', async (page) => {
    await table(page, 128).or(table(page, 1024)).first().waitFor({ timeout: 200_000 })
    await table(page, 1024).waitFor({ timeout: 300_000 })
    const text = await view(page).innerText()
    expect(text).toContain('energy of a year')
    expect(text).toContain('Mean wind')
    // guesses bear the names of their fields, not those of the document
    expect(text).not.toMatch(/meanWind|_m_per_s|_mNm/)
    expect(text).toContain('What to measure next')
    expect(text).toContain('logging anemometer')
    expect(text).not.toMatch(/NaN|undefined|Infinity/)
    expect(await view(page).locator('progress').count()).toBe(0)
    await enterRoom(page, 'whole')
    const energy = page.locator('.figures div', { hasText: 'A year brings' }).locator('b')
    expect(await energy.innerText()).toMatch(/±| to /)
    await enterRoom(page, 'winding')
    await page.getByLabel('Turns', { exact: true }).first().fill('31')
    await enterRoom(page, 'sure')
    await view(page).locator('progress').waitFor({ timeout: 100_000 })
    await enterRoom(page, 'winding')
    await page.getByLabel('Turns', { exact: true }).first().fill('32')
    await enterRoom(page, 'sure')
    await table(page, 1024).waitFor({ timeout: 300_000 })
  })
})

describe('source: wcag22, levels A and AA — the spread breaks no rule that a reader of pages can tell', () => {
  forEverybody(check, 'spread', ['.spread'], (page) =>
    view(page).getByText('What to measure next').waitFor({ timeout: 300_000 }),
  )
})
