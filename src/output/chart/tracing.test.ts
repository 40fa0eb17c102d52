/** Checks of the tracings laid over pictures: every one is drawn, told apart, named, and in its own rhythm. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { markupFaults } from '../../../test/markup.ts'
import { wattColumns } from '../../analysis/watts.ts'
import { energyByWindChart } from './energy-by-wind.ts'
import { powerCurveChart } from './power-curve.ts'
import { temperatureChart } from './temperature.ts'
import { repeatedWave, type TracedCurve, tracingLabel, tracingLooks, withTracings } from './tracing.ts'
import { waveformChart } from './waveform.ts'

const winds = Float64Array.from({ length: 20 }, (_, k) => (k + 1) / 2)
const rising = (size: number) => winds.map((wind) => size * wind ** 2)
const sine = (size: number, count = 60) =>
  Float64Array.from({ length: count }, (_, k) => size * Math.sin((2 * Math.PI * k) / count))

const traced = (size: number): TracedCurve[] =>
  tracingLooks.map((look, k) => ({
    ...look,
    label: tracingLabel(String.fromCharCode(65 + k)),
    x: winds,
    y: rising(size * (k + 1)),
  }))

/** Every picture that tracings lie over, with all that may lie over at once. */
const pictures = (width: number, size: number): Record<string, string> => ({
  power: powerCurveChart({
    width,
    height: 320,
    wind: winds,
    shaft: rising(2),
    useful: rising(1),
    usefulName: 'into the battery',
    chosenWind: 6,
    tracings: traced(size),
  }),
  energy: energyByWindChart({
    width,
    height: 320,
    energy: {
      wind: winds,
      time: winds.map(() => 3600),
      parts: Object.fromEntries(wattColumns.map((column) => [column, rising(1e4)])) as never,
    },
    tracings: traced(size),
  }),
  temperature: temperatureChart({
    width,
    height: 300,
    along: { quantity: 'wind', values: winds },
    lines: [{ label: 'hot spot', values: rising(1).map((value) => 290 + value) }],
    limits: [{ label: 'enamel', temperature: 428 }],
    tracings: traced(size).map((each) => ({ ...each, y: Array.from(each.y, (value) => 290 + value) })),
  }),
  waveform: waveformChart({
    width,
    emf: [sine(10)],
    lineVoltages: [],
    ownLeads: false,
    phaseCurrent: [sine(2)],
    dcVoltage: sine(1).map((value) => 12 + value),
    dcCurrent: sine(1).map(Math.abs),
    frequency: 50,
    tracings: tracingLooks.map((look, k) => ({
      ...look,
      label: tracingLabel(String.fromCharCode(65 + k)),
      emf: sine(size),
      phaseCurrent: sine(size),
      dcVoltage: sine(size),
      dcCurrent: sine(size),
      frequency: 20 * (k + 1),
    })),
  }),
})

describe('law: tracings over pictures', () => {
  for (const width of [340, 560, 900])
    for (const size of [1e-6, 1, 1e6])
      test(`width ${width}, tracings of a size of ${size}: sound markup, each with its dash, colour and name`, () => {
        for (const [name, svg] of Object.entries(pictures(width, size))) {
          expect(markupFaults(svg), name).toEqual([])
          expect(svg, name).not.toMatch(/NaN|Infinity|undefined/)
          for (const [k, { className, dash }] of tracingLooks.entries()) {
            expect(svg, name).toMatch(new RegExp(`class="line ${className}"[^>]*stroke-dasharray="${dash}"`))
            expect(svg, name).toContain(tracingLabel(String.fromCharCode(65 + k)))
          }
          expect(svg, name).toContain('Laid over: tracing A, tracing B, tracing C, tracing D.')
        }
      })

  test('no two looks share a dash or a colour', () => {
    expect(new Set(tracingLooks.map(({ dash }) => dash)).size).toBe(tracingLooks.length)
    expect(new Set(tracingLooks.map(({ className }) => className)).size).toBe(tracingLooks.length)
  })

  test('without tracings a picture is the picture that it was', () => {
    const chart = {
      width: 560,
      height: 320,
      wind: winds,
      shaft: rising(2),
      useful: rising(1),
      usefulName: 'used',
      chosenWind: 6,
    }
    expect(powerCurveChart({ ...chart, tracings: [] })).toBe(powerCurveChart(chart))
  })

  test('a wave is repeated in its own rhythm to the end of the other period, never past it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 40, noNaN: true }),
        fc.double({ min: 0.05, max: 40, noNaN: true }),
        (own, other) => {
          const end = Math.min(other, 20 * own)
          const points = repeatedWave(sine(1), own, other)
          expect(points.at(-1)![0]).toBeCloseTo(end, 9)
          const last = Math.max(...points.map(([time]) => time))
          expect(last).toBeLessThanOrEqual(end * (1 + 1e-9))
          // the last piece is a chord of a sixtieth of the period
          const off = points.map(([time, value]) => Math.abs(value - Math.sin((2 * Math.PI * time) / own)))
          expect(Math.max(...off)).toBeLessThan(2e-3)
        },
      ),
    )
  })

  test('a wave that has no period is not drawn', () => {
    expect(repeatedWave(sine(1), 0, 20)).toEqual([])
    expect(repeatedWave([], 10, 20)).toEqual([])
  })

  test('a table gets a column for each tracing, and nothing where its winds are not those of the table', () => {
    const table = { caption: 'x', columns: [{ head: 'wind' }], rows: [[0.5], [0.75], [1]] }
    const [tracing] = traced(1)
    const { columns, rows } = withTracings(table, [0.5, 0.75, 1], [tracing!], { of: 'useful', unit: 'W' })
    expect(columns.at(-1)).toEqual({ head: 'tracing A, useful', unit: 'W' })
    expect(rows.map((row) => row.at(-1))).toEqual([0.25, undefined, 1])
    expect(withTracings(table, [], [], { of: 'useful', unit: 'W' })).toBe(table)
  })
})
