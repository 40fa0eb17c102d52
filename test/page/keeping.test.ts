/** Checks of what keeps a design: steps back and forth, what a reload brings back, links good and hostile. */
import { deflateRawSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { exampleDocument } from '../example.ts'
import { computed, picturePath } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('keeping', undefined, { permissions: ['clipboard-read', 'clipboard-write'] })

const turns = (page: Page) => page.locator('#field-stator-winding-turns')
const title = (page: Page, name: string) => page.getByRole('heading', { level: 2, name })

describe('law: nothing that was done is lost', () => {
  check(
    'typing is one step back and one forth; an opened design is another; keys do it too',
    async (page) => {
      const first = await turns(page).inputValue()
      await turns(page).press('End')
      await turns(page).pressSequentially('5')
      await expect.poll(() => turns(page).inputValue()).toBe(`${first}5`)
      await page.locator('.file-bar select').selectOption('class-room-fan')
      await title(page, 'Class-room fan machine').waitFor()
      await page.getByRole('button', { name: 'Undo' }).click()
      await title(page, 'Hen-house lamp drum').waitFor()
      expect(await turns(page).inputValue()).toBe(`${first}5`)
      await page.keyboard.press('Control+z')
      await expect.poll(() => turns(page).inputValue()).toBe(first)
      expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
      await page.keyboard.press('Control+Shift+z')
      await expect.poll(() => turns(page).inputValue()).toBe(`${first}5`)
      await page.keyboard.press('Control+y')
      await title(page, 'Class-room fan machine').waitFor()
      await computed(page)
      await page.screenshot({ path: picturePath('keeping-desktop') })
      await page.setViewportSize({ width: 360, height: 780 })
      await page.screenshot({ path: picturePath('keeping-phone') })
      await page.reload()
      await title(page, 'Class-room fan machine').waitFor()
    },
  )
})

describe('law: a link holds the whole design', () => {
  check('copied here, opened there, and the own design can be brought back', async (page) => {
    await page.locator('.file-bar select').selectOption('boathouse-two-disc')
    await title(page, 'Boathouse two-disc machine').waitFor()
    await page.getByRole('button', { name: 'Copy a link' }).click()
    await page.getByText('A link with the whole design is copied').waitFor()
    const link = await page.evaluate(() => navigator.clipboard.readText())
    expect(link).toContain('#design=')
    await page.locator('.file-bar select').selectOption('class-room-fan')
    await title(page, 'Class-room fan machine').waitFor()
    await page.goto(link)
    await title(page, 'Boathouse two-disc machine').waitFor()
    expect(new URL(page.url()).hash).toBe('')
    const kept = () => page.evaluate(() => JSON.parse(localStorage.getItem('gustloom.document') ?? '{}'))
    expect(await kept()).toEqual(exampleDocument('boathouse-two-disc'))
    await page.getByRole('button', { name: 'Back to what I had' }).click()
    await title(page, 'Class-room fan machine').waitFor()
  })

  const hostile = (text: string) => `#design=${deflateRawSync(text).toString('base64url')}`
  check('cut off, swollen or foreign links are told, and the own design stays', async (page) => {
    const own = title(page, 'Hen-house lamp drum')
    for (const [fragment, words] of [
      [hostile('{"name": "cut"}').slice(0, -5), 'Your own design is untouched'],
      [hostile('0'.repeat(30_000_000)), 'more than any design'],
      [hostile('[1]'), 'no design'],
      ['#design=%22%3E%3Cscript%3E', 'letters that no shared design has'],
    ] as const) {
      await page.evaluate((hash) => {
        location.hash = hash
      }, fragment)
      await page.getByText(words).waitFor()
      await own.waitFor()
    }
  })
  check('a link whose design has faults is opened, and the faults are told', async (page) => {
    const document = { ...exampleDocument('class-room-fan'), name: '<img src=x onerror=alert(1)>' }
    document.rotor.poleCount = -4
    await page.evaluate(
      (hash) => {
        location.hash = hash
      },
      hostile(JSON.stringify(document)),
    )
    await page.getByText('rotor.poleCount must be').first().waitFor()
    expect(await page.locator('img').count()).toBe(0)
  })
})
