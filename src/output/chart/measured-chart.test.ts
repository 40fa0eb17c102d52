/** Checks that pictures and tables tell the same in whatever units their reader has chosen, with round ticks in those. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../../test/example.ts'
import { circuitPlan } from '../../analysis/circuit-plan.ts'
import { machineSection } from '../../analysis/machine-section.ts'
import { type MeasureChoice, metricMeasure, withSystem } from '../../units/measure-choice.ts'
import { inUnit, spokenUnit } from '../../units/spoken-unit.ts'
import { measured, measuredBy, unmeasured } from '../measuring.ts'
import { axisTicks, niceDomain, type Span } from './axis.ts'
import { type ChartTable, measuredTable, tableCsv } from './chart-table.ts'
import { circuitChart } from './circuit.ts'
import { discPullChart } from './disc-pull.ts'
import { lengthText, scaleBar } from './drawn-length.ts'
import { machineSectionChart } from './machine-section.ts'
import { powerCurveChart, powerCurveTable } from './power-curve.ts'
import { stormTraceChart } from './storm-trace.ts'
import { temperatureChart } from './temperature.ts'
import { windDistributionChart } from './wind-distribution.ts'
import { windStripChart } from './wind-strip.ts'
import { wireProfileChart } from './wire-profile.ts'

const inches = withSystem(metricMeasure, 'inch and pound')
const readers: Readonly<Record<string, MeasureChoice>> = {
  metric: metricMeasure,
  inches,
  'km/h': { ...metricMeasure, wind: 'km/h' },
  knots: { ...metricMeasure, wind: 'knots', temperature: '°F' },
}

const winds = Float64Array.from({ length: 30 }, (_, k) => (k + 1) / 2)
const rising = (size: number) => winds.map((wind) => size * wind)

const pictures: Readonly<Record<string, () => string>> = {
  power: () =>
    powerCurveChart({
      width: 800,
      height: 320,
      wind: winds,
      shaft: rising(3),
      useful: rising(2),
      usefulName: 'into the battery',
      chosenWind: 6,
      wanted: { power: 12, wind: 6.5 },
    }),
  strip: () =>
    windStripChart({
      width: 800,
      wind: winds,
      hours: rising(1),
      energy: rising(1),
      marks: [{ wind: 3.25, label: 'charges', kind: 'begins' }],
      chosenWind: 6,
      border: 14,
    }),
  wind: () =>
    windDistributionChart({
      width: 800,
      height: 200,
      wind: winds,
      hours: rising(1),
      energy: rising(1),
      chosenWind: 6,
      meanWind: 4.4704,
    }),
  temperature: () =>
    temperatureChart({
      width: 800,
      height: 300,
      along: { quantity: 'wind', values: winds },
      lines: [{ label: 'copper', values: winds.map((wind) => 283.15 + wind ** 1.6) }],
      limits: [{ label: 'enamel', temperature: 453.15 }],
      chosenWind: 6,
    }),
  storm: () =>
    stormTraceChart({
      width: 800,
      words: 'load lost',
      trace: {
        time: winds,
        wind: winds,
        speed: winds,
        voltage: winds,
        current: winds,
        phaseCurrent: winds,
        copperTemperature: winds.map((wind) => 290 + wind),
        kept: winds.map(() => 1),
      },
    }),
  pull: () =>
    discPullChart({
      width: 800,
      pull: [2, 5, 12, 30, 60].map((mm) => ({ distance: mm / 1000, pull: 4000 / mm, work: 1 / mm })),
      drawn: 0.012,
      handForce: 200,
      handDistance: 0.0254,
    }),
  profile: () =>
    wireProfileChart({
      width: 800,
      height: 300,
      path: Float64Array.from({ length: 31 }, (_, k) => k / 300),
      inStep: winds,
      moment: winds,
      part: Array.from(winds, () => 'run'),
      underMagnets: Array.from(winds, () => 1),
    }),
}

/** Places and numbers of the ticks below a plot, and beside it. */
function ticksOf(svg: string, along: 'x' | 'y'): { readonly at: number; readonly number: number }[] {
  const anchor = along === 'x' ? 'middle' : 'end'
  return [
    ...svg.matchAll(
      /<text class="tick-text" x="([\d.-]+)" y="([\d.-]+)" text-anchor="(\w+)">([−\d.]+)<\/text>/g,
    ),
  ]
    .filter(([, , , found]) => found === anchor)
    .map(([, x, y, , text]) => ({
      at: along === 'x' ? Number(x) : Number(y) - 4,
      number: Number(text!.replace('−', '-')),
    }))
}

/** Lines lie in the cut-out of their plot. */
function linePoints(svg: string, className: string): (readonly [number, number])[] {
  const [, left, top] = /<svg x="([\d.]+)" y="([\d.]+)"/.exec(svg) ?? []
  const [, path = ''] = new RegExp(`<path class="line ${className}" d="([^"]+)"`).exec(svg) ?? []
  return [...path.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(
    ([, x, y]) => [Number(left) + Number(x), Number(top) + Number(y)] as const,
  )
}

describe('law: ticks are round where their reader counts', () => {
  const isRound = (step: number) => {
    const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9)
    return [1, 2, 5].some((one) => Math.abs(mantissa - one) < 1e-6)
  }
  for (const [name, reader] of Object.entries(readers))
    test(name, () => {
      for (const suffix of ['m_per_s', 'degC', 'mm', 'N', 'mV_per_mm'])
        for (const domain of [
          [0, 25],
          [-20, 180],
          [0, 1.7],
          [3, 4],
        ] as readonly Span[]) {
          const found = measuredBy(reader, () => axisTicks({ domain, suffix }, 6))
          const read = found.map(({ value }) => measuredBy(reader, () => measured(value, suffix)))
          expect(found.length).toBeGreaterThan(1)
          found.forEach(({ text }, k) => {
            expect(Number(text.replace('−', '-'))).toBeCloseTo(read[k]!, 7)
          })
          expect(isRound(read[1]! - read[0]!)).toBe(true)
          const [low, high] = measuredBy(reader, () => niceDomain(domain, 6, suffix))
          expect(low).toBeLessThanOrEqual(domain[0] + 1e-9)
          expect(high).toBeGreaterThanOrEqual(domain[1] - 1e-9)
        }
    })
  test('there and back is the same place', () =>
    measuredBy(inches, () => {
      for (const value of [-40, 0, 0.3, 6, 98.6])
        for (const suffix of ['degC', 'mm', 'm_per_s'])
          expect(unmeasured(measured(value, suffix), suffix)).toBeCloseTo(value, 8)
    }))
})

describe('law: every point stands where it stood, read off in other units', () => {
  for (const [name, draw] of Object.entries(pictures))
    test(`${name}: what has no other unit is not touched, and metric is what is drawn without a word`, () => {
      expect(measuredBy(metricMeasure, draw)).toBe(draw())
      expect(measuredBy(inches, draw)).not.toBe(draw())
      expect(measuredBy(inches, draw)).not.toMatch(/m\/s|°C|\d mm|NaN|undefined/)
    })
  for (const [name, reader] of Object.entries(readers)) {
    test(`power against wind, ${name}`, () => {
      const svg = measuredBy(reader, pictures['power']!)
      const [first, second] = ticksOf(svg, 'x')
      const read = linePoints(svg, 'ink-shaft').map(
        ([x]) =>
          first!.number + ((x - first!.at) / (second!.at - first!.at)) * (second!.number - first!.number),
      )
      expect(read.length).toBe(winds.length)
      read.forEach((wind, k) => {
        expect(measuredBy(reader, () => unmeasured(wind, 'm_per_s'))).toBeCloseTo(winds[k]!, 2)
      })
    })
    test(`temperature, ${name}`, () => {
      const svg = measuredBy(reader, pictures['temperature']!)
      const [first, second] = ticksOf(svg, 'y')
      const read = linePoints(svg, 'ink-phase-1').map(
        ([, y]) =>
          first!.number + ((y - first!.at) / (second!.at - first!.at)) * (second!.number - first!.number),
      )
      read.forEach((warm, k) => {
        expect(measuredBy(reader, () => unmeasured(warm, 'degC'))).toBeCloseTo(10 + winds[k]! ** 1.6, 1)
      })
    })
  }
  test('a drawing keeps its scale; its bar is as long as its words say', () => {
    for (const scale of [80, 400, 2000, 9000]) {
      const { long, text } = measuredBy(inches, () => scaleBar(scale))
      const [number, sign] = text.split(' ')
      expect(sign).toBe('in')
      expect(long).toBeCloseTo(inUnit(Number(number), spokenUnit('in'), spokenUnit('m')) * scale, 9)
      expect(long).toBeLessThan(90)
    }
    expect(scaleBar(400)).toEqual({ long: 80, text: '200 mm' })
    const section = machineSection(exampleChain('hen-house-drum'))
    const bodies = (svg: string) => svg.match(/<rect class="body[^>]+>/g)
    const draw = () => machineSectionChart({ width: 700, section })
    expect(bodies(measuredBy(inches, draw))).toEqual(bodies(draw()))
    expect(measuredBy(inches, draw)).toMatch(/\d in, true to scale/)
  })
})

describe('law: a table and its file name the unit that their numbers are in', () => {
  const rows = powerCurveTable(exampleChain('hen-house-drum').rows)
  test('metric stays as it is', () => expect(measuredTable(rows)).toBe(rows))
  test('inch and pound', () => {
    const turned = measuredBy(inches, () => measuredTable(rows))
    expect(tableCsv(turned).split('\r\n')[0]).toMatch(/^"wind, mph",state,"speed, rpm".*"copper, °F"$/)
    const column = (table: ChartTable, head: string) =>
      table.rows.map((row) => row[table.columns.findIndex((each) => each.head === head)])
    column(turned, 'wind').forEach((wind, k) => {
      expect(Number(wind) * 0.44704).toBeCloseTo(Number(column(rows, 'wind')[k]), 9)
    })
    expect(column(turned, 'useful')).toEqual(column(rows, 'useful'))
  })
})

describe('law: words on drawings follow', () => {
  test('a length to a hundredth of a millimetre, or a thousandth of an inch', () => {
    expect(lengthText(0.0127)).toBe('12.7 mm')
    expect(measuredBy(inches, () => lengthText(0.0127))).toBe('0.5 in')
    expect(measuredBy(inches, () => lengthText(1.2, 1))).toBe('47.2 in')
  })
  test('a wind looked at and a cable bought by gauge', () => {
    expect(measuredBy(inches, pictures['power']!)).toContain('>13.4 mph<')
    expect(measuredBy(inches, pictures['power']!)).toContain('power, W<')
    const plan = circuitPlan(exampleChain('boathouse-two-disc'))
    const section = (area: number) => ({ ...plan, cable: { ...plan.cable, area } })
    const of = (area: number) => measuredBy(inches, () => circuitChart({ width: 900, plan: section(area) }))
    expect(of(2.5e-6)).toContain('2.50 mm²')
    expect(of(5.261e-6)).toContain('AWG 10')
    expect(of(5.261e-6)).toMatch(/[\d.]+ ft, \d × AWG 10/)
  })
  test('what fails while it draws leaves the next picture in its own units', () => {
    expect(() =>
      measuredBy(inches, () => {
        throw new Error('torn')
      }),
    ).toThrow('torn')
    expect(pictures['power']!()).toContain('wind, m/s')
  })
})
