/** What is needed against what comes out of the store: the answer, month by month, what it loses by itself, and what a step up would bring. */
import { monthNames } from '../../src/analysis/worth-verdict.ts'
import type { NeedCover, Worth } from '../../src/index.ts'
import { monthEnergyChart, monthEnergyTable } from '../../src/output/chart/month-energy.ts'
import { monthsUnknown } from '../../src/output/worth-page.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { form, worth } from '../store/design.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'
import { FigureList, type ShownFigure } from './figure-list.tsx'

const kWh = (joule: number): string => formatSi(joule, 'kWh')
const range = ({ low, high }: Pick<NeedCover, 'low' | 'high'>): string => say`${kWh(low)} to ${kWh(high)}`

const coverWords: Readonly<Record<NeedCover['cover'], () => string>> = {
  covered: () => say`yes, in a poor one too`,
  perhaps: () => say`in a good one`,
  short: () => say`no`,
}
const barWords = { covered: 'yes', perhaps: 'in a good one', short: 'no' } as const

function figures({ year, standing, storageEfficiency, autonomy, wantedAutonomy }: Worth): ShownFigure[] {
  const lost = formatNumber(100 * (1 - storageEfficiency), 2)
  return [
    {
      name: say`Comes out of the store in a year`,
      value: shown(kWh(year.energy)),
      note:
        storageEfficiency < 1
          ? say`${range(year)} in nine of ten years; the battery itself keeps ${lost} % of what goes in (common practice, no source)`
          : say`${range(year)} in nine of ten years`,
    },
    {
      name: say`Needed in a year`,
      value: shown(kWh(year.need)),
      note: say`of it ${kWh(standing)} for controllers and the like, wind or calm`,
    },
    ...(autonomy === undefined
      ? []
      : [
          {
            name: say`Lasts without wind`,
            value: say`${formatNumber(autonomy, 2)} days`,
            note: say`wanted are ${formatNumber(wantedAutonomy, 2)} days`,
            ...(autonomy < wantedAutonomy ? { trouble: say`less than wanted` } : {}),
          },
        ]),
    ...(year.refused > 0
      ? [
          {
            name: say`A full battery refuses`,
            value: shown(kWh(year.refused)),
            note: say`in a year, where supply lasts and is more than the need: the dump load’s share`,
          },
        ]
      : []),
  ]
}

interface Shown {
  readonly months: readonly NeedCover[]
  readonly winds: Snapshot['year']['months']
}

function Months({ months, winds }: Shown) {
  const bars = months.map(({ month, energy, low, high, need, cover }) => ({
    label: monthNames[month! - 1]!,
    energy,
    low,
    high,
    need,
    covered: barWords[cover],
  }))
  const columns: Column<NeedCover>[] = [
    { head: say`month`, cell: ({ month }) => told(monthNames[month! - 1]!) },
    { head: say`comes out`, cell: ({ energy }) => shown(kWh(energy)) },
    { head: say`nine of ten between`, cell: range },
    { head: say`needed`, cell: ({ need }) => shown(kWh(need)) },
    { head: say`covered`, cell: ({ cover }) => coverWords[cover]() },
    { head: say`refused when full`, cell: ({ refused }) => (refused > 0 ? shown(kWh(refused)) : '–') },
  ]
  return (
    <ChartFrame
      name="need"
      title={say`What comes out, month by month, and what is needed`}
      note={say`Uprights: bounds of nine of ten such months, by weather and by what is guessed of the wind.`}
      draw={(width) =>
        monthEnergyChart({
          width,
          height: 260,
          months: bars.map((bar) => ({ ...bar, label: bar.label.slice(0, 3) })),
        })
      }
      data={() => monthEnergyTable(bars.map((bar, k) => ({ ...bar, meanWind: winds?.[k]?.meanWind ?? 0 })))}
    >
      <DataTable caption={say`Need by month`} rows={months} columns={columns} />
    </ChartFrame>
  )
}

/** Whether the design names a need at all, by what stands on its form. */
const needIsNamed = (): boolean => form.value.some(({ path }) => path.startsWith('need.'))

export function WorthView({ result }: { readonly result: Snapshot }) {
  const found = worth.value
  if (found === undefined)
    return (
      <section class="card need">
        <h3>{say`Does it suffice for what is wanted?`}</h3>
        <p class="note">
          {needIsNamed()
            ? say`It is being worked out.`
            : say`The design does not say what it is to run. It brings ${kWh(result.year.energy)} in a year; add what it is to run, and the answer stands here.`}
        </p>
      </section>
    )
  return (
    <>
      <section class="card need">
        <h3>{say`Does it suffice for what is wanted?`}</h3>
        {found.verdict.map((sentence, k) => (
          <p key={sentence} class={k === 0 ? 'answer-line' : ''}>
            {engineWords(sentence)}
          </p>
        ))}
        <FigureList label={say`Need and supply`} figures={figures(found)} />
        {found.months === undefined ? <p class="note">{told(monthsUnknown)}</p> : null}
      </section>
      {found.months === undefined ? null : <Months months={found.months} winds={result.year.months} />}
    </>
  )
}
