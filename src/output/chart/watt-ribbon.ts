/** Picture of where the watts go at one wind: a ribbon as wide as its watts, each loss leaving it on the side. */
import { formatNumber } from '../../units/format.ts'
import { picture, px, shortNumber, textAt } from './picture.ts'

export interface RibbonLoss {
  /** The part it happens in. */
  readonly part: string
  /** What it is called. */
  readonly label: string
  /** [W] */
  readonly watts: number
  readonly className: string
}

export interface WattRibbon {
  readonly width: number
  readonly wind: number
  /** In the wind [W]; what goes past the blades is the first loss. */
  readonly available: number
  readonly losses: readonly RibbonLoss[]
  readonly useful: { readonly label: string; readonly watts: number }
}

/** Below this width the ribbon runs downward, so that its labels stay legible. */
export const leastRibbonWidth = 760

/** The part of the band that the shaft's power fills at least; a wider wind is drawn torn. */
const leastShaftShare = 0.2

export const wattText = (watts: number): string => `${formatNumber(watts)} W`

interface Flow {
  readonly loss: RibbonLoss
  /** Widths before it leaves and of itself, and where it leaves [px]. */
  readonly before: number
  readonly own: number
  readonly at: number
  /** Power that arrives [W]. */
  readonly arriving: number
}

function flowsOf({ available, losses }: WattRibbon, band: number, places: readonly number[]) {
  const past = losses[0]?.watts ?? 0
  const taken = available - past
  const drawnWind = taken > 0 ? Math.min(available, taken / leastShaftShare) : available
  const torn = drawnWind < available * 0.999
  const scale = drawnWind > 0 ? band / drawnWind : 0
  let width = drawnWind * scale
  let arriving = available
  const flows = losses.map((loss, k): Flow => {
    const shown = k === 0 ? Math.max(0, loss.watts - (available - drawnWind)) : loss.watts
    const own = Math.min(Math.max(0, shown * scale), width)
    const flow = { loss, before: width, own, at: places[k]!, arriving }
    width -= own
    arriving -= loss.watts
    return flow
  })
  return { flows, rest: width, torn }
}

const seen = (width: number, watts: number): number => (watts > 0 ? Math.max(width, 1) : 0)

function lying(ribbon: WattRibbon): { body: string; height: number } {
  const { width, losses, useful } = ribbon
  const left = 6
  const right = 96
  const band = 112
  const top = 52
  const foot = top + band + 46
  const first = 1.25
  const step = (width - left - right) / (losses.length - 1 + first)
  const places = losses.map((_, k) => (k === 0 ? left : left + (first + k - 1) * step))
  const { flows, rest, torn } = flowsOf(ribbon, band, places)
  const end = width - right
  const radius = 10
  let body = ''
  flows.forEach(({ loss, before, own, at, arriving }, k) => {
    const next = places[k + 1] ?? end
    const kept = before - own
    const strand = k === 0 ? 'band-wind' : k < 3 ? 'band-shaft' : 'band-electric'
    body += `<rect class="band ${strand}" x="${px(at)}" y="${px(top)}" width="${px(next - at + 0.4)}" height="${px(seen(kept, arriving - loss.watts))}"/>`
    if (loss.watts > 0) {
      const w = seen(own, loss.watts)
      const bottom = top + Math.max(before, w)
      const turn = at + Math.min(18, step * 0.15)
      body += `<path class="stream ${loss.className}" d="M${px(at)} ${px(bottom - w)}H${px(turn)}A${px(radius + w)} ${px(radius + w)} 0 0 1 ${px(turn + radius + w)} ${px(bottom + radius)}V${px(foot)}l${px(-w / 2)} ${px(Math.min(6, 2 + w / 4))}l${px(-w / 2)} ${px(-Math.min(6, 2 + w / 4))}V${px(bottom + radius)}A${px(radius)} ${px(radius)} 0 0 0 ${px(turn)} ${px(bottom)}H${px(at)}Z"/>`
      if (k === 0 && torn) body += `<path class="tear" d="M${px(at)} ${px(bottom - 3)}l6 6l6 -6l6 6"/>`
    }
    const repeated = k > 0 && losses[k - 1]!.part === loss.part
    body += `<path class="tick" d="M${px(at + 0.5)} ${px(top - 42)}V${px(top - 2)}"/>`
    if (!repeated) body += textAt(at + 6, top - 30, loss.part, { className: 'part-text' })
    body += textAt(at + 6, top - 10, wattText(arriving), { className: 'watt-text' })
    const label = at + 6
    body += textAt(label, foot + 24, loss.label, { className: 'loss-text' })
    body += textAt(label, foot + 42, wattText(loss.watts), { className: 'watt-text' })
  })
  const tip = seen(rest, useful.watts)
  if (useful.watts > 0) {
    const head = Math.max(14, Math.min(34, tip * 0.8))
    const middle = top + tip / 2
    body += `<path class="band band-store" d="M${px(end)} ${px(top)}h8v${px(-Math.min(8, tip / 4))}L${px(end + 8 + head)} ${px(middle)}L${px(end + 8)} ${px(top + tip + Math.min(8, tip / 4))}V${px(top + tip)}h-8Z"/>`
  }
  body += `<path class="tick" d="M${px(end + 0.5)} ${px(top - 42)}V${px(top - 2)}"/>`
  body += textAt(end + 6, top - 30, useful.label, { className: 'part-text' })
  body += textAt(end + 6, top - 10, wattText(useful.watts), { className: 'watt-text watt-useful' })
  if (torn)
    body += textAt(left + 6, foot + 62, 'torn edge: the wind’s band is wider than drawn', {
      className: 'tick-text',
    })
  return { body, height: foot + (torn ? 70 : 52) }
}

function standing(ribbon: WattRibbon): { body: string; height: number } {
  const { width, losses, useful } = ribbon
  const band = Math.min(92, width * 0.26)
  const left = 8
  const top = 26
  const step = 58
  const first = 1.7
  const places = losses.map((_, k) => (k === 0 ? top : top + (first + k - 1) * step))
  const { flows, rest, torn } = flowsOf(ribbon, band, places)
  const end = top + (first + losses.length - 1) * step
  const foot = left + band + 34
  const radius = 8
  let body = textAt(left, 16, `in the wind ${wattText(ribbon.available)}`, { className: 'watt-text' })
  flows.forEach(({ loss, before, own, at, arriving }, k) => {
    const next = places[k + 1] ?? end
    const strand = k === 0 ? 'band-wind' : k < 3 ? 'band-shaft' : 'band-electric'
    body += `<rect class="band ${strand}" x="${px(left)}" y="${px(at)}" width="${px(seen(before - own, arriving - loss.watts))}" height="${px(next - at + 0.4)}"/>`
    if (loss.watts > 0) {
      const w = seen(own, loss.watts)
      const side = left + Math.max(before, w)
      const turn = at + 6
      body += `<path class="stream ${loss.className}" d="M${px(side - w)} ${px(at)}V${px(turn)}A${px(radius + w)} ${px(radius + w)} 0 0 0 ${px(side + radius)} ${px(turn + radius + w)}H${px(foot)}l${px(Math.min(6, 2 + w / 4))} ${px(-w / 2)}l${px(-Math.min(6, 2 + w / 4))} ${px(-w / 2)}H${px(side + radius)}A${px(radius)} ${px(radius)} 0 0 1 ${px(side)} ${px(turn)}V${px(at)}Z"/>`
    }
    const line = at + 22
    body += textAt(foot + 14, line, loss.label, { className: 'loss-text' })
    body += textAt(foot + 14, line + 18, wattText(loss.watts), { className: 'watt-text' })
    body += textAt(width - 4, line, loss.part, { className: 'part-text', anchor: 'end' })
  })
  const tip = seen(rest, useful.watts)
  if (useful.watts > 0)
    body += `<path class="band band-store" d="M${px(left)} ${px(end)}v8h-5L${px(left + tip / 2)} ${px(end + 26)}L${px(left + tip + 5)} ${px(end + 8)}h-5v-8Z"/>`
  body += textAt(foot + 14, end + 14, useful.label, { className: 'part-text' })
  body += textAt(foot + 14, end + 32, wattText(useful.watts), { className: 'watt-text watt-useful' })
  const note = torn ? 18 : 0
  if (torn) body += textAt(left, end + 58, 'The wind’s band is wider than drawn.', { className: 'tick-text' })
  return { body, height: end + 46 + note }
}

export function wattRibbonChart(ribbon: WattRibbon): string {
  const { width, wind, available, losses, useful } = ribbon
  const { body, height } = width >= leastRibbonWidth ? lying(ribbon) : standing(ribbon)
  const words = losses.map(({ label, watts }) => `${label} ${wattText(watts)}`).join(', ')
  return picture(
    {
      name: 'watt-ribbon',
      title: `Where the watts go at ${shortNumber(wind)} m/s`,
      description: `Of ${wattText(available)} in the wind: ${words}; ${useful.label} ${wattText(useful.watts)}.`,
      width,
      height,
    },
    body,
  )
}
