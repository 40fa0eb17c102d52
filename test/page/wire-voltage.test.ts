/** Checks of the view that shows where along the wire the volts arise: it opens, follows, and can be used by everybody. */
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { computed, launchBrowser, openPage, picturePath, type Served, servePage } from './browser.ts'

let browser: Browser
let served: Served

beforeAll(async () => {
  served = await servePage('wire-voltage')
  browser = await launchBrowser()
}, 300_000)

afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Opens the view; its pictures stand when their numbers have come. */
async function unfold(page: Page): Promise<void> {
  await page.locator('.wire-voltage > summary').click()
  for (const name of ['parts', 'profile', 'angle'])
    await page.locator(`.chart-wire-${name} .drawing > svg`).waitFor()
}

const words = (page: Page) => page.locator('.chart-wire-parts .drawing > svg > desc').textContent()

const screens = [
  ['desktop', { width: 1280, height: 900 }],
  ['phone', { width: 360, height: 780 }],
] as const

describe('agrees: axe-core, its rules for WCAG 2.2 A and AA and good practice', () => {
  for (const [screen, viewport] of screens)
    for (const colorScheme of ['light', 'dark'] as const)
      test(`${screen}, ${colorScheme}`, async () => {
        const { page, complaints, close } = await openPage(browser, served.address, {
          viewport,
          colorScheme,
          reducedMotion: 'reduce',
        })
        try {
          await computed(page)
          await unfold(page)
          await page.locator('.wire-voltage .as-table').evaluateAll((all) => {
            for (const each of all) (each as HTMLDetailsElement).open = true
          })
          await page.getByLabel('colour by volts').check()
          await page.locator('.wire-ramp').waitFor()
          await page.locator('.solid-view canvas').waitFor()
          await page.evaluate(() => scrollTo(0, 0))
          const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze()
          expect(
            violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`)),
          ).toEqual([])
          const [wide, seen] = await page.evaluate(
            () => [document.documentElement.scrollWidth, innerWidth] as const,
          )
          expect(wide).toBeLessThanOrEqual(seen)
          expect(complaints.filter((line) => !line.includes('GL Driver Message'))).toEqual([])
          await page.locator('.wire-voltage .as-table').evaluateAll((all) => {
            for (const each of all) (each as HTMLDetailsElement).open = false
          })
          for (const [name, place] of [
            ['volts', '.wire-voltage'],
            ['solid', '.solid'],
          ] as const) {
            const path = picturePath(`wire-${name}-${screen}-${colorScheme}`)
            mkdirSync(dirname(path), { recursive: true })
            await page.locator(place).screenshot({ path })
          }
        } finally {
          await close()
        }
      }, 400_000)
})

describe('law: it follows the design and the choices', () => {
  test('parts, winding, moment', async () => {
    const { page, close } = await openPage(browser, served.address)
    try {
      await computed(page)
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
      await page.locator('.file-bar select').selectOption('boathouse-two-disc')
      await computed(page)
      await expect.poll(() => words(page), { timeout: 60_000 }).toContain('coil side')
    } finally {
      await close()
    }
  }, 400_000)
})
