/** Checks of the page without a network: it opens and computes, installs, and a newer one waits to be asked for. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { computed, enterRoom, launchBrowser, openPage, type Served, servePage } from './browser.ts'

let browser: Browser
let served: Served
beforeAll(async () => {
  served = await servePage('offline')
  browser = await launchBrowser()
}, 300_000)
afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

/** The service worker has everything and answers for the page. */
const keptWhole = (page: Page): Promise<void> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null).then(() => {})

describe('law: the page is kept on this machine', () => {
  test('what can be installed is described, and every file named is there', async () => {
    const { page, close } = await openPage(browser, served.address)
    try {
      const manifest = await page.evaluate(async () => {
        const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]')
        return (await fetch(link!.href)).json()
      })
      expect(manifest).toMatchObject({ display: 'standalone', start_url: './', scope: './' })
      const sizes = await page.evaluate(
        (icons: { src: string }[]) =>
          Promise.all(
            icons.map(async ({ src }) => {
              const image = await createImageBitmap(await (await fetch(src)).blob())
              return `${image.width}x${image.height}`
            }),
          ),
        manifest.icons,
      )
      expect(sizes).toEqual(manifest.icons.map(({ sizes: said }: { sizes: string }) => said))
      const remote = await page.context().newCDPSession(page)
      await keptWhole(page)
      const told = await remote.send('Page.getAppManifest')
      expect(told.errors).toEqual([])
    } finally {
      await close()
    }
  }, 400_000)

  test('every built file is in the store of its version, and nothing else was asked for', async () => {
    const { page, close, strangers } = await openPage(browser, served.address)
    try {
      await keptWhole(page)
      const stored = await page.evaluate(async () => {
        const [name] = await caches.keys()
        const cache = await caches.open(name!)
        return (await cache.keys()).map(({ url }) => url)
      })
      const script = readFileSync(join(served.folder, 'service-worker.js'), 'utf8')
      const { files } = JSON.parse(/const built = (\{.*\})/.exec(script)![1]!) as { files: string[] }
      expect(files.length).toBeGreaterThan(8)
      expect(stored.sort()).toEqual(files.map((file) => new URL(file, served.address).href).sort())
      expect(strangers).toEqual([])
    } finally {
      await close()
    }
  }, 400_000)

  test('a newer page waits until it is asked for, and the design is there in it', async () => {
    const { page, close } = await openPage(browser, served.address)
    const index = join(served.folder, 'index.html')
    const worker = join(served.folder, 'service-worker.js')
    const [oldIndex, oldWorker] = [readFileSync(index, 'utf8'), readFileSync(worker, 'utf8')]
    try {
      await keptWhole(page)
      await enterRoom(page, 'winding')
      const turns = page.locator('#field-stator-winding-turns')
      await turns.press('End')
      await turns.pressSequentially('1')
      const typed = await turns.inputValue()
      writeFileSync(index, oldIndex.replace('<title>Gustloom', '<title>Newer Gustloom'))
      writeFileSync(worker, oldWorker.replace(/"version":"[0-9a-f]+"/, '"version":"newer"'))
      await page.evaluate(async () => {
        await (await navigator.serviceWorker.getRegistration())?.update()
      })
      await page.getByText('A newer Gustloom is ready: reload when it suits you.').waitFor()
      expect(await page.title()).toBe('Gustloom')
      await page.reload()
      await computed(page)
      expect(await page.title()).toBe('Gustloom')
      await page.getByRole('button', { name: 'Reload now' }).click()
      await page.waitForFunction(() => document.title === 'Newer Gustloom')
      await computed(page)
      expect(await turns.inputValue()).toBe(typed)
      expect(await page.getByText('A newer Gustloom is ready').count()).toBe(0)
    } finally {
      writeFileSync(index, oldIndex)
      writeFileSync(worker, oldWorker)
      await close()
    }
  }, 400_000)

  test('with the server gone and no network a new tab opens, computes and draws', async () => {
    const { page, close, complaints } = await openPage(browser, served.address)
    try {
      await keptWhole(page)
      await served.stop()
      await page.context().setOffline(true)
      const other = await page.context().newPage()
      await other.goto(`${served.address}#/winding`)
      await computed(other)
      const turns = other.locator('#field-stator-winding-turns')
      await turns.press('End')
      await turns.pressSequentially('1')
      await computed(other)
      await enterRoom(other, 'shelf')
      await other.locator('.shelved').waitFor()
      // parts that come late are there too
      await other.locator('canvas').first().waitFor()
      expect(complaints.filter((line) => !line.includes('GL Driver Message'))).toEqual([])
    } finally {
      await close()
    }
  }, 400_000)
})
