/** The year: where its energy goes, month by month what it brings, and whether that is worth it. */
import { monthNames } from '../../src/analysis/worth-verdict.ts'
import { monthEnergyChart } from '../../src/output/chart/month-energy.ts'
import { energyText, yearLedgerChart } from '../../src/output/chart/year-ledger.ts'
import { monthsUnknown } from '../../src/output/worth-page.ts'
import { ledgerRows } from '../../src/output/year-ledger-row.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { worth } from '../store/design.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'

const inks = { 'not taken': 'ink-wind', lost: 'ink-shaft', useful: 'ink-store' } as const
const coverWords = { covered: 'yes', perhaps: 'in a good one', short: 'no' } as const
const kWh = (joule: number) => formatNumber(joule / 3.6e6)

function Months({ snapshot }: { readonly snapshot: Snapshot }) {
  const { months } = snapshot.year
  const need = worth.value?.months
  if (months === undefined) return <p class="note">{monthsUnknown}</p>
  return (
    <ChartFrame
      name="months"
      title="The year month by month"
      note="Uprights: bounds of nine of ten such months, by weather and by what is guessed of the wind."
      draw={(width) =>
        monthEnergyChart({
          width,
          height: 260,
          months: months.map(({ month, energy, low, high }, k) => ({
            label: monthNames[month - 1]!.slice(0, 3),
            energy,
            low,
            high,
            need: need?.[k]?.need,
          })),
        })
      }
      table={() => (
        <DataTable
          caption="Energy by month"
          rows={months.map((each, k) => ({ ...each, cover: need?.[k] }))}
          columns={[
            { head: 'month', cell: ({ month }) => monthNames[month - 1] },
            { head: 'wind', unit: 'm/s', cell: ({ meanWind }) => formatNumber(meanWind) },
            { head: 'energy', unit: 'kWh', cell: ({ energy }) => kWh(energy) },
            { head: 'poor', unit: 'kWh', cell: ({ low }) => kWh(low) },
            { head: 'good', unit: 'kWh', cell: ({ high }) => kWh(high) },
            { head: 'needed', unit: 'kWh', cell: ({ cover }) => (cover ? kWh(cover.need) : '–') },
            { head: 'covered', cell: ({ cover }) => (cover ? coverWords[cover.cover] : '–') },
          ]}
        />
      )}
    />
  )
}

function Verdict() {
  const found = worth.value
  if (!found) return null
  return (
    <section class="card worth" aria-label="Is it worth it">
      <h3>Is it worth it?</h3>
      {found.verdict.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  )
}

export function YearView({ snapshot }: { readonly snapshot: Snapshot }) {
  const { year } = snapshot
  const rows = ledgerRows(year.ledger)
  return (
    <>
      <Verdict />
      <Months snapshot={snapshot} />
      <ChartFrame
        name="year"
        title="Where a year’s energy goes"
        note={`${formatSi(year.range.low, 'kWh')} to ${formatSi(year.range.high, 'kWh')} in nine of ten years${year.energyInGusts === undefined ? '' : `; ${formatSi(year.energyInGusts, 'kWh')} if it followed every gust at once`}.`}
        draw={(width) =>
          yearLedgerChart({
            width,
            whole: year.ledger.available,
            bars: rows.map(({ label, energy, kind }) => ({ label, energy, className: inks[kind] })),
          })
        }
        table={() => (
          <DataTable
            caption="Energy of a year by cause"
            rows={rows}
            columns={[
              { head: 'cause', cell: ({ label }) => label },
              { head: 'energy', cell: ({ energy }) => energyText(energy) },
            ]}
          />
        )}
      />
    </>
  )
}
