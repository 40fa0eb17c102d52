/** Checks of the rooms of bridge, cable, store and winding: the engine's own numbers, a wire taken and given back, open to all. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { bridgeDuty } from '../../src/analysis/bridge-duty.ts'
import { dumpDuty } from '../../src/analysis/dump-duty.ts'
import { heatWays } from '../../src/analysis/heat-way.ts'
import { finished, wireChoices } from '../../src/index.ts'
import { safetyReport } from '../../src/output/safety-report.ts'
import { formatNumber, formatSi, formatSpread } from '../../src/units/format.ts'
import { exampleChain } from '../example.ts'
import { computed, enterRoom, openFolds } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { sideways, violations } from './violation.ts'

const check = pageCheck('power')

/** The design that a first visit opens, as the engine has it by itself. */
const chain = exampleChain('hen-house-drum')
/** The wind that it asks its watts of, which the page looks at first [m/s]. */
const wind = 6
const row = chain.rows.findIndex((each) => each.wind === wind)

/** As it is read: one line, plain spaces. */
const textOf = async (page: Page, part: string): Promise<string> =>
  (await page.locator(part).first().innerText()).replace(/\s+/g, ' ')

async function wires(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Compute the sizes next to it' }).click()
  await page.locator('.wire-choice table').waitFor()
}

async function heat(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Compute how long it lasts' }).click()
  await page.locator('.heat-cases svg').first().waitFor()
}

describe('agrees: what the rooms say and what the engine computes', () => {
  check('bridge: amps, heat with its spread, and volts of the diodes', async (page) => {
    await enterRoom(page, 'bridge')
    await page.locator('.bridge-loss').waitFor()
    const text = await textOf(page, '.bridge-loss')
    const duty = bridgeDuty(chain, row)!
    expect(text).toContain(`at ${wind} m/s`)
    for (const figure of [
      formatSi(duty.mean, 'A'),
      formatSi(duty.rms, 'A'),
      formatSi(duty.peak, 'A'),
      formatSpread(duty.wholeLoss, duty.lossSpread, 'W'),
      formatSi(duty.reverse, 'V'),
      formatSi(duty.reverseWanted, 'V'),
    ])
      expect(text).toContain(figure)
    await page.locator('.strip').waitFor()
  })
  check('cable: every conductor, every label and every step of the safety page', async (page) => {
    await enterRoom(page, 'cable')
    await page.locator('.duties table').waitFor()
    const report = safetyReport(chain)
    const told = (await textOf(page, '.room-sight')).toLowerCase()
    for (const { conductor, cells } of report.duties)
      for (const part of [conductor, ...cells]) expect(told).toContain(part.toLowerCase())
    for (const { part, need, said, verdict } of report.labels)
      for (const piece of [part, need, said, verdict]) expect(told).toContain(piece.toLowerCase())
    for (const { steps } of report.switching)
      for (const step of steps) expect(told).toContain(step.toLowerCase())
    for (const text of report.whoToAsk) expect(told).toContain(text.toLowerCase())
    expect(await page.locator('.switching ol > li').count()).toBe(
      report.switching.flatMap(({ steps }) => steps).length,
    )
  })
  check(
    'store: from what wind it charges, and what the dump load takes once the battery is full',
    async (page) => {
      await enterRoom(page, 'store')
      await page.locator('.dump').waitFor()
      const duty = dumpDuty(chain, row)!
      const dump = await textOf(page, '.dump')
      for (const share of duty.share) expect(dump).toContain(`${formatNumber(100 * share, 2)} %`)
      expect(dump).toContain(formatSi(duty.takes[1], 'W'))
      const begin = await textOf(page, '.charging')
      // with its spread it may be told in a digit more
      const told = Number(/from a wind of ([\d.]+)/.exec(begin)?.[1])
      expect(Math.abs(told - chain.cutInWind)).toBeLessThanOrEqual(0.0051)
      expect(begin).toContain(formatSi(chain.rows[row]!.watts.useful, 'W'))
    },
  )
  check('winding: the ways of the heat, and the wires of the engine’s table', async (page) => {
    await enterRoom(page, 'winding')
    await page.locator('.chart-heat-way svg').waitFor()
    const picture = await textOf(page, '.chart-heat-way')
    const [first] = heatWays(chain, chain.rows[row]!).ways
    expect(picture).toContain(`${first!.from}, ${first!.by}: ${formatSi(first!.power, 'W')}`)
    await wires(page)
    const { choices } = finished(wireChoices(chain))
    const rows = page.locator('.wire-choice tbody tr')
    expect(await rows.count()).toBe(choices.length)
    for (const [k, { name, turns, outcome }] of choices.entries()) {
      const cells = (await rows.nth(k).innerText()).replace(/\s+/g, ' ')
      expect(cells).toContain(name)
      expect(cells).toContain(` ${turns} `)
      if (outcome) expect(cells).toContain(formatNumber(outcome.resistance))
    }
  })
})

describe('law: what is done in these rooms can be taken back', () => {
  check('a wire taken is the design, under its name; undo brings the old one back', async (page) => {
    await enterRoom(page, 'winding')
    const before = await page.locator('#field-stator-wire-size').inputValue()
    await wires(page)
    const first = page.locator('.wire-choice tbody tr').first()
    const name = (await first.locator('th').innerText()).trim()
    await first.getByRole('button', { name: /^Take it/ }).click()
    await computed(page)
    const size = page.locator('#field-stator-wire-size')
    expect(name).toContain(await size.inputValue())
    expect(await page.locator('.notice').innerText()).toContain(name)
    const undo = page.getByRole('button', { name: 'Undo' })
    expect(await undo.getAttribute('title')).toContain(name)
    expect(await page.locator('.wire-choice').innerText()).toContain('changed since')
    await undo.click()
    await computed(page)
    expect(await size.inputValue()).toBe(before)
  })
  check('a wire laid over is kept as a tracing, and the design stays', async (page) => {
    await enterRoom(page, 'winding')
    await wires(page)
    const before = await page.locator('#field-stator-wire-size').inputValue()
    const first = page.locator('.wire-choice tbody tr').first()
    await first.getByRole('button', { name: /^Lay it over/ }).click()
    await first.getByText('Kept as tracing').waitFor()
    expect(await page.locator('#field-stator-wire-size').inputValue()).toBe(before)
  })
  check('a label that does not fit leads to its field', async (page) => {
    await enterRoom(page, 'cable')
    const fuse = page.locator('#field-wiring-fuse-A')
    await fuse.fill('30')
    await fuse.press('Tab')
    await computed(page)
    await page.getByRole('button', { name: /^go to Fuse, for: Fuse/ }).click()
    await page.waitForFunction(() => document.activeElement?.id.startsWith('field-wiring-fuse'))
    expect(await page.locator('.label-line.is-does-not-fit').count()).toBeGreaterThan(0)
  })
})

/** Every room in every look is judged beside this; here stand the parts that are asked for first. */
const screens = [
  ['desktop', 'light', { viewport: { width: 1280, height: 900 } }],
  ['phone', 'dark', { viewport: { width: 360, height: 740 } }],
] as const

describe('source: wcag22, levels A and AA — bridge, cable, store and winding break no rule in any look', () => {
  for (const [screen, look, options] of screens)
    check(
      `${screen}, ${look}`,
      async (page) => {
        await page.evaluate((chosen) => localStorage.setItem('gustloom.look', chosen), look)
        await page.reload()
        await computed(page)
        for (const [room, part] of [
          ['bridge', '.bridge-loss'],
          ['cable', '.duties table'],
          ['store', '.dump'],
          ['winding', '.chart-heat-way svg'],
        ] as const) {
          await enterRoom(page, room)
          await openFolds(page, '.fold-group')
          await page.locator(part).waitFor()
          if (room === 'winding') {
            await wires(page)
            await heat(page)
          }
          expect(await violations(page, ['.room-sight'])).toEqual([])
          expect(await sideways(page)).toBeLessThanOrEqual(0)
        }
      },
      options,
    )
})
