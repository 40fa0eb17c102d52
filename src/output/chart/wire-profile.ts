/** Picture of the volts per millimetre of wire along the path of a winding. */
import { formatNumber } from '../../units/format.ts'
import { measuredText } from '../measuring.ts'
import { said } from '../telling.ts'
import { linearScale, niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
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

/** Which part gives most per length, which works against the rest, and how much of the wire gives next to nothing. */
function description({ path, inStep, part }: WireProfileChart): string {
  const length = (k: number) => (path[k + 1] ?? 0) - (path[k] ?? 0)
  const values = Array.from(inStep)
  const whole = values.reduce((sum, _, k) => sum + length(k), 0)
  const best = values.reduce((most, value, k) => (value > values[most]! ? k : most), 0)
  const top = values[best] ?? 0
  const of = (wanted: (value: number) => boolean) =>
    values.reduce((sum, value, k) => (wanted(value) ? sum + length(k) : sum), 0)
  const percent = (part: number) => `${formatNumber(whole > 0 ? (100 * part) / whole : 0, 2)} %`
  const against = of((value) => value < 0)
  const idle = of((value) => value >= 0 && value < 0.1 * top)
  return `Most volts arise in the ${part[best] ?? 'wire'}: ${measuredText(top, 'mV_per_mm')} in step with the phase. ${percent(idle)} of the wire gives less than a tenth of that${against > 0 ? `, ${percent(against)} works against the phase` : ''}.`
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
      wide > 7 * said(word).length + 6
        ? textAt((x(from) + x(to)) / 2, foot + 61, word, { className: 'tick-text', anchor: 'middle' })
        : ''
    return `<rect class="strip strip-${k % 2}" x="${px(x(from))}" y="${px(foot + 47)}" width="${px(wide)}" height="19"/>${text}`
  })
  const body = panelBody({
    plot,
    footed: true,
    x: { label: 'along the wire', suffix: 'mm', domain: [0, 1000 * length] },
    y: {
      label: 'volts per length of wire',
      suffix: 'mV_per_mm',
      domain: niceDomain([least - (least < 0 ? room : 0), most + room], 5, 'mV_per_mm'),
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
      description: description(chart),
      width,
      height: foot + 74,
    },
    under.join('') + body + strip.join(''),
  )
}

/** Element by element. */
export function wireProfileTable({
  path,
  inStep,
  moment,
  part,
  underMagnets,
  lean,
}: Omit<WireProfileChart, 'width' | 'height'> & {
  /** Of each element to the run [rad]. */
  readonly lean: ArrayLike<number>
}): ChartTable {
  return {
    caption: 'Element by element',
    columns: [
      { head: 'from', unit: 'mm' },
      { head: 'part' },
      { head: 'angle to the run', unit: '°' },
      { head: 'under magnets' },
      { head: 'in step', unit: 'mV/mm' },
      { head: 'at the moment', unit: 'mV/mm' },
    ],
    rows: part.map((name, k) => [
      1000 * (path[k] ?? 0),
      name,
      (180 * (lean[k] ?? 0)) / Math.PI,
      underMagnets[k] ? 'yes' : 'no',
      inStep[k],
      moment[k],
    ]),
  }
}
