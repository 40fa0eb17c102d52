/** Picture of the power against wind: what the shaft gives and what is stored. */
import { niceDomain } from './axis.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture, shortNumber } from './picture.ts'

export interface PowerCurveChart {
  readonly width: number
  readonly height: number
  /** [m/s] and [W], row by row. */
  readonly wind: ArrayLike<number>
  readonly shaft: ArrayLike<number>
  readonly useful: ArrayLike<number>
  /** What is used is stored, or turned into heat. */
  readonly usefulName: string
  /** The wind looked at [m/s]. */
  readonly chosenWind: number
  /** Power wanted [W] at a wind [m/s], where somebody said so. */
  readonly wanted?: { readonly power: number; readonly wind: number }
}

const pairs = (x: ArrayLike<number>, y: ArrayLike<number>): Point[] =>
  Array.from(x, (value, k): Point => [value, y[k]!])

export function powerCurveChart(chart: PowerCurveChart): string {
  const { width, height, wind, shaft, useful, usefulName, chosenWind, wanted } = chart
  const labels = ['at the shaft', usefulName]
  const left = 52
  const plot = { left, top: 30, width: Math.max(60, width - left - labelRoom(labels)), height: height - 76 }
  const greatest = Math.max(...Array.from(shaft), wanted?.power ?? 0, 1e-6)
  const body = panelBody({
    plot,
    footed: true,
    x: { label: 'wind, m/s', domain: [0, wind[wind.length - 1] ?? 1] },
    y: { label: 'power, W', domain: niceDomain([0, greatest], 5) },
    lines: [
      {
        label: labels[0]!,
        className: 'ink-shaft',
        dash: dashes[1],
        points: pairs(wind, shaft),
        labelAt: 'end',
      },
      {
        label: usefulName,
        className: 'ink-store',
        points: pairs(wind, useful),
        labelAt: 'end',
        filled: true,
      },
    ],
    marks: wanted
      ? [
          {
            at: [wanted.wind, wanted.power],
            className: 'ink-wanted',
            label: `wanted: ${shortNumber(wanted.power)} W`,
            radius: 5,
          },
        ]
      : [],
    uprights: [{ x: chosenWind, label: `${shortNumber(chosenWind)} m/s`, className: 'ink-chosen' }],
  })
  return picture(
    {
      name: 'power-curve',
      title: 'Power against wind',
      description: `Power at the shaft and power ${usefulName} in watts for every wind speed in metres per second.`,
      width,
      height,
    },
    body,
  )
}
