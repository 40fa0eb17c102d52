/** Checks that every room can be used by everybody: contrast in each theme, names, roles, small screens. */
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  computed,
  enterRoom,
  launchBrowser,
  openFolds,
  openPage,
  picturePath,
  roomKeys,
  type Served,
  servePage,
  settled,
} from './browser.ts'
import { colourRules, sideways, violations } from './violation.ts'

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

const screens: Readonly<Record<string, BrowserContextOptions>> = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true },
}

/** How a system asks for each theme. */
const themes = {
  light: { colorScheme: 'light' },
  dark: { colorScheme: 'dark' },
  sun: { colorScheme: 'light', contrast: 'more' },
} as const satisfies Readonly<Record<string, BrowserContextOptions>>

type Theme = keyof typeof themes

async function openIn(theme: Theme, screen: string) {
  const opened = await openPage(browser, served.address, { ...screens[screen], ...themes[theme] })
  await computed(opened.page)
  expect(await opened.page.evaluate(() => document.documentElement.dataset['theme'])).toBe(theme)
  return opened
}

/** Words and lines in pictures, which axe does not judge, and the grounds on which they stand. */
const inks: Readonly<Record<string, readonly string[]>> = {
  card: [
    ...['ink', 'soft', 'wind', 'shaft', 'copper', 'diode', 'store', 'chosen', 'generator', 'field'],
    ...['phase-1', 'phase-2', 'phase-3', 'fault', 'warn'],
  ],
  paper: ['ink', 'soft', 'copper', 'chosen'],
  sunk: ['ink'],
  'note-fill': ['ink'],
  'fault-fill': ['fault'],
  'warn-fill': ['warn'],
  head: ['head-ink'],
}

describe('source: wcag22, success criterion 1.4.3 — words in pictures stand out by 4.5 to 1', () => {
  for (const theme of Object.keys(themes) as Theme[])
    test(theme, async () => {
      const { page, close } = await openIn(theme, 'desktop')
      try {
        const ratios = await page.evaluate((grounds) => {
          const style = getComputedStyle(document.documentElement)
          // relative luminance as WCAG defines it
          const luminance = (name: string) => {
            const [, digits] = /^#([0-9a-f]+)$/i.exec(style.getPropertyValue(`--${name}`).trim()) ?? []
            if (digits === undefined) throw new Error(`${name} is no colour of hexadecimal digits`)
            const hex = `#${digits.length === 3 ? digits.replace(/./g, '$&$&') : digits}`
            const [r, g, b] = [1, 3, 5].map((at) => {
              const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255
              return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
            })
            return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
          }
          return Object.entries(grounds).flatMap(([ground, names]) =>
            names.map((name) => {
              const [own, under] = [luminance(name), luminance(ground)]
              const ratio = (Math.max(own, under) + 0.05) / (Math.min(own, under) + 0.05)
              return [`${name} on ${ground}`, ratio] as const
            }),
          )
        }, inks)
        for (const [name, ratio] of ratios) expect(ratio, name).toBeGreaterThanOrEqual(4.5)
      } finally {
        await close()
      }
    }, 120_000)
})

/** All of a room in one picture, by a screen as tall as it: the browser's own way forgets that a finger points. */
async function photographWhole(page: Page, name: string): Promise<void> {
  const path = picturePath(name)
  mkdirSync(dirname(path), { recursive: true })
  const size = page.viewportSize()!
  const height = await page.evaluate(() => document.documentElement.scrollHeight)
  await page.setViewportSize({ ...size, height: Math.max(size.height, height) })
  await page.screenshot({ path })
  await page.setViewportSize(size)
}

describe('agrees: axe-core, its rules for WCAG 2.2 A and AA and good practice, in every room with its folds opened', () => {
  for (const theme of Object.keys(themes) as Theme[])
    for (const screen of Object.keys(screens))
      test(`${screen}, ${theme}`, async () => {
        const { page, close, complaints, strangers } = await openIn(theme, screen)
        // names and roles are the same in every theme
        const rules = theme === 'light' ? [] : colourRules
        const found: string[] = []
        const note = (room: string, faults: readonly string[]) => {
          for (const fault of faults) found.push(`${room}: ${fault}`)
        }
        try {
          for (const room of roomKeys) {
            await enterRoom(page, room)
            await settled(page)
            await photographWhole(page, `${room}-${screen}-${theme}`)
            await openFolds(page)
            await settled(page)
            await page.evaluate(() => scrollTo(0, 0))
            note(room, await violations(page, [], rules))
            const wide = await sideways(page)
            if (wide > 0) note(`${room}, sideways`, [`${wide} px`])
          }
          await enterRoom(page, 'wind')
          await page.getByLabel('Mean wind', { exact: true }).fill('-3')
          await page.locator('.fault').first().waitFor()
          await page.evaluate(() => scrollTo(0, 0))
          note('with an entry to mend', await violations(page, [], rules))
          expect(found, found.join('\n')).toEqual([])
          expect(complaints.filter((line) => !line.includes('GL Driver Message'))).toEqual([])
          expect(strangers).toEqual([])
        } finally {
          await close()
        }
      }, 600_000)
})
