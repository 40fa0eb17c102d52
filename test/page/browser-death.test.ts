/** Checks that what was typed is there again after the whole browser was killed, not closed. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { browserPath, computed, launchArguments, patience, type Served, servePage } from './browser.ts'

let served: Served
let profile: string
beforeAll(async () => {
  served = await servePage('browser-death')
  profile = mkdtempSync(join(tmpdir(), 'browser-death-'))
}, 300_000)
afterAll(async () => {
  await served?.stop()
  rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 })
})

interface Running {
  readonly page: Page
  /** Ends every process of it at once, without a word before. */
  readonly kill: () => Promise<void>
}

const addressIn = (child: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    let text = ''
    child.stderr!.on('data', (part: Buffer) => {
      text += part.toString()
      const found = /DevTools listening on (ws:\/\/\S+)/.exec(text)
      if (found) resolve(found[1]!)
    })
    child.once('exit', () => reject(new Error(`the browser ended before it listened: ${text}`)))
  })

async function started(): Promise<Running> {
  const child = spawn(
    browserPath(),
    [
      ...launchArguments(),
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  )
  const browser = await chromium.connectOverCDP(await addressIn(child))
  const [context] = browser.contexts()
  const page = await context!.newPage()
  page.setDefaultTimeout(patience)
  return {
    page,
    kill: async () => {
      const gone = new Promise((resolve) => child.once('exit', resolve))
      process.kill(-child.pid!, 'SIGKILL')
      await gone
    },
  }
}

/** The newest copy says that the database has it. */
const stored = (page: Page): Promise<unknown> =>
  page.waitForFunction(() =>
    Object.entries(localStorage)
      .filter(([place]) => place.startsWith('gustloom.copy.'))
      .every(([, text]) => JSON.parse(text).stored),
  )

describe('law: nothing that was done is lost', () => {
  test('what the page takes for stored outlives a killed browser', async () => {
    let typed = ''
    for (const digit of ['0', '1', '']) {
      const { page, kill } = await started()
      try {
        await page.goto(`${served.address}#/winding`)
        await computed(page)
        const turns = page.locator('#field-stator-winding-turns')
        if (typed !== '') expect(await turns.inputValue()).toBe(typed)
        await turns.press('End')
        await turns.pressSequentially(digit)
        typed = await turns.inputValue()
        await stored(page)
      } finally {
        await kill()
      }
    }
    expect(typed).toMatch(/\d+01$/)
  }, 400_000)
})
