/** Picture of the river of watts at one wind: a band as wide as its watts, each loss leaving it as a side stream. */
import { formatNumber } from '../../units/format.ts'
import { chosenText } from '../measuring.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { type Point, picture, px, textAt } from './picture.ts'

export interface RiverLoss {
  /** What it is called. */
  readonly label: string
  /** [W] */
  readonly watts: number
}

/** A stretch between two stations: what arrives flows on but for what leaves. */
export interface RiverReach {
  /** The station it belongs to. */
  readonly label: string
  readonly water: 'wind' | 'shaft' | 'electric'
  /** [W] */
  readonly arriving: number
  readonly losses: readonly RiverLoss[]
}

export interface River {
  /** [m/s] */
  readonly wind: number
  readonly reaches: readonly RiverReach[]
}

export interface RiverChart extends River {
  readonly width: number
}

/** How the band is drawn: lengths on the sheet [px]. */
export interface RiverBed {
  /** Of each reach, along the river. */
  readonly reach: number
  /** The widest shaft band and the widest band of all; a wider wind is drawn torn. */
  readonly fullest: number
  readonly widest: number
  /** Across the river, where side streams end. */
  readonly foot: number
  readonly lies: boolean
}

export interface RiverDrawing {
  readonly body: string
  /** A measure beside the band: that many watts are that wide. */
  readonly scale: { readonly watts: number; readonly width: number }
  readonly torn: boolean
}

export const wattText = (watts: number): string => `${formatNumber(watts)} W`

const lostIn = ({ losses }: RiverReach): number => losses.reduce((sum, { watts }) => sum + watts, 0)

/** The next of 1, 2, 5, 10 … that is not below: the scale changes in steps, so that within one the band swells. */
export function fullScale(watts: number): number {
  if (!(watts > 0)) return 1
  const decade = 10 ** Math.floor(Math.log10(watts) + 1e-9)
  const share = watts / decade
  return decade * (share <= 1.0000001 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10)
}

/** Rises smoothly from 0 to 1 and is level at both ends. */
const eased = (s: number): number => {
  const t = Math.min(1, Math.max(0, s))
  return t * t * (3 - 2 * t)
}

/** Where in its reach the losses leave, as shares of it. */
const leaves = [0.16, 0.5] as const
/** Over that share of the reach the band narrows. */
const narrowing = 0.3
/** The band sways a little, as rivers do [px]. */
const sway = 3

/** What can be seen of watts that are there at all [px]. */
const seen = (width: number, watts: number): number => (watts > 0 ? Math.max(width, 1.2) : 0)

const outline = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}Z`

/** The course of a side stream: a cubic from the band's edge, along it, to the foot, across it; with its width. */
function sideStream(from: Point, to: Point, width: number, fan: number): Point[] {
  const [a, c] = from
  const [b, d] = to
  const bend = Math.max(10, width * 0.9)
  const steps = 22
  const left: Point[] = []
  const right: Point[] = []
  for (let k = 0; k <= steps; k++) {
    const t = k / steps
    const u = 1 - t
    const along = u * u * u * a + 3 * u * u * t * (a + bend) + 3 * u * t * t * b + t * t * t * b
    const across = u * u * u * c + 3 * u * u * t * c + 3 * u * t * t * (c + (d - c) * 0.35) + t * t * t * d
    const da = 3 * u * u * bend + 6 * u * t * (b - a - bend)
    const dc = 6 * u * t * (d - c) * 0.35 + 3 * t * t * (d - c) * 0.65
    const length = Math.hypot(da, dc) || 1
    const half = (width * (1 + fan * t)) / 2
    left.push([along + (dc / length) * half, across - (da / length) * half])
    right.push([along - (dc / length) * half, across + (da / length) * half])
  }
  return [...left, ...right.reverse()]
}

/**
 * The band and its side streams; along the river runs x where it lies, y where it runs down the page. Of `only` one
 * reach where that is asked, in its place.
 */
export function riverBand(
  { reaches }: Pick<River, 'reaches'>,
  { reach, fullest, widest, foot, lies }: RiverBed,
  only?: number,
): RiverDrawing {
  const place = ([along, across]: Point): Point => (lies ? [along, across] : [across, along])
  const shaft = reaches.find(({ water }) => water !== 'wind')?.arriving ?? 0
  const full = fullScale(Math.max(shaft, 1e-3))
  const pixels = fullest / full
  const scale = { watts: full / 2, width: fullest / 2 }
  const arriving = reaches[0]?.arriving ?? 0
  const torn = arriving * pixels > widest
  const widthOf = (watts: number): number => seen(Math.min(widest, watts * pixels), watts)
  const topAt = (along: number): number => 2 + sway + sway * Math.sin((along / reach) * 1.3 + 0.6)
  const ends = reaches.map(({ arriving: watts }, k) => ({
    from: widthOf(watts),
    to: widthOf(reaches[k + 1]?.arriving ?? watts - lostIn(reaches[k]!)),
  }))
  const widthAt = (along: number): number => {
    const k = Math.min(reaches.length - 1, Math.max(0, Math.floor(along / reach)))
    const { from, to } = ends[k]!
    const count = Math.max(1, reaches[k]!.losses.filter(({ watts }) => watts > 0).length)
    const last = leaves[Math.min(count, 2) - 1]!
    const s = along / reach - k
    return from + (to - from) * eased((s - leaves[0]) / (last - leaves[0] + narrowing))
  }
  const [first, end] = only === undefined ? [0, reaches.length] : [only, only + 1]
  const steps = (end - first) * 24
  const edge = (share: number): Point[] =>
    Array.from({ length: steps + 1 }, (_, k): Point => {
      const along = reach * (first + k / 24)
      return place([along, topAt(along) + share * widthAt(along)])
    })
  let body = ''
  reaches.forEach(({ losses, arriving: watts, water }, k) => {
    // a stream may end beside the reach that follows
    if (k < first - 1 || k >= end) return
    const there = losses.filter((loss) => loss.watts > 0)
    let left = watts
    there.forEach((loss, n) => {
      const start = (k + leaves[Math.min(n, 1)]!) * reach
      const before = widthAt(start)
      left -= loss.watts
      const own = seen(Math.min(Math.max(0, before - widthOf(left)), loss.watts * pixels), loss.watts)
      const edgeAt = topAt(start) + before
      const end = start + Math.max(14, own * 0.8 + 10)
      const stream = sideStream([start, edgeAt - own / 2], [end, foot], own, 0.12)
      body += `<path class="side-stream water-${water}" d="${outline(stream.map(place))}"/>`
    })
  })
  const stretch = (from: number, to: number, water: RiverReach['water']): string => {
    const there = Math.max(2, Math.round((to - from) / (reach / 24)))
    const along = Array.from({ length: there + 1 }, (_, k) => from + ((to - from) * k) / there)
    const upper = along.map((at) => place([at, topAt(at)]))
    const lower = along.map((at) => place([at, topAt(at) + widthAt(at)])).reverse()
    return `<path class="water water-${water}" d="${outline([...upper, ...lower])}"/>`
  }
  reaches.forEach(({ water, arriving: watts }, k) => {
    // a hair of overlap, so that no seam shows between two waters
    if (watts > 0 && k >= first && k < end)
      body += stretch(k * reach, (k + 1) * reach + (k === reaches.length - 1 ? 0 : 0.5), water)
  })
  if (arriving > 0)
    for (const share of [0.22, 0.5, 0.78])
      body += `<path class="flow-line" d="M${edge(share)
        .map(([x, y]) => `${px(x)} ${px(y)}`)
        .join('L')}"/>`
  if (torn && first === 0) {
    const edgeOf = Array.from({ length: 9 }, (_, k): Point => {
      const along = (k / 8) * reach * 1.1
      return place([along, topAt(along) + widthAt(along) - (k % 2 === 0 ? 0 : 5)])
    })
    body += `<path class="tear" d="M${edgeOf.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}"/>`
  }
  return { body, scale, torn }
}

/** Letters of a loss that stand side by side in so much room [px per letter], and from line to line [px]. */
const letterWidth = 6.6
const boldWidth = 7.6
const lineStep = 16
/** From one loss to the next [px]. */
const lossGap = 4

/** The losses of a reach under each other, each with its watts, and how far down they come. */
function lossWords(losses: readonly RiverLoss[], x: number, top: number, reach: number) {
  let y = top
  let svg = ''
  for (const { label, watts } of losses) {
    for (const line of linesOfParagraph(label, Math.floor((reach - 8) / letterWidth))) {
      y += lineStep
      svg += lineAt(x, y, line, { className: 'loss-text' })
    }
    y += lineStep
    svg += textAt(x, y, `−${wattText(watts)}`, { className: 'watt-text' })
    y += lossGap
  }
  return { svg, foot: y }
}

/** The whole river as it stands on paper; the words of its reaches are in the reader’s language already. */
export function riverChart({ width: asked, wind, reaches }: RiverChart): string {
  const margin = 8
  // the name of a station is a single word, which cannot be broken
  const longest = Math.max(0, ...reaches.map(({ label }) => label.length))
  const width = Math.max(asked, 2 * margin + reaches.length * (10 + boldWidth * longest))
  const reach = (width - 2 * margin) / Math.max(1, reaches.length)
  const top = 46
  const foot = 128
  const { body, scale, torn } = riverBand({ reaches }, { reach, fullest: 62, widest: 84, foot, lies: true })
  let lowest = top + foot + 36
  const words = reaches.map(({ label, arriving, losses }, k) => {
    const x = margin + k * reach
    const lost = lossWords(losses, x + 5, top + foot - 4, reach)
    lowest = Math.max(lowest, lost.foot)
    return (
      `<path class="tick" d="M${px(x + 0.5)} 8V${px(top + foot - 30)}"/>` +
      lineAt(x + 5, 20, label, { className: 'part-text' }) +
      textAt(x + 5, 38, wattText(arriving), { className: 'watt-text' }) +
      lost.svg
    )
  })
  const measure = lowest + 20
  const note = torn ? '; the wind’s band is wider than drawn' : ''
  return picture(
    {
      name: 'river',
      title: `Where the watts go at ${chosenText(wind, 'm_per_s')}`,
      description: reaches
        .map(
          ({ label, arriving, losses }) =>
            `${label}: ${wattText(arriving)} arrive${losses.map((loss) => `, ${loss.label} ${wattText(loss.watts)} lost`).join('')}`,
        )
        .join('. ')
        .concat('.'),
      width,
      height: measure + scale.width + 10,
    },
    `<g transform="translate(${margin} ${top})">${body}</g>${words.join('')}` +
      `<path class="axis" d="M${margin} ${px(measure)}h6m-3 0v${px(scale.width)}m-3 0h6"/>` +
      textAt(margin + 14, measure + scale.width / 2 + 4, `as wide as ${wattText(scale.watts)}${note}`, {
        className: 'tick-text',
      }),
  )
}
