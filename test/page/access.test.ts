/** Checks that the page can be used by everybody: contrast, names, roles, small screens. */
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { computed, launchBrowser, openPage, picturePath, type Served, servePage } from './browser.ts'

let browser: Browser
let served: Served

beforeAll(async () => {
  served = await servePage('access')
  browser = await launchBrowser()
}, 300_000)

afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

const screens = [
  ['desktop', { width: 1280, height: 900 }],
  ['phone', { width: 390, height: 844 }],
] as const

describe('source: axe-core, its rules for WCAG 2.2 A and AA and good practice', () => {
  for (const [screen, viewport] of screens)
    for (const colorScheme of ['light', 'dark'] as const)
      test(`${screen}, ${colorScheme}`, async () => {
        const { page, close } = await openPage(browser, served.address, { viewport, colorScheme })
        try {
          await computed(page)
          const judge = async () => {
            const { violations } = await new AxeBuilder({ page }).analyze()
            return violations.flatMap(({ id, nodes }) =>
              nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`),
            )
          }
          expect(await judge()).toEqual([])
          await page.locator('#design details.station').evaluateAll((all) => {
            for (const each of all) (each as HTMLDetailsElement).open = true
          })
          await page.locator('.as-table').evaluateAll((all) => {
            for (const each of all) (each as HTMLDetailsElement).open = true
          })
          await page.getByLabel('Mean wind', { exact: true }).fill('-3')
          await page.locator('.fault').first().waitFor()
          expect(await judge()).toEqual([])
          const [wide, seen] = await page.evaluate(
            () => [document.documentElement.scrollWidth, innerWidth] as const,
          )
          expect(wide).toBeLessThanOrEqual(seen)
          await page.evaluate(() => scrollTo(0, 0))
          const path = picturePath(`${screen}-${colorScheme}`)
          mkdirSync(dirname(path), { recursive: true })
          await page.screenshot({ path })
        } finally {
          await close()
        }
      }, 400_000)
})
