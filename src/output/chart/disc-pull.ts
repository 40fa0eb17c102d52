/** Picture of the pull between the faces against their distance, as it meets whoever puts the discs together. */
import type { PullPoint } from '../../analysis/mechanics/disc-pull.ts'
import { measuredText } from '../measuring.ts'
import { said } from '../telling.ts'
import { linearScale, niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { type PanelBand, type PanelLine, panelBody } from './panel.ts'
import { type Point, picture, px, textAt } from './picture.ts'

export interface DiscPullChart {
  readonly width: number
  /** The nearest first. */
  readonly pull: readonly PullPoint[]
  /** Between the faces by the drawing [m]. */
  readonly drawn: number
  /** What two hands hold [N], and the distance from which on they hold the pull [m]; undefined where always or never. */
  readonly handForce: number
  readonly handDistance: number | undefined
}

const title = 'Pull between the faces as they come together'
const standardGravity = 9.80665

/** Points between two of the table, where the pull runs straight in its logarithm. */
const between = 6

function curve(pull: readonly PullPoint[]): Point[] {
  return pull.flatMap((point, k): Point[] => {
    const next = pull[k + 1]
    if (next === undefined) return [[1000 * point.distance, point.pull]]
    return Array.from({ length: between }, (_, n): Point => {
      const share = n / between
      return [
        1000 * (point.distance + share * (next.distance - point.distance)),
        point.pull * (next.pull / point.pull) ** share,
      ]
    })
  })
}

/** Where the pull stands between two points of the curve. */
function cutAt(points: readonly Point[], x: number): { readonly before: Point[]; readonly after: Point[] } {
  const before = points.filter(([a]) => a <= x)
  const after = points.filter(([a]) => a > x)
  const [last, first] = [before.at(-1), after[0]]
  if (last === undefined || first === undefined) return { before, after }
  const share = (x - last[0]) / (first[0] - last[0])
  const edge: Point = [x, last[1] + share * (first[1] - last[1])]
  return { before: [...before, edge], after: [edge, ...after] }
}

export function discPullChart({ width, pull, drawn, handForce, handDistance }: DiscPullChart): string {
  const points = curve(pull)
  const reach = 1000 * Math.max(1.6 * drawn, 1.5 * (handDistance ?? drawn))
  const domain = niceDomain([0, Math.min(reach, points.at(-1)?.[0] ?? reach)], 6, 'mm')
  const seen = points.filter(([x]) => x <= domain[1])
  const height = Math.round(Math.min(340, Math.max(250, 0.45 * width)))
  const plot = { left: 56, top: 30, width: width - 72, height: height - 76 }
  const most = Math.max(handForce, ...seen.map(([, force]) => force))
  const hands = 1000 * (handDistance ?? (pull[0] !== undefined && pull[0].pull < handForce ? 0 : domain[1]))
  const { before, after } = cutAt(seen, hands)
  const floor = (line: readonly Point[]): Point[] => line.map(([x]): Point => [x, 0])
  const band = (className: string, line: readonly Point[]): PanelBand[] =>
    line.length < 2 ? [] : [{ className, low: floor(line), high: line }]
  const line = (className: string, dash: string, part: readonly Point[]): PanelLine => ({
    label: '',
    className,
    points: part,
    labelAt: 'nowhere',
    ...(dash === '' ? {} : { dash }),
  })
  const at = plot.left + linearScale(domain, [0, plot.width])(hands)
  const words = `hands: from ${handDistance === undefined ? '' : measuredText(handDistance, 'mm', 2)}`
  const late = at + 6 + 7.4 * said(words).length > width
  // under the words of the drawn distance, which may stand as far to the right
  const held =
    handDistance === undefined || hands > domain[1]
      ? ''
      : `<path class="upright ink-store" d="M${px(at)} ${px(plot.top + 24)}V${px(plot.top + plot.height)}"/>` +
        textAt(at + (late ? -6 : 6), plot.top + 34, words, {
          className: 'line-label halo ink-store',
          anchor: late ? 'end' : 'start',
        })
  const [nearest] = pull
  const own = pull.find(({ distance }) => Math.abs(distance - drawn) < 1e-9)
  return picture(
    {
      name: 'disc-pull',
      title,
      description: `${own === undefined ? '' : `At the drawn ${measuredText(drawn, 'mm')} the faces pull with ${measuredText(own.pull, 'N')}, the weight of ${measuredText(own.pull / standardGravity, 'kg', 2)}. `}${nearest === undefined ? '' : `At ${measuredText(nearest.distance, 'mm')} it is ${measuredText(nearest.pull, 'N')}. `}${handDistance === undefined ? '' : `Two hands, ${measuredText(handForce, 'N')}, hold it beyond ${measuredText(handDistance, 'mm', 2)} only.`}`,
      width,
      height,
    },
    panelBody({
      plot,
      footed: true,
      x: { label: 'between the faces', suffix: 'mm', domain },
      y: { label: 'pull between the faces', suffix: 'N', domain: niceDomain([0, most], 5, 'N') },
      bands: [...band('ink-against', before), ...band('ink-store', after)],
      lines: [
        line('ink-against', '', before),
        line('ink-store', '9 4', after),
        {
          label: `two hands, ${measuredText(handForce, 'N')}`,
          className: 'ink-shaft limit',
          dash: '4 4',
          points: [
            [domain[0], handForce],
            [domain[1], handForce],
          ],
          labelAt: 'inside',
        },
      ],
      uprights: [
        {
          x: 1000 * drawn,
          label: own === undefined ? 'as drawn' : `as drawn, ${measuredText(own.pull, 'N')}`,
          className: 'ink-chosen',
        },
      ],
    }) + held,
  )
}

export function discPullTable(pull: readonly PullPoint[]): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'between the faces', unit: 'mm' },
      { head: 'pull', unit: 'N' },
      { head: 'as a weight', unit: 'kg' },
      { head: 'work from far away', unit: 'J' },
    ],
    rows: pull.map(({ distance, pull: force, work }) => [
      1000 * distance,
      force,
      force / standardGravity,
      work,
    ]),
  }
}
