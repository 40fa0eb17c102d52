/** Checks of the concerns on the page: what helps is tried and taken, a reading answers one; all can use them. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('concern', async (page) => {
  await enterRoom(page, 'winding')
  await page.locator('.concern').first().waitFor()
})

/** The first concern with something inside, opened. */
async function opened(page: Page, inside: string) {
  const concern = page
    .locator('.concern')
    .filter({ has: page.locator(inside) })
    .first()
  await concern.evaluate((element) => element.setAttribute('open', ''))
  return concern
}

describe('law: concerns on the page', () => {
  check('what helps is tried, stopped, tried again, and one remedy is taken and taken back', async (page) => {
    const concern = await opened(page, '.helps')
    const trying = concern.getByRole('button', { name: /^Try what helps/ })
    await trying.click()
    await concern.getByRole('button', { name: 'Stop', exact: true }).click()
    expect(await concern.locator('progress').count()).toBe(0)
    await trying.click()
    const first = concern
      .locator('.helps-list > li')
      .filter({ has: page.getByRole('button') })
      .first()
    await first.waitFor({ timeout: 300_000 })
    expect(await concern.innerText()).not.toMatch(/NaN|undefined|Infinity/)
    const change = (await first.locator('p').nth(1).innerText()).replace(/\.$/, '')
    await first.getByRole('button', { name: /^Lay it over/ }).click()
    await first.getByText('Kept as tracing A', { exact: false }).waitFor()
    await first.getByRole('button', { name: /^Take it/ }).click()
    await computed(page)
    await page.locator('.notice').getByText(change, { exact: false }).waitFor()
    // the design has become what lay over it
    await enterRoom(page, 'compare')
    await page.getByText('says the same as tracing A', { exact: false }).waitFor()
    const back = page.getByRole('button', { name: /^Undo/ })
    expect(await back.getAttribute('title')).toMatch(/^Undo: remedy: /)
    await back.click()
    await computed(page)
    await page.locator('.tracing-difference table').first().waitFor()
  })

  check('a reading answers a concern: it stays, is marked, and is counted apart', async (page) => {
    const concern = await opened(page, '.answer')
    await concern.getByText('I measured it', { exact: true }).click()
    await concern.getByLabel('What was read, with what, by whom').fill('Read twice with a borrowed meter')
    await concern.getByRole('button', { name: 'Answer with this note' }).click()
    await computed(page)
    const answered = page.locator('.concern.is-answered')
    await answered.first().waitFor()
    await answered.first().getByText('Read twice with a borrowed meter', { exact: false }).first().waitFor()
    await enterRoom(page, 'whole')
    await page.locator('.sign-off').getByText('Answered by a note', { exact: false }).waitFor()
    await enterRoom(page, 'winding')
    await opened(page, '.answer-text')
    await answered
      .first()
      .locator('details.answer')
      .evaluate((element) => element.setAttribute('open', ''))
    await answered.first().getByRole('button', { name: 'Take the answer out' }).click()
    await computed(page)
    await expect.poll(() => page.locator('.concern.is-answered').count()).toBe(0)
  })
})

describe('source: wcag22, levels A and AA — concerns break no rule that a reader of pages can tell', () => {
  forEverybody(check, 'concern', ['.concerns'], async (page) => {
    const concern = await opened(page, '.helps')
    await concern.getByRole('button', { name: /^Try what helps/ }).click()
    await concern.locator('.helps-list > li').first().waitFor({ timeout: 300_000 })
    const answer = await opened(page, '.answer')
    await answer.getByText('I measured it', { exact: true }).click()
  })
})
