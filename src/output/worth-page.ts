/** The year month by month, its ledger, and the need against it, as a page of text and as JSON. */
import type { Worth } from '../analysis/worth.ts'
import { monthNames } from '../analysis/worth-verdict.ts'
import type { Year } from '../analysis/year.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'
import { ledgerRows } from './year-ledger-row.ts'

const columns = 96
const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const kWh = (joule: number): string => formatSi(joule, 'kWh').replace(' kWh', '')
const tableLines = (table: readonly string[]): PageLine[] =>
  table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))

/** What is said where the months are not known. */
export const monthsUnknown =
  'Months are not known: give the mean wind of each month, or a logger’s record of a year.'

const coverWords = { covered: 'yes', perhaps: 'in a good one', short: 'no' } as const

function monthLines({ months }: Year, worth: Worth | undefined): PageLine[] {
  if (months === undefined) return [plain(`  ${monthsUnknown}`)]
  return tableLines(
    textTable(
      [
        { head: 'month', align: 'left' },
        { head: 'wind m/s', align: 'right' },
        { head: 'kWh', align: 'right' },
        { head: 'between', align: 'right' },
        ...(worth === undefined
          ? []
          : ([
              { head: 'needed', align: 'right' },
              { head: 'covered', align: 'left' },
            ] as const)),
      ],
      months.map(({ month, meanWind, energy, low, high }, k) => [
        monthNames[month - 1]!,
        formatNumber(meanWind),
        kWh(energy),
        `${kWh(low)} … ${kWh(high)}`,
        ...(worth?.months === undefined
          ? []
          : [kWh(worth.months[k]!.need), coverWords[worth.months[k]!.cover]]),
      ]),
    ),
  )
}

export function yearPage(year: Year, worth: Worth | undefined): PageLine[] {
  const { ledger, range } = year
  return [
    title('The year’s ledger'),
    ...tableLines(
      textTable(
        [
          { head: 'kWh a year', align: 'left' },
          { head: '', align: 'right' },
          { head: '', align: 'right' },
        ],
        ledgerRows(ledger).map(({ label, energy }) => [
          label,
          kWh(energy),
          ledger.available > 0 ? `${formatNumber((100 * energy) / ledger.available, 2)} %` : '',
        ]),
      ),
    ),
    ...wrapped(
      `  a single year lies between ${formatSi(range.low, 'kWh')} and ${formatSi(range.high, 'kWh')} (nine of ten, by weather and by what is guessed of the wind)${
        year.energyInGusts === undefined
          ? ''
          : `; if it followed every gust at once it would be ${formatSi(year.energyInGusts, 'kWh')}`
      }`,
      columns,
      '    ',
    ).map(plain),
    plain(''),
    title('Month by month'),
    ...monthLines(year, worth),
    ...(worth === undefined
      ? []
      : [
          plain(''),
          title('Is it worth it?'),
          ...worth.verdict.flatMap((sentence) => wrapped(`  ${sentence}`, columns, '    ').map(plain)),
        ]),
  ]
}

const joule = (value: number): number => fromSi(value, unit('kWh'))

/** The same for other programs. */
export const worthResult = (worth: Worth) => ({
  energy_kWh: joule(worth.year.energy),
  low_kWh: joule(worth.year.low),
  high_kWh: joule(worth.year.high),
  need_kWh: joule(worth.year.need),
  standing_kWh: joule(worth.standing),
  refused_kWh: joule(worth.year.refused),
  cover: worth.year.cover,
  autonomy_d: worth.autonomy === undefined ? null : worth.autonomy,
  wantedAutonomy_d: worth.wantedAutonomy,
  months:
    worth.months?.map(({ month, energy, low, high, need, refused, cover }) => ({
      month: month!,
      energy_kWh: joule(energy),
      low_kWh: joule(low),
      high_kWh: joule(high),
      need_kWh: joule(need),
      refused_kWh: joule(refused),
      cover,
    })) ?? null,
  steps: worth.steps.map(({ kind, size, energy }) => ({ kind, size_m: size, energy_kWh: joule(energy) })),
  verdict: [...worth.verdict],
})
