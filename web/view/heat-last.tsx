/** What the materials bear and what is in hand; on demand how long it lasts when something goes wrong. */

import type { WindRow } from '../../src/index.ts'
import { temperatureChart, temperatureTable } from '../../src/output/chart/temperature.ts'
import type { HeatReport } from '../../src/output/heat-report.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { formatNumber, formatSpread } from '../../src/units/format.ts'
import { spreads } from '../store/design.ts'
import { computeHeat, heatStale, heatState, stopHeat } from '../store/heat.ts'
import { inMeasure } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'
import { dominantGuess } from './guess-words.ts'
import { JobKeys } from './job-keys.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const caseNames: Readonly<Record<HeatReport['cases'][number]['key'], () => string>> = {
  'strong wind': () => say`From cold in a strong wind`,
  gust: () => say`Into a gust that does not end`,
  short: () => say`Shorted at the leads`,
  'heat run': () => say`A heat run on the bench`,
}

const kelvin = (value: number): string => `${formatNumber(value, 2).replace('-', '−')} K`

function Limits({ limits, ambient, spread }: Pick<HeatReport, 'limits' | 'ambient' | 'spread'>) {
  const width = (warmest: number) => spread * Math.max(0, warmest - ambient)
  return (
    <DataTable
      caption={say`What each material bears, and the warmest that it gets in steady wind`}
      rows={limits}
      columns={[
        { head: say`material`, cell: ({ name }) => capital(told(name)) },
        { head: say`bears`, cell: ({ temperature }) => inMeasure(temperature, 'degC') },
        {
          head: say`gets`,
          cell: ({ warmest }) => shown(formatSpread(warmest, width(warmest), 'degC')),
        },
        {
          head: say`in hand`,
          cell: ({ temperature, warmest }) =>
            temperature < warmest
              ? say`${kelvin(warmest - temperature)} too warm`
              : width(warmest) > temperature - warmest
                ? say`${kelvin(temperature - warmest)}, less than it may be off`
                : shown(kelvin(temperature - warmest)),
        },
      ]}
    />
  )
}

function Report({ report }: { readonly report: HeatReport }) {
  const { cases, limits, turn, notes, caution } = report
  return (
    <>
      {heatStale.value ? (
        <p class="note">{say`The design has been changed since: this is of the design before.`}</p>
      ) : null}
      <Limits {...report} />
      <div class="heat-cases">
        {cases.map(({ key, sentence, time, lines }) => {
          const along = { quantity: 'time', values: time } as const
          return (
            <ChartFrame
              key={key}
              name={`heat-${key.replaceAll(' ', '-')}`}
              title={caseNames[key]()}
              note={engineWords(sentence)}
              draw={(wide) =>
                temperatureChart({
                  width: wide,
                  height: 260,
                  along,
                  lines,
                  limits: limits.map(({ name, temperature }) => ({ label: name, temperature })),
                })
              }
              data={() => temperatureTable({ along, lines })}
            />
          )
        })}
      </div>
      {turn === undefined ? null : <p>{engineWords(turn)}</p>}
      {notes.map((text) => (
        <p key={text} class="note">
          {engineWords(text)}
        </p>
      ))}
      <p class="caution-line">{told(caution)}</p>
    </>
  )
}

/** The copper in the wind looked at, and at its hottest with the guess that bears most of its spread. */
function nowSentence(row: WindRow): string {
  if (row.overheated) return say`In this wind the copper finds no steady warmth below 350 °C: it burns.`
  return say`In this wind the copper stands at ${inMeasure(row.copperTemperature, 'degC')} and its hottest spot at ${inMeasure(row.temperatures.hotSpot, 'degC')}.`
}

function hottestSentence(): string {
  const hottest = spreads.value?.hottestCopper
  if (hottest === undefined) return ''
  return say`At its hottest the copper gets ${told(intervalText(hottest.value, 'degC', hottest))}. ${dominantGuess(hottest)}`.trim()
}

function statusText(): string {
  const state = heatState.value
  if (state.kind === 'running') return say`Computing …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Done.` : ''
}

export function HeatLast({ row }: { readonly row: WindRow }) {
  const state = heatState.value
  return (
    <section class="card heat-last">
      <h3>{say`What it bears, and how long it lasts`}</h3>
      <p>
        {nowSentence(row)} {hottestSentence()}
      </p>
      <p class="note">
        {say`Limits and what is in hand; how fast it warms in a strong wind, in a gust in which no limiter acts, shorted, and on the bench.`}
      </p>
      <div class="fault-choice">
        <JobKeys
          label={say`Compute how long it lasts`}
          start={computeHeat}
          stop={stopHeat}
          fraction={state.kind === 'running' ? state.fraction : undefined}
          status={statusText()}
        />
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </section>
  )
}
