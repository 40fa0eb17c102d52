/** The year: where its energy goes, month by month what it brings, and whether that is worth it. */
import { monthNames } from '../../src/analysis/worth-verdict.ts'
import { monthEnergyChart, monthEnergyTable } from '../../src/output/chart/month-energy.ts'
import { yearLedgerChart, yearLedgerTable } from '../../src/output/chart/year-ledger.ts'
import { monthsUnknown } from '../../src/output/worth-page.ts'
import { ledgerRows } from '../../src/output/year-ledger-row.ts'
import { formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { worth } from '../store/design.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

const inks = { 'not taken': 'ink-wind', lost: 'ink-shaft', useful: 'ink-store' } as const
const coverWords = { covered: 'yes', perhaps: 'in a good one', short: 'no' } as const

function Months({ snapshot }: { readonly snapshot: Snapshot }) {
  const { months } = snapshot.year
  const need = worth.value?.months
  if (months === undefined) return <p class="note">{told(monthsUnknown)}</p>
  const bars = months.map(({ month, energy, low, high, meanWind }, k) => ({
    label: monthNames[month - 1]!,
    meanWind,
    energy,
    low,
    high,
    need: need?.[k]?.need,
    covered: need?.[k] === undefined ? undefined : coverWords[need[k].cover],
  }))
  return (
    <ChartFrame
      name="months"
      title={say`The year month by month`}
      note={say`Uprights: bounds of nine of ten such months, by weather and by what is guessed of the wind.`}
      draw={(width) =>
        monthEnergyChart({
          width,
          height: 260,
          months: bars.map((bar) => ({ ...bar, label: bar.label.slice(0, 3) })),
        })
      }
      data={() => monthEnergyTable(bars)}
    />
  )
}

function Verdict() {
  const found = worth.value
  if (!found) return null
  return (
    <section class="card worth" aria-label={say`Is it worth it?`}>
      <h3>{say`Is it worth it?`}</h3>
      {found.verdict.map((sentence) => (
        <p key={sentence}>{told(sentence)}</p>
      ))}
    </section>
  )
}

export function YearView({ snapshot }: { readonly snapshot: Snapshot }) {
  const { year } = snapshot
  const [low, high] = [formatSi(year.range.low, 'kWh'), formatSi(year.range.high, 'kWh')]
  const ledger = {
    whole: year.ledger.available,
    bars: ledgerRows(year.ledger).map(({ label, energy, kind }) => ({
      label,
      energy,
      className: inks[kind],
    })),
  }
  return (
    <>
      <Verdict />
      <Months snapshot={snapshot} />
      <ChartFrame
        name="year"
        title={say`Where a year’s energy goes`}
        note={
          year.energyInGusts === undefined
            ? say`${low} to ${high} in nine of ten years.`
            : say`${low} to ${high} in nine of ten years; ${formatSi(year.energyInGusts, 'kWh')} if it followed every gust at once.`
        }
        draw={(width) => yearLedgerChart({ width, ...ledger })}
        data={() => yearLedgerTable(ledger)}
      />
    </>
  )
}
