/** One plot with its two axes: lines, marks and uprights, each with its own words. */
import { type Axis, axisBelow, axisBeside, linearScale, type Plot, spreadApart } from './axis.ts'
import { lineThrough, type Point, px, textAt } from './picture.ts'

export interface PanelLine {
  readonly label: string
  /** Names the colour. */
  readonly className: string
  /** Dashes and gaps; a plain line without. */
  readonly dash?: string
  readonly points: readonly Point[]
  /** Where the label stands: behind the last visible point, on the highest one, or nowhere. */
  readonly labelAt: 'end' | 'top' | 'nowhere'
  /** The surface under the line is tinted. */
  readonly filled?: boolean
}

export interface PanelMark {
  readonly at: Point
  readonly className: string
  readonly label?: string
  readonly radius?: number
}

export interface Panel {
  readonly plot: Plot
  readonly x: Axis
  readonly y: Axis
  /** The lower axis with its numbers; left out where panels stand above each other. */
  readonly footed: boolean
  readonly lines: readonly PanelLine[]
  readonly marks?: readonly PanelMark[]
  readonly uprights?: readonly { readonly x: number; readonly label: string; readonly className: string }[]
}

/** Dashes of the first, second, third … line of a kind, so that they differ without colour. */
export const dashes = ['', '9 4', '2 4', '12 4 2 4', '6 3 2 3 2 3'] as const

/** Space to the right of a plot that its labels take. */
export const labelRoom = (labels: readonly string[]): number =>
  14 + 7.4 * Math.max(0, ...labels.map((label) => label.length))

export function panelBody({ plot, x, y, footed, lines, marks = [], uprights = [] }: Panel): string {
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
  const ends = lines.flatMap((line, k) => {
    const last = line.labelAt === 'end' ? placed[k]!.filter(inside).at(-1) : undefined
    return last ? [{ line, last }] : []
  })
  const heights = spreadApart(
    ends.map(({ last }) => last[1]),
    16,
    [6, height - 4],
  )
  const endLabels = ends.map(({ line, last }, k) =>
    textAt(left + last[0] + 8, top + heights[k]! + 4, line.label, {
      className: `line-label ${line.className}`,
    }),
  )
  const topLabels = lines.map((line, k) => {
    if (line.labelAt !== 'top') return ''
    const visible = placed[k]!.filter(inside)
    const peak = visible.reduce<Point | undefined>(
      (best, at) => (!best || at[1] < best[1] ? at : best),
      undefined,
    )
    return peak
      ? textAt(left + peak[0], Math.max(top + peak[1] - 6, top + 12), line.label, {
          className: `line-label halo ${line.className}`,
          anchor: 'middle',
        })
      : ''
  })
  const spots = marks
    .map((mark) => ({ mark, at: [across(mark.at[0]), up(mark.at[1])] as Point }))
    .filter(({ at }) => inside(at))
  const dots = spots.map(
    ({ mark, at }) =>
      `<circle class="mark ${mark.className}" cx="${px(at[0])}" cy="${px(at[1])}" r="${px(mark.radius ?? 4)}"/>`,
  )
  const words = spots.map(({ mark, at }) =>
    mark.label
      ? textAt(left + at[0] + (at[0] > width * 0.7 ? -9 : 9), top + Math.max(at[1] - 9, 10), mark.label, {
          className: `line-label halo ${mark.className}`,
          anchor: at[0] > width * 0.7 ? 'end' : 'start',
        })
      : '',
  )
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
  const cut = `<svg x="${px(left)}" y="${px(top)}" width="${px(width)}" height="${px(height)}">${drawn.join('')}${dots.join('')}</svg>`
  return [
    axisBeside(plot, y),
    footed ? axisBelow(plot, x) : '',
    cut,
    ...posts,
    ...endLabels,
    ...topLabels,
    ...words,
  ].join('')
}
