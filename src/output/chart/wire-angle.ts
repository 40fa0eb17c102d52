/** Picture of what a metre of straight wire gives, against the angle at which it crosses the magnets. */
import { formatNumber } from '../../units/format.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface WireAngleChart {
  readonly width: number
  readonly height: number
  /** Between the wire and the run direction [rad]. */
  readonly lean: ArrayLike<number>
  /** Per length of wire, as integrated, by the cosine alone, and with the skew factor; any one unit. */
  readonly perMetre: ArrayLike<number>
  readonly cosine: ArrayLike<number>
  readonly textbook: ArrayLike<number>
  /** Parts of the design in the same unit. */
  readonly parts: readonly { readonly label: string; readonly lean: number; readonly perMetre: number }[]
}

/** What leaning costs at 45°, by each of the three ways, and where the design's own parts stand. */
function description({ lean, perMetre, cosine, textbook, parts }: WireAngleChart): string {
  const straight = perMetre[0] ?? 0
  const percent = (value: number) => `${formatNumber(straight > 0 ? (100 * value) / straight : 0)} %`
  const at = Array.from(lean).reduce(
    (best, angle, k) =>
      Math.abs(angle - Math.PI / 4) < Math.abs((lean[best] ?? 0) - Math.PI / 4) ? k : best,
    0,
  )
  const angle = (value: number) => `${formatNumber((180 * value) / Math.PI)}°`
  const own = parts.map((part) => `${part.label} at ${angle(part.lean)} ${percent(part.perMetre)}`).join(', ')
  return `Wire that leans by ${angle(lean[at] ?? 0)} gives ${percent(perMetre[at] ?? 0)} of a straight run per length; its cosine alone promises ${percent(cosine[at] ?? 0)}, with the skew factor ${percent(textbook[at] ?? 0)}.${own === '' ? '' : ` Of this design: ${own}.`}`
}

export function wireAngleChart(chart: WireAngleChart): string {
  const { width, height, lean, perMetre, cosine, textbook, parts } = chart
  const straight = perMetre[0] ?? 0
  const share = (value: number) => (straight > 0 ? (100 * value) / straight : 0)
  const degrees = (angle: number) => (180 * angle) / Math.PI
  const line = (values: ArrayLike<number>): Point[] =>
    Array.from(values, (value, k): Point => [degrees(lean[k] ?? 0), share(value)])
  const marks = parts.map((part) => ({
    at: [degrees(part.lean), share(part.perMetre)] as Point,
    className: part.perMetre < 0 ? 'ink-against' : 'ink-gives',
    label: part.label,
  }))
  const labels = ['cosine', 'integrated']
  const low = Math.min(0, ...marks.map(({ at }) => at[1]))
  const high = Math.max(100, ...marks.map(({ at }) => at[1]))
  const body = panelBody({
    plot: {
      left: 52,
      top: 30,
      width: Math.max(60, width - 52 - Math.min(labelRoom(labels), width * 0.24)),
      height: Math.max(60, height - 76),
    },
    footed: true,
    x: { label: 'angle to the run, °', domain: [0, 90] },
    y: { label: 'volts per length, % of a straight run', domain: [Math.floor(low / 20) * 20, high * 1.06] },
    lines: [
      {
        label: 'cosine',
        className: 'ink-shaft',
        dash: dashes[1],
        points: line(cosine),
        labelAt: 'end',
      },
      {
        label: 'with skew',
        className: 'ink-wind',
        dash: dashes[2],
        points: line(textbook),
        labelAt: 'nowhere',
      },
      {
        label: 'integrated',
        className: 'ink-gives',
        points: line(perMetre),
        labelAt: 'end',
      },
    ],
    marks,
  })
  return picture(
    {
      name: 'wire-angle',
      title: 'Volts per length against the angle of the wire',
      description: description(chart),
      width,
      height,
    },
    body,
  )
}

export function wireAngleTable({
  lean,
  perMetre,
  cosine,
  textbook,
}: Pick<WireAngleChart, 'lean' | 'perMetre' | 'cosine' | 'textbook'>): ChartTable {
  const straight = perMetre[0] ?? 0
  const percent = (value: number | undefined) => (straight > 0 ? (100 * (value ?? 0)) / straight : 0)
  return {
    caption: 'Volts per length, in percent of a straight run',
    columns: [
      { head: 'angle', unit: '°' },
      { head: 'integrated', unit: '%' },
      { head: 'cosine', unit: '%' },
      { head: 'cosine and skew', unit: '%' },
    ],
    rows: Array.from(lean, (angle, k) => [
      (180 * angle) / Math.PI,
      percent(perMetre[k]),
      percent(cosine[k]),
      percent(textbook[k]),
    ]),
  }
}
