/** Picture of temperatures over wind or time, with what the materials bear as broken lines. */
import type { TemperatureLimit, TemperatureLine } from '../../analysis/temperature-by-wind.ts'
import { formatNumber } from '../../units/format.ts'
import { chosenText, measuredText } from '../measuring.ts'
import { chosenWindMark, linearScale, niceDomain, type Span, spreadApart } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, type PanelLine, panelBody } from './panel.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { type Point, picture, textAt } from './picture.ts'
import { type TracedCurve, tracedLine, tracedText } from './tracing.ts'

export interface TemperatureChart {
  readonly width: number
  readonly height: number
  /** What runs along the picture [m/s], [s]. */
  readonly along: { readonly quantity: 'wind' | 'time'; readonly values: ArrayLike<number> }
  readonly lines: readonly TemperatureLine[]
  readonly limits: readonly TemperatureLimit[]
  /** The wind looked at, where winds run along it [m/s]. */
  readonly chosenWind?: number
  /** The first line of other states of the design, along the same axis [K]. */
  readonly tracings?: readonly TracedCurve[]
}

const inks = ['ink-phase-1', 'ink-wind', 'ink-phase-2', 'ink-phase-3', 'ink-shaft', 'ink-store'] as const
/** What runs along it: name and unit, and how much of it one SI unit is. */
function axisOf({ quantity, values }: TemperatureChart['along']) {
  if (quantity === 'wind') return { head: 'wind', symbol: 'm/s', per: 1 }
  const last = values[values.length - 1] ?? 0
  if (last <= fewSeconds) return { head: 'time', symbol: 's', per: 1 }
  return last <= fewMinutes
    ? { head: 'time', symbol: 'min', per: 1 / 60 }
    : { head: 'time', symbol: 'h', per: 1 / 3600 }
}

/** Ends of an axis that are still told in seconds, and in minutes [s]. */
const fewSeconds = 600
const fewMinutes = 4 * 3600
const zeroCelsius = 273.15

/** Limits so far above all that happens that they would flatten the lines are named below the picture only [K]. */
const farAbove = 60

interface LimitGroup {
  readonly temperature: number
  readonly labels: readonly string[]
}

/** Limits at one temperature are one line. */
function byTemperature(limits: readonly TemperatureLimit[]): LimitGroup[] {
  const groups = new Map<number, string[]>()
  for (const { label, temperature } of limits)
    groups.set(temperature, [...(groups.get(temperature) ?? []), label])
  return [...groups].sort((a, b) => a[0] - b[0]).map(([temperature, labels]) => ({ temperature, labels }))
}

const letterOf = (k: number): string => String.fromCharCode(97 + k)

const extreme = (lists: readonly ArrayLike<number>[], pick: (a: number, b: number) => number): number => {
  let found = Number.NaN
  for (const list of lists)
    for (let k = 0; k < list.length; k++)
      if (Number.isFinite(list[k])) found = Number.isNaN(found) ? list[k]! : pick(found, list[k]!)
  return Number.isNaN(found) ? zeroCelsius : found
}

/** The limit that is least above the hottest of the lines, or most below it. */
function nearestLimit(limits: readonly TemperatureLimit[]): TemperatureLimit | undefined {
  return limits.reduce<TemperatureLimit | undefined>(
    (least, each) => (least === undefined || each.temperature < least.temperature ? each : least),
    undefined,
  )
}

/** How warm each part gets and where, and how far that is from what bears least. */
function description({ along, lines, limits, chosenWind }: TemperatureChart): string {
  const { symbol, per } = axisOf(along)
  const of = along.quantity === 'wind' ? 'at' : 'after'
  const told = lines.map(({ label, values }) => {
    const list = Array.from(values)
    const most = list.reduce((best, value, k) => (value > list[best]! ? k : best), 0)
    return `${label} up to ${measuredText(list[most] ?? zeroCelsius, 'degC')} ${of} ${along.quantity === 'wind' ? measuredText(along.values[most] ?? 0, 'm_per_s') : `${formatNumber((along.values[most] ?? 0) * per)} ${symbol}`}`
  })
  const first = nearestLimit(limits)
  const warmest = extreme(
    lines.map(({ values }) => values),
    Math.max,
  )
  const rest =
    first === undefined
      ? ''
      : ` The least that any material bears is ${measuredText(first.temperature, 'degC')}, ${first.label}: ${warmest > first.temperature ? 'the warmest line passes it' : `${formatNumber(first.temperature - warmest)} K above the warmest line`}.`
  const nearest = Array.from(along.values).reduce(
    (best, value, k) =>
      Math.abs(value - (chosenWind ?? 0)) < Math.abs(along.values[best]! - (chosenWind ?? 0)) ? k : best,
    0,
  )
  const now =
    chosenWind === undefined || lines[0] === undefined
      ? ''
      : ` In ${chosenText(chosenWind, 'm_per_s')}: ${lines.map(({ label, values }) => `${label} ${measuredText(values[nearest] ?? zeroCelsius, 'degC')}`).join(', ')}.`
  return `${told.join(', ')}.${rest}${now}`
}

export function temperatureChart(chart: TemperatureChart): string {
  const { width, height, along, lines, limits, chosenWind, tracings = [] } = chart
  const most = extreme([...lines.map(({ values }) => values), ...tracings.map(({ y }) => y)], Math.max)
  const least = extreme(
    lines.map(({ values }) => values),
    Math.min,
  )
  const span = Math.max(20, most - least)
  const groups = byTemperature(limits)
  const near = groups.filter(
    // the lowest is drawn however far off it is: the room up to it is what a reader looks for
    ({ temperature }, k) => k === 0 || temperature < most + Math.max(farAbove, 0.8 * span),
  )
  const left = 46
  const columns = Math.floor((width - 8) / 7)
  const notes = groups.flatMap((group) => {
    const letter = near.includes(group) ? letterOf(near.indexOf(group)) : 'above the picture'
    const sentence = `${letter}, ${measuredText(group.temperature, 'degC')}: ${group.labels.join('; ')}`
    return linesOfParagraph(sentence, columns, '    ')
  })
  const plot = {
    left,
    top: 30,
    width: Math.max(60, width - left - labelRoom([...lines, ...tracings].map(({ label }) => label))),
    height: Math.max(60, height - 76),
  }
  const { head, symbol, per } = axisOf(along)
  const [first, last] = [(along.values[0] ?? 0) * per, (along.values[along.values.length - 1] ?? 1) * per]
  const x: Span = [along.quantity === 'wind' ? 0 : first, last]
  const highest = Math.max(most, ...near.map(({ temperature }) => temperature))
  const y = niceDomain([Math.min(least - zeroCelsius, 0), highest - zeroCelsius + 4], 5, 'degC')
  const panelLines: PanelLine[] = [
    ...lines.map(
      ({ label, values }, k): PanelLine => ({
        label,
        className: inks[k % inks.length]!,
        dash: dashes[k % dashes.length]!,
        points: Array.from(
          values,
          (value, n): Point => [(along.values[n] ?? Number.NaN) * per, value - zeroCelsius],
        ),
        labelAt: 'end',
      }),
    ),
    ...tracings.map((tracing) =>
      tracedLine({ ...tracing, y: Array.from(tracing.y, (value) => value - zeroCelsius) }),
    ),
    ...near.map(
      ({ temperature }): PanelLine => ({
        label: '',
        className: 'ink-against limit',
        dash: '4 4',
        points: [
          [x[0], temperature - zeroCelsius],
          [x[1], temperature - zeroCelsius],
        ],
        labelAt: 'nowhere',
      }),
    ),
  ]
  const up = linearScale(y, [plot.top + plot.height, plot.top])
  const places = spreadApart(
    near.map(({ temperature }) => up(temperature - zeroCelsius) - 6),
    15,
    [plot.top + 10, plot.top + plot.height - 4],
  )
  const labels = near.map(({ temperature }, k) =>
    textAt(left + 6, places[k]!, `${letterOf(k)}, ${measuredText(temperature, 'degC')}`, {
      className: 'line-label halo ink-against',
    }),
  )
  return picture(
    {
      name: 'temperature',
      title: along.quantity === 'wind' ? 'Temperatures by wind' : 'Temperatures in time',
      description: description(chart) + tracedText(tracings),
      width,
      height: height + 18 * notes.length,
    },
    panelBody({
      plot,
      footed: true,
      ...(along.quantity === 'wind' ? { byWind: true as const } : {}),
      x:
        along.quantity === 'wind'
          ? { label: head, suffix: 'm_per_s', domain: x }
          : { label: `${head}, ${symbol}`, domain: x },
      y: { label: 'temperature', suffix: 'degC', domain: y },
      lines: panelLines,
    }) +
      labels.join('') +
      (chosenWind === undefined || along.quantity !== 'wind' ? '' : chosenWindMark(plot, x, chosenWind)) +
      notes.map((note, k) => lineAt(4, height + 12 + 18 * k, note, { className: 'tick-text' })).join(''),
  )
}

export function temperatureTable({ along, lines }: Pick<TemperatureChart, 'along' | 'lines'>): ChartTable {
  const { head, symbol, per } = axisOf(along)
  return {
    caption: along.quantity === 'wind' ? 'Temperatures by wind' : 'Temperatures in time',
    columns: [
      { head, unit: symbol, ...(along.quantity === 'wind' ? { exact: true as const } : {}) },
      ...lines.map(({ label }) => ({ head: label, unit: '°C' })),
    ],
    rows: Array.from(along.values, (value, k) => [
      value * per,
      ...lines.map(({ values }) => Math.round(1000 * (values[k]! - zeroCelsius)) / 1000),
    ]),
  }
}
