/** What a reader of pages can tell against a page: rules for all users that it breaks, and whether it runs off sideways. */
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { picturePath } from './browser.ts'
import type { PageCheck } from './page-check.ts'

/** Version 2.2 has to be asked for: its rule on the size of targets is off by default. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Rules that colours alone can break: enough where the same page was judged by all rules in another theme. */
export const colourRules = ['color-contrast', 'link-in-text-block']

/** Of a long table three rows are judged, the others are like them; within pictures there is nothing that it can judge. */
const alike = ['tbody tr:nth-child(n+4)', '.drawing > svg > *']

/** Broken rules within the parts, or on the whole page. */
export async function violations(
  page: Page,
  parts: readonly string[] = [],
  rules: readonly string[] = [],
): Promise<string[]> {
  const builder = new AxeBuilder({ page })
  for (const part of alike) builder.exclude(part)
  for (const part of parts) builder.include(part)
  const judge = rules.length > 0 ? builder.withRules([...rules]) : builder.withTags(tags)
  const { violations: broken } = await judge.analyze()
  return broken.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
}

/** [px] */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth)

export async function photograph(page: Page, part: string, name: string): Promise<void> {
  const path = picturePath(name)
  mkdirSync(dirname(path), { recursive: true })
  await page.locator(part).first().screenshot({ path })
}

/** A desk in light and a phone in the dark, which between them find what a size or a theme breaks. */
export const usualScreens = [
  ['desktop', { viewport: { width: 1280, height: 900 }, colorScheme: 'light' }],
  ['phone', { viewport: { width: 360, height: 740 }, colorScheme: 'dark' }],
] as const

/** The checks of one part of the page on either screen, once `prepare` has brought all of it forward. */
export function forEverybody(
  check: PageCheck,
  purpose: string,
  parts: readonly string[],
  prepare: (page: Page) => Promise<unknown>,
): void {
  for (const [screen, options] of usualScreens)
    check(
      `${screen}, ${options.colorScheme}`,
      async (page) => {
        await prepare(page)
        expect(await violations(page, parts)).toEqual([])
        expect(await sideways(page)).toBeLessThanOrEqual(0)
        for (const [k, part] of parts.entries())
          await photograph(page, part, `${purpose}${k === 0 ? '' : `-${k + 1}`}-${screen}`)
      },
      options,
    )
}
