/** Checks of the fields: typed in the units that people there use, kept in the document's own, stepped, asked about. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom, picturePath } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('field')

const field = (page: Page, path: string) => page.locator(`#field-${path.replace(/[^A-Za-z0-9]+/g, '-')}`)
const row = (page: Page, path: string) => page.locator('.field', { has: field(page, path) })
const unitOf = (page: Page, path: string) => row(page, path).locator('.control .unit').innerText()
const faultOf = (page: Page, path: string) => row(page, path).locator('.fault')

/** The design as the page keeps it, and everything else it has written about it. */
const kept = (page: Page): Promise<{ document: Record<string, never>; whole: string }> =>
  page.evaluate(() => {
    const copies = Object.entries(localStorage).filter(([place]) => place.startsWith('gustloom.copy.'))
    const newest = copies
      .map(([, text]) => JSON.parse(text as string))
      .sort((a, b) => b.changedAt - a.changedAt)[0]
    return { document: newest?.document, whole: JSON.stringify(copies) }
  })

const keptAt = async (page: Page, path: string): Promise<unknown> =>
  path
    .split('.')
    .reduce<unknown>(
      (value, key) => (value as Record<string, unknown> | undefined)?.[key],
      (await kept(page)).document,
    )

async function choose(page: Page, label: string, word: string): Promise<void> {
  const settings = page.locator('.settings')
  if ((await settings.getAttribute('open')) === null) await settings.locator('summary').click()
  await settings.getByLabel(label).selectOption(word)
  await settings.locator('summary').click()
}

const width = 'rotor.magnet.width_mm'
const length = 'rotor.magnet.length_mm'
const wire = 'stator.wire.size'
const meanWind = 'site.meanWind_m_per_s'

describe('law: typed as people say it, kept as the document says it', () => {
  check('an inch and its fractions, after a reload too', async (page) => {
    await enterRoom(page, 'magnets')
    await choose(page, 'Lengths, weights, forces', 'inch and pound')
    expect(await unitOf(page, width)).toBe('in')
    await field(page, width).fill('1/4')
    await field(page, length).fill('12 mm')
    await field(page, length).blur()
    expect(await field(page, length).inputValue()).toBe('0.4724')
    expect(await keptAt(page, width)).toBe(6.35)
    expect(await keptAt(page, length)).toBe(12)
    await page.reload()
    await enterRoom(page, 'magnets')
    await field(page, width).waitFor()
    expect(await field(page, width).inputValue()).toBe('1/4')
    expect(await unitOf(page, width)).toBe('in')
    expect(await keptAt(page, width)).toBe(6.35)
  })

  check('half of what is typed is no mistake yet, and is told when the hand leaves', async (page) => {
    await enterRoom(page, 'magnets')
    const before = await keptAt(page, width)
    await field(page, width).fill('1/')
    expect(await faultOf(page, width).count()).toBe(0)
    expect(await field(page, width).inputValue()).toBe('1/')
    expect(await keptAt(page, width)).toEqual(before)
    await field(page, width).blur()
    await faultOf(page, width).waitFor()
    expect(await field(page, width).inputValue()).toBe('1/')
  })

  check('comma and point, and what could be read two ways is refused with the way out', async (page) => {
    await enterRoom(page, 'wind')
    await field(page, meanWind).fill('4,5')
    expect(await keptAt(page, meanWind)).toMatchObject({ value: 4.5 })
    await field(page, meanWind).blur()
    expect(await field(page, meanWind).inputValue()).toBe('4.5')
    for (const [text, way] of [
      ['1.234,5', 'must be a number without marks or gaps between its thousands, such as 1234.5; received'],
      ['1,200', 'type 1200 for thousands, or 1.200 for decimals; received'],
      [
        '5 kg',
        'must be a number alone or with one of these behind it: m/s, mm/s, km/h, mph, knots, in/s; received',
      ],
    ] as const) {
      await field(page, meanWind).fill(text)
      await faultOf(page, meanWind).filter({ hasText: way }).waitFor()
      expect(await faultOf(page, meanWind).innerText()).toMatch(
        /^site\.meanWind_m_per_s must be .*\(wrong-type\)$/,
      )
      expect(await field(page, meanWind).getAttribute('aria-invalid')).toBe('true')
    }
    const spread = page.getByLabel('Mean wind: give or take')
    await field(page, meanWind).fill('5')
    await spread.fill('0.5.5')
    await faultOf(page, meanWind)
      .filter({ hasText: 'site.meanWind_m_per_s.spread must be a number without' })
      .waitFor()
    await spread.fill('2 mph')
    expect(await keptAt(page, meanWind)).toMatchObject({ value: 5, spread: 0.89408 })
    await field(page, meanWind).fill('10 mph')
    await computed(page)
    expect(await keptAt(page, meanWind)).toMatchObject({ value: 4.4704 })
    await choose(page, 'Wind', 'knots')
    expect(await unitOf(page, meanWind)).toBe('knots')
    await choose(page, 'Wind', 'mph')
    expect(await field(page, meanWind).inputValue()).toBe('10')
  })

  check('wire by its gauge, and in other words beside it', async (page) => {
    await enterRoom(page, 'winding')
    await choose(page, 'Wire', 'AWG')
    await field(page, wire).fill('20')
    expect(await keptAt(page, wire)).toBe('AWG 20')
    expect(await unitOf(page, wire)).toBe('AWG')
    await row(page, wire).getByText('That is 0.8118 mm.').waitFor()
    await choose(page, 'Wire', 'mm')
    expect(await field(page, wire).inputValue()).toBe('0.8118')
    await row(page, wire).getByText('That is AWG 20.').waitFor()
    expect(await keptAt(page, wire)).toBe('AWG 20')
    await field(page, wire).press('ArrowUp')
    expect(await keptAt(page, wire)).toBe(0.85)
    await choose(page, 'Wire', 'AWG')
    await row(page, wire).getByText('The nearest gauge is AWG 20.').waitFor()
    await field(page, wire).fill('0.8')
    await faultOf(page, wire).filter({ hasText: 'must be a gauge of the tables' }).waitFor()
  })

  check('limits and faults are told in the chosen unit', async (page) => {
    await enterRoom(page, 'magnets')
    await choose(page, 'Lengths, weights, forces', 'inch and pound')
    await row(page, width).locator('.ask').click()
    await row(page, width)
      .locator('.limits')
      .filter({ hasText: / in\.$/ })
      .waitFor()
    await field(page, width).fill('-3')
    await faultOf(page, width)
      .filter({ hasText: /must be at least [\d.]+ in; received −3\.00 in/ })
      .waitFor()
  })
})

describe('law: pictures and tables count as the fields do', () => {
  check('strip, power curve and its table say mph', async (page) => {
    await choose(page, 'Lengths, weights, forces', 'inch and pound')
    await page.getByLabel('Wind, mph').fill('6')
    const chart = page.locator('.chart-power')
    await chart.locator('.axis-text', { hasText: 'wind, mph' }).waitFor()
    await page.locator('.now').getByText('13.4 mph').waitFor()
    await chart.locator('summary', { hasText: 'The same as a table' }).click()
    await chart.locator('th', { hasText: 'mph' }).first().waitFor()
    const ends = await page.locator('.strip-picture .tick-text').allTextContents()
    expect(Number(ends.at(-1))).toBeGreaterThan(25)
    await choose(page, 'Wind', 'm/s')
    await chart.locator('.axis-text', { hasText: 'wind, m/s' }).waitFor()
  })
})

describe('law: the choice of units never changes the document', () => {
  check('a hundred times there and back', async (page) => {
    await enterRoom(page, 'magnets')
    // one edit, so that the page holds a copy of its own
    await field(page, width).fill('11.3')
    await computed(page)
    const shown = () =>
      page.locator('.form input').evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value))
    const [before, metric] = [await kept(page), await shown()]
    await page.locator('.settings summary').click()
    const system = page.locator('.settings').getByLabel('Lengths, weights, forces')
    for (let round = 0; round < 100; round++) {
      await system.selectOption('inch and pound')
      if (round === 0) expect(await shown()).not.toEqual(metric)
      await system.selectOption('metric')
    }
    expect(await shown()).toEqual(metric)
    expect(await kept(page)).toEqual(before)
  })
})

describe('law: keys and held buttons step', () => {
  check('up, down, and ten times with shift, within the bounds', async (page) => {
    await enterRoom(page, 'winding')
    const turns = field(page, 'stator.winding.turns')
    await turns.fill('30')
    await turns.press('ArrowUp')
    expect(await turns.inputValue()).toBe('31')
    await turns.press('Shift+ArrowUp')
    expect(await turns.inputValue()).toBe('41')
    await turns.press('ArrowDown')
    expect(await keptAt(page, 'stator.winding.turns')).toBe(40)
    for (let k = 0; k < 6; k++) await turns.press('PageDown')
    expect(await turns.inputValue()).toBe('1')
    expect(await turns.getAttribute('aria-valuenow')).toBe('1')
    await enterRoom(page, 'wind')
    const wind = field(page, meanWind)
    await wind.fill('4.2')
    await wind.press('ArrowDown')
    expect(await wind.inputValue()).toBe('4.1')
    // what is said of the number beside it stays
    expect(await keptAt(page, meanWind)).toMatchObject({ value: 4.1, known: 'guessed' })
  })

  check(
    'buttons for gloves: tapped once, held for more, wide enough',
    async (page) => {
      await page.locator('.stretch-head', { hasText: 'Winding' }).click()
      const turns = field(page, 'stator.winding.turns')
      await turns.fill('30')
      const more = row(page, 'stator.winding.turns').getByRole('button', { name: 'Turns: more' })
      await more.tap()
      expect(await turns.inputValue()).toBe('31')
      const box = (await more.boundingBox())!
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44)
      await more.dispatchEvent('pointerdown')
      await expect.poll(async () => Number(await turns.inputValue())).toBeGreaterThan(33)
      await more.dispatchEvent('pointerup')
      const small = await page.locator('.form').evaluateAll((forms) =>
        forms
          .flatMap((form) => [...form.querySelectorAll('button, select, input, summary')])
          .filter((each) => each.checkVisibility())
          .map((each) => ({
            name: each.getAttribute('aria-label') ?? each.id ?? each.textContent,
            box: each.getBoundingClientRect(),
          }))
          .filter(({ box }) => box.width < 44 || box.height < 44)
          .map(({ name, box }) => `${name} ${box.width} × ${box.height}`),
      )
      expect(small).toEqual([])
      await page.screenshot({ path: picturePath('field-phone') })
    },
    { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, colorScheme: 'dark' },
  )
})

describe('law: the guess that bears most is named where it stands', () => {
  check('with its share of the year’s spread, and with what else it moves when asked', async (page) => {
    await enterRoom(page, 'wind')
    const bears = page.locator('.bears')
    await bears.waitFor()
    expect(await bears.innerText()).toMatch(/^Bears \d+ % of how unsure the year is\.$/)
    expect(await row(page, meanWind).locator('.bears').count()).toBe(1)
    await row(page, meanWind).getByRole('button', { name: 'What is this: Mean wind' }).click()
    await row(page, meanWind)
      .getByText(/^Its part in how unsure they are: energy of a year \d+ %/)
      .waitFor()
    await row(page, meanWind).getByText('From 0.1 to 25 m/s.').waitFor()
    const described = await field(page, meanWind).getAttribute('aria-describedby')
    for (const id of described!.split(' ')) expect(await page.locator(`#${id}`).count(), id).toBe(1)
    await page.screenshot({ path: picturePath('field-desktop') })
  })
})

describe('source: wcag22, levels A and AA — fields break no rule that a reader of pages can tell', () => {
  for (const [name, viewport, colorScheme] of [
    ['desktop', { width: 1280, height: 900 }, 'light'],
    ['phone', { width: 360, height: 740 }, 'dark'],
  ] as const)
    check(
      `${name}, ${colorScheme}`,
      async (page) => {
        if (name === 'phone') await page.locator('.stretch-head', { hasText: 'Winding' }).click()
        else await enterRoom(page, 'winding')
        await choose(page, 'Lengths, weights, forces', 'inch and pound')
        for (const part of [
          '.form .rare:not([open]) > summary',
          '.form .ask',
          '.form .spread-button:enabled',
        ])
          await page.locator(part).evaluateAll((all) => {
            for (const each of all) (each as HTMLElement).click()
          })
        await field(page, 'stator.leadLength_m').fill('1,200')
        await page.locator('.form .fault').first().waitFor()
        const { violations } = await new AxeBuilder({ page })
          .include('.form')
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze()
        expect(
          violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`)),
        ).toEqual([])
        const [wide, seen] = await page.evaluate(
          () => [document.documentElement.scrollWidth, innerWidth] as const,
        )
        expect(wide).toBeLessThanOrEqual(seen)
      },
      { viewport, colorScheme },
    )
})
