/** Checks of the view that shows where along the wire the volts arise: it opens, follows, and can be used by everybody. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom, openFolds } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('wire-voltage', (page) => enterRoom(page, 'winding'))

/** Opens the view; its pictures stand when their numbers have come. */
async function unfold(page: Page): Promise<void> {
  // on a phone it stands in a group that is folded
  await openFolds(page, '.fold-group')
  await page.locator('.wire-voltage > summary').click()
  for (const name of ['parts', 'profile', 'angle'])
    await page.locator(`.chart-wire-${name} .drawing > svg`).waitFor()
}

const words = (page: Page) => page.locator('.chart-wire-parts .drawing > svg > desc').textContent()

describe('agrees: axe-core, its rules for WCAG 2.2 A and AA and good practice', () => {
  forEverybody(check, 'wire', ['.wire-voltage', '.solid'], async (page) => {
    await unfold(page)
    await page.locator('.wire-voltage .as-table').evaluateAll((all) => {
      for (const each of all) (each as HTMLDetailsElement).open = true
    })
    await page.getByLabel('colour by volts').check()
    await page.locator('.wire-ramp').waitFor()
    await page.locator('.solid').scrollIntoViewIfNeeded()
    await page.locator('.solid-view canvas').waitFor()
  })
})

describe('law: it follows the design and the choices', () => {
  check('parts, winding, moment', async (page) => {
    // nothing is worked out before it is looked at
    expect(await page.locator('.chart-wire-parts').count()).toBe(0)
    await unfold(page)
    expect(await words(page)).toMatch(
      /^straight run 9[\d.]+ % of the volts from 5[\d.]+ % of the wire; crown [\d.]+ % of the volts from 4/,
    )
    const first = await words(page)
    await page.getByLabel('Winding looked at').selectOption({ label: 'phase 3' })
    await expect.poll(() => words(page)).not.toBe(first)
    const profile = () => page.locator('.chart-wire-profile .drawing > svg').innerHTML()
    const still = await profile()
    await page.getByLabel('Rotor past the phase').fill('90')
    await expect.poll(profile).not.toBe(still)
    await page.locator('.design-menu select').selectOption('boathouse-two-disc')
    await computed(page)
    await expect.poll(() => words(page), { timeout: 60_000 }).toContain('coil side')
  })
})
