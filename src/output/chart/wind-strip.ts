/** Picture of the site's wind as a narrow strip: hours, energy, and the winds at which something begins. */
import { measuredText } from '../measuring.ts'
import { said } from '../telling.ts'
import { axisTicks, linearScale } from './axis.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'

export interface WindMark {
  /** [m/s] */
  readonly wind: number
  readonly label: string
  /** How grave what begins there is: shown by the mark's shape too. */
  readonly kind: 'begins' | 'limit' | 'danger'
}

export interface WindStrip {
  readonly width: number
  /** Winds of the rows at an equal step [m/s]. */
  readonly wind: ArrayLike<number>
  /** Hours of a year near each wind [h]. */
  readonly hours: ArrayLike<number>
  /** Energy of a year from each wind [J]. */
  readonly energy: ArrayLike<number>
  readonly marks: readonly WindMark[]
  readonly chosenWind: number
  /** Free room at either end, half the knob of a slider [px]. */
  readonly border: number
}

/** Of the strip, its marks' words above included [px]. */
export const windStripHeight = 84
const top = 34
const foot = 66
/** Rough width of a letter of a mark's word [px]. */
const letter = 6.2

interface Placed extends WindMark {
  readonly x: number
  readonly tier: number
  readonly late: boolean
  readonly beyond: boolean
}

/** Words on two tiers, so that none lies on another; a wind beyond the strip stands at its end. */
function placed({ marks, width, border }: WindStrip, at: (wind: number) => number, last: number): Placed[] {
  const ends = [-Infinity, -Infinity]
  return marks
    .filter(({ wind }) => Number.isFinite(wind))
    .sort((a, b) => a.wind - b.wind)
    .map((mark): Placed => {
      const beyond = mark.wind > last
      const x = Math.min(width - border, at(Math.min(mark.wind, last)))
      const length = letter * (mark.label.length + (beyond ? 2 : 0)) + 8
      const late = x + length > width - 2
      const from = late ? x - length : x
      const tier = ends[0]! <= from ? 0 : ends[1]! <= from ? 1 : ends[0]! <= ends[1]! ? 0 : 1
      ends[tier] = from + length
      return { ...mark, x, tier, late, beyond }
    })
}

const signs: Readonly<Record<WindMark['kind'], (x: number, y: number) => string>> = {
  begins: (x, y) => `M${px(x - 4)} ${px(y)}h8l-4 6Z`,
  limit: (x, y) => `M${px(x - 4)} ${px(y)}h8v6h-8Z`,
  danger: (x, y) => `M${px(x - 4)} ${px(y)}l8 6m0 -6l-8 6`,
}

export function windStripChart(strip: WindStrip): string {
  const { width, wind, hours, energy, chosenWind, border } = strip
  const first = wind[0] ?? 0
  const last = wind[wind.length - 1] ?? 1
  const at = linearScale([first, last], [border, width - border])
  const most = (values: ArrayLike<number>) => Math.max(...Array.from(values), 1e-12)
  const time = linearScale([0, most(hours)], [foot, top])
  const gain = linearScale([0, most(energy)], [foot, top])
  const pitch = wind.length > 1 ? Math.abs(at(wind[1]!) - at(wind[0]!)) : 8
  const bars = Array.from(wind, (v, k) => {
    const y = gain(energy[k] ?? 0)
    return `<rect class="bar ${Math.abs(v - chosenWind) < 1e-9 ? 'ink-chosen' : 'ink-store'}" x="${px(at(v) - pitch * 0.36)}" y="${px(y)}" width="${px(pitch * 0.72)}" height="${px(Math.max(0, foot - y))}"/>`
  })
  const curve = Array.from(wind, (v, k): Point => [at(v), time(hours[k] ?? 0)])
  const count = Math.max(3, Math.floor(width / 70))
  const scale = axisTicks({ domain: [first, last], suffix: 'm_per_s' }, count).map(
    ({ value, text }) =>
      `<path class="tick" d="M${px(at(value))} ${px(foot)}v4"/>` +
      textAt(at(value), foot + 15, text, { className: 'tick-text', anchor: 'middle' }),
  )
  const marks = placed(strip, at, last).map(({ x, tier, late, label, kind, beyond }) => {
    const y = 11 + 14 * tier
    const word = beyond ? `${label} ▸` : label
    return (
      `<path class="wind-mark is-${kind}" d="M${px(x)} ${px(y - 3)}V${px(foot)}"/>` +
      `<path class="wind-sign is-${kind}" d="${signs[kind](x, top - 4)}"/>` +
      textAt(x + (late ? -4 : 4), y, word, {
        className: `mark-text halo is-${kind}`,
        anchor: late ? 'end' : 'start',
      })
    )
  })
  return picture(
    {
      name: 'wind-strip',
      title: 'Wind of the site over a year',
      description: `${said('Dashed curve: hours of a year at each wind. Bars: energy of a year from it.')} ${strip.marks
        .filter((mark) => Number.isFinite(mark.wind))
        .map((mark) => `${mark.label}: ${measuredText(mark.wind, 'm_per_s', 2)}`)
        .join(', ')}.`,
      width,
      height: windStripHeight,
    },
    bars.join('') +
      `<path class="line ink-wind" d="${lineThrough(curve)}" stroke-dasharray="7 3"/>` +
      `<path class="axis" d="M${px(border)} ${px(foot)}H${px(width - border)}"/>${scale.join('')}` +
      marks.join(''),
  )
}
