/** Picture of a contest: watts into the load against wind, a line for every design. */
import { formatSi } from '../../units/format.ts'
import { chosenNumber, chosenText } from '../measuring.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
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

/** Who leads in which winds. */
function description(letters: readonly string[], winds: ContestChart['winds']): string {
  const leads = winds.map(({ watts }) => {
    const most = Math.max(0, ...watts)
    return most > 0 ? watts.indexOf(most) : -1
  })
  const stretches: { readonly leader: number; readonly from: number; to: number }[] = []
  leads.forEach((leader, k) => {
    const wind = winds[k]!.wind
    const last = stretches.at(-1)
    if (leader >= 0 && last?.leader === leader) last.to = wind
    else if (leader >= 0) stretches.push({ leader, from: wind, to: wind })
  })
  if (stretches.length === 0) return 'None of the designs brings any power into its load.'
  const told = stretches
    .slice(0, mostStretches)
    .map(
      ({ leader, from, to }) =>
        `${letters[leader] ?? '?'} gives most ${from === to ? `at ${chosenText(from, 'm_per_s')}` : `from ${chosenNumber(from, 'm_per_s')} to ${chosenText(to, 'm_per_s')}`}`,
    )
  const last = winds.at(-1)!
  const end = letters.map((letter, k) => `${letter} ${formatSi(last.watts[k] ?? 0, 'W')}`).join(', ')
  return `${told.join('; ')}. At ${chosenText(last.wind, 'm_per_s')}: ${end}.`
}

/** Lines that lie on each other change the lead often; the first changes tell enough. */
const mostStretches = 5

export function contestChart({ width, height, letters, winds }: ContestChart): string {
  const left = 52
  const plot = { left, top: 30, width: Math.max(60, width - left - labelRoom(letters)), height: height - 76 }
  // where nothing arrives, any scale will do
  const greatest = Math.max(0, ...winds.flatMap(({ watts }) => watts)) || 1
  const body = panelBody({
    plot,
    footed: true,
    byWind: true,
    x: { label: 'wind', suffix: 'm_per_s', domain: [0, winds.at(-1)?.wind ?? 1] },
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
      description: description(letters, winds),
      width,
      height,
    },
    body,
  )
}

export function contestTable({ letters, winds }: Pick<ContestChart, 'letters' | 'winds'>): ChartTable {
  return {
    caption: 'Power into the load by wind',
    columns: [{ head: 'wind', unit: 'm/s', exact: true }, ...letters.map((head) => ({ head, unit: 'W' }))],
    rows: winds.map(({ wind, watts }) => [wind, ...letters.map((_, k) => watts[k] ?? 0)]),
  }
}
