/** Checks of the sheet for the bench: its numbers are those of the chain, its marks tell designs apart, nothing gets out of hand. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../../../test/example.ts'
import { markupFaults } from '../../../test/markup.ts'
import { type Chain, computeDesign } from '../../analysis/compute.ts'
import { isOpen } from '../../analysis/concern/concern.ts'
import { type Spreads, spreadsOf } from '../../analysis/spread.ts'
import { finished } from '../../analysis/step.ts'
import { tellingWind } from '../../analysis/telling-wind.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { intervalText } from '../interval-words.ts'
import { bladeStations } from './blade-block.ts'
import { concernBlock, lineOf, neededLines, restText } from './concern-block.ts'
import { designSheet, sheetBody } from './design-sheet.ts'
import { engineVersion } from './engine-version.ts'
import { figurePairs } from './figure-block.ts'
import { fingerprint } from './fingerprint.ts'
import { linesIn, textWidth } from './letter-width.ts'
import { sheetRows } from './power-block.ts'
import { shortened } from './sheet-markup.ts'
import { sheetStyle } from './sheet-style.ts'
import { drawingScale, room_mm, unitLength_mm } from './sheet-unit.ts'
import { meterPairs } from './winding-card.ts'

const known = new Map<string, Spreads>()
function spreadsFor(name: string): Spreads {
  const there = known.get(name) ?? finished(spreadsOf(exampleChain(name), { samples: 16 }))
  known.set(name, there)
  return there
}
const date = '2026-05-31'
const sheetFor = (name: string) => designSheet({ chain: exampleChain(name), spreads: spreadsFor(name), date })

/** The text that somebody reads, sign for sign. */
const textOf = (markup: string): string =>
  markup
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')

describe('agrees: the sheet and the chain tell the same numbers', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const spreads = spreadsFor(name)
      const text = textOf(sheetFor(name))
      const { row } = tellingWind(chain)
      for (const figure of [
        intervalText(chain.year.energy, 'kWh', spreads.energy),
        intervalText(row.watts.useful, 'W', spreads.usefulPower),
        intervalText(chain.runaway.speed, 'rpm', spreads.runawaySpeed),
        intervalText(chain.cutInWind, 'm_per_s', spreads.cutInWind),
        formatSi(chain.wound.wireLength, 'm'),
        `${chain.machine.stator.winding.turns} a `,
        fingerprint(chain.machine.design),
        `Sheet of ${date}`,
        `Gustloom ${engineVersion}`,
      ])
        expect(text).toContain(figure)
      for (const each of sheetRows(chain))
        if (each.watts.useful >= 1) expect(text).toContain(` ${formatNumber(each.watts.useful)} `)
      expect(text).not.toMatch(/NaN|undefined|Infinity/)
    })
  test('volts at 100 rpm and ohms are those that a meter meets', () => {
    const name = 'class-room-fan'
    const { voltage } = exampleChain(name)
    const pairs = new Map(meterPairs(exampleChain(name), spreadsFor(name)))
    const volts = voltage.phases[0]!.rms * ((100 * 2 * Math.PI) / 60)
    expect(pairs.get('A phase, rms, 100 rpm')).toContain(formatNumber(volts))
    // a star shows two phases in series
    const two = voltage.phases[0]!.resistance + voltage.phases[1]!.resistance
    expect(pairs.get('Terminals 1–2 at 20 °C')).toBe(formatSi(two, 'ohm'))
  })
  test('stations of a blade lie on its outline, from root to tip', () => {
    const shape = {
      hubRadius: 0.05,
      station: Float64Array.of(0.1, 0.3),
      chord: Float64Array.of(0.08, 0.04),
      twist: Float64Array.of(0.3, 0.1),
    }
    const stations = bladeStations(shape, 0.3)
    expect(stations[0]).toEqual({ radius: 0.1, chord: 0.08, twist: 0.3 })
    for (const { radius, chord, twist } of stations) {
      expect(chord).toBeCloseTo(0.1 - 0.2 * radius, 12)
      expect(twist).toBeCloseTo(0.4 - radius, 12)
    }
    expect(stations.at(-1)!.radius).toBeCloseTo(0.3, 12)
  })
})

describe('law: every concern that is open is shown or counted', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const open = chain.concerns.filter(isOpen).length
      for (const lines of [1, 2, 5, 40]) {
        const markup = concernBlock(chain, lines)
        const shown = markup.match(/<li><b>/g)?.length ?? 0
        const rest = [...(/Not shown here: (.*?)\./.exec(markup)?.[1] ?? '').matchAll(/\d+/g)]
        expect(shown + rest.reduce((sum, [count]) => sum + Number(count), 0)).toBe(open)
        expect(markup.match(/<li/g)?.length ?? 0).toBeLessThanOrEqual(lines)
      }
    })
  test('what blocks is named even where it has no line', () => {
    const chain = exampleChain('many-faults')
    const blocking = chain.concerns.filter((each) => isOpen(each) && each.severity === 'blocking')
    for (const lines of [1, 6, 40])
      for (const { code } of blocking) expect(concernBlock(chain, lines)).toContain(code)
    expect(neededLines(chain)).toBeGreaterThan(blocking.length)
    expect(neededLines({ concerns: [] })).toBe(0)
  })
  test('a line holds whole sentences where it can, and says where it could not', () => {
    expect(lineOf('warning x:', 'It bends. It breaks.')).toBe('It bends. It breaks.')
    const long = lineOf('warning x:', `It bends. ${'It goes on and on '.repeat(20)}.`)
    expect(long).toBe('It bends.')
    const endless = lineOf('warning x:', 'on and '.repeat(60))
    expect(endless).toMatch(/ …$/)
    expect(linesIn(`warning x: ${endless}`, room_mm.width)).toBe(1)
    expect(restText([])).toBe('')
  })
})

describe('law: a hostile name and hostile words stay words', () => {
  test('markup in names is told, not obeyed, and long texts end in time', () => {
    const document = exampleDocument('class-room-fan')
    document.name = '</title><script>alert("1")</script> & \'x\''
    document.note = '<img src=x onerror=alert(1)>'
    document.purpose.goal = '</style><b>bold</b> '.repeat(19)
    const chain = computeDesign(designOf(document))
    const html = designSheet({ chain, spreads: spreadsFor('class-room-fan'), date: '<i>today</i>' })
    expect(html).not.toMatch(/<script|<img|<i>|<\/style><b>/)
    expect(textOf(html)).toContain('<script>alert("1")</script>')
    expect(html.match(/<style>/g)).toHaveLength(1)
  })
  test('a text is cut at a word', () => {
    expect(shortened('one two three', 20)).toBe('one two three')
    expect(shortened('one two, three', 11)).toBe('one two …')
  })
})

describe('law: the file stands alone', () => {
  for (const name of exampleNames)
    test(name, () => {
      const html = sheetFor(name)
      expect(html).not.toMatch(/<script|<link|@import|url\(|\son\w+=|\sstyle=/)
      const body = sheetBody({ chain: exampleChain(name), spreads: spreadsFor(name), date })
      expect(markupFaults(body.replaceAll('<br>', '<br/>'))).toEqual([])
      // identifiers are told once
      const ids = [...body.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id)
      expect(new Set(ids).size).toBe(ids.length)
    })
  test('no type is smaller than 7.5 points', () => {
    const sizes = [...sheetStyle.matchAll(/font(?:-size)?:\s*([\d.]+)(pt|px)/g)]
    expect(sizes.length).toBeGreaterThan(4)
    for (const [, size, kind] of sizes) {
      const points = kind === 'pt' ? Number(size) : Number(size) * unitLength_mm * (72 / 25.4)
      expect(points).toBeGreaterThanOrEqual(7.5 - 1e-9)
    }
  })
})

describe('law: the fingerprint tells designs apart', () => {
  const base = () => exampleDocument('class-room-fan')
  const of = (document: unknown) => fingerprint(designOf(document))
  test('the order of keys says nothing, a default that is written out says nothing, a turn more does', () => {
    const turned = Object.fromEntries(Object.entries(base()).reverse())
    expect(of(turned)).toBe(of(base()))
    const design = designOf(base())
    const more = base()
    more.stator.winding.turns += 1
    expect(of(more)).not.toBe(of(base()))
    const written = base()
    written.rotor.cover_mm = design.rotor.cover_mm
    expect(of(written)).toBe(of(base()))
    expect(of(base())).toMatch(/^[\da-f]{4} [\da-f]{4} [\da-f]{4}$/)
  })
})

describe('law: scales and room', () => {
  test('a scale fits its room, and the next larger one would not', () => {
    for (const length of [0.004, 0.03, 0.2, 0.9]) {
      const { words, perMetre } = drawingScale(length, 50)
      const [paper, machine] = words.split(':').map(Number) as [number, number]
      expect((1000 * length * paper) / machine).toBeLessThanOrEqual(50)
      expect(perMetre * unitLength_mm * machine).toBeCloseTo(1000 * paper, 9)
      expect((1000 * length * paper) / machine).toBeGreaterThan(50 / 2.6)
    }
  })
  test('figures that never come are words', () => {
    const chain: Chain = { ...exampleChain('class-room-fan'), cutInWind: Number.POSITIVE_INFINITY }
    const pairs = new Map(figurePairs(chain, spreadsFor('class-room-fan')))
    expect(pairs.get('Current begins at')).toBe('never')
  })
  test('a word too long for its column runs on, and bold letters are wider', () => {
    expect(linesIn('w'.repeat(60), 40)).toBe(Math.ceil(textWidth('w'.repeat(60)) / 40))
    expect(textWidth('bold', 'bold')).toBeGreaterThan(textWidth('bold'))
  })
  test('longer texts take more lines', () => {
    expect(linesIn('a', 60)).toBe(1)
    expect(linesIn('a word and '.repeat(30), 60)).toBeGreaterThan(linesIn('a word and '.repeat(15), 60))
  })
})

describe('agrees: the version on the sheet and that of the package', () => {
  test('they are one', () => {
    const file = new URL('../../../package.json', import.meta.url)
    expect((JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version).toBe(engineVersion)
  })
})
