/** Takes the picture of the page that the README shows. */
import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { computed, launchBrowser, openPage, servePage } from '../test/page/browser.ts'

const folder = fileURLToPath(new URL('../docs/picture/', import.meta.url))
mkdirSync(folder, { recursive: true })
const [served, browser] = await Promise.all([servePage('picture'), launchBrowser()])
const opened = await openPage(browser, served.address)
await opened.page.setViewportSize({ width: 1280, height: 1000 })
await computed(opened.page)
await opened.page.locator('.figures b').filter({ hasText: '±' }).first().waitFor()
await opened.page.screenshot({ path: `${folder}page.png` })
await opened.close()
await browser.close()
await served.stop()
