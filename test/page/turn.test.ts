/** Checks of the machine turned by hand on the page: it answers at once, explains, and all can use it. */
import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { enterRoom } from './browser.ts'
import { pageCheck } from './page-check.ts'
import { forEverybody } from './violation.ts'

const check = pageCheck('turn', async (page) => {
  await enterRoom(page, 'turn')
  await page.locator('.turn-figure').waitFor()
})

const figure = async (page: Page) => Number.parseFloat(await page.locator('.turn-figure').innerText())

describe('law: the page turns the machine by hand', () => {
  check('speed by keyboard, meter and points change the figure; a reading is explained', async (page) => {
    const slider = page.getByRole('slider', { name: 'Speed:' })
    await slider.focus()
    await page.getByLabel('Meter', { exact: true }).selectOption('oscilloscope, probe ×10')
    const slow = await figure(page)
    await page.keyboard.press('End')
    const fast = await figure(page)
    expect(fast).toBeGreaterThan(2 * slow)
    const line = fast
    await page.getByLabel('Probes on').selectOption('phase-1')
    const phase = await figure(page)
    expect(line / phase).toBeGreaterThan(1.4)
    await page.getByLabel('You read, V').fill(String(line))
    await page.locator('.turn-read').getByText('Perhaps the probes stood on terminals').waitFor()
    await page.getByLabel('You read, V').fill('three')
    await page.getByText('That is no number above zero.').waitFor()
    await page.keyboard.press('Tab')
    await slider.focus()
    await page.keyboard.press('Home')
    await page.getByLabel('Meter', { exact: true }).selectOption('averaging hand meter')
    await page.locator('.turn-flags').getByText('is below the 45.0 Hz').waitFor()
    expect(await page.locator('.turn').innerText()).not.toMatch(/NaN|undefined|Infinity/)
  })

  // frames, not milliseconds: the machine may be busy with other things
  check('an input of the slider is answered within two frames', async (page) => {
    const frames = await page.evaluate(async () => {
      const slider = document.querySelector<HTMLInputElement>('#turn-speed')!
      const frame = () => new Promise((resolve) => requestAnimationFrame(() => resolve(undefined)))
      const figure = () => document.querySelector('.turn-figure')!.textContent
      const counts: number[] = []
      for (let k = 0; k < 10; k++) {
        const before = figure()
        slider.value = String(100 + 18 * k)
        slider.dispatchEvent(new Event('input', { bubbles: true }))
        let count = 0
        for (; count < 60 && figure() === before; count++) await frame()
        counts.push(count)
      }
      return counts
    })
    expect(Math.max(...frames)).toBeLessThanOrEqual(2)
  })

  check('readings of all pairs find the defect', async (page) => {
    await enterRoom(page, 'faults')
    await page.getByRole('button', { name: 'Compute the defects' }).click()
    await page.locator('.fault-report').waitFor({ timeout: 300_000 })
    const form = page.locator('.diagnosis')
    for (const [label, value] of [
      ['Volts 1–2', '1,7'],
      ['Volts 2–3', '1.0'],
      ['Volts 3–1', '1.0'],
    ] as const)
      await form.getByLabel(label).fill(value)
    await form.locator('li').first().waitFor()
    expect(await form.locator('li').count()).toBe(4)
    expect(await form.innerText()).not.toMatch(/NaN|undefined/)
  })
})

describe('source: wcag22, levels A and AA — turning by hand breaks no rule that a reader of pages can tell', () => {
  forEverybody(check, 'turn', ['.turn'], async (page) => {
    await page.getByLabel('You read, V').fill('2.2')
    await page.locator('.chart-turn-wave svg').first().waitFor()
  })
})
