/** Checks that every chart is sound SVG with a title, units and finite places, whatever it is given. */
import fc from 'fast-check'
import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import { faultWaveformChart } from './fault-waveform.ts'
import { gapFieldChart } from './gap-field.ts'
import { matchChart } from './match.ts'
import { escaped } from './picture.ts'
import { powerCurveChart } from './power-curve.ts'
import { leastRibbonWidth, wattRibbonChart } from './watt-ribbon.ts'
import { waveformChart } from './waveform.ts'
import { windDistributionChart } from './wind-distribution.ts'
import { wireAngleChart } from './wire-angle.ts'
import { wireProfileChart } from './wire-profile.ts'
import { wireVoltageChart } from './wire-voltage.ts'

const sine = (size: number, shift = 0) =>
  Float64Array.from({ length: 60 }, (_, k) => size * Math.sin((2 * Math.PI * k) / 60 + shift))
const winds = Float64Array.from({ length: 20 }, (_, k) => (k + 1) / 2)

/** Every chart at a width, its values of a size. */
const charts = (width: number, size: number): Record<string, string> => ({
  ribbon: wattRibbonChart({
    width,
    wind: 6,
    available: 10 * size,
    losses: [
      { part: 'blades', label: 'past the blades', watts: 6 * size, className: 'loss-wind' },
      { part: 'shaft', label: 'bearings', watts: 0.1 * size, className: 'loss-shaft' },
      { part: 'winding', label: 'copper heat', watts: 0.9 * size, className: 'loss-copper' },
    ],
    useful: { label: 'stored <&>', watts: 3 * size },
  }),
  waveform: waveformChart({
    width,
    emf: [sine(size), sine(size, 2), sine(size, 4)],
    phaseCurrent: [sine(size / 5), sine(size / 5, 2), sine(size / 5, 4)],
    dcCurrent: sine(size / 5).map(Math.abs),
    frequency: 42,
  }),
  faults: faultWaveformChart({
    width,
    sound: [sine(size), sine(size, 2), sine(size, 4)],
    faulty: [sine(0.8 * size), sine(0.9 * size, 2), sine(size, 4)],
    words: 'magnet 1 <missing>',
  }),
  match: matchChart({
    width,
    height: 300,
    blades: [4, 6, 8].map((wind) => ({
      wind,
      speed: winds.map((each) => each * wind),
      power: winds.map((each) => size * wind ** 3 * each * (10 - each)),
    })),
    generator: { speed: winds.map((each) => each * 8), power: winds.map((each) => size * each ** 3) },
    points: [{ wind: 6, speed: 20, power: 30 * size }],
    chosenWind: 6,
  }),
  power: powerCurveChart({
    width,
    height: 280,
    wind: winds,
    shaft: winds.map((wind) => size * wind ** 3),
    useful: winds.map((wind) => 0.6 * size * wind ** 3),
    usefulName: 'into the battery',
    chosenWind: 6,
    wanted: { power: 10 * size, wind: 6 },
  }),
  wind: windDistributionChart({
    width,
    height: 170,
    wind: winds,
    hours: winds.map((wind) => 900 * wind * Math.exp(-wind / 2)),
    energy: winds.map((wind) => size * 3.6e6 * wind),
    chosenWind: 6,
    meanWind: 4.1,
    border: 13,
  }),
  parts: wireVoltageChart({
    width,
    parts: [
      { label: 'straight run', share: 1.2 * Math.sign(size), copperShare: 0.6 },
      { label: 'crown', share: -0.2 * Math.sign(size), copperShare: 0.4 },
    ],
  }),
  profile: wireProfileChart({
    width,
    height: 300,
    path: Float64Array.from({ length: 61 }, (_, k) => k / 300),
    inStep: sine(size),
    moment: sine(2 * size, 1),
    part: Array.from({ length: 60 }, (_, k) => (k < 40 ? 'run' : 'crown')),
    underMagnets: Array.from({ length: 60 }, (_, k) => (k < 30 ? 1 : 0)),
  }),
  angle: wireAngleChart({
    width,
    height: 300,
    lean: sine(1).map((_, k) => k / 46),
    perMetre: sine(1).map((_, k) => size * Math.cos(k / 40) ** 2),
    cosine: sine(1).map((_, k) => size * Math.cos(k / 46)),
    textbook: sine(1).map((_, k) => size * Math.cos(k / 42) ** 2),
    parts: [{ label: 'crown', lean: 1.1, perMetre: -0.02 * size }],
  }),
  gap: gapFieldChart({ width, height: 270, angle: sine(1).map((_, k) => k / 10), normal: sine(size / 100) }),
})

/** Tags that do not close, or attributes that are not sound, told by a reader that is not ours. */
function faultsOfMarkup(svg: string): string[] {
  const file = ts.createSourceFile(
    'x.tsx',
    `const x = ${svg}`,
    ts.ScriptTarget.ES2022,
    true,
    ts.ScriptKind.TSX,
  )
  const { parseDiagnostics } = file as unknown as { parseDiagnostics: readonly ts.Diagnostic[] }
  return parseDiagnostics.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))
}

const sizes = [0, 1e-6, 1, 3000] as const

describe('agrees: the markup is sound to an independent reader of tags', () => {
  for (const width of [300, 900])
    for (const size of sizes)
      test(`width ${width}, size ${size}`, () => {
        for (const [name, svg] of Object.entries(charts(width, size)))
          expect(faultsOfMarkup(svg), name).toEqual([])
      })
  test('a tag left open is seen', () => expect(faultsOfMarkup('<svg><g></svg>')).not.toEqual([]))
})

describe('law: titles, units and finite places', () => {
  for (const width of [300, leastRibbonWidth - 1, leastRibbonWidth, 1400])
    for (const size of sizes)
      test(`width ${width}, size ${size}`, () => {
        for (const [name, svg] of Object.entries(charts(width, size))) {
          expect(svg, name).not.toMatch(/NaN|Infinity|undefined/)
          const [, id] =
            /<title id="([a-z-]+)">[^<]+<\/title><desc id="[a-z-]+">[^<]+<\/desc>/.exec(svg) ?? []
          expect(svg, name).toContain(`aria-labelledby="${id} `)
          // colour comes from the style sheet alone
          expect(svg, name).not.toMatch(/style=|#[0-9a-f]{6}|fill="/)
        }
        const { ribbon, waveform, match, power, wind, parts, profile, angle, gap } = charts(width, size)
        expect(ribbon).toMatch(/ W<\/text>/)
        for (const unit of [
          'time, ms',
          'volts raised in a phase, V',
          'current of a phase, A',
          'direct current, A',
        ])
          expect(waveform).toContain(unit)
        for (const unit of ['speed, rpm', 'shaft power, W']) expect(match).toContain(unit)
        for (const unit of ['wind, m/s', 'power, W']) expect(power).toContain(unit)
        expect(wind).toMatch(/ h\/year, .* kWh/)
        expect(gap).toContain('mT')
        expect(parts).toMatch(/ % of volts<.* % of wire</)
        expect(profile).toMatch(/mV\/mm<.*along the wire, mm</)
        expect(angle).toMatch(/% of a straight run<|angle to the run, °</)
      })
  test('lines differ by their dashes', () => {
    const { waveform = '' } = charts(800, 1)
    const dashes = [
      ...waveform.matchAll(/class="line ink-phase-(\d)"[^>]*?(stroke-dasharray="([^"]*)")?\/>/g),
    ].map(([, , , dash]) => dash)
    expect(new Set(dashes.slice(0, 3)).size).toBe(3)
  })
})

describe('law: the ribbon is as wide as its watts', () => {
  test('the bands that go on are in proportion', () => {
    const svg = wattRibbonChart({
      width: 1000,
      wind: 6,
      available: 100,
      losses: [
        { part: 'blades', label: 'past the blades', watts: 60, className: 'loss-wind' },
        { part: 'winding', label: 'copper heat', watts: 20, className: 'loss-copper' },
      ],
      useful: { label: 'stored', watts: 20 },
    })
    const widths = [...svg.matchAll(/class="band band-\w+"[^>]*? height="([\d.]+)"/g)].map(([, width]) =>
      Number(width),
    )
    expect(widths).toHaveLength(2)
    expect(widths[0]! / widths[1]!).toBeCloseTo(2, 2)
  })
  test('any split of the watts gives a picture', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1e4, noNaN: true }), { minLength: 2, maxLength: 7 }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        fc.integer({ min: 280, max: 1500 }),
        (watts, useful, width) => {
          const losses = watts.map((each, k) => ({
            part: `part ${k}`,
            label: `loss ${k}`,
            watts: each,
            className: 'loss-wind',
          }))
          const available = watts.reduce((sum, each) => sum + each, useful)
          const svg = wattRibbonChart({
            width,
            wind: 6,
            available,
            losses,
            useful: { label: 'stored', watts: useful },
          })
          expect(svg).not.toMatch(/NaN|Infinity|(width|height)="-/)
        },
      ),
    ))
})

describe('law: text is escaped', () => {
  test('signs of markup and control characters', () => {
    expect(escaped('<a & "b" \'c\'>\u0000')).toBe('&lt;a &amp; &quot;b&quot; &#39;c&#39;&gt;')
    expect(charts(900, 1)['ribbon']).toContain('stored &lt;&amp;&gt;')
  })
})
