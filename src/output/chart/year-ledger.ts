/** Picture of where a year's energy goes: a bar for each cause, as long as its share of what the wind held. */
import { formatNumber } from '../../units/format.ts'
import { said } from '../telling.ts'
import { wrapped } from '../text-table.ts'
import { linearScale } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt } from './paragraph.ts'
import { picture, px } from './picture.ts'

export interface LedgerBar {
  readonly label: string
  /** [J] */
  readonly energy: number
  readonly className: 'ink-store' | 'ink-wind' | 'ink-shaft' | 'ink-chosen'
}

export interface YearLedgerChart {
  readonly width: number
  readonly bars: readonly LedgerBar[]
  /** What all of them are shares of [J]. */
  readonly whole: number
}

const kilowattHour = 3.6e6
/** From bar to bar, and what each further line of words takes [px]. */
const rowHeight = 40
const lineStep = 17
/** Of the bold letters [px]. */
const letterWidth = 7.6

/** Energies that are next to nothing need no digits. */
export const energyText = (joule: number): string =>
  joule > 0 && joule < 0.005 * kilowattHour ? 'under 0.01 kWh' : `${formatNumber(joule / kilowattHour)} kWh`

export function yearLedgerChart({ width, bars, whole }: YearLedgerChart): string {
  const along = linearScale(
    [0, Math.max(...bars.map(({ energy }) => energy), 1e-9)],
    [0, Math.max(10, width - 4)],
  )
  const share = (energy: number) => (whole > 0 ? `${formatNumber((100 * energy) / whole, 2)} %` : '')
  let top = 12
  const rows = bars.map(({ label, energy, className }) => {
    // each told by itself: a label is a sentence of its own, whatever stands behind it
    const words = `${said(label)}: ${said(energyText(energy))}, ${said(share(energy))}`
    const lines = wrapped(words, Math.max(12, Math.floor((width - 4) / letterWidth)))
    const texts = lines.map((line, n) => lineAt(2, top + 6 + lineStep * n, line, { className: 'part-text' }))
    top += lineStep * (lines.length - 1)
    const bar = `<rect class="bar ${className}" x="2" y="${px(top + 12)}" width="${px(Math.max(0, along(Math.max(0, energy))))}" height="14"/>`
    top += rowHeight
    return texts.join('') + bar
  })
  return picture(
    {
      name: 'year-ledger',
      title: 'Where a year’s energy goes',
      description: `Of ${energyText(whole)} that the wind holds: ${bars.map(({ label, energy }) => `${label} ${energyText(energy)}${whole > 0 ? `, ${share(energy)}` : ''}`).join('; ')}.`,
      width,
      height: top,
    },
    rows.join(''),
  )
}

export function yearLedgerTable({ bars, whole }: Omit<YearLedgerChart, 'width'>): ChartTable {
  return {
    caption: 'Energy of a year by cause',
    columns: [{ head: 'cause' }, { head: 'energy', unit: 'kWh' }, { head: 'of the wind', unit: '%' }],
    rows: bars.map(({ label, energy }) => [
      label,
      energy / kilowattHour,
      whole > 0 ? (100 * energy) / whole : 0,
    ]),
  }
}
