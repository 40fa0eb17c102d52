/** Checks the page of blade shapes. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { bladeDesign } from '../analysis/blade-design.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { bladePage, bladeResult } from './blade-page.ts'

const machine = resolveDesign(designOf(exampleDocument('class-room-fan')))
const design = bladeDesign(machine, { limits: { pipeRadius: 0.05 } })

describe('law: the page of blade shapes', () => {
  const lines = bladePage('Fan', design)
  const text = lines.map((line) => line.text)
  test('every station of every shape, no line too long, nothing unsaid', () => {
    for (const { stations } of design.variants)
      for (const { radius, chord } of stations) {
        const [r, c] = [(1000 * radius).toFixed(1), (1000 * chord).toFixed(1)]
        expect(text.some((line) => line.includes(r) && line.includes(c))).toBe(true)
      }
    for (const line of text) expect([...line].length).toBeLessThanOrEqual(96)
    expect(text.join('\n')).not.toMatch(/NaN|undefined|Infinity/)
  })
  test('says that the section was measured at higher Reynolds numbers only', () => {
    expect(lines.some(({ text, tone }) => tone === 'warning' && text.includes('Reynolds'))).toBe(true)
  })
  test('the result is JSON whose stations are those of the page', () => {
    const result = JSON.parse(JSON.stringify(bladeResult(design)))
    expect(result.variants[0].stations[3].chord_mm).toBeCloseTo(
      1000 * design.variants[0]!.stations[3]!.chord,
      9,
    )
    expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/)
  })
})
