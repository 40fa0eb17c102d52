/** Checks of ways through the page: the first minute, by keys alone, by thumb on a phone, magnified, and at rest. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  computed,
  enterRoom,
  launchBrowser,
  openPage,
  roomKeys,
  type Served,
  servePage,
  settled,
} from './browser.ts'
import { sideways } from './violation.ts'

let browser: Browser
let served: Served

beforeAll(async () => {
  served = await servePage('journey')
  browser = await launchBrowser()
}, 300_000)

afterAll(async () => {
  await browser?.close()
  await served?.stop()
})

/** A page that a check walks through, with nothing to complain of at the end. */
const way = (
  title: string,
  walk: (page: Page) => Promise<void>,
  options: BrowserContextOptions = {},
  address = '#/whole',
) =>
  test(title, async () => {
    const { page, close, complaints, strangers } = await openPage(
      browser,
      `${served.address}${address}`,
      options,
    )
    try {
      await walk(page)
      expect(complaints.filter((line) => !line.includes('GL Driver Message'))).toEqual([])
      expect(strangers).toEqual([])
    } finally {
      await close()
    }
  }, 400_000)

const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } as const

const open = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => /room-(\w+)/.exec(document.getElementById('room')?.className ?? '')?.[1])

describe('law: within one press a machine with numbers', () => {
  way(
    'a first visit, one press, a machine taken, turned by hand',
    async (page) => {
      const begun = Date.now()
      await page.locator('.room-begin .first-machine').waitFor()
      await page.getByRole('button', { name: 'Give me a first machine' }).click()
      const card = page.locator('.first-card').first()
      await card.waitFor({ timeout: 300_000 })
      const shown = Date.now()
      expect(await card.innerText()).toMatch(/\d kWh/)
      await card.getByRole('button', { name: /^Take this one/ }).click()
      await page.locator('.room-whole').waitFor()
      await page.locator('.figures b').filter({ hasText: 'kWh' }).waitFor()
      await computed(page)
      expect(await page.locator('.fault-summary').count()).toBe(0)
      await page.getByRole('navigation', { name: 'Benches' }).getByText('Turn it by hand').click()
      await page.locator('.turn-figure').waitFor()
      expect(await page.locator('.turn-figure').innerText()).toMatch(/^[\d.]+ m?V$/)
      const seconds = (to: number) => ((to - begun) / 1000).toFixed(1)
      console.log(
        `first card after ${seconds(shown)} s, its volts turned by hand after ${seconds(Date.now())} s`,
      )
    },
    {},
    '#',
  )
})

interface Focused {
  readonly what: string
  readonly outlined: boolean
  readonly seen: boolean
}

/** What has the focus, whether it shows that, and whether it is in sight and not under what is stuck over the page. */
const focused = (page: Page): Promise<Focused> =>
  page.evaluate(() => {
    const element = document.activeElement
    if (element === null || element === document.body) return { what: '', outlined: false, seen: false }
    const { outlineStyle, outlineWidth } = getComputedStyle(element)
    const box = element.getBoundingClientRect()
    const parts = [0.1, 0.5, 0.9].map((share) =>
      document.elementFromPoint(
        Math.min(innerWidth - 1, Math.max(0, box.left + box.width * share)),
        Math.min(innerHeight - 1, Math.max(0, box.top + box.height / 2)),
      ),
    )
    const place = element.closest('label') ?? element
    return {
      what: `${element.localName}#${element.id} ${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40)}`,
      outlined: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
      seen:
        box.bottom > 0 &&
        box.top < innerHeight &&
        parts.some((part) => part !== null && (place.contains(part) || part.contains(element))),
    }
  })

describe('law: keys alone are enough', () => {
  way('skip link, river, strip, a field, undo', async (page) => {
    await computed(page)
    await page.keyboard.press('Tab')
    expect((await focused(page)).what).toContain('Skip to the open room')
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('room')
    // the address still says which room is open
    expect(await page.evaluate(() => location.hash)).toBe('#/whole')

    const station = page.locator('.river-station a', { hasText: 'Winding' })
    await station.focus()
    await page.keyboard.press('Enter')
    await page.locator('.room-winding').waitFor()
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('room')
    await page.goBack()
    await page.locator('.room-whole').waitFor()
    await page.goForward()
    await page.locator('.room-winding').waitFor()

    await page.locator('#wind').focus()
    const wind = async () => Number(await page.locator('#wind').inputValue())
    const before = await wind()
    await page.keyboard.press('ArrowRight')
    expect(await wind()).toBeGreaterThan(before)
    await page
      .locator('.now dd')
      .first()
      .getByText(`${await wind()} m/s`)
      .waitFor()
    await page.keyboard.press('Home')
    await page.keyboard.press('End')
    expect(await wind()).toBeGreaterThan(before + 1)
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('wind')

    const turns = page.getByLabel('Turns', { exact: true }).first()
    await turns.focus()
    const kept = await turns.inputValue()
    await page.keyboard.press('Control+A')
    await page.keyboard.type('33')
    await computed(page)
    // the focus stays where the hand is while numbers come and go
    expect(await page.evaluate(() => document.activeElement?.id)).toBe(await turns.getAttribute('id'))
    await page.keyboard.press('Tab')
    await page.keyboard.press('Control+z')
    await expect.poll(() => turns.inputValue()).toBe(kept)
    expect((await focused(page)).what).not.toBe('')
  })

  way('a concern is opened, and its remedies are tried and stopped', async (page) => {
    await computed(page)
    await enterRoom(page, 'winding')
    const concern = page
      .locator('.concern')
      .filter({ has: page.locator('.helps') })
      .first()
    await concern.locator('summary').first().focus()
    await page.keyboard.press('Enter')
    const trying = concern.getByRole('button', { name: /^Try what helps/ })
    await trying.focus()
    await page.keyboard.press('Enter')
    const stop = concern.getByRole('button', { name: 'Stop', exact: true })
    await stop.focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => concern.locator('progress').count()).toBe(0)
    // the button that was pressed is gone; the focus is not
    await expect.poll(async () => (await focused(page)).what).not.toBe('')
  })

  way('in every room Tab leads from the top to the end, each step visible, none lost', async (page) => {
    await computed(page)
    const lost: string[] = []
    for (const room of roomKeys) {
      await enterRoom(page, room)
      await settled(page)
      await page.evaluate(() => {
        scrollTo(0, 0)
        ;(document.activeElement as HTMLElement | null)?.blur()
        document.querySelector<HTMLElement>('.skip')?.focus()
      })
      let last = ''
      for (let k = 0; k < 400; k++) {
        const { what, outlined, seen } = await focused(page)
        if (what === '') break
        if (!outlined || !seen)
          lost.push(`${room}: ${what} ${outlined ? 'is out of sight' : 'does not show its focus'}`)
        last = what
        await page.keyboard.press('Tab')
      }
      expect(last, room).not.toBe('')
      expect((await focused(page)).what, `${room}: no way out after ${last}`).toBe('')
    }
    expect([...new Set(lost)]).toEqual([])
  })
})

/** Visible controls that a finger has to hit, smaller than that either way [px]. */
const tooSmall = (page: Page, least: number): Promise<string[]> =>
  page.evaluate((side) => {
    const small: string[] = []
    for (const element of document.querySelectorAll<HTMLElement>(
      'button, a[href], input, select, textarea, summary',
    )) {
      if (!element.checkVisibility({ visibilityProperty: true })) continue
      // what is only read by ear is not hit by a finger; a label is part of its control
      const around = element.closest('label')
      const laid = getComputedStyle(element, '::after')
      // some are spread over the cell that they stand in
      const cell = laid.content !== 'none' && laid.position === 'absolute' ? element.offsetParent : null
      const boxes = [element, around, cell]
        .filter((each) => each !== null)
        .map((each) => each.getBoundingClientRect())
      const [wide, tall] = [
        Math.max(...boxes.map(({ width }) => width)),
        Math.max(...boxes.map(({ height }) => height)),
      ]
      if (boxes[0]!.width <= 1 && boxes.length === 1) continue
      // a link within a sentence may be as high as its line
      if (element.localName === 'a' && element.closest('p') !== null) continue
      if (wide < side - 0.5 || tall < side - 0.5)
        small.push(
          `${element.localName}.${element.className} ${(element.getAttribute('aria-label') ?? element.textContent ?? element.id).trim().slice(0, 30)}: ${Math.round(wide)} × ${Math.round(tall)}`,
        )
    }
    return [...new Set(small)]
  }, least)

describe('law: a thumb is enough', () => {
  way(
    'the river runs down, a room opens in it, a field is changed, the strip is at hand',
    async (page) => {
      await computed(page)
      const heads = page.locator('.stretch-head')
      expect(await heads.count()).toBe(8)
      const tops = await heads.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().top))
      expect(tops.every((top, k) => k === 0 || top > tops[k - 1]!)).toBe(true)
      const winding = heads.filter({ hasText: 'Winding' })
      await winding.tap()
      await page.locator('.stretch.is-open .room-winding').waitFor()
      expect(await winding.getAttribute('aria-expanded')).toBe('true')
      // what was opened is under the thumb
      await expect
        .poll(() => winding.evaluate((element) => element.getBoundingClientRect().top))
        .toBeLessThan(300)
      const turns = page.getByLabel('Turns', { exact: true }).first()
      const more = page.getByRole('button', { name: 'Turns: more' })
      const before = Number(await turns.inputValue())
      await more.tap()
      await expect.poll(async () => Number(await turns.inputValue())).toBeGreaterThan(before)
      await computed(page)
      // the strip is stuck at the bottom wherever one is
      const strip = page.locator('.strip')
      for (const at of [0, 1000, 100_000]) {
        await page.evaluate((y) => scrollTo(0, y), at)
        const { bottom, top } = await strip.evaluate((element) => {
          const box = element.getBoundingClientRect()
          return { bottom: Math.round(innerHeight - box.bottom), top: box.top / innerHeight }
        })
        expect(bottom).toBe(0)
        expect(top).toBeGreaterThan(0.7)
      }
      const box = (await page.locator('#wind').boundingBox())!
      const was = await page.locator('#wind').inputValue()
      await page.touchscreen.tap(box.x + box.width * 0.8, box.y + box.height / 2)
      await expect.poll(() => page.locator('#wind').inputValue()).not.toBe(was)
      await winding.tap()
      await page.locator('.room-whole').waitFor()
    },
    phone,
  )

  way(
    'whatever can be pressed is at least 44 px either way, in every room',
    async (page) => {
      await computed(page)
      const small: Record<string, string[]> = {}
      for (const room of roomKeys) {
        await enterRoom(page, room)
        await settled(page)
        const found = await tooSmall(page, 44)
        if (found.length > 0) small[room] = found
      }
      expect(small).toEqual({})
    },
    phone,
  )
})

describe('law: magnified twice, nothing runs off sideways', () => {
  for (const [name, viewport, deviceScaleFactor] of [
    ['a desk of 1280 px at 200 %', { width: 640, height: 450 }, 2],
    ['a phone of 640 px at 200 %', { width: 320, height: 640 }, 2],
  ] as const)
    way(
      name,
      async (page) => {
        await computed(page)
        const wide: string[] = []
        for (const room of roomKeys) {
          await enterRoom(page, room)
          await settled(page)
          const over = await sideways(page)
          if (over > 0) wide.push(`${room}: ${over} px`)
        }
        expect(wide).toEqual([])
      },
      { viewport, deviceScaleFactor },
    )
})

/** Names of what moves by itself. */
const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    document
      .getAnimations()
      .filter(({ playState }) => playState === 'running')
      .map((animation) => (animation instanceof CSSAnimation ? animation.animationName : animation.id)),
  )

describe('law: whoever asked for rest gets it', () => {
  way(
    'nothing moves by itself in any room',
    async (page) => {
      await computed(page)
      for (const room of roomKeys) {
        await enterRoom(page, room)
        await settled(page)
        expect(await moving(page), room).toEqual([])
      }
      expect(await page.getByLabel('turning', { exact: true }).isChecked()).toBe(false)
    },
    { reducedMotion: 'reduce' },
    '#/winding',
  )
  way(
    'for everybody else the river flows, which shows that moving would be found',
    async (page) => {
      await computed(page)
      expect(await moving(page)).toContain('flow')
    },
    { reducedMotion: 'no-preference' },
  )
})

describe('law: every room has a way in', () => {
  way(
    'the links of river and benches lead to all rooms that the checks know, and to no others',
    async (page) => {
      await computed(page)
      const linked = await page
        .locator('.river-station a, .benches a')
        .evaluateAll((all) => all.map((link) => link.getAttribute('href')!.replace('#/', '')))
      expect([...linked].sort()).toEqual([...roomKeys].sort())
      for (const key of linked) {
        await page.locator(`.river-station a[href="#/${key}"], .benches a[href="#/${key}"]`).first().click()
        await expect.poll(() => open(page)).toBe(key)
        if (key === 'begin') await enterRoom(page, 'whole')
      }
    },
  )
})
