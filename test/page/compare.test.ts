/** Checks of the tracings on the page: kept, laid over, told apart in figures, taken back, and there the next day. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('compare', (page) => enterRoom(page, 'compare'))

const keep = (page: Page) => page.locator('.tracing-keep').getByRole('button', { name: 'Keep a tracing' })
const listed = (page: Page) => page.locator('.tracing-list > li')
const fields = (page: Page) => page.locator('.tracing-difference table').nth(0)
const figures = (page: Page) => page.locator('.tracing-difference table').nth(1)
const row = (page: Page, title: string) => figures(page).locator('tbody tr').filter({ hasText: title })

async function changeTurns(page: Page, turns: string): Promise<void> {
  await enterRoom(page, 'winding')
  await page.getByLabel('Turns', { exact: true }).first().fill(turns)
  await computed(page)
  await enterRoom(page, 'compare')
}

describe('law: tracings', () => {
  check('a tracing is kept, the turns are changed, and the page tells what differs', async (page) => {
    await keep(page).click()
    await listed(page).waitFor()
    await page.getByText('says the same as tracing A', { exact: false }).waitFor()
    await changeTurns(page, '33')
    await fields(page).getByText('Turns').waitFor()
    expect(await fields(page).locator('tbody td').allInnerTexts()).toEqual(['30', '33'])
    // a tenth more turns, a tenth more volts, and nothing of the magnets
    await row(page, 'volts of a phase').getByText('(+10 %)', { exact: false }).waitFor()
    await row(page, 'magnets').getByText('the same', { exact: true }).waitFor()
    expect(await page.locator('.tracing-keep input').inputValue()).toBe('Turns 33')
    // the draws come after the figures
    await row(page, 'volts of a phase').getByText('sure: ', { exact: false }).waitFor({ timeout: 200_000 })
    expect(await page.locator('.tracing-difference').textContent()).not.toMatch(/NaN|undefined|Infinity/)
  })

  check('it lies over the pictures of every room until it is lifted off', async (page) => {
    await keep(page).click()
    const line = page.locator('.chart-power svg .line.ink-tracing-1')
    await line.waitFor()
    await page.locator('.chart-energy-by-wind svg .line.ink-tracing-1').first().waitFor()
    await page.locator('.chart-temperature svg .line.ink-tracing-1').waitFor()
    await page.locator('.chart-waveform svg .line.ink-tracing-1').first().waitFor()
    await enterRoom(page, 'whole')
    await page.locator('.chart-power svg').getByText('tracing A', { exact: true }).waitFor()
    await enterRoom(page, 'compare')
    await page.getByRole('button', { name: 'Lay tracing A over' }).click()
    await expect.poll(() => page.locator('svg .line.ink-tracing-1').count()).toBe(0)
  })

  check('it is taken back as the design in one step, and the step is undone', async (page) => {
    await keep(page).click()
    await listed(page).waitFor()
    await changeTurns(page, '37')
    await page.getByRole('button', { name: 'Take tracing A back as the design' }).click()
    await computed(page)
    await page.getByText('says the same as tracing A', { exact: false }).waitFor()
    await page.keyboard.press('Control+z')
    await computed(page)
    expect(await fields(page).locator('tbody td').allInnerTexts()).toEqual(['30', '37'])
  })

  check('names, letters and what is taken away survive as promised', async (page) => {
    await page.getByLabel('Name of the tracing').fill('Before the rewind')
    await keep(page).click()
    await listed(page).getByText('Before the rewind').waitFor()
    await keep(page).click()
    await expect.poll(() => listed(page).count()).toBe(2)
    await page.getByRole('button', { name: 'Rename tracing B' }).click()
    await page.getByLabel('New name of tracing B').fill('Thicker wire')
    await page.getByRole('button', { name: 'Rename', exact: true }).click()
    await page.reload()
    await computed(page)
    await enterRoom(page, 'compare')
    await listed(page).getByText('Thicker wire').waitFor()
    await page.getByRole('button', { name: 'Take tracing A away' }).click()
    await expect.poll(() => listed(page).count()).toBe(1)
    await page.getByRole('button', { name: 'Bring it back' }).click()
    await listed(page).getByText('Before the rewind').waitFor()
    expect(await page.locator('.tracing-letter').allInnerTexts()).toEqual(['A', 'B'])
  })

  check('four lie over at once, a fifth is kept without, and says so', async (page) => {
    for (let k = 1; k <= 5; k++) {
      await keep(page).click()
      await expect.poll(() => listed(page).count()).toBe(k)
    }
    expect(await page.getByRole('button', { name: 'Lay tracing E over' }).isDisabled()).toBe(true)
    await page.getByText('4 lie over the design', { exact: false }).waitFor()
    await page.getByRole('button', { name: 'Lay tracing B over' }).click()
    await page.getByRole('button', { name: 'Lay tracing E over' }).click()
    await page.locator('.chart-power svg').getByText('tracing E', { exact: true }).waitFor()
  })

  check('a tracing is offered as a rival in the fair contest', async (page) => {
    await page.getByLabel('Name of the tracing').fill('As it was')
    await keep(page).click()
    await page.getByText('Compare with another design').click()
    await page.locator('.contest select').first().selectOption({ label: 'A, As it was' })
    expect(await page.getByRole('button', { name: 'Compare', exact: true }).isEnabled()).toBe(true)
  })
})

describe('source: wcag22, levels A and AA — tracings break no rule that a reader of pages can tell', () => {
  for (const [name, viewport] of [
    ['desktop', { width: 1280, height: 900 }],
    ['phone', { width: 360, height: 740 }],
  ] as const)
    check(
      name,
      async (page) => {
        await keep(page).click()
        await changeTurns(page, '33')
        await figures(page).waitFor()
        await page.locator('.chart-power svg .line.ink-tracing-1').waitFor()
        const { violations } = await new AxeBuilder({ page })
          .include('.room-compare')
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
          .analyze()
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`),
        ).toEqual([])
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
        expect(wide).toBeLessThanOrEqual(0)
      },
      { viewport },
    )
})
