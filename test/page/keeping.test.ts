/** Checks of what keeps a design: steps back and forth, what a reload or a dead tab brings back, the shelf, links. */
import { readFileSync } from 'node:fs'
import { deflateRawSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { exampleDocument, exampleText } from '../example.ts'
import { computed, enterRoom, picturePath } from './browser.ts'
import { keptDesign, plantFormer } from './kept-design.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('keeping', undefined, { permissions: ['clipboard-read', 'clipboard-write'] })

const turns = (page: Page) => page.locator('#field-stator-winding-turns')
const named = (page: Page, name: string) => page.locator('.design-name').getByText(name, { exact: true })
const openExample = async (page: Page, key: string): Promise<void> => {
  await page.locator('.design-menu select').selectOption(key)
}
const typeTurns = async (page: Page, digit: string): Promise<void> => {
  await turns(page).press('End')
  await turns(page).pressSequentially(digit)
}
const shelved = (page: Page, name: string) =>
  page.locator('.shelved').filter({ has: page.getByRole('heading', { name }) })
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

describe('law: nothing that was done is lost', () => {
  check(
    'typing is one step back and one forth; an opened design is another; keys do it too; a reload keeps it',
    async (page) => {
      await enterRoom(page, 'winding')
      const first = await turns(page).inputValue()
      await typeTurns(page, '5')
      await expect.poll(() => turns(page).inputValue()).toBe(`${first}5`)
      await openExample(page, 'class-room-fan')
      await named(page, 'Class-room fan machine').waitFor()
      await press(page, 'Undo')
      await named(page, 'Hen-house lamp drum').waitFor()
      expect(await turns(page).inputValue()).toBe(`${first}5`)
      await page.keyboard.press('Control+z')
      await expect.poll(() => turns(page).inputValue()).toBe(first)
      expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
      await page.keyboard.press('Control+Shift+z')
      await expect.poll(() => turns(page).inputValue()).toBe(`${first}5`)
      await page.keyboard.press('Control+z')
      await expect.poll(() => turns(page).inputValue()).toBe(first)
      await page.reload()
      await computed(page)
      expect(await turns(page).inputValue()).toBe(first)
      await openExample(page, 'class-room-fan')
      await named(page, 'Class-room fan machine').waitFor()
      await computed(page)
      await page.screenshot({ path: picturePath('keeping-desktop') })
      await page.setViewportSize({ width: 360, height: 780 })
      await page.screenshot({ path: picturePath('keeping-phone') })
      await page.reload()
      await named(page, 'Class-room fan machine').waitFor()
    },
  )

  check('a tab that dies while somebody types has the typing when it is opened again', async (page) => {
    await enterRoom(page, 'winding')
    const first = await turns(page).inputValue()
    await typeTurns(page, '7')
    await expect.poll(() => turns(page).inputValue()).toBe(`${first}7`)
    await page.waitForTimeout(50)
    const died = page.waitForEvent('crash')
    const remote = await page.context().newCDPSession(page)
    void remote.send('Page.crash').catch(() => {})
    await died
    const again = await page.context().newPage()
    await again.goto(page.url())
    await turns(again).waitFor()
    expect(await turns(again).inputValue()).toBe(`${first}7`)
    await computed(again)
    await enterRoom(again, 'shelf')
    await shelved(again, 'Hen-house lamp drum').waitFor()
    expect(await again.locator('.shelved').count()).toBe(1)
  })

  check('what pages before the shelf kept goes on the shelf, once', async (page) => {
    await plantFormer(page, JSON.stringify({ ...exampleDocument('class-room-fan'), name: 'Of old' }))
    await page.reload()
    await named(page, 'Of old').waitFor()
    for (let again = 0; again < 2; again++) {
      await page.reload()
      await named(page, 'Of old').waitFor()
    }
    await enterRoom(page, 'shelf')
    await shelved(page, 'Of old').waitFor()
    expect(await page.locator('.shelved').count()).toBe(1)
    expect(await page.evaluate(() => localStorage.getItem('gustloom.document'))).toBeNull()
  })

  check('without the small store the shelf alone brings the design back', async (page) => {
    await enterRoom(page, 'winding')
    const first = await turns(page).inputValue()
    await typeTurns(page, '3')
    await enterRoom(page, 'shelf')
    await shelved(page, 'Hen-house lamp drum').waitFor()
    await page.evaluate(() =>
      addEventListener('pagehide', () => {
        localStorage.clear()
        sessionStorage.clear()
      }),
    )
    await page.reload()
    await computed(page)
    await enterRoom(page, 'winding')
    await expect.poll(() => turns(page).inputValue()).toBe(`${first}3`)
  })
})

describe('law: two windows lose nothing of each other', () => {
  check('each is told of the other, and the state written over is a version', async (page) => {
    await enterRoom(page, 'winding')
    await typeTurns(page, '1')
    const mine = await turns(page).inputValue()
    await enterRoom(page, 'shelf')
    await shelved(page, 'Hen-house lamp drum').waitFor()
    const other = await page.context().newPage()
    await other.goto(page.url())
    await enterRoom(other, 'winding')
    await computed(other)
    expect(await turns(other).inputValue()).toBe(mine)
    await typeTurns(other, '2')
    await page.getByText('Another window changed this design').waitFor()
    await enterRoom(page, 'winding')
    await typeTurns(page, '3')
    await page.getByText('Its state is kept among the versions').waitFor()
    await other.getByText('Another window changed this design').waitFor()
    await other.getByRole('button', { name: 'Show the other state here' }).click()
    await expect.poll(() => turns(other).inputValue()).toBe(`${mine}3`)
    await enterRoom(page, 'shelf')
    await press(page, 'Manage Hen-house lamp drum')
    await page.getByText('as another window had it').first().waitFor()
    await other.close()
  })
})

describe('law: several designs on the shelf', () => {
  const made = async (page: Page): Promise<void> => {
    await openExample(page, 'class-room-fan')
    await enterRoom(page, 'winding')
    await typeTurns(page, '1')
    await enterRoom(page, 'shelf')
    await shelved(page, 'Class-room fan machine').waitFor()
  }

  check('renamed, doubled, opened, put aside, brought back, cleared in two steps', async (page) => {
    await made(page)
    await press(page, 'Manage Class-room fan machine')
    await page.getByLabel('Name', { exact: true }).fill('Fan <b>A</b>')
    await press(page, 'Rename')
    await named(page, 'Fan <b>A</b>').waitFor()
    await press(page, 'Duplicate')
    await shelved(page, 'Fan <b>A</b>, copy').waitFor()
    expect(await page.locator('.shelved b').count()).toBe(0)
    await press(page, 'Open Fan <b>A</b>, copy')
    await named(page, 'Fan <b>A</b>, copy').waitFor()
    await page.locator('.shelved').filter({ hasText: 'open now' }).getByText('Fan <b>A</b>, copy').waitFor()
    await press(page, 'Put aside')
    await press(page, 'Clear Fan <b>A</b> …')
    await press(page, 'Keep it')
    await press(page, 'Bring back Fan <b>A</b>')
    await press(page, 'Manage Fan <b>A</b>')
    await press(page, 'Put aside')
    await press(page, 'Clear Fan <b>A</b> …')
    await press(page, 'Clear for good')
    await expect.poll(() => page.locator('.shelved').count()).toBe(1)
    await page.reload()
    await named(page, 'Fan <b>A</b>, copy').waitFor()
    expect(await page.locator('.shelved').count()).toBeLessThan(2)
  })

  check('an older version comes back, and what it took the place of is a version itself', async (page) => {
    await made(page)
    const text = exampleText('class-room-fan')
    expect((await keptDesign(page)).stator.winding.turns).not.toBe(JSON.parse(text).stator.winding.turns)
    await press(page, 'Manage Class-room fan machine')
    await page.getByText('as it was opened').waitFor()
    await page.getByRole('button', { name: /^Go back to the version of/ }).click()
    await page.getByText('before an older version was brought back').waitFor()
    expect(await keptDesign(page)).toEqual(exampleDocument('class-room-fan'))
    await press(page, 'Undo')
    await expect
      .poll(async () => (await keptDesign(page)).stator.winding.turns)
      .not.toBe(JSON.parse(text).stator.winding.turns)
  })

  check('all go into one file and come out of it; bad files are told, the good ones taken', async (page) => {
    await made(page)
    const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save all as one file')])
    const file = readFileSync(await download.path())
    const bringIn = page.locator('.shelf input[type=file]')
    const json = (name: string, buffer: Buffer) => ({ name, mimeType: 'application/json', buffer })
    await bringIn.setInputFiles([
      json('shelf.json', file),
      json('broken.json', Buffer.from('{"name": ')),
      json('two-disc.json', Buffer.from(exampleText('boathouse-two-disc'))),
      json('later.json', Buffer.from('{"gustloom": 99}')),
    ])
    await page.getByText('One design was put on the shelf.').waitFor()
    await page.getByText('One design was there already, the same in every field.').waitFor()
    await page.getByText('broken.json must be JSON').waitFor()
    await page.getByText('later.json must be the version number').waitFor()
    await shelved(page, 'Boathouse two-disc machine').waitFor()
    await press(page, 'Open Boathouse two-disc machine')
    await named(page, 'Boathouse two-disc machine').waitFor()
    await press(page, 'Manage Class-room fan machine')
    await press(page, 'Put aside')
    await press(page, 'Clear Class-room fan machine …')
    await press(page, 'Clear for good')
    await expect.poll(() => page.locator('.shelved').count()).toBe(1)
    await bringIn.setInputFiles([json('shelf.json', file)])
    await press(page, 'Manage Class-room fan machine')
    await page.getByText('as it was opened').waitFor()
  })

  check('files may be dropped', async (page) => {
    await enterRoom(page, 'shelf')
    await page.locator('.shelf').waitFor()
    const carried = await page.evaluateHandle((text) => {
      const carrier = new DataTransfer()
      carrier.items.add(new File([text], 'dropped.json', { type: 'application/json' }))
      return carrier
    }, exampleText('boathouse-two-disc'))
    await page.locator('.shelf').dispatchEvent('drop', { dataTransfer: carried })
    await shelved(page, 'Boathouse two-disc machine').waitFor()
  })
})

describe('law: where the browser has no room left, the person is told and the design goes on', () => {
  check('told with the remedy, computed all the same, kept again once there is room', async (page) => {
    await enterRoom(page, 'winding')
    const first = await turns(page).inputValue()
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('the room is used up', 'QuotaExceededError')
      }
      addEventListener('room', () => {
        IDBObjectStore.prototype.put = put
        localStorage.removeItem('filler')
      })
    })
    await typeTurns(page, '1')
    const told = page.getByRole('alert')
    await told.getByText('kept in a stopgap only. Save the design as a file now').waitFor()
    await computed(page)
    expect(String((await keptDesign(page)).stator.winding.turns)).toBe(`${first}1`)
    await page.evaluate(() => {
      for (let length = 4_000_000; length > 0; length = Math.floor(length / 2))
        try {
          for (;;)
            localStorage.setItem('filler', `${localStorage.getItem('filler') ?? ''}${'x'.repeat(length)}`)
        } catch {
          // a smaller piece may still fit
        }
    })
    await typeTurns(page, '2')
    await told.getByText('Your last change is not kept on this machine').waitFor()
    await page.locator('.status.done, .status.wrong').waitFor()
    expect(await turns(page).inputValue()).toBe(`${first}12`)
    await page.evaluate(() => dispatchEvent(new Event('room')))
    await press(page, 'Undo')
    await told.waitFor({ state: 'detached' })
    expect(String((await keptDesign(page)).stator.winding.turns)).toBe(await turns(page).inputValue())
  })
})

describe('law: a link holds the whole design', () => {
  check('copied here, opened there, and the own design can be brought back', async (page) => {
    await openExample(page, 'boathouse-two-disc')
    await named(page, 'Boathouse two-disc machine').waitFor()
    await press(page, 'Copy a link')
    const told = page.getByText('A link with the whole design is copied')
    await told.waitFor()
    const link = await page.evaluate(() => navigator.clipboard.readText())
    expect(link).toContain('#design=')
    expect(await told.textContent()).toContain(`${link.length} letters long`)
    await openExample(page, 'class-room-fan')
    await named(page, 'Class-room fan machine').waitFor()
    await page.goto(link)
    await named(page, 'Boathouse two-disc machine').waitFor()
    expect(page.url()).not.toContain('design=')
    expect(await keptDesign(page)).toEqual(exampleDocument('boathouse-two-disc'))
    await press(page, 'Undo')
    await named(page, 'Class-room fan machine').waitFor()
  })

  const hostile = (text: string) => `#design=${deflateRawSync(text).toString('base64url')}`
  const open = (page: Page, fragment: string) =>
    page.evaluate((hash) => {
      location.hash = hash
    }, fragment)

  check('cut off, swollen or foreign links are told, and the own design stays', async (page) => {
    const own = named(page, 'Hen-house lamp drum')
    for (const [fragment, words] of [
      [hostile('{"name": "cut"}').slice(0, -5), '(wrong-length). Your own design is untouched.'],
      [hostile('0'.repeat(30_000_000)), 'must unpack to at most'],
      [`#design=${'A'.repeat(200_000)}`, 'letters long; received 200000 letters (too-large)'],
      [hostile('[1]'), 'must be an object; received a list (wrong-type)'],
      [hostile('{"gustloom": 2,'), '(not-json)'],
      [hostile('{"gustloom": 2, "rotor": {"__proto__": {"poleCount": 4}}}'), '(unknown-key)'],
      [hostile(`${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`), '(too-deep)'],
      [hostile('{"gustloom": 99}'), 'received 99 (unknown-version)'],
      ['#design=%22%3E%3Cscript%3E', 'must be made of the letters of a shared design'],
    ] as const) {
      await open(page, fragment)
      await page.locator('.notice').getByText(words).waitFor()
      await own.waitFor()
      expect(page.url()).not.toContain('design=')
    }
    await computed(page)
  })

  check(
    'a link whose design has faults is opened, its faults are told, its name stays letters',
    async (page) => {
      const document = { ...exampleDocument('class-room-fan'), name: '<img src=x onerror=alert(1)>' }
      document.rotor.poleCount = -4
      await open(page, hostile(JSON.stringify(document)))
      await page.getByText('rotor.poleCount must be').first().waitFor()
      await named(page, '<img src=x onerror=alert(1)>').waitFor()
      await enterRoom(page, 'shelf')
      await shelved(page, '<img src=x onerror=alert(1)>').waitFor()
      expect(await page.locator('img').count()).toBe(0)
    },
  )
})
