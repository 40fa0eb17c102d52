/** Picture of where a machine's heat leaves it in one wind: a bar for each face, as long as its watts. */
import type { HeatWays } from '../../analysis/heat-way.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { chosenText } from '../measuring.ts'
import { said } from '../telling.ts'
import { linearScale } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt } from './paragraph.ts'
import { picture, px } from './picture.ts'

export interface HeatWayChart {
  readonly width: number
  readonly ways: HeatWays['ways']
  /** [m/s] */
  readonly wind: number
}

const rowHeight = 40
/** Letters that a line of so many pixels holds. */
const letterWidth = 6.6

/** What flows out of the machine; a face that the air warms takes heat in and is no way out [W]. */
const whole = (ways: HeatWays['ways']): number => ways.reduce((sum, { power }) => sum + Math.max(power, 0), 0)

const shareText = (power: number, all: number): string =>
  all > 0 ? `${formatNumber((100 * power) / all, 2)} %` : '—'

/** Ways that carry next to nothing are one. */
const leastShare = 0.005

function told(ways: HeatWays['ways']): HeatWays['ways'] {
  const all = whole(ways)
  const small = ways.filter(({ power }) => Math.abs(power) < leastShare * all)
  if (small.length < 2) return ways
  const power = small.reduce((sum, each) => sum + each.power, 0)
  return [...ways.filter((each) => !small.includes(each)), { from: 'all else', by: 'every way', power }]
}

export function heatWayChart({ width, ways, wind }: HeatWayChart): string {
  const shown = told(ways)
  const all = whole(ways)
  const along = linearScale(
    [0, Math.max(...shown.map(({ power }) => power), 1e-9)],
    [0, Math.max(10, width - 4)],
  )
  const columns = Math.floor((width - 4) / letterWidth)
  const rows = shown.map(({ from, by, power }, k) => {
    const top = 12 + rowHeight * k
    const figures = `${formatSi(power, 'W')}, ${shareText(power, all)}`
    const long = said(`${from}, ${by}: ${figures}`)
    const text = long.length <= columns ? long : said(`${from}: ${figures}`)
    return (
      lineAt(2, top + 6, text, { className: 'part-text' }) +
      `<rect class="bar ink-phase-1" x="2" y="${px(top + 12)}" width="${px(Math.max(0, along(Math.max(0, power))))}" height="14"/>`
    )
  })
  return picture(
    {
      name: 'heat-way',
      title: 'Where the heat leaves',
      description: `In ${chosenText(wind, 'm_per_s')} ${formatSi(all, 'W')} leave: ${shown.map(({ from, by, power }) => `${from} by ${by} ${formatSi(power, 'W')}, ${shareText(power, all)}`).join('; ')}.`,
      width,
      height: 12 + rowHeight * shown.length,
    },
    rows.join(''),
  )
}

export function heatWayTable({ ways }: Pick<HeatWayChart, 'ways'>): ChartTable {
  const all = whole(ways)
  return {
    caption: 'Where the heat leaves',
    columns: [{ head: 'from' }, { head: 'by' }, { head: 'heat', unit: 'W' }, { head: 'of all', unit: '%' }],
    rows: ways.map(({ from, by, power }) => [from, by, power, all > 0 ? (100 * power) / all : 0]),
  }
}
