/** Symbols of a circuit diagram along a line between two places, plain ones in the manner of IEC 60617. */
import { type Point, px } from './picture.ts'

/** From a place along and across the flow of power to the sheet. */
export type Place = (along: number, across: number) => Point

/** A place on the way from one point to another, with a place beside it; all on the sheet. */
interface Way {
  readonly length: number
  readonly at: (along: number, beside: number) => string
}

const wayOf = ([x0, y0]: Point, [x1, y1]: Point): Way => {
  const length = Math.hypot(x1 - x0, y1 - y0)
  const [ux, uy] = length > 0 ? [(x1 - x0) / length, (y1 - y0) / length] : [1, 0]
  return {
    length,
    at: (along, beside) => `${px(x0 + ux * along - uy * beside)} ${px(y0 + uy * along + ux * beside)}`,
  }
}

const stroke = (path: string, className = ''): string =>
  `<path class="circuit${className === '' ? '' : ` ${className}`}" d="${path}"/>`

export const wire = (...points: readonly Point[]): string =>
  stroke(points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join(''))

export const dot = ([x, y]: Point): string => `<circle class="joint" cx="${px(x)}" cy="${px(y)}" r="2.6"/>`

/** Leads from both ends to a body in the middle of the way. */
function withLeads(from: Point, to: Point, body: number, draw: (way: Way, start: number) => string): string {
  const way = wayOf(from, to)
  const start = (way.length - body) / 2
  return (
    stroke(`M${way.at(0, 0)}L${way.at(start, 0)}M${way.at(start + body, 0)}L${way.at(way.length, 0)}`) +
    draw(way, start)
  )
}

const box = ({ at }: Way, start: number, length: number, half: number): string =>
  `M${at(start, -half)}L${at(start + length, -half)}L${at(start + length, half)}L${at(start, half)}Z`

export const resistor = (from: Point, to: Point): string =>
  withLeads(from, to, 22, (way, start) => stroke(box(way, start, 22, 5), 'solid'))

/** A box with the line going on through it. */
export const fuse = (from: Point, to: Point): string =>
  withLeads(from, to, 26, (way, start) =>
    stroke(box(way, start, 26, 6), 'solid').concat(stroke(`M${way.at(start, 0)}L${way.at(start + 26, 0)}`)),
  )

/** Source of alternating volts, inductance and resistance in series: a phase of the winding. */
export function phaseBranch(from: Point, to: Point): string {
  const way = wayOf(from, to)
  const { at, length } = way
  const radius = 9
  const hump = 4
  const humps = 3
  const body = 2 * radius + 6 + 2 * hump * humps + 6 + 20
  const first = (length - body) / 2
  const coil = first + 2 * radius + 6
  const bar = coil + 2 * hump * humps + 6
  const [cx, cy] = at(first + radius, 0).split(' ')
  const arcs = Array.from(
    { length: humps },
    (_, k) => `A${hump} ${hump} 0 0 1 ${at(coil + 2 * hump * (k + 1), 0)}`,
  )
  return (
    stroke(
      `M${at(0, 0)}L${at(first, 0)}M${at(first + 2 * radius, 0)}L${at(coil, 0)}${arcs.join('')}L${at(bar, 0)}M${at(bar + 20, 0)}L${at(length, 0)}`,
    ) +
    `<circle class="circuit solid" cx="${cx}" cy="${cy}" r="${radius}"/>` +
    // one period of a wave, level whichever way the branch lies
    stroke(`M${px(Number(cx) - 5)} ${cy}q2.5 -6 5 0t5 0`) +
    stroke(box(way, bar, 20, 5), 'solid')
  )
}

/** Conducts from the first place to the second. */
export const diode = (from: Point, to: Point): string =>
  withLeads(from, to, 11, (way, start) =>
    stroke(`M${way.at(start, -6)}L${way.at(start, 6)}L${way.at(start + 11, 0)}Z`, 'filled').concat(
      stroke(`M${way.at(start + 11, -6)}L${way.at(start + 11, 6)}`),
    ),
  )

/** An open contact: it makes when it is closed. */
export const contact = (from: Point, to: Point): string =>
  withLeads(from, to, 20, (way, start) => stroke(`M${way.at(start, 0)}L${way.at(start + 20, -10)}`))

/** A contact that is closed as a rule and breaks when it is opened. */
export const breaker = (from: Point, to: Point): string =>
  withLeads(from, to, 20, (way, start) =>
    stroke(
      `M${way.at(start, 0)}L${way.at(start + 21, -4)}M${way.at(start + 20, 0)}L${way.at(start + 20, -7)}`,
    ),
  )

/** Plus at the first place. */
export const cell = (from: Point, to: Point): string =>
  withLeads(from, to, 18, (way, start) =>
    stroke(
      `M${way.at(start, -13)}L${way.at(start, 13)}M${way.at(start + 12, -13)}L${way.at(start + 12, 13)}`,
    ).concat(
      stroke(
        `M${way.at(start + 6, -6)}L${way.at(start + 6, 6)}M${way.at(start + 18, -6)}L${way.at(start + 18, 6)}`,
        'thick',
      ),
    ),
  )

export const capacitor = (from: Point, to: Point): string =>
  withLeads(from, to, 6, (way, start) =>
    stroke(
      `M${way.at(start, -11)}L${way.at(start, 11)}M${way.at(start + 6, -11)}L${way.at(start + 6, 11)}`,
      'thick',
    ),
  )

export const lamp = (from: Point, to: Point): string =>
  withLeads(from, to, 22, (way, start) => {
    const [cx, cy] = way.at(start + 11, 0).split(' ')
    const d = 11 * Math.SQRT1_2
    return (
      `<circle class="circuit solid" cx="${cx}" cy="${cy}" r="11"/>` +
      stroke(
        `M${way.at(start + 11 - d, -d)}L${way.at(start + 11 + d, d)}M${way.at(start + 11 - d, d)}L${way.at(start + 11 + d, -d)}`,
      )
    )
  })

/** A box between corners on the sheet, cut by its diagonal: what turns one direct voltage into another. */
export const converterBox = ([x0, y0]: Point, [x1, y1]: Point): string =>
  stroke(`M${px(x0)} ${px(y0)}H${px(x1)}V${px(y1)}H${px(x0)}Z`, 'solid') +
  stroke(`M${px(x0)} ${px(y1)}L${px(x1)} ${px(y0)}`)
