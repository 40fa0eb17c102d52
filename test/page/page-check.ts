/** The frame of a check of one part of the page: a page of its own, computed and made ready, with nothing to complain of. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { computed, launchBrowser, openPage, type Served, servePage } from './browser.ts'

export type PageCheck = (
  title: string,
  run: (page: Page) => Promise<void>,
  options?: BrowserContextOptions,
  /** Complaints of the browser, and strangers asked for, that belong to what is checked. */
  expected?: (line: string) => boolean,
) => void

/** For the checks of one file: serves the page once and opens it for each; `ready` brings its part forward. */
export function pageCheck(
  purpose: string,
  ready: (page: Page) => Promise<void> = async () => {},
  usual: BrowserContextOptions = {},
): PageCheck {
  let browser: Browser
  let served: Served
  beforeAll(async () => {
    served = await servePage(purpose)
    browser = await launchBrowser()
  }, 300_000)
  afterAll(async () => {
    await browser?.close()
    await served?.stop()
  })
  return (title, run, options = usual, expected = () => false) =>
    test(title, async () => {
      const { page, close, complaints, strangers } = await openPage(browser, served.address, options)
      try {
        await computed(page)
        await ready(page)
        await run(page)
        expect(complaints.filter((line) => !line.includes('GL Driver Message') && !expected(line))).toEqual(
          [],
        )
        expect(strangers.filter((url) => !expected(url))).toEqual([])
      } finally {
        await close()
      }
    }, 400_000)
}
