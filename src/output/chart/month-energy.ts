/** Picture of a year month by month: what each is expected to bring, its bounds, and what is needed. */
import { formatNumber } from '../../units/format.ts'
import { axisBeside, linearScale, niceDomain, type Plot } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { picture, px, textAt } from './picture.ts'

export interface MonthBar {
  /** "Jan" */
  readonly label: string
  /** [J] */
  readonly energy: number
  readonly low: number
  readonly high: number
  /** [J]; undefined where no need is named. */
  readonly need: number | undefined
}

export interface MonthEnergyChart {
  readonly width: number
  readonly height: number
  readonly months: readonly MonthBar[]
}

const kilowattHour = 3.6e6

/** Best and poorest month, and in which ones the need is not met. */
function description(months: readonly MonthBar[]): string {
  const kWh = (joule: number) => `${formatNumber(joule / kilowattHour)} kWh`
  const total = months.reduce((sum, { energy }) => sum + energy, 0)
  const first = months[0]
  if (first === undefined) return 'There are no months to draw.'
  const best = months.reduce((most, each) => (each.energy > most.energy ? each : most), first)
  const poorest = months.reduce((least, each) => (each.energy < least.energy ? each : least), first)
  const needed = months.filter(({ need }) => need !== undefined)
  const short = needed.filter(({ energy, need }) => energy < need!)
  const ends = `Best is ${best.label} with ${kWh(best.energy)}, poorest ${poorest.label} with ${kWh(poorest.energy)}, in nine of ten such months between ${kWh(poorest.low)} and ${kWh(poorest.high)}`
  const cover =
    needed.length === 0
      ? ''
      : short.length === 0
        ? ' Every month is expected to bring what is needed.'
        : ` Expected to fall short of the need: ${short.map(({ label }) => label).join(', ')}.`
  return `${kWh(total)} in a year. ${ends}.${cover}`
}

export function monthEnergyChart({ width, height, months }: MonthEnergyChart): string {
  const kWh = (joule: number) => joule / kilowattHour
  // where nothing comes and nothing is needed, any scale will do
  const most = Math.max(0, ...months.map(({ high, need }) => Math.max(kWh(high), kWh(need ?? 0)))) || 1
  const domain = niceDomain([0, most], 4)
  const plot: Plot = { left: 46, top: 30, width: Math.max(40, width - 56), height: Math.max(40, height - 58) }
  const up = linearScale(domain, [plot.top + plot.height, plot.top])
  const pitch = plot.width / Math.max(1, months.length)
  const foot = plot.top + plot.height
  const bars = months.map(({ label, energy, low, high, need }, k) => {
    const middle = plot.left + (k + 0.5) * pitch
    const y = up(kWh(energy))
    const half = pitch * 0.32
    const needed =
      need === undefined
        ? ''
        : `<path class="line ink-wanted" d="M${px(middle - half * 1.3)} ${px(up(kWh(need)))}h${px(half * 2.6)}"/>`
    return (
      `<rect class="bar ink-store" x="${px(middle - half)}" y="${px(y)}" width="${px(2 * half)}" height="${px(Math.max(0, foot - y))}"/>` +
      `<path class="upright ink-joint" d="M${px(middle)} ${px(up(kWh(low)))}V${px(up(kWh(high)))}M${px(middle - 3)} ${px(up(kWh(low)))}h6M${px(middle - 3)} ${px(up(kWh(high)))}h6"/>` +
      needed +
      textAt(middle, foot + 18, pitch < 30 ? label.slice(0, 1) : label, {
        className: 'tick-text',
        anchor: 'middle',
      })
    )
  })
  const withNeed = months.some(({ need }) => need !== undefined)
  return picture(
    {
      name: 'month-energy',
      title: 'The year month by month',
      description: description(months),
      width,
      height,
    },
    axisBeside(plot, { label: 'energy, kWh', domain }) +
      bars.join('') +
      (withNeed
        ? textAt(width - 10, 14, '— needed', { className: 'line-label ink-wanted', anchor: 'end' })
        : ''),
  )
}

/** Whether a month covers its need, in words beside the numbers. */
export interface MonthRow extends MonthBar {
  readonly meanWind: number
  readonly covered: string | undefined
}

export function monthEnergyTable(months: readonly MonthRow[]): ChartTable {
  const kWh = (joule: number | undefined) => (joule === undefined ? undefined : joule / kilowattHour)
  return {
    caption: 'Energy by month',
    columns: [
      { head: 'month' },
      { head: 'wind', unit: 'm/s' },
      { head: 'energy', unit: 'kWh' },
      { head: 'poor', unit: 'kWh' },
      { head: 'good', unit: 'kWh' },
      { head: 'needed', unit: 'kWh' },
      { head: 'covered' },
    ],
    rows: months.map(({ label, meanWind, energy, low, high, need, covered }) => [
      label,
      meanWind,
      kWh(energy),
      kWh(low),
      kWh(high),
      kWh(need),
      covered,
    ]),
  }
}
