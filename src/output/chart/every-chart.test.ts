/** Checks that every chart is sound SVG with a title, units and finite places, whatever it is given. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import type { MatchMap } from '../../analysis/match-map.ts'
import { faultWaveformChart } from './fault-waveform.ts'
import { gapFieldChart } from './gap-field.ts'
import { matchChart } from './match.ts'
import { monthEnergyChart } from './month-energy.ts'
import { escaped } from './picture.ts'
import { powerCurveChart } from './power-curve.ts'
import { turnWaveChart } from './turn-wave.ts'
import { leastRibbonWidth, wattRibbonChart } from './watt-ribbon.ts'
import { waveformChart } from './waveform.ts'
import { windDistributionChart } from './wind-distribution.ts'
import { wireAngleChart } from './wire-angle.ts'
import { wireProfileChart } from './wire-profile.ts'
import { wireVoltageChart } from './wire-voltage.ts'
import { yearLedgerChart } from './year-ledger.ts'

const sine = (size: number, shift = 0) =>
  Float64Array.from({ length: 60 }, (_, k) => size * Math.sin((2 * Math.PI * k) / 60 + shift))
const winds = Float64Array.from({ length: 20 }, (_, k) => (k + 1) / 2)

/** A map with every kind of state in it, watts of a size. */
function sampleMap(size: number): MatchMap {
  const speeds = winds.map((each) => 8 * each)
  const curve = (factor: number) => ({
    speed: speeds,
    power: speeds.map((each) => factor * size * each ** 2),
  })
  const state = (speed: number, stable: boolean, kind: 'turning' | 'charging' | 'stalled') => ({
    speed,
    power: size * speed ** 2,
    stable,
    tipSpeedRatio: 3,
    powerCoefficient: 0.2,
    copperTemperature: 300,
    kind,
    bladeSlope: stable ? -size : size,
    generatorSlope: size / 2,
  })
  const bladeFractions = Float64Array.from({ length: 20 }, (_, k) => k / 19)
  const map: MatchMap = {
    winds: [3, 5, 7, 9].map((wind) => ({
      wind,
      states: [
        state(4 * wind, true, wind > 6 ? 'stalled' : 'charging'),
        state(7 * wind, false, 'charging'),
        state(9 * wind, true, 'charging'),
      ],
      rising: 0,
      falling: wind > 8 ? 0 : 2,
      stallSpeed: 5 * wind,
      startingMargin: Number.POSITIVE_INFINITY,
      bladePower: bladeFractions.map((share) => size * wind ** 3 * share * (1 - share)),
      fastest: 12 * wind,
    })),
    greatestWind: 9,
    endedBy: 'storm',
    bladeFractions,
    generator: { settled: curve(1), cold: curve(1.1), hot: curve(0.9) },
    coldTemperature: 285,
    hotTemperature: 360,
    battery: { low: { voltage: 11.7, ...curve(1.2) }, high: { voltage: 14.4, ...curve(0.8) } },
    zones: {
      startWind: 2,
      cutInSpeed: 12,
      cutInWind: 2.5,
      stallLine: curve(0.5),
      stalledWinds: [7, 9],
      overspeed: 81,
    },
  }
  return map
}

/** Every chart at a width, its values of a size. */
const charts = (width: number, size: number): Record<string, string> => ({
  months: monthEnergyChart({
    width,
    height: 260,
    months: ['Jan', 'Feb <&>', 'Mar'].map((label, k) => ({
      label,
      energy: 1e6 * size * (k + 1),
      low: 3e5 * size,
      high: 4e6 * size,
      need: k === 1 ? undefined : 2e6 * size,
    })),
  }),
  ledger: yearLedgerChart({
    width,
    whole: 5e6 * size,
    bars: [
      { label: 'past the blades <&>', energy: 4e6 * size, className: 'ink-wind' },
      { label: 'stored or used', energy: 1e6 * size, className: 'ink-store' },
    ],
  }),
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
  turn: turnWaveChart({
    width,
    wave: sine(size),
    time: 0.1,
    shown: 0.6 * size,
    rms: 0.7 * size,
    direct: false,
  }),
  match: matchChart({ width, height: 300, map: sampleMap(size), chosen: 2 }),
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

const sizes = [0, 1e-6, 1, 3000] as const

describe('agrees: the markup is sound to an independent reader of tags', () => {
  for (const width of [300, 900])
    for (const size of sizes)
      test(`width ${width}, size ${size}`, () => {
        for (const [name, svg] of Object.entries(charts(width, size)))
          expect(markupFaults(svg), name).toEqual([])
      })
  test('a tag left open is seen', () => expect(markupFaults('<svg><g></svg>')).not.toEqual([]))
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
