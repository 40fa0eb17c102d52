/** One plot with its two axes: lines, marks and uprights, each with its own words. */
import { said } from '../telling.ts'
import { type Axis, axisBelow, axisBeside, linearScale, type Plot, spreadApart, windPlace } from './axis.ts'
import { lineThrough, type Point, px, textAt } from './picture.ts'

export interface PanelLine {
  readonly label: string
  /** Names the colour. */
  readonly className: string
  /** Dashes and gaps; a plain line without. */
  readonly dash?: string
  readonly points: readonly Point[]
  /**
   * Where the label stands: behind the last visible point, above it inside the plot where there is no room behind, on
   * the highest one, or nowhere.
   */
  readonly labelAt: 'end' | 'inside' | 'top' | 'nowhere'
  /** The surface under the line is tinted. */
  readonly filled?: boolean
}

/** Between a lower and an upper end at each place. */
export interface PanelBand {
  readonly className: string
  readonly low: readonly Point[]
  readonly high: readonly Point[]
}

export interface PanelMark {
  readonly at: Point
  readonly className: string
  readonly label?: string
  readonly radius?: number
  /** On a line that rises: its words stand below to the right, or above to the left of it. */
  readonly rising?: true
}

/** A place on the sheet that words take. */
export interface WordBox {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Of bold letters as wide as they may come, half a line to either side of the middle of the letters [px]. */
const boldLetter = 7.4

export function wordBox([x, y]: Point, text: string, anchor: 'start' | 'middle' | 'end'): WordBox {
  const wide = boldLetter * said(text).length
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2
  return { left, right: left + wide, top: y - 12, bottom: y + 3 }
}

export const overlap = (one: WordBox, other: WordBox): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom

export interface Panel {
  readonly plot: Plot
  readonly x: Axis
  readonly y: Axis
  /** The lower axis with its numbers; left out where panels stand above each other. */
  readonly footed: boolean
  readonly lines: readonly PanelLine[]
  /** Under the lines. */
  readonly bands?: readonly PanelBand[]
  /** The lower axis is one of winds, along which a page may be pointed to another. */
  readonly byWind?: true
  /** Words that stand on the plot already: those on top of lines keep clear of them, the last lines' first. */
  readonly taken?: readonly WordBox[]
  readonly marks?: readonly PanelMark[]
  readonly uprights?: readonly { readonly x: number; readonly label: string; readonly className: string }[]
}

/** Dashes of the first, second, third … line of a kind, so that they differ without colour. */
export const dashes = ['', '9 4', '2 4', '12 4 2 4', '6 3 2 3 2 3'] as const

/** Space to the right of a plot that its labels take. */
export const labelRoom = (labels: readonly string[]): number =>
  14 + 7.4 * Math.max(0, ...labels.map((label) => said(label).length))

export function panelBody(panel: Panel): string {
  const { plot, x, y, footed, lines, bands = [], byWind, taken = [], marks = [], uprights = [] } = panel
  const { left, top, width, height } = plot
  const across = linearScale(x.domain, [0, width])
  const up = linearScale(y.domain, [height, 0])
  const placed = lines.map((line) => line.points.map(([a, b]): Point => [across(a), up(b)]))
  const inside = ([a, b]: Point) => a >= -0.5 && a <= width + 0.5 && b >= -0.5 && b <= height + 0.5
  const drawn = lines.map(({ className, dash, filled }, k) => {
    const path = lineThrough(placed[k]!)
    if (path === '') return ''
    const dashed = dash ? ` stroke-dasharray="${dash}"` : ''
    const first = placed[k]![0]!
    const last = placed[k]!.at(-1)!
    const under = filled
      ? `<path class="under ${className}" d="${path}L${px(last[0])} ${px(up(0))}L${px(first[0])} ${px(up(0))}Z"/>`
      : ''
    return `${under}<path class="line ${className}" d="${path}"${dashed}/>`
  })
  const ribbons = bands.map(({ className, low, high }) => {
    const edge = [...low, ...[...high].reverse()].map(([a, b]): Point => [across(a), up(b)])
    return edge.every(([a, b]) => Number.isFinite(a) && Number.isFinite(b)) && edge.length > 2
      ? `<path class="ribbon ${className}" d="${lineThrough(edge)}Z"/>`
      : ''
  })
  const ends = lines.flatMap((line, k) => {
    const told = line.labelAt === 'end' || line.labelAt === 'inside'
    const last = told ? placed[k]!.filter(inside).at(-1) : undefined
    return last ? [{ line, last }] : []
  })
  const heights = spreadApart(
    ends.map(({ line, last }) => (line.labelAt === 'inside' ? last[1] - 11 : last[1])),
    16,
    [6, height - 4],
  )
  const endLabels = ends.map(({ line, last }, k) =>
    line.labelAt === 'inside'
      ? textAt(left + last[0] - 4, top + heights[k]! + 4, line.label, {
          className: `line-label halo ${line.className}`,
          anchor: 'end',
        })
      : textAt(left + last[0] + 8, top + heights[k]! + 4, line.label, {
          className: `line-label ${line.className}`,
        }),
  )
  const boxes = [...taken]
  const topLabels = lines
    .map((line, k) => ({ line, visible: placed[k]!.filter(inside) }))
    .filter(({ line, visible }) => line.labelAt === 'top' && visible.length > 0)
    .reverse()
    .map(({ line, visible }) => {
      const peak = visible.reduce((best, at) => (at[1] < best[1] ? at : best))
      const at: Point = [left + peak[0], Math.max(top + peak[1] - 6, top + 12)]
      const box = wordBox(at, line.label, 'middle')
      if (boxes.some((other) => overlap(box, other))) return ''
      boxes.push(box)
      return textAt(at[0], at[1], line.label, {
        className: `line-label halo ${line.className}`,
        anchor: 'middle',
      })
    })
  const spots = marks
    .map((mark) => ({ mark, at: [across(mark.at[0]), up(mark.at[1])] as Point }))
    .filter(({ at }) => inside(at))
  const dots = spots.map(
    ({ mark, at }) =>
      `<circle class="mark ${mark.className}" cx="${px(at[0])}" cy="${px(at[1])}" r="${px(mark.radius ?? 4)}"/>`,
  )
  const words = spots.map(({ mark, at: [x, y] }) => {
    if (!mark.label) return ''
    const late = x > width * 0.7
    const below = mark.rising && !late
    return textAt(
      left + x + (late ? -9 : 9),
      top + (below ? Math.min(y + 17, height - 4) : Math.max(y - 9, 10)),
      mark.label,
      { className: `line-label halo ${mark.className}`, anchor: late ? 'end' : 'start' },
    )
  })
  const posts = uprights.map(({ x: value, label, className }) => {
    const at = left + across(value)
    const late = across(value) > width * 0.75
    return (
      `<path class="upright ${className}" d="M${px(at)} ${px(top)}v${px(height)}"/>` +
      textAt(at + (late ? -6 : 6), top + 12, label, {
        className: `line-label halo ${className}`,
        anchor: late ? 'end' : 'start',
      })
    )
  })
  // a nested svg cuts off what leaves the plot
  const cut = `<svg x="${px(left)}" y="${px(top)}" width="${px(width)}" height="${px(height)}">${ribbons.join('')}${drawn.join('')}${dots.join('')}</svg>`
  return [
    axisBeside(plot, y),
    footed ? axisBelow(plot, x) : '',
    cut,
    ...posts,
    ...endLabels,
    ...topLabels,
    ...words,
    byWind ? windPlace(plot, x.domain) : '',
  ].join('')
}
