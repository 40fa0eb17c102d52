/** Checks that every chart is sound SVG with a title, units and finite places, whatever it is given, and that its table says the same. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../../test/example.ts'
import { markupFaults } from '../../../test/markup.ts'
import type { MatchMap } from '../../analysis/match-map.ts'
import type { StormTrace } from '../../analysis/storm-trace.ts'
import { type ChartTable, cellText, tableCsv } from './chart-table.ts'
import { contestChart, contestTable } from './contest.ts'
import { faultWaveformChart, faultWaveformTable } from './fault-waveform.ts'
import { gapFieldChart, gapFieldTable } from './gap-field.ts'
import { matchChart } from './match.ts'
import { matchTable } from './match-table.ts'
import { monthEnergyChart, monthEnergyTable } from './month-energy.ts'
import { escaped } from './picture.ts'
import { powerCurveChart, powerCurveTable } from './power-curve.ts'
import { stormTraceChart, stormTraceTable } from './storm-trace.ts'
import { turnWaveChart, turnWaveTable } from './turn-wave.ts'
import { waveformChart, waveformTable } from './waveform.ts'
import { windDistributionChart, windDistributionTable } from './wind-distribution.ts'
import { wireAngleChart, wireAngleTable } from './wire-angle.ts'
import { wireProfileChart, wireProfileTable } from './wire-profile.ts'
import { wireVoltageChart, wireVoltageTable } from './wire-voltage.ts'
import { yearLedgerChart, yearLedgerTable } from './year-ledger.ts'

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

const sampleWave = (size: number) => ({
  emf: [sine(size), sine(size, 2), sine(size, 4)],
  lineVoltages: [sine(1.7 * size), sine(1.7 * size, 2), sine(1.7 * size, 4)],
  ownLeads: false,
  phaseCurrent: [sine(size / 5), sine(size / 5, 2), sine(size / 5, 4)],
  dcVoltage: sine(size).map((value) => size + Math.abs(value)),
  dcCurrent: sine(size / 5).map(Math.abs),
  frequency: 42,
})

const sampleFault = (size: number) => ({
  sound: [sine(size), sine(size, 2), sine(size, 4)],
  faulty: [sine(0.8 * size), sine(0.9 * size, 2), sine(size, 4)],
  words: 'magnet 1 <missing>',
})

const sampleContest = (size: number) =>
  [3, 5, 7, 9].map((wind) => ({ wind, watts: [size * wind, wind > 6 ? 2 * size * wind : 0] }))

const sampleTrace = (size: number): StormTrace => ({
  time: winds,
  wind: winds.map((each) => 2 * each),
  speed: winds.map((each) => size * each),
  voltage: winds.map((each) => size * each),
  current: winds.map((each) => (size * each) / 4),
  phaseCurrent: winds.map((each) => (size * each) / 5),
  copperTemperature: winds.map((each) => 290 + each),
  kept: winds.map((each) => (each > 6 ? 0.4 : 1)),
})

const sampleBand = (size: number) => ({
  wind: winds,
  low: winds.map((wind) => 0.4 * size * wind ** 3),
  high: winds.map((wind) => 0.9 * size * wind ** 3),
})

/** The tables of pictures that are not drawn of a whole design, their values of a size. */
const tables = (size: number): Record<string, ChartTable> => {
  const angle = sine(1).map((_, k) => k / 46)
  return {
    months: monthEnergyTable([
      { label: 'Jan', meanWind: 4, energy: 1e6 * size, low: 0, high: 2e6 * size, need: 5e5, covered: 'yes' },
      {
        label: 'Feb',
        meanWind: 4,
        energy: 1e6 * size,
        low: 0,
        high: 2e6 * size,
        need: undefined,
        covered: undefined,
      },
    ]),
    ledger: yearLedgerTable({
      whole: 5e6 * size,
      bars: [{ label: 'past the blades', energy: 5e6 * size, className: 'ink-wind' }],
    }),
    waveform: waveformTable(sampleWave(size)),
    faults: faultWaveformTable(sampleFault(size)),
    contest: contestTable({ letters: ['A', 'B'], winds: sampleContest(size) }),
    storm: stormTraceTable(sampleTrace(size)),
    turn: turnWaveTable({ wave: sine(size), time: 0.1 }),
    match: matchTable(sampleMap(size)),
    wind: windDistributionTable({ wind: winds, hours: winds, energy: winds.map((wind) => size * wind) }),
    parts: wireVoltageTable(
      [
        {
          label: 'crown',
          volts: 0.1 * size,
          share: 0,
          underShare: 0,
          length: 2,
          copperShare: 0.4,
          perMetre: size,
          lean: 1,
        },
      ],
      30,
    ),
    profile: wireProfileTable({
      path: Float64Array.from({ length: 61 }, (_, k) => k / 300),
      inStep: sine(size),
      moment: sine(size),
      part: Array.from({ length: 60 }, () => 'run'),
      underMagnets: sine(1).map((value) => (value > 0 ? 1 : 0)),
      lean: angle,
    }),
    angle: wireAngleTable({
      lean: angle,
      perMetre: angle.map((each) => size * Math.cos(each)),
      cosine: angle.map((each) => size * Math.cos(each)),
      textbook: angle.map((each) => size * Math.cos(each)),
    }),
    gap: gapFieldTable({ angle, normal: sine(size) }),
    power: powerCurveTable(exampleChain('hen-house-drum').rows),
    'power with its band': powerCurveTable(exampleChain('hen-house-drum').rows, sampleBand(size)),
  }
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
  waveform: waveformChart({ width, ...sampleWave(size) }),
  'phase alone': waveformChart({
    width,
    ...sampleWave(size),
    emf: [sine(size)],
    lineVoltages: [sine(size)],
    phaseCurrent: [sine(0)],
    dcCurrent: sine(0),
    ownLeads: true,
  }),
  faults: faultWaveformChart({ width, ...sampleFault(size) }),
  contest: contestChart({ width, height: 300, letters: ['A', 'B'], winds: sampleContest(size) }),
  storm: stormTraceChart({ width, trace: sampleTrace(size), words: 'the load <lost>' }),
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
    spread: sampleBand(size),
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
  for (const width of [300, 640, 1400])
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
        const { waveform, match, power, wind, parts, profile, angle, gap } = charts(width, size)
        for (const unit of [
          'time, ms',
          'volts raised in a phase, V',
          'volts between lines, V',
          'direct volts, V',
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

describe('law: a table says what its picture says', () => {
  for (const size of sizes)
    test(`size ${size}: every row as wide as the heads, every number a number, read back from its file`, () => {
      for (const [name, table] of Object.entries(tables(size))) {
        expect(table.rows.length, name).toBeGreaterThan(0)
        expect(new Set(table.columns.map(({ head, unit }) => `${head}, ${unit}`)).size, name).toBe(
          table.columns.length,
        )
        for (const row of table.rows) {
          expect(row, name).toHaveLength(table.columns.length)
          for (const cell of row) if (typeof cell === 'number') expect(cell, name).toSatisfy(Number.isFinite)
        }
        const [heads = '', first = ''] = tableCsv(table).split('\r\n')
        expect(heads, name).not.toMatch(/NaN|undefined/)
        const cells = [...first.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].slice(0, table.columns.length)
        table.rows[0]!.forEach((cell, k) => {
          if (typeof cell !== 'number') return
          expect(Math.abs(Number(cells[k]![1]) - cell), name).toBeLessThanOrEqual(1e-6 * Math.abs(cell))
        })
      }
    })
  test('chosen numbers are written as they were chosen, computed ones with four digits', () => {
    expect([cellText(6.5, { exact: true }), cellText(6.5), cellText(6, { exact: true })]).toEqual([
      '6.5',
      '6.500',
      '6',
    ])
    expect(cellText(Number.POSITIVE_INFINITY, { exact: true })).toBe('—')
  })
})

describe('law: a description tells what is found, not what is drawn', () => {
  const told = (name: string, size = 1) => /<desc[^>]*>([^<]*)</.exec(charts(800, size)[name]!)![1]!
  test('the power curve names where it begins, the most, and the band at the wind looked at', () => {
    expect(told('power')).toContain('begins at 0.5 m/s')
    expect(told('power')).toContain('greatest at 10 m/s, 600 W')
    expect(told('power')).toContain('At 6 m/s it is 130 W, between 86.4 W and 194 W')
  })
  test('the waveform tells rms and peak of what the magnets raise, and how long the direct current rests', () => {
    expect(told('waveform')).toContain('0.707 V rms in a phase')
    expect(told('phase alone')).toContain('No current flows')
  })
  test('the contest tells who gives most where', () => {
    expect(told('contest')).toContain('A gives most from 3 to 5 m/s; B gives most from 7 to 9 m/s')
  })
  test('a wave that is flat is told from one that is pointed', () => {
    const of = (normal: Float64Array) =>
      /<desc[^>]*>([^<]*)</.exec(gapFieldChart({ width: 500, height: 200, angle: normal, normal }))![1]
    expect(of(sine(1))).toContain('much like a sine')
    expect(of(sine(1).map(Math.sign))).toContain('flatter than a sine')
    expect(of(sine(1).map((each) => each ** 3))).toContain('more pointed')
    expect(of(sine(0))).toBe('The winding meets no field.')
  })
})

describe('law: charts over wind can be pointed at', () => {
  for (const name of ['power', 'contest', 'wind'])
    test(name, () => {
      const [, from, to] = /class="wind-plot" data-wind-from="([\d.]+)" data-wind-to="([\d.]+)"/.exec(
        charts(700, 1)[name]!,
      )!
      expect(Number(from)).toBeLessThanOrEqual(0.5)
      expect(Number(to)).toBeGreaterThan(5)
    })
})

describe('law: text is escaped', () => {
  test('signs of markup and control characters', () => {
    expect(escaped('<a & "b" \'c\'>\u0000')).toBe('&lt;a &amp; &quot;b&quot; &#39;c&#39;&gt;')
    expect(charts(900, 1)['ledger']).toContain('past the blades &lt;&amp;&gt;')
  })
})
