/** Picture of temperatures over wind or time, with what the materials bear as broken lines. */
import type { TemperatureLimit, TemperatureLine } from '../../analysis/temperature-by-wind.ts'
import { formatSi } from '../../units/format.ts'
import { wrapped } from '../text-table.ts'
import { linearScale, niceDomain, type Span, spreadApart } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, type PanelLine, panelBody } from './panel.ts'
import { type Point, picture, textAt } from './picture.ts'

export interface TemperatureChart {
  readonly width: number
  readonly height: number
  /** What runs along the picture, in the unit of its label. */
  readonly along: { readonly quantity: 'wind' | 'time'; readonly values: ArrayLike<number> }
  readonly lines: readonly TemperatureLine[]
  readonly limits: readonly TemperatureLimit[]
}

const inks = ['ink-phase-1', 'ink-wind', 'ink-phase-2', 'ink-phase-3', 'ink-shaft', 'ink-store'] as const
const axisLabel = { wind: 'wind, m/s', time: 'time, s' } as const
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

export function temperatureChart({ width, height, along, lines, limits }: TemperatureChart): string {
  const most = extreme(
    lines.map(({ values }) => values),
    Math.max,
  )
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
    return wrapped(
      `${letter}, ${formatSi(group.temperature, 'degC')}: ${group.labels.join('; ')}`,
      columns,
      '    ',
    )
  })
  const plot = {
    left,
    top: 30,
    width: Math.max(60, width - left - labelRoom(lines.map(({ label }) => label))),
    height: Math.max(60, height - 76),
  }
  const [first, last] = [along.values[0] ?? 0, along.values[along.values.length - 1] ?? 1]
  const x: Span = [along.quantity === 'wind' ? 0 : first, last]
  const highest = Math.max(most, ...near.map(({ temperature }) => temperature))
  const y = niceDomain([Math.min(least - zeroCelsius, 0), highest - zeroCelsius + 4], 5)
  const panelLines: PanelLine[] = [
    ...lines.map(
      ({ label, values }, k): PanelLine => ({
        label,
        className: inks[k % inks.length]!,
        dash: dashes[k % dashes.length]!,
        points: Array.from(values, (value, n): Point => [along.values[n] ?? Number.NaN, value - zeroCelsius]),
        labelAt: 'end',
      }),
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
    textAt(left + 6, places[k]!, `${letterOf(k)}, ${formatSi(temperature, 'degC')}`, {
      className: 'line-label halo ink-against',
    }),
  )
  return picture(
    {
      name: 'temperature',
      title: along.quantity === 'wind' ? 'Temperatures by wind' : 'Temperatures in time',
      description: `${lines.map(({ label, values }) => `${label} up to ${formatSi(extreme([values], Math.max), 'degC')}`).join(', ')}; limits: ${limits.map(({ label, temperature }) => `${label} ${formatSi(temperature, 'degC')}`).join(', ')}.`,
      width,
      height: height + 18 * notes.length,
    },
    panelBody({
      plot,
      footed: true,
      x: { label: axisLabel[along.quantity], domain: x },
      y: { label: 'temperature, °C', domain: y },
      lines: panelLines,
    }) +
      labels.join('') +
      notes.map((note, k) => textAt(4, height + 12 + 18 * k, note, { className: 'tick-text' })).join(''),
  )
}

export function temperatureTable({ along, lines }: Pick<TemperatureChart, 'along' | 'lines'>): ChartTable {
  return {
    caption: along.quantity === 'wind' ? 'Temperatures by wind' : 'Temperatures in time',
    columns: [
      along.quantity === 'wind' ? { head: 'wind', unit: 'm/s' } : { head: 'time', unit: 's' },
      ...lines.map(({ label }) => ({ head: label, unit: '°C' })),
    ],
    rows: Array.from(along.values, (value, k) => [
      value,
      ...lines.map(({ values }) => Math.round(1000 * (values[k]! - zeroCelsius)) / 1000),
    ]),
  }
}
