/** Picture of the volts per millimetre of wire along the path of a winding. */
import { linearScale, niceDomain } from './axis.ts'
import { type PanelLine, panelBody } from './panel.ts'
import { type Point, picture, px, textAt } from './picture.ts'

export interface WireProfileChart {
  readonly width: number
  readonly height: number
  /** Where the elements begin, and where the last one ends [m]. */
  readonly path: ArrayLike<number>
  /** Of each element: in step with the phase, and at one moment [V/m]. */
  readonly inStep: ArrayLike<number>
  readonly moment: ArrayLike<number>
  /** Short name of the part each element belongs to. */
  readonly part: readonly string[]
  /** 1 where the element lies within the length of the magnets. */
  readonly underMagnets: ArrayLike<number>
}

/** Steps: every element at its own height. */
function stepped(path: ArrayLike<number>, values: ArrayLike<number>): Point[] {
  return Array.from(values, (value, k): Point[] => [
    [1000 * (path[k] ?? 0), value],
    [1000 * (path[k + 1] ?? 0), value],
  ]).flat()
}

interface Stretch<Word> {
  readonly from: number
  to: number
  readonly word: Word
}

/** Neighbours that say the same, joined. */
function stretches<Word>(path: ArrayLike<number>, words: ArrayLike<Word>): Stretch<Word>[] {
  const joined: Stretch<Word>[] = []
  for (let k = 0; k < words.length; k++) {
    const last = joined.at(-1)
    if (last && last.word === words[k]) last.to = path[k + 1] ?? last.to
    else joined.push({ from: path[k] ?? 0, to: path[k + 1] ?? 0, word: words[k]! })
  }
  return joined
}

/** One filled line for every stretch of the wire that gives, or that works against the rest. */
function signedLines(path: ArrayLike<number>, values: ArrayLike<number>): PanelLine[] {
  const signs = Array.from(values, (value) => value < 0)
  let k = 0
  return stretches(path, signs).map(({ from, to, word: against }): PanelLine => {
    const points: Point[] = [[1000 * from, 0]]
    for (; k < signs.length && signs[k] === against && path[k]! < to; k++)
      points.push([1000 * path[k]!, values[k]!], [1000 * path[k + 1]!, values[k]!])
    points.push([1000 * to, 0])
    return {
      label: against ? 'against' : 'in step',
      className: against ? 'ink-against' : 'ink-gives',
      points,
      labelAt: 'nowhere',
      filled: true,
    }
  })
}

export function wireProfileChart(chart: WireProfileChart): string {
  const { width, height, path, inStep, moment, part, underMagnets } = chart
  const plot = { left: 52, top: 30, width: Math.max(60, width - 52 - 16), height: Math.max(60, height - 104) }
  const foot = plot.top + plot.height
  const length = path[path.length - 1] ?? 1
  const x = linearScale([0, length], [plot.left, plot.left + plot.width])
  const all = [...Array.from(inStep), ...Array.from(moment)]
  const least = Math.min(0, ...all)
  const most = Math.max(0, ...all)
  const room = Math.max(1e-9, most - least) * 0.04
  const under = stretches(path, underMagnets)
    .filter(({ word }) => word === 1)
    .map(
      ({ from, to }) =>
        `<rect class="under-magnets" x="${px(x(from))}" y="${px(plot.top)}" width="${px(x(to) - x(from))}" height="${px(plot.height)}"/>`,
    )
  const strip = stretches(path, part).map(({ from, to, word }, k) => {
    const wide = x(to) - x(from)
    const text =
      wide > 7 * word.length + 6
        ? textAt((x(from) + x(to)) / 2, foot + 61, word, { className: 'tick-text', anchor: 'middle' })
        : ''
    return `<rect class="strip strip-${k % 2}" x="${px(x(from))}" y="${px(foot + 47)}" width="${px(wide)}" height="19"/>${text}`
  })
  const body = panelBody({
    plot,
    footed: true,
    x: { label: 'along the wire, mm', domain: [0, 1000 * length] },
    y: {
      label: 'volts per length of wire, mV/mm',
      domain: niceDomain([least - (least < 0 ? room : 0), most + room], 5),
    },
    lines: [
      ...signedLines(path, inStep),
      {
        label: 'at this moment',
        className: 'ink-generator fine',
        dash: '2 4',
        points: stepped(path, moment),
        labelAt: 'nowhere',
      },
    ],
  })
  return picture(
    {
      name: 'wire-profile',
      title: 'Volts along the wire',
      description:
        'Millivolts per millimetre of one wire against the way along it in millimetres. Filled: what is in step with the phase, below zero where it works against it. Dotted: at the moment chosen. Tinted ground: within the length of the magnets. The strip below names the parts.',
      width,
      height: foot + 74,
    },
    under.join('') + body + strip.join(''),
  )
}
