/** Scales, ticks and axes that every chart shares. */
import { chosenText, measured, signMeasured, unmeasured } from '../measuring.ts'
import { said } from '../telling.ts'
import { px, textAt } from './picture.ts'

export type Span = readonly [least: number, greatest: number]

/** From a number to its place on the sheet. */
export type Scale = (value: number) => number

/** A domain that has a width: an empty or reversed one is widened so that nothing divides by zero. */
export function widened([least, greatest]: Span): Span {
  if (!Number.isFinite(least) || !Number.isFinite(greatest)) return [0, 1]
  if (greatest > least) return [least, greatest]
  const half = least === 0 ? 0.5 : Math.abs(least) / 2
  return [least - half, least + half]
}

export function linearScale(domain: Span, [from, to]: Span): Scale {
  const [least, greatest] = widened(domain)
  return (value) => from + ((value - least) / (greatest - least)) * (to - from)
}

/** Step of 1, 2 or 5 times a power of ten that divides the domain into about `count` parts. */
export function tickStep(domain: Span, count: number): number {
  const [least, greatest] = widened(domain)
  const rough = (greatest - least) / Math.max(count, 1)
  const decade = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].find((factor) => factor * decade >= rough * 0.999)!
  return step * decade
}

export function ticks(domain: Span, count: number): number[] {
  const [least, greatest] = widened(domain)
  const step = tickStep(domain, count)
  const first = Math.ceil(least / step - 1e-9)
  const last = Math.floor(greatest / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step)
}

/** The domain stretched outward to whole ticks, of the reader’s unit where it counts in the unit of a suffix. */
export function niceDomain(domain: Span, count: number, suffix?: string): Span {
  const read = suffix === undefined ? domain : measuredSpan(domain, suffix)
  const [least, greatest] = widened(read)
  const step = tickStep(read, count)
  const ends = [Math.floor(least / step + 1e-9) * step, Math.ceil(greatest / step - 1e-9) * step] as const
  return suffix === undefined ? ends : [unmeasured(ends[0], suffix), unmeasured(ends[1], suffix)]
}

const measuredSpan = ([least, greatest]: Span, suffix: string): Span => [
  measured(least, suffix),
  measured(greatest, suffix),
]

/** A tick as text, with the decimals that its step needs. */
export function tickText(value: number, step: number): string {
  if (Math.abs(value) < step / 1e6) return '0'
  const size = Math.max(Math.abs(value), step)
  if (size >= 1e6 || step < 1e-6) return value.toExponential(1).replaceAll('-', '−')
  return value.toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9))).replace('-', '−')
}

export interface Axis {
  /** What is drawn along it, with the unit last unless `suffix` names it: "shaft power, W". */
  readonly label: string
  readonly domain: Span
  /** Of the unit that the domain counts in, where readers may choose another: ticks are round in theirs. */
  readonly suffix?: string
}

/** Its words, in the reader’s unit and language. */
export const axisWords = ({ label, suffix }: Axis): string =>
  suffix === undefined ? said(label) : `${said(label)}, ${said(signMeasured(suffix))}`

interface Tick {
  /** In the unit of the domain. */
  readonly value: number
  readonly text: string
}

/** Ticks that are round where the reader counts. */
export function axisTicks({ domain, suffix }: Omit<Axis, 'label'>, count: number): Tick[] {
  const read = suffix === undefined ? domain : measuredSpan(domain, suffix)
  const step = tickStep(read, count)
  return ticks(read, count).map((value) => ({
    value: suffix === undefined ? value : unmeasured(value, suffix),
    text: tickText(value, step),
  }))
}

export interface Plot {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

const least = (space: number, each: number) => Math.max(2, Math.floor(space / each))

/** Tick marks, numbers and label under a plot. */
export function axisBelow({ left, top, width, height }: Plot, axis: Axis): string {
  const at = linearScale(axis.domain, [left, left + width])
  const foot = top + height
  const marks = axisTicks(axis, least(width, 76)).map(
    ({ value, text }) =>
      `<path class="tick" d="M${px(at(value))} ${px(foot)}v5"/>` +
      textAt(at(value), foot + 19, text, { className: 'tick-text', anchor: 'middle' }),
  )
  return (
    `<path class="axis" d="M${px(left)} ${px(foot)}h${px(width)}"/>${marks.join('')}` +
    textAt(left + width, foot + 38, axisWords(axis), { className: 'axis-text', anchor: 'end', told: true })
  )
}

/** Grid lines and numbers beside a plot; the label stands above it, so that nobody tilts the head. */
export function axisBeside({ left, top, width, height }: Plot, axis: Axis): string {
  const at = linearScale(axis.domain, [top + height, top])
  const marks = axisTicks(axis, least(height, 34)).map(
    ({ value, text }) =>
      `<path class="${text === '0' ? 'axis' : 'grid'}" d="M${px(left)} ${px(at(value))}h${px(width)}"/>` +
      textAt(left - 7, at(value) + 4, text, { className: 'tick-text', anchor: 'end' }),
  )
  return `${marks.join('')}${textAt(Math.max(left - 40, 2), top - 10, axisWords(axis), { className: 'axis-text', told: true })}`
}

/** Where a page may look at another wind by pointing along the axis; nothing is drawn of it. */
export const windPlace = ({ left, top, width, height }: Plot, [from, to]: Span): string =>
  `<rect class="wind-plot" data-wind-from="${px(from)}" data-wind-to="${px(to)}" x="${px(left)}" y="${px(top)}" width="${px(width)}" height="${px(height)}"/>`

/** The wind looked at, an upright over the plot with its words beside it. */
export function chosenWindMark({ left, top, width, height }: Plot, domain: Span, wind: number): string {
  const at = left + linearScale(domain, [0, width])(wind)
  if (!(at >= left - 0.5 && at <= left + width + 0.5)) return ''
  const late = at - left > width * 0.75
  return (
    `<path class="upright ink-chosen" d="M${px(at)} ${px(top)}v${px(height)}"/>` +
    textAt(at + (late ? -6 : 6), top + 12, chosenText(wind, 'm_per_s'), {
      className: 'line-label halo ink-chosen',
      anchor: late ? 'end' : 'start',
    })
  )
}

/** Places near the wanted ones, in their order, at least `gap` apart and inside `bounds` where they fit. */
export function spreadApart(wanted: readonly number[], gap: number, [low, high]: Span): number[] {
  const order = wanted.map((_, k) => k).sort((a, b) => wanted[a]! - wanted[b]! || a - b)
  const placed = order.map((k) => Math.min(Math.max(wanted[k]!, low), high))
  for (let k = 1; k < placed.length; k++) placed[k] = Math.max(placed[k]!, placed[k - 1]! + gap)
  const over = (placed.at(-1) ?? high) - high
  if (over > 0) {
    placed[placed.length - 1] = high
    for (let k = placed.length - 2; k >= 0; k--) placed[k] = Math.min(placed[k]!, placed[k + 1]! - gap)
  }
  const result = new Array<number>(wanted.length)
  order.forEach((k, place) => {
    result[k] = placed[place]!
  })
  return result
}
