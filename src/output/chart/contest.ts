/** Picture of a contest: watts into the load against wind, a line for every design. */
import { niceDomain } from './axis.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface ContestChart {
  readonly width: number
  readonly height: number
  /** A, B, C … */
  readonly letters: readonly string[]
  /** [m/s] and, design by design, [W]. */
  readonly winds: readonly { readonly wind: number; readonly watts: readonly number[] }[]
}

/** Colours of the lines; where there are more lines than colours, their dashes still differ from their neighbours'. */
const inks = ['ink-phase-1', 'ink-phase-2', 'ink-phase-3', 'ink-wind', 'ink-shaft'] as const

export function contestChart({ width, height, letters, winds }: ContestChart): string {
  const left = 52
  const plot = { left, top: 30, width: Math.max(60, width - left - labelRoom(letters)), height: height - 76 }
  const greatest = Math.max(1e-6, ...winds.flatMap(({ watts }) => watts))
  const body = panelBody({
    plot,
    footed: true,
    x: { label: 'wind, m/s', domain: [0, winds.at(-1)?.wind ?? 1] },
    y: { label: 'power into the load, W', domain: niceDomain([0, greatest], 5) },
    lines: letters.map((label, k) => {
      const dash = dashes[k % dashes.length]
      return {
        label,
        className: inks[k % inks.length]!,
        ...(dash ? { dash } : {}),
        points: winds.map(({ wind, watts }): Point => [wind, watts[k] ?? 0]),
        labelAt: 'end' as const,
      }
    }),
  })
  return picture(
    {
      name: 'contest',
      title: 'Power into the load against wind',
      description: `Power into the load in watts for every wind speed in metres per second, a line for each of the designs ${letters.join(', ')}.`,
      width,
      height,
    },
    body,
  )
}
