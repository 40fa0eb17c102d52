/** Picture of the site's wind: how long each wind blows in a year, and what each wind brings. */
import { formatNumber } from '../../units/format.ts'
import { chosenText, measuredText } from '../measuring.ts'
import { axisTicks, axisWords, linearScale, windPlace } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'

export interface WindDistributionChart {
  readonly width: number
  readonly height: number
  /** Winds of the rows at an equal step [m/s]. */
  readonly wind: ArrayLike<number>
  /** Hours of a year near each wind [h]. */
  readonly hours: ArrayLike<number>
  /** Energy of a year from each wind [J]. */
  readonly energy: ArrayLike<number>
  readonly chosenWind: number
  readonly meanWind: number
}

const kilowattHour = 3.6e6

/** To the left and right, for half of the first and of the last bar [px]. */
const border = 14

/** A wind that never blows needs no digits. */
const atLeast = (value: number, least: number): string =>
  value > 0 && value < least ? `under ${least}` : formatNumber(value)

/** The wind with most of something. */
const richest = (wind: ArrayLike<number>, values: ArrayLike<number>): number =>
  wind[Array.from(wind).reduce((best, _, k) => ((values[k] ?? 0) > (values[best] ?? 0) ? k : best), 0)] ?? 0

export function windDistributionChart(chart: WindDistributionChart): string {
  const { width, height, wind, hours, energy, chosenWind, meanWind } = chart
  const first = wind[0] ?? 0
  const last = wind[wind.length - 1] ?? 1
  const at = linearScale([first, last], [border, width - border])
  const top = 40
  const foot = height - 44
  const mostHours = Math.max(...Array.from(hours), 1e-9)
  const mostEnergy = Math.max(...Array.from(energy), 0)
  const time = linearScale([0, mostHours], [foot, top])
  const gain = linearScale([0, mostEnergy || 1], [foot, top])
  const pitch = wind.length > 1 ? Math.abs(at(wind[1]!) - at(wind[0]!)) : 8
  const bars = Array.from(wind, (v, k) => {
    const y = gain(energy[k] ?? 0)
    return `<rect class="bar ${v === chosenWind ? 'ink-chosen' : 'ink-store'}" x="${px(at(v) - pitch * 0.36)}" y="${px(y)}" width="${px(pitch * 0.72)}" height="${px(Math.max(0, foot - y))}"/>`
  })
  const curve = Array.from(wind, (v, k): Point => [at(v), time(hours[k] ?? 0)])
  const hoursPath = lineThrough(curve)
  const chosenAt = at(chosenWind)
  const axis = { label: 'wind', suffix: 'm_per_s', domain: [first, last] } as const
  const marks = axisTicks(axis, Math.max(3, Math.floor(width / 90))).map(
    ({ value, text }) =>
      `<path class="tick" d="M${px(at(value))} ${px(foot)}v4"/>` +
      textAt(at(value), foot + 18, text, { className: 'tick-text', anchor: 'middle' }),
  )
  const chosen = Array.from(wind).indexOf(chosenWind)
  const x = chosenAt
  const late = x > width * 0.6
  const words = `${atLeast(hours[chosen] ?? 0, 0.1)} h/year, ${atLeast((energy[chosen] ?? 0) / kilowattHour, 0.01)} kWh`
  const mean = Math.min(Math.max(meanWind, first), last)
  const body =
    bars.join('') +
    `<path class="line ink-wind" d="${hoursPath}" stroke-dasharray="9 4"/>` +
    `<path class="axis" d="M${px(border)} ${px(foot)}H${px(width - border)}"/>${marks.join('')}` +
    `<path class="upright ink-wind" d="M${px(at(mean))} ${px(top - 6)}V${px(foot)}" stroke-dasharray="2 4"/>` +
    `<path class="upright ink-chosen" d="M${px(x)} ${px(top - 14)}V${px(foot)}"/>` +
    textAt(x + (late ? -7 : 7), top - 6, words, {
      className: 'line-label halo ink-chosen',
      anchor: late ? 'end' : 'start',
    }) +
    textAt(border, 14, '- - hours', { className: 'line-label ink-wind' }) +
    textAt(border + 72, 14, '▮ energy', { className: 'line-label ink-store' }) +
    textAt(width - border, 14, `mean ${measuredText(meanWind, 'm_per_s')}`, {
      className: 'line-label ink-wind',
      anchor: 'end',
    }) +
    textAt(width - border, foot + 37, axisWords(axis), {
      className: 'axis-text',
      anchor: 'end',
      told: true,
    }) +
    windPlace({ left: border, top, width: width - 2 * border, height: foot - top }, [first, last])
  return picture(
    {
      name: 'wind-distribution',
      title: 'Wind of the site over a year',
      description: `It blows ${measuredText(meanWind, 'm_per_s')} in the mean; most hours come near ${chosenText(richest(wind, hours), 'm_per_s')}, most energy at ${chosenText(richest(wind, energy), 'm_per_s')}. At ${chosenText(chosenWind, 'm_per_s')}: ${words}.`,
      width,
      height,
    },
    body,
  )
}

export function windDistributionTable({
  wind,
  hours,
  energy,
}: Pick<WindDistributionChart, 'wind' | 'hours' | 'energy'>): ChartTable {
  return {
    caption: 'Wind and energy of a year',
    columns: [
      { head: 'wind', unit: 'm/s', exact: true },
      { head: 'time', unit: 'h/year' },
      { head: 'energy', unit: 'kWh' },
    ],
    rows: Array.from(wind, (each, k) => [each, hours[k], (energy[k] ?? 0) / kilowattHour]),
  }
}
