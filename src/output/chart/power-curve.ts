/** Picture of the power against wind: what the shaft gives and what is stored. */
import type { WindRow, WindState } from '../../analysis/power-curve.ts'
import { shaftPower } from '../../analysis/watts.ts'
import { formatSi } from '../../units/format.ts'
import { fromSi, unit } from '../../units/unit.ts'
import { chosenText } from '../measuring.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture, shortNumber } from './picture.ts'
import { highestTraced, type TracedCurve, tracedLine, tracedText } from './tracing.ts'

export interface PowerCurveChart {
  readonly width: number
  readonly height: number
  /** [m/s] and [W], row by row. */
  readonly wind: ArrayLike<number>
  readonly shaft: ArrayLike<number>
  readonly useful: ArrayLike<number>
  /** What is used is stored, or turned into heat. */
  readonly usefulName: string
  /** The wind looked at [m/s]. */
  readonly chosenWind: number
  /** Useful power between whose ends nine of ten draws of the guesses lie, wind by wind [m/s], [W]. */
  readonly spread?: {
    readonly wind: ArrayLike<number>
    readonly low: ArrayLike<number>
    readonly high: ArrayLike<number>
  }
  /** Power wanted [W] at a wind [m/s], where somebody said so. */
  readonly wanted?: { readonly power: number; readonly wind: number }
  /** Useful power of other states of the design [m/s], [W]. */
  readonly tracings?: readonly TracedCurve[]
}

/** Narrower pictures bear their words inside the plot [px]. */
const leastBeside = 460

const pairs = (x: ArrayLike<number>, y: ArrayLike<number>): Point[] =>
  Array.from(x, (value, k): Point => [value, y[k]!])

/** Of the winds drawn, the nearest. */
function nearest(wind: ArrayLike<number>, wanted: number): number {
  return Array.from(wind).reduce(
    (best, each, k) => (Math.abs(each - wanted) < Math.abs(wind[best]! - wanted) ? k : best),
    0,
  )
}

/** What the curve tells: where it begins, what it gives at the wind looked at, and its most. */
function description(chart: PowerCurveChart): string {
  const { wind, shaft, useful, usefulName, chosenWind, spread, wanted } = chart
  const watts = Array.from(useful)
  const first = watts.findIndex((each) => each > 0)
  if (first < 0) return `In no wind of the table is there any power ${usefulName}.`
  const most = watts.reduce((best, each, k) => (each > watts[best]! ? k : best), 0)
  const at = nearest(wind, chosenWind)
  const speed = (k: number) => chosenText(wind[k]!, 'm_per_s')
  const within = spread === undefined ? undefined : nearest(spread.wind, chosenWind)
  const ends =
    spread === undefined || within === undefined
      ? ''
      : `, between ${formatSi(spread.low[within] ?? 0, 'W')} and ${formatSi(spread.high[within] ?? 0, 'W')} in nine of ten cases`
  const aim =
    wanted === undefined
      ? ''
      : ` Wanted are ${shortNumber(wanted.power)} W at ${chosenText(wanted.wind, 'm_per_s')}; the curve has ${formatSi(watts[nearest(wind, wanted.wind)]!, 'W')} there.`
  return `Power ${usefulName} begins at ${speed(first)} and is greatest at ${speed(most)}, ${formatSi(watts[most]!, 'W')}. At ${speed(at)} it is ${formatSi(watts[at]!, 'W')}${ends}, of ${formatSi(shaft[at]!, 'W')} at the shaft.${aim}`
}

export function powerCurveChart(chart: PowerCurveChart): string {
  const { width, height, wind, shaft, useful, usefulName, chosenWind, spread, wanted, tracings = [] } = chart
  const labels = ['at the shaft', usefulName, ...tracings.map(({ label }) => label)]
  const left = 52
  // words beside the plot would leave a phone half of it
  const narrow = width < leastBeside
  const labelAt = narrow ? ('inside' as const) : ('end' as const)
  const plot = {
    left,
    top: 30,
    width: Math.max(60, width - left - (narrow ? 12 : labelRoom(labels))),
    height: height - 76,
  }
  const last = wind[wind.length - 1] ?? 1
  const most = Math.max(
    0,
    ...Array.from(shaft),
    ...Array.from(spread?.high ?? []),
    wanted?.power ?? 0,
    highestTraced(tracings),
  )
  // where nothing arrives, any scale will do
  const greatest = most > 0 ? most : 1
  const body = panelBody({
    plot,
    footed: true,
    byWind: true,
    bands: spread
      ? [
          {
            className: 'ink-store',
            low: pairs(spread.wind, spread.low),
            high: pairs(spread.wind, spread.high),
          },
        ]
      : [],
    x: { label: 'wind', suffix: 'm_per_s', domain: [0, last] },
    y: { label: 'power, W', domain: niceDomain([0, 1.05 * greatest], 5) },
    lines: [
      {
        label: labels[0]!,
        className: 'ink-shaft',
        dash: dashes[1],
        points: pairs(wind, shaft),
        labelAt,
      },
      {
        label: usefulName,
        className: 'ink-store',
        points: pairs(wind, useful),
        labelAt,
        filled: true,
      },
      ...tracings.map((tracing) => ({ ...tracedLine(tracing), labelAt })),
    ],
    marks: wanted
      ? [
          {
            at: [wanted.wind, wanted.power],
            className: 'ink-wanted',
            label: `wanted: ${shortNumber(wanted.power)} W`,
            radius: 5,
          },
        ]
      : [],
    uprights: [{ x: chosenWind, label: chosenText(chosenWind, 'm_per_s'), className: 'ink-chosen' }],
  })
  return picture(
    {
      name: 'power-curve',
      title: 'Power against wind',
      description: description(chart) + tracedText(tracings),
      width,
      height,
    },
    body,
  )
}

/** What the machine does, in words; the same as those of the page's sentences. */
export const windStateWords: Readonly<Record<WindState, string>> = {
  'at rest': 'at rest',
  turning: 'turning, no current',
  charging: 'charging',
  stalled: 'held back in stall',
  held: 'held by the limiter',
}

/** Every figure of every wind. */
export function powerCurveTable(rows: readonly WindRow[], spread?: PowerCurveChart['spread']): ChartTable {
  const ends = (k: number): number[] =>
    spread === undefined ? [] : [spread.low[k] ?? 0, spread.high[k] ?? 0]
  return {
    caption:
      spread === undefined
        ? 'Every wind'
        : 'Every wind; useful power lies between its low and high end in nine of ten cases',
    columns: [
      { head: 'wind', unit: 'm/s', exact: true },
      { head: 'state' },
      { head: 'speed', unit: 'rpm' },
      { head: 'direct current', unit: 'A' },
      { head: 'load', unit: 'V' },
      { head: 'phase', unit: 'A rms' },
      { head: 'shaft', unit: 'W' },
      { head: 'bearings', unit: 'W' },
      { head: 'eddy currents', unit: 'W' },
      { head: 'winding', unit: 'W' },
      { head: 'cable', unit: 'W' },
      { head: 'diodes', unit: 'W' },
      { head: 'converter', unit: 'W' },
      { head: 'in the battery', unit: 'W' },
      { head: 'useful', unit: 'W' },
      ...(spread === undefined
        ? []
        : [
            { head: 'useful, low end', unit: 'W' },
            { head: 'useful, high end', unit: 'W' },
          ]),
      { head: 'copper', unit: '°C' },
    ],
    rows: rows.map((row, k) => [
      row.wind,
      windStateWords[row.state],
      fromSi(row.speed, unit('rpm')),
      row.loadCurrent,
      row.loadVoltage,
      row.phaseCurrent,
      shaftPower(row.watts),
      row.watts.friction,
      row.watts.eddy + row.watts.parts,
      row.watts.winding,
      row.watts.cable,
      row.watts.diodes,
      row.watts.converter,
      row.watts.battery,
      row.watts.useful,
      ...ends(k),
      row.overheated ? 'burns' : fromSi(row.copperTemperature, unit('degC')),
    ]),
  }
}
