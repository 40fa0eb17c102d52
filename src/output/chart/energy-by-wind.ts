/** Picture of a year's energy by wind: a bar for every half metre per second, stacked by where the energy goes. */
import type { EnergyByWind } from '../../analysis/energy-by-wind.ts'
import { type Watts, wattColumns } from '../../analysis/watts.ts'
import { formatNumber } from '../../units/format.ts'
import { chosenNumber, chosenText } from '../measuring.ts'
import { axisBelow, axisBeside, chosenWindMark, linearScale, niceDomain, windPlace } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'
import { highestTraced, type TracedCurve, tracedText } from './tracing.ts'

export interface EnergyByWindChart {
  readonly width: number
  readonly height: number
  readonly energy: EnergyByWind
  /** The wind looked at [m/s]. */
  readonly chosenWind?: number
  /** Useful energy of other states of the design by wind [m/s], [kWh]. */
  readonly tracings?: readonly TracedCurve[]
}

const title = 'A year’s energy by wind'
const kilowattHour = 3.6e6

interface Part {
  readonly columns: readonly (keyof Watts)[]
  readonly label: string
  readonly letter: string
}

/** From the foot of each bar upward; the letters tell parts apart without colour. */
const parts: readonly Part[] = [
  { columns: ['useful'], label: 'useful', letter: 'u' },
  { columns: ['battery'], label: 'heat in the battery', letter: 'b' },
  { columns: ['converter'], label: 'converter', letter: 'v' },
  { columns: ['diodes'], label: 'diodes', letter: 'd' },
  { columns: ['cable'], label: 'cable', letter: 'l' },
  { columns: ['winding'], label: 'copper of the winding', letter: 'c' },
  { columns: ['eddy', 'parts'], label: 'eddy currents', letter: 'e' },
  { columns: ['friction'], label: 'friction', letter: 'f' },
]

const total = (values: ArrayLike<number>): number => Array.from(values).reduce((sum, value) => sum + value, 0)

/** Of the whole, a part below this has no bar of its own colour worth a line of the legend. */
const leastShare = 1e-4

/** What the bars tell: which winds bring most, and where it goes. */
function description(
  wind: ArrayLike<number>,
  sums: readonly number[],
  whole: number,
  shown: readonly { readonly label: string; readonly values: ArrayLike<number> }[],
): string {
  if (!(whole > 0)) return 'The blades take no energy from any wind of the year.'
  const richest = sums.reduce((best, each, k) => (each > sums[best]! ? k : best), 0)
  const passed = (share: number): number => {
    let left = share * whole
    return sums.findIndex((each) => {
      left -= each
      return left <= 0
    })
  }
  const [from, to] = [passed(0.25), passed(0.75)].map((k) => wind[Math.max(k, 0)]!) as [number, number]
  const ways = shown.map(({ label, values }) => `${label} ${formatNumber(total(values))} kWh`).join(', ')
  return `Most of a year’s energy comes at ${chosenText(wind[richest]!, 'm_per_s')}, half of it between ${chosenNumber(from, 'm_per_s')} and ${chosenText(to, 'm_per_s')}. Of ${formatNumber(whole)} kWh from the blades: ${ways}.`
}

/** A step over each wind as high as a tracing's useful energy there. */
function steps({ x, y }: TracedCurve, half: number): Point[] {
  return Array.from(x).flatMap((at, k): Point[] => [
    [at - half, y[k] ?? 0],
    [at + half, y[k] ?? 0],
  ])
}

export function energyByWindChart({
  width,
  height,
  energy,
  chosenWind,
  tracings = [],
}: EnergyByWindChart): string {
  const { wind } = energy
  const series = parts.map((part) => ({
    ...part,
    values: Float64Array.from(wind, (_, k) =>
      part.columns.reduce((sum, column) => sum + Math.max(0, energy.parts[column][k]!) / kilowattHour, 0),
    ),
  }))
  const whole = series.reduce((sum, { values }) => sum + total(values), 0)
  const shown = series.filter(({ values }) => total(values) > leastShare * whole)
  const sums = Array.from(wind, (_, k) => shown.reduce((sum, { values }) => sum + values[k]!, 0))
  const columns = width >= 840 ? 4 : width >= 560 ? 3 : 2
  const legendRows = Math.ceil(Math.max(1, shown.length + tracings.length) / columns)
  const top = 18 * legendRows + 34
  const left = 46
  const plot = { left, top, width: Math.max(60, width - left - 10), height: Math.max(50, height - top - 46) }
  const step = wind.length > 1 ? wind[1]! - wind[0]! : 0.5
  // winds that hold next to nothing are left out on the right
  let last = sums.length - 1
  const most = sums.reduce((a, b) => Math.max(a, b), 1e-9)
  while (last > 0 && sums[last]! < 2e-3 * most) last--
  const domain = [0, (wind[last] ?? 1) + step] as const
  const y = niceDomain([0, Math.max(most, highestTraced(tracings)) * 1.04], 5)
  const x = linearScale(domain, [left, left + plot.width])
  const up = linearScale(y, [top + plot.height, top])
  const bar = Math.max(1, (x(step) - x(0)) * 0.84)
  const bars = Array.from(wind).map((at, k) => {
    if (k > last) return ''
    let below = 0
    return shown
      .map(({ values, letter }) => {
        const from = up(below)
        below += values[k]!
        const tall = from - up(below)
        if (!(tall > 0.05)) return ''
        const label =
          tall > 15 && bar > 11
            ? textAt(x(at), from - tall / 2 + 4, letter, { className: 'stack-letter', anchor: 'middle' })
            : ''
        return `<rect class="stack stack-${letter}" x="${px(x(at) - bar / 2)}" y="${px(up(below))}" width="${px(bar)}" height="${px(tall)}"/>${label}`
      })
      .join('')
  })
  const key = shown.map(({ label, letter, values }, k) => {
    const at = 4 + (k % columns) * ((width - 8) / columns)
    const y0 = 4 + 18 * Math.floor(k / columns)
    const share = whole > 0 ? `${formatNumber((100 * total(values)) / whole, 2)} %` : ''
    const name = width < 470 ? label.replace(' of the winding', '').replace('heat in the ', '') : label
    const tick = { className: 'tick-text' }
    return (
      `<rect class="stack stack-${letter}" x="${px(at)}" y="${px(y0)}" width="13" height="12"/>` +
      textAt(at + 18, y0 + 11, letter, tick) +
      textAt(at + 68, y0 + 11, share, { ...tick, anchor: 'end' }) +
      textAt(at + 73, y0 + 11, name, tick)
    )
  })
  const outlines = tracings.map((tracing, k) => {
    const points = steps(tracing, step / 2)
      .filter(([at]) => at <= domain[1])
      .map(([at, value]): Point => [x(at), up(value)])
    const place = shown.length + k
    const at = 4 + (place % columns) * ((width - 8) / columns)
    const y0 = 4 + 18 * Math.floor(place / columns)
    const line = (path: string) =>
      `<path class="line ${tracing.className}" d="${path}" stroke-dasharray="${tracing.dash}"/>`
    return (
      line(lineThrough(points)) +
      line(`M${px(at)} ${px(y0 + 6)}h26`) +
      textAt(at + 31, y0 + 11, `${tracing.label} ${formatNumber(total(tracing.y))} kWh`, {
        className: `tick-text ${tracing.className}`,
      })
    )
  })
  return picture(
    {
      name: 'energy-by-wind',
      title,
      description: description(wind, sums, whole, shown) + tracedText(tracings),
      width,
      height,
    },
    key.join('') +
      axisBeside(plot, { label: 'energy in a year, kWh', domain: y }) +
      axisBelow(plot, { label: 'wind', suffix: 'm_per_s', domain }) +
      bars.join('') +
      outlines.join('') +
      (chosenWind === undefined ? '' : chosenWindMark(plot, domain, chosenWind)) +
      windPlace(plot, domain),
  )
}

export function energyByWindTable({ wind, time, parts: byPart }: EnergyByWind): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'wind', unit: 'm/s', exact: true },
      { head: 'time in a year', unit: 'h' },
      ...wattColumns.map((column) => ({ head: column, unit: 'kWh' })),
    ],
    rows: Array.from(wind, (at, k) => [
      at,
      time[k]! / 3600,
      ...wattColumns.map((column) => byPart[column][k]! / kilowattHour),
    ]),
  }
}
