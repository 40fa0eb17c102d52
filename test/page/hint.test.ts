/** Checks of the hints on the page: opened by pointer, keyboard and tap, true to the document, closed again, open to all. */
import type { BrowserContextOptions, Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { exampleDocument } from '../example.ts'
import { computed } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { colourRules, photograph, sideways, violations } from './violation.ts'

const check = pageCheck('hint')

const phone: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  colorScheme: 'dark',
  hasTouch: true,
  isMobile: true,
}

const hint = (page: Page) => page.locator('#hint')
const number = (page: Page, name: string) =>
  page.locator('.figures').getByRole('button', { name: new RegExp(`^${name}:`) })
const heading = (page: Page, name: string) => hint(page).getByRole('heading', { name, level: 3 })
const gone = (page: Page) => hint(page).waitFor({ state: 'hidden' })
const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

describe('law: a number tells where it comes from', () => {
  check('under a pointer that rests, and it goes when the pointer goes', async (page) => {
    await number(page, 'A year brings').hover()
    await heading(page, 'Energy of a year').waitFor()
    // the way into the hint is allowed
    await hint(page).locator('.hint-inputs').hover()
    expect(await hint(page).isVisible()).toBe(true)
    await page.mouse.move(2, 2)
    await gone(page)
  })

  check(
    'reached by keyboard; Enter holds it, Tab goes through it and back, Escape closes it',
    async (page) => {
      await number(page, 'A year brings').focus()
      await page.keyboard.press('Tab')
      await heading(page, 'Wind in which charging begins').waitFor()
      await page.keyboard.press('Shift+Tab')
      await heading(page, 'Energy of a year').waitFor()
      await page.keyboard.press('Escape')
      await gone(page)
      expect(await focused(page)).toMatch(/^A year brings/)
      await page.keyboard.press('Enter')
      await page.locator('#hint:focus').waitFor()
      await page.keyboard.press('Tab')
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Close')
      await page.keyboard.press('Shift+Tab')
      await gone(page)
      expect(await focused(page)).toMatch(/^A year brings/)
      await page.keyboard.press('Enter')
      await page.locator('#hint:focus').waitFor()
      await page.keyboard.press('Escape')
      await gone(page)
      expect(await focused(page)).toMatch(/^A year brings/)
    },
  )

  check('formula, range, accuracy and source stand in it', async (page) => {
    await number(page, 'Resistance of a phase').click()
    await heading(page, 'Resistance of a phase').waitFor()
    const text = await hint(page).innerText()
    for (const part of ['R = ρ l / A', 'Holds: Uniform section', 'Accuracy: ', 'Derived: '])
      expect(text).toContain(part)
    expect(text).not.toMatch(/NaN|undefined|Infinity|`/)
    // another number takes its place, and a press beside it closes it
    await number(page, 'Magnets').click()
    await heading(page, 'Mass of the magnets').waitFor()
    await page.locator('.room-head').click({ position: { x: 2, y: 2 } })
    await gone(page)
  })

  check('its inputs are those of the document, before and after an edit', async (page) => {
    const { site } = exampleDocument('hen-house-drum')
    const shown = async (path: string) => hint(page).locator(`[data-path="${path}"]`).innerText()
    await number(page, 'A year brings').click()
    await heading(page, 'Energy of a year').waitFor()
    const { value, spread } = site.meanWind_m_per_s
    expect(await shown('site.meanWind_m_per_s')).toBe(`${value} ± ${spread} m/s`)
    expect(await shown('site.hubHeight_m')).toBe(`${site.hubHeight_m} m`)
    expect(await shown('site.weibullShape')).toBe(String(site.weibullShape))
    await hint(page).getByRole('button', { name: 'Mean wind', exact: true }).click()
    await gone(page)
    await page.locator('#field-site-meanWind-m-per-s:focus').fill('5.1')
    await computed(page)
    await page.goBack()
    await number(page, 'A year brings').click()
    await hint(page)
      .locator('[data-path="site.meanWind_m_per_s"]', { hasText: `5.1 ± ${spread} m/s` })
      .waitFor()
  })

  check(
    'from the guess that bears most of the spread one gets to its field, and to what to measure',
    async (page) => {
      await number(page, 'A year brings').filter({ hasText: '±' }).click()
      await hint(page).getByText('The spread is').waitFor()
      await hint(page).getByRole('button', { name: 'Go to that guess' }).click()
      await page.locator('#field-site-meanWind-m-per-s:focus').waitFor()
      await page.goBack()
      await number(page, 'A year brings').click()
      await hint(page).getByRole('button', { name: 'What to measure' }).click()
      await page.locator('.room-sure').waitFor()
      await gone(page)
    },
  )

  check('a word in it tells what it means, and the way back leads to the number', async (page) => {
    await number(page, 'Volts per 100 rpm').click()
    await hint(page).getByRole('button', { name: 'star connection' }).click()
    await hint(page).getByText('1.73 times the volts of a phase').waitFor()
    await hint(page).getByRole('button', { name: 'Back' }).click()
    await heading(page, 'Volts per speed').waitFor()
    await page.keyboard.press('Escape')
    await page.locator('.figures').getByRole('button', { name: 'Tip-speed ratio', exact: true }).click()
    await hint(page).getByText('Speed of the blade tips over the speed of the wind.').waitFor()
  })

  check(
    'on a phone by a tap, within the screen; another tap closes it, and every cell is large enough',
    async (page) => {
      const cell = page.locator('.now .figure-number').first()
      await cell.tap()
      await heading(page, 'The wind you stand in').waitFor()
      const box = (await hint(page).boundingBox())!
      expect(box.x).toBeGreaterThanOrEqual(0)
      expect(box.x + box.width).toBeLessThanOrEqual(360)
      expect(box.y).toBeGreaterThanOrEqual(0)
      expect(box.y + box.height).toBeLessThanOrEqual(740)
      expect(await sideways(page)).toBeLessThanOrEqual(0)
      await cell.tap()
      await gone(page)
      const heights = await page
        .locator('.now > div')
        .evaluateAll((cells) => cells.map((each) => each.getBoundingClientRect().height))
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
    },
    phone,
  )
})

describe('law: the walk round the page', () => {
  check(
    'six steps by keyboard, each shows a part of the page, and the settings have the keyboard back',
    async (page) => {
      await page.locator('.settings summary').click()
      await page.locator('.settings').getByRole('button', { name: 'Show me round the page' }).click()
      const walk = page.getByRole('region', { name: 'A walk round the page' })
      for (let step = 1; step <= 6; step++) {
        await walk.getByText(`${step} of 6`).waitFor()
        await page.locator('.is-walked').first().waitFor()
        await page.locator('.walk p:focus').waitFor()
        expect(await page.locator('.is-walked').count()).toBe(1)
        if (step === 3) expect(await violations(page, ['.walk'])).toEqual([])
        await page.keyboard.press('Tab')
        if (step > 1) await page.keyboard.press('Tab')
        await page.keyboard.press('Enter')
      }
      await walk.waitFor({ state: 'detached' })
      expect(await page.locator('.is-walked').count()).toBe(0)
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY')
      expect(await page.evaluate(() => localStorage.getItem('gustloom.walk'))).toBe('done')
    },
  )
})

describe('agrees: axe-core — an open hint is there for everybody', () => {
  for (const look of ['light', 'dark', 'sun'] as const)
    check(look, async (page) => {
      await page.evaluate((kept) => localStorage.setItem('gustloom.look', kept), look)
      await page.reload()
      await computed(page)
      await number(page, 'Charging begins').click()
      await heading(page, 'Wind in which charging begins').waitFor()
      const methods = hint(page).locator('.hint-method:not([open]) summary')
      while ((await methods.count()) > 0) await methods.first().click()
      expect(
        await violations(page, ['#hint', '.figures', '.now'], look === 'light' ? [] : colourRules),
      ).toEqual([])
      await photograph(page, '#hint', `hint-${look}`)
    })
})
