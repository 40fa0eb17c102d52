/** Checks of the strip of the wind: its marks stand where their wind is, and their words do not lie on each other. */
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import { type WindMark, windStripChart } from './wind-strip.ts'

const wind = Float64Array.from({ length: 50 }, (_, k) => (k + 1) / 2)
const strip = (marks: readonly WindMark[], width = 600) =>
  windStripChart({
    width,
    wind,
    hours: wind.map((v) => v * Math.exp(-v / 4)),
    energy: wind.map((v) => v ** 2),
    marks,
    chosenWind: 6,
    border: 14,
  })

const words = (svg: string) =>
  [
    ...svg.matchAll(/<text class="mark-text[^"]*" x="([\d.]+)" y="([\d.]+)" text-anchor="(\w+)">([^<]+)</g),
  ].map(([, x, y, anchor, text]) => ({ x: Number(x), y: Number(y), anchor, text: text! }))

describe('law: the marks stand at their wind', () => {
  test('on the scale of the slider, whose ends are half a knob inside', () => {
    const svg = strip([{ wind: 12.75, label: 'limiter', kind: 'limit' }])
    const x = Number(/class="wind-mark is-limit" d="M([\d.]+)/.exec(svg)![1])
    expect(x).toBeCloseTo(14 + ((12.75 - 0.5) / 24.5) * 572, 1)
  })
  test('a wind beyond the strip stands at its end and says so; one that never comes is left out', () => {
    const svg = strip([
      { wind: 50, label: 'storm', kind: 'danger' },
      { wind: Number.POSITIVE_INFINITY, label: 'charges', kind: 'begins' },
    ])
    expect(words(svg).map(({ text }) => text)).toEqual(['storm ▸'])
    expect(svg).not.toContain('charges')
    expect(svg).not.toMatch(/NaN|Infinity/)
    expect(markupFaults(svg)).toEqual([])
  })
  test('two close words stand on two tiers', () => {
    const [first, second] = words(
      strip([
        { wind: 2, label: 'turns', kind: 'begins' },
        { wind: 2.2, label: 'charges', kind: 'begins' },
      ]),
    )
    expect(first!.y).not.toBe(second!.y)
  })
})
