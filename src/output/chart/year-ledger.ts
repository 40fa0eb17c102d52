/** Picture of where a year's energy goes: a bar for each cause, as long as its share of what the wind held. */
import { formatNumber } from '../../units/format.ts'
import { linearScale } from './axis.ts'
import { picture, px, textAt } from './picture.ts'

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
const rowHeight = 40

export const ledgerHeight = (bars: readonly LedgerBar[]): number => 12 + rowHeight * bars.length

/** Energies that are next to nothing need no digits. */
export const energyText = (joule: number): string =>
  joule > 0 && joule < 0.005 * kilowattHour ? 'under 0.01 kWh' : `${formatNumber(joule / kilowattHour)} kWh`

export function yearLedgerChart({ width, bars, whole }: YearLedgerChart): string {
  const height = ledgerHeight(bars)
  const along = linearScale(
    [0, Math.max(...bars.map(({ energy }) => energy), 1e-9)],
    [0, Math.max(10, width - 4)],
  )
  const share = (energy: number) => (whole > 0 ? `${formatNumber((100 * energy) / whole, 2)} %` : '')
  const rows = bars.map(({ label, energy, className }, k) => {
    const top = 12 + rowHeight * k
    return (
      textAt(2, top + 6, `${label}: ${energyText(energy)}, ${share(energy)}`, {
        className: 'line-label ink-wind',
      }) +
      `<rect class="bar ${className}" x="2" y="${px(top + 12)}" width="${px(Math.max(0, along(Math.max(0, energy))))}" height="14"/>`
    )
  })
  return picture(
    {
      name: 'year-ledger',
      title: 'Where a year’s energy goes',
      description: bars.map(({ label, energy }) => `${label} ${energyText(energy)}`).join('; '),
      width,
      height,
    },
    rows.join(''),
  )
}
