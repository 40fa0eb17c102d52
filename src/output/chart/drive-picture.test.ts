/** Checks of the pictures of shaft, speeds, pull and builds: sound SVG, true places, a description that tells the finding, tables that say the same. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../../test/example.ts'
import { markupFaults } from '../../../test/markup.ts'
import { computeDesign } from '../../analysis/compute.ts'
import { pullStudy } from '../../analysis/mechanics/mechanics-study.ts'
import { shaftSection } from '../../analysis/mechanics/shaft-section.ts'
import { type SpeedLine, speedLine } from '../../analysis/mechanics/speed-line.ts'
import { finished } from '../../analysis/step.ts'
import type { BuildScatter } from '../tolerance-report.ts'
import { buildScatterChart, buildScatterTable } from './build-scatter.ts'
import { type ChartTable, tableCsv } from './chart-table.ts'
import { discPullChart, discPullTable } from './disc-pull.ts'
import { shaftLineChart, shaftLineTable, shaftSentence } from './shaft-line.ts'
import { speedLineChart, speedLineTable, whirlingSentence } from './speed-line.ts'

const described = exampleDocument('boathouse-two-disc')
Object.assign(described.shaft, {
  diameter_mm: 25,
  bearings: { spacing_mm: 80, bladeOverhang_mm: 90, magnetOverhang_mm: -40, bore_mm: 25 },
})
const full = computeDesign(designOf(described))
const chains = {
  full,
  bare: exampleChain('boathouse-two-disc'),
  drum: exampleChain('hen-house-drum'),
  disc: exampleChain('class-room-fan'),
  upright: exampleChain('garden-vertical'),
}
const widths = [340, 560, 900]

const scatter: readonly BuildScatter[] = [
  {
    label: 'volts <&>',
    text: '97 % to 104 %',
    low: 0.97,
    middle: 1,
    mean: 1.001,
    high: 1.04,
    least: 0.95,
    most: 1.05,
  },
  { label: 'watts', text: '80 W to 90 W', low: 0.8, middle: 0.88, mean: 0.88, high: 0.9, least: 0.95 },
  { label: 'ohms', text: '1 Ω to 1 Ω', low: 1, middle: 1, mean: 1, high: 1 },
]

const description = (svg: string): string => /<desc[^>]*>([^<]*)</.exec(svg)?.[1] ?? ''
const numbersAfter = (svg: string, pattern: RegExp): number[] =>
  [...svg.matchAll(pattern)].map(([, value]) => Number(value))

const sound = (svg: string) => {
  expect(markupFaults(svg)).toEqual([])
  expect(svg).not.toMatch(/NaN|Infinity|undefined/)
  expect(description(svg).length).toBeGreaterThan(30)
}
const square = (table: ChartTable) => {
  for (const row of table.rows) expect(row.length).toBe(table.columns.length)
  expect(tableCsv(table)).not.toMatch(/NaN|Infinity|undefined/)
}

describe('law: every machine gives sound pictures and tables at every width', () => {
  for (const [name, chain] of Object.entries(chains))
    test(name, () => {
      const section = shaftSection(chain)
      const line = speedLine(chain)
      square(shaftLineTable(section))
      square(speedLineTable({ line, now: 10 }))
      for (const width of widths) {
        sound(shaftLineChart({ width, section }))
        for (const now of [0, 30]) sound(speedLineChart({ width, line, now }))
      }
    })
  test('pull and builds', () => {
    const { pull, handDistance } = finished(pullStudy(full))
    square(discPullTable(pull))
    square(buildScatterTable(scatter))
    for (const width of widths) {
      for (const at of [handDistance, undefined])
        sound(discPullChart({ width, pull, drawn: 0.017, handForce: 100, handDistance: at }))
      sound(buildScatterChart({ width, rows: scatter }))
    }
  })
})

describe('law: the cut along the shaft is true to scale', () => {
  test('the distances drawn stand to each other as the document says', () => {
    const svg = shaftLineChart({ width: 700, section: shaftSection(full) })
    const lengths = [...svg.matchAll(/class="dimension" d="M([\d.]+)[^M]*M([\d.]+)/g)].map(
      ([, a, b]) => Number(b) - Number(a),
    )
    expect(lengths.length).toBe(3)
    expect(lengths[1]! / lengths[0]!).toBeCloseTo(90 / 80, 2)
    expect(lengths[2]! / lengths[0]!).toBeCloseTo(40 / 80, 2)
    const [across] = numbersAfter(svg, /body-shaft"[^>]*height="([\d.]+)"/g)
    expect((2 * across!) / lengths[0]!).toBeCloseTo(25 / 80, 2)
  })
  test('says what overhangs, and what is not said', () => {
    expect(shaftSentence(shaftSection(full))).toContain('front bearing back to the magnets 40 mm')
    expect(shaftSentence(shaftSection(full))).toContain('hang 1.1 times the bearings’ distance')
    expect(shaftSentence(shaftSection(chains.bare))).toContain('is not said')
    for (const [name, chain] of Object.entries(chains)) {
      const section = shaftSection(chain)
      const guessed = /Which way the disc looks is not said/
      for (const words of [shaftSentence(section), shaftLineChart({ width: 900, section })])
        if (name === 'disc') expect(words).toMatch(guessed)
        else expect(words).not.toMatch(guessed)
    }
  })
})

describe('law: the line of speeds tells whether the shaft whirls', () => {
  const { runaway } = speedLine(full)
  const line = (critical: number): SpeedLine => ({
    cutIn: 10,
    work: { slowest: 20, fastest: 40 },
    limiter: undefined,
    critical: { speed: critical, from: 0.7 * critical, to: 1.3 * critical },
    runaway: { wind: runaway.wind, speed: 100 },
  })
  test('far above runaway, between work and runaway, and in the work itself', () => {
    expect(whirlingSentence(line(200))).toContain('does not whirl: even at runaway it reaches only 0.50')
    expect(whirlingSentence(line(90))).toContain('In work the shaft stays below')
    expect(whirlingSentence(line(50))).toContain('may whirl in its work')
    expect(whirlingSentence({ ...line(50), critical: undefined })).toContain('cannot be told')
  })
  test('a critical speed far above runaway is named and leaves the room to what happens', () => {
    const svg = speedLineChart({ width: 560, line: line(2000), now: 30 })
    expect(svg).toContain('beyond the picture')
    expect(speedLineChart({ width: 560, line: line(200), now: 30 })).not.toContain('beyond the picture')
  })
  test('the mark of now moves along the axis in proportion', () => {
    const at = (now: number) =>
      numbersAfter(
        speedLineChart({ width: 560, line: line(200), now }),
        /upright ink-chosen now" d="M([\d.]+)/g,
      )[0]!
    expect(at(40) - at(20)).toBeCloseTo(at(20) - at(0), 1)
  })
})

describe('law: the picture of the pull', () => {
  const { pull, handDistance } = finished(pullStudy(full))
  test('tells the pull as drawn and from where hands hold it, as the table does', () => {
    const drawn = full.machine.rotor.faceDistance!
    const svg = discPullChart({ width: 560, pull, drawn, handForce: 100, handDistance })
    const row = discPullTable(pull).rows.find(
      ([distance]) => Math.abs((distance as number) - 1000 * drawn) < 1e-6,
    )!
    expect(description(svg)).toContain(`${Number((row[1] as number).toPrecision(3))} N`)
    expect(description(svg)).toContain('Two hands')
    const [mm] = pull.map(({ distance }) => 1000 * distance)
    expect(mm).toBeLessThan(1000 * handDistance!)
  })
})

describe('law: the picture of many builds', () => {
  test('says which interval leaves the target, and brackets what is asked only', () => {
    const svg = buildScatterChart({ width: 560, rows: scatter })
    expect(description(svg)).toContain('within the target')
    expect(description(svg)).toContain('beyond the target at an end')
    expect([...svg.matchAll(/upright ink-against/g)].length).toBe(3)
  })
  test('bars are as wide as their intervals', () => {
    const svg = buildScatterChart({ width: 560, rows: scatter })
    const [volts, watts] = numbersAfter(svg, /class="bar ink-store"[^>]*width="([\d.]+)"/g)
    expect(watts! / volts!).toBeCloseTo(0.1 / 0.07, 2)
  })
})
