/** Checks of the page's own policy: nothing leaves it, and words of a stranger stay words. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { exampleDocument } from '../example.ts'
import { computed, enterRoom, roomKeys, settled } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('policy')

/** Addresses asked for from now on, whatever asks. */
function asked(page: Page): string[] {
  const list: string[] = []
  page.context().on('request', (request) => list.push(request.url()))
  return list
}

const hostile =
  '"><script>globalThis.broken = 1</script><img src=x onerror="globalThis.broken = 2"><svg onload="globalThis.broken = 3">'

describe('law: nothing leaves the page, and nothing foreign runs in it', () => {
  check('in every room, with every fold open, only the page’s own files are asked for', async (page) => {
    const home = page.url().split('#')[0]!
    const list = asked(page)
    for (const room of roomKeys) {
      await enterRoom(page, room)
      await page.locator('#page details').evaluateAll((all) => {
        for (const each of all) (each as HTMLDetailsElement).open = true
      })
      await settled(page)
    }
    expect(list.length).toBeGreaterThan(0)
    expect(list.filter((url) => !url.startsWith(home) && !/^(data|blob):/.test(url))).toEqual([])
  })

  check('a name, a note and an answer made of markup are shown letter by letter', async (page) => {
    const document = exampleDocument('hen-house-drum')
    document.name = hostile.slice(0, 120)
    document.note = hostile
    const folder = mkdtempSync(join(tmpdir(), 'policy-'))
    const file = join(folder, 'hostile.json')
    writeFileSync(file, JSON.stringify(document))
    try {
      await page.locator('.design-menu input[type=file]').setInputFiles(file)
      await page.locator('.design-name').getByText('<script>', { exact: false }).waitFor()
      await computed(page)
      await enterRoom(page, 'compare')
      await page.locator('.tracing-keep').getByRole('button', { name: 'Keep a tracing' }).click()
      await page.locator('.tracing-list > li').waitFor()
      for (const room of roomKeys) {
        await enterRoom(page, room)
        await settled(page)
        const foreign = await page.evaluate(() => ({
          ran: 'broken' in globalThis,
          elements: document.querySelectorAll('#page script, #page img, #page [onload], #page [onerror]')
            .length,
          paper: [...document.querySelectorAll('*')].filter(
            ({ shadowRoot }) => shadowRoot?.querySelector('script, img, [onload], [onerror]') != null,
          ).length,
        }))
        expect(foreign, room).toEqual({ ran: false, elements: 0, paper: 0 })
      }
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('law: were something foreign to get in, the policy stops it', () => {
  check(
    'neither script, style, picture, frame nor request of a stranger passes',
    async (page) => {
      const ends: string[] = []
      page.on('requestfailed', (request) => ends.push(`${request.failure()?.errorText}`))
      const own = new URL(page.url()).origin
      page.on('response', (response) => {
        // the page goes on fetching what is its own
        if (!response.url().startsWith(own)) ends.push(`${response.status()} of ${response.url()}`)
      })
      const outcome = await page.evaluate(async () => {
        const stopped: string[] = []
        document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
          stopped.push(effectiveDirective),
        )
        const place = document.createElement('div')
        place.innerHTML =
          '<img src="https://stranger.invalid/a.png"><b style="color: red">x</b><i onclick="globalThis.broken = 1">y</i>'
        document.body.append(place)
        place.querySelector('i')!.click()
        const script = document.createElement('script')
        script.textContent = 'globalThis.broken = 2'
        document.body.append(script)
        const frame = document.createElement('iframe')
        frame.src = 'https://stranger.invalid/'
        document.body.append(frame)
        let through = ''
        try {
          await fetch('https://stranger.invalid/')
          through = 'fetch'
        } catch {
          // stopped
        }
        await new Promise((resolve) => setTimeout(resolve, 200))
        return { through, ran: 'broken' in globalThis, stopped: [...new Set(stopped)].sort() }
      })
      expect(outcome.through).toBe('')
      expect(ends.filter((end) => end !== 'csp')).toEqual([])
      expect(outcome.ran).toBe(false)
      expect(outcome.stopped).toEqual(
        expect.arrayContaining([
          'connect-src',
          'frame-src',
          'img-src',
          'script-src-attr',
          'script-src-elem',
          'style-src-attr',
        ]),
      )
    },
    {},
    // the browser complains of every one of them, as it should
    (line) => /Content Security Policy|stranger\.invalid/.test(line),
  )
})
