/** Checks of the first machine on the page: one press answers, it stops, a bad entry is named, a machine is taken. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('first', async (page) => {
  await page.evaluate(() => {
    location.hash = 'begin'
  })
  await page.locator('.first-machine').waitFor()
})

const ask = (page: Page) => page.getByRole('button', { name: 'Give me a first machine' })
const cards = (page: Page) => page.locator('.first-card')
const status = (page: Page) => page.locator('.first-status output')
const only = (page: Page, kind: string | RegExp) => page.getByRole('radio', { name: kind }).check()

describe('law: one press gives a first machine', () => {
  check(
    'it comes with figures, units, ranges and a reason; taken, it computes with no fault',
    async (page) => {
      await only(page, 'Waves of wire')
      await ask(page).click()
      await page.locator('.first-reason').waitFor({ timeout: 300_000 })
      const text = await cards(page).first().innerText()
      expect(text).toMatch(/\d kWh/)
      expect(text).toMatch(/\d W/)
      expect(text).toMatch(/±|\(/)
      expect(text).toContain('Blocking: ')
      expect(text).not.toMatch(/NaN|undefined|Infinity/)
      await page.getByRole('button', { name: 'Take this one: Drum with waves of wire around it' }).click()
      await page.waitForFunction(() => location.hash === '#/whole')
      await page.locator('.status.done').waitFor()
      expect(await page.locator('.status.wrong').count()).toBe(0)
      expect(await page.locator('.fault-summary').count()).toBe(0)
      await page.getByText('This is your first machine.').waitFor()
    },
  )

  check('it can be stopped; what was found until then stays and can be taken', async (page) => {
    await only(page, 'Single coils')
    await ask(page).click()
    await cards(page).first().waitFor({ timeout: 300_000 })
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await status(page).filter({ hasText: 'Stopped' }).waitFor()
    expect(await page.locator('.first-status progress').count()).toBe(0)
    expect(await cards(page).count()).toBeGreaterThan(0)
    await page
      .getByRole('button', { name: /^Take this one/ })
      .first()
      .click()
    await page.waitForFunction(() => location.hash === '#/whole')
    await computed(page)
  })
})

describe('law: a bad entry is refused with its field', () => {
  check('a magnet of −3 mm is named, stands under the hand, and is mended', async (page) => {
    const field = page.getByLabel('Diameter', { exact: true })
    await field.fill('-3')
    await ask(page).click()
    await page.locator('#field-stock-magnet-diameter-mm-fault').waitFor()
    expect(await page.locator('.stock-form .fault').innerText()).toMatch(
      /^magnet\.diameter_mm must be at least 3 mm; received [−-]3 mm \(below-minimum\)$/,
    )
    expect(await field.getAttribute('aria-invalid')).toBe('true')
    expect(await field.evaluate((element) => element === document.activeElement)).toBe(true)
    await field.fill('18')
    expect(await page.locator('.stock-form .fault').count()).toBe(0)
  })

  check('another shape, another load and a wish are taken, and kept for the next visit', async (page) => {
    await only(page, 'Blocks')
    await page.getByLabel('Length', { exact: true }).fill('40')
    await only(page, 'A lamp or a heater')
    await page.getByRole('spinbutton', { name: 'Its resistance when hot' }).fill('9')
    await page.getByRole('spinbutton', { name: 'Power that you wish for' }).fill('25')
    await page.getByRole('spinbutton', { name: 'In a wind of' }).waitFor()
    await only(page, /^Open fields/)
    expect(await page.getByRole('spinbutton', { name: 'Mean of a year' }).inputValue()).toBe('4.5')
    await page.reload()
    await page.locator('.first-machine').waitFor()
    expect(await page.getByLabel('Length', { exact: true }).inputValue()).toBe('40')
    expect(await page.getByRole('spinbutton', { name: 'Its resistance when hot' }).inputValue()).toBe('9')
    await page.getByRole('button', { name: /^Begin again/ }).click()
    expect(await page.getByLabel('Diameter', { exact: true }).inputValue()).toBe('20')
  })
})

describe('law: an example or a file is another beginning', () => {
  check('an example opens; a file that is none is refused in words', async (page) => {
    await page.locator('.opening-file input').setInputFiles({
      name: 'list.json',
      mimeType: 'application/json',
      buffer: Buffer.from('[1, 2]'),
    })
    await page.getByText('list.json must be an object').waitFor()
    expect(await page.evaluate(() => location.hash)).toBe('#begin')
    await page.locator('.opening-example').filter({ hasText: 'Class-room fan machine' }).click()
    await page.waitForFunction(() => location.hash === '#/whole')
    await page.getByText('Opened the example').waitFor()
  })
})

describe('source: wcag22, levels A and AA — the first machine breaks no rule that a reader of pages can tell', () => {
  for (const [name, viewport, colorScheme] of [
    ['desktop, light', { width: 1280, height: 900 }, 'light'],
    ['phone, dark', { width: 360, height: 740 }, 'dark'],
  ] as const)
    check(
      name,
      async (page) => {
        await ask(page).click()
        await cards(page).first().waitFor({ timeout: 300_000 })
        await page.getByRole('button', { name: 'Stop', exact: true }).click()
        await status(page).filter({ hasText: 'Stopped' }).waitFor()
        const { violations } = await new AxeBuilder({ page })
          .include('.first-machine')
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
          .analyze()
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`),
        ).toEqual([])
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
        expect(wide).toBeLessThanOrEqual(0)
      },
      { viewport, colorScheme },
    )
})
