/** Checks of the choice of language in a browser: words and numbers of the whole page follow it, a visit after it begins with it. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { computed, enterRoom, settled } from './browser.ts'
import { pageCheck } from './page-check.ts'

const check = pageCheck('language')

async function choose(page: Page, name: 'Deutsch' | 'English'): Promise<void> {
  await page.locator('details.settings').evaluate((place: HTMLDetailsElement) => {
    place.open = true
  })
  await page.locator('.language-choice select').selectOption({ label: name })
  await page.locator(`html[lang="${name === 'Deutsch' ? 'de' : 'en'}"]`).waitFor()
  await settled(page)
}

/** Everything that stands in a part of the page, what is only read aloud with it. */
const told = (page: Page, place: string): Promise<string> =>
  page
    .locator(place)
    .first()
    .evaluate((part) =>
      [
        part.textContent,
        ...[part, ...part.querySelectorAll('[aria-label]')].map((each) => each.getAttribute('aria-label')),
      ].join(' '),
    )

const pointNumber = /\d\.\d/
const commaNumber = /\d,\d/

describe('law: the page speaks the language that is chosen', () => {
  check(
    'words and decimal commas follow in river, strip, fields, concerns, charts and their files',
    async (page) => {
      const english = await told(page, 'section.strip')
      await choose(page, 'Deutsch')
      const river = await told(page, '.chart-river')
      expect(river).toMatch(/Wohin die Watt gehen.*Welle.*Wicklung/s)
      expect(river).toMatch(commaNumber)
      expect(river).not.toMatch(pointNumber)
      const strip = await told(page, 'section.strip')
      expect(strip).not.toBe(english)
      expect(strip).toMatch(/Wind/)
      expect(strip).toMatch(commaNumber)
      expect(strip).not.toMatch(pointNumber)

      await enterRoom(page, 'winding')
      await page.getByLabel('Windungen', { exact: true }).waitFor()
      expect(await page.getByLabel('Turns', { exact: true }).count()).toBe(0)
      const diagram = page.locator('.chart-winding-diagram')
      await diagram.locator('svg.picture').waitFor()
      expect(await told(page, '.chart-winding-diagram svg.picture')).toMatch(/Anfang.*Pfeile/s)
      const temperature = await told(page, '.chart-temperature')
      expect(temperature).toMatch(/Temperaturen nach Wind/)
      expect(temperature).toMatch(/heißeste Stelle/)

      const download = page.waitForEvent('download')
      await page.locator('.chart-temperature .take-along-kind').last().click()
      const csv = readFileSync(await (await download).path(), 'utf8')
      expect(csv).toMatch(/Wind.*heißeste Stelle/)
      // a file is read by programs: its numbers keep their points
      expect(csv).toMatch(/\r?\n\d+(\.\d+)?,/)

      await enterRoom(page, 'whole')
      const concern = await told(page, '.concern-line')
      expect(concern).toMatch(/\b(?:der|die|das|ist|nicht|und)\b/i)
      expect(concern).not.toMatch(/\b(?:the|not|and|with)\b/)
    },
  )

  check('a fault is told in it, with the name of its field as it stands in the document', async (page) => {
    await choose(page, 'Deutsch')
    await enterRoom(page, 'wind')
    await page.locator('#field-site-meanWind-m-per-s').fill('-3')
    const fault = page.locator('#field-site-meanWind-m-per-s-fault')
    await fault.waitFor()
    expect(await fault.textContent()).toMatch(
      /^site\.meanWind_m_per_s\S* muss sein: mindestens 0,1 m\/s; erhalten: /,
    )
  })

  check('a reload keeps it, without a network too, and English comes back word for word', async (page) => {
    const names = () => page.locator('.figures dt').allInnerTexts()
    await page.locator('.figures dt').first().waitFor()
    const english = await names()
    expect(english.length).toBeGreaterThan(4)
    await choose(page, 'Deutsch')
    const german = await names()
    expect(german.filter((name) => english.includes(name))).toEqual([])
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    await page.context().setOffline(true)
    await page.reload()
    await computed(page)
    await page.locator('html[lang="de"]').waitFor()
    await settled(page)
    expect(await names()).toEqual(german)
    await choose(page, 'English')
    expect(await names()).toEqual(english)
    await page.context().setOffline(false)
  })

  check('whoever reads English fetches no German, whoever chooses it every part of it', async (page) => {
    const german = () =>
      page.evaluate(() =>
        performance
          .getEntriesByType('resource')
          .map(({ name }) => /_german_(\w+)-/.exec(name)?.[1])
          .filter((part) => part !== undefined)
          .sort(),
      )
    expect(await german()).toEqual([])
    await choose(page, 'Deutsch')
    await expect.poll(german).toEqual(['concern', 'first', 'rest'])
  })

  check(
    'a first visit begins with the language of the browser',
    async (page) => {
      expect(await page.evaluate(() => document.documentElement.lang)).toBe('de')
      expect(await told(page, '.chart-river')).toMatch(/Wohin die Watt gehen/)
    },
    { locale: 'de-AT' },
  )
})
