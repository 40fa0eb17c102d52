/** A wind logger's file on the page: dropped or chosen, its report, and the way into the design. */
import { useState } from 'preact/hooks'
import { monthNames } from '../../src/analysis/worth-verdict.ts'
import type { SpeedUnit, WindQuestion } from '../../src/index.ts'
import { refusalKinds } from '../../src/measurement/import-report.ts'
import { durationText, layoutSentences, linesText, recordNotes } from '../../src/output/wind-page.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { RecordReport } from '../record.ts'
import { inMeasure, numberInMeasure, signSaid } from '../store/measure.ts'
import { openRecord, record, stopRecord, takeRecord, tellRecord } from '../store/record.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { DataTable } from './data-table.tsx'

const answerOf = ({ about }: WindQuestion, choice: string) =>
  about === 'unit'
    ? { unit: choice as SpeedUnit }
    : about === 'date order'
      ? { dateOrder: choice as 'day first' | 'month first' }
      : { windColumn: choice }

function Questions({ questions }: { readonly questions: readonly WindQuestion[] }) {
  return questions.map((question) => (
    <p key={question.about} class="record-question">
      <label>
        {told(question.text)}{' '}
        <select value="" onChange={(event) => tellRecord(answerOf(question, event.currentTarget.value))}>
          <option value="">{say`as it is, or …`}</option>
          {question.choices.map((choice) => (
            <option key={choice} value={choice}>
              {told(choice)}
            </option>
          ))}
        </select>
      </label>
    </p>
  ))
}

function Year({ year }: Pick<RecordReport, 'year'>) {
  if ('reason' in year)
    return <p class="note">{say`The design’s year was not computed: ${told(year.reason)}`}</p>
  const hubWind = inMeasure(year.hubWind, 'm_per_s')
  const [byHistogram, byMean] = [formatSi(year.byHistogram, 'kWh'), formatSi(year.byMean, 'kWh')]
  return (
    <p>
      {year.byWeibull === undefined
        ? say`The design in this wind, ${hubWind} at the hub: ${byHistogram} a year by the measured frequencies; cubing the mean wind would promise ${byMean}.`
        : say`The design in this wind, ${hubWind} at the hub: ${byHistogram} a year by the measured frequencies, ${formatSi(year.byWeibull, 'kWh')} by the Weibull distribution; cubing the mean wind would promise ${byMean}.`}
    </p>
  )
}

function Report({ made }: { readonly made: RecordReport }) {
  const { report, statistics, name } = made
  const { rows } = report
  const [mean, greatest] = [inMeasure(statistics.mean, 'm_per_s'), inMeasure(statistics.greatest, 'm_per_s')]
  const averaging = told(durationText(statistics.averaging))
  const complete = formatNumber(100 * report.completeness)
  const [taken, setTaken] = useState<RecordReport | undefined>(undefined)
  const counts = [
    { what: say`readings`, count: rows.read, where: '' },
    ...report.refused.map(({ kind, lines }) => ({
      what: say`refused: ${told(refusalKinds[kind])}`,
      count: lines.length,
      where: told(linesText(lines)),
    })),
    { what: say`heads`, count: rows.header, where: '' },
    { what: say`comments`, count: rows.comment, where: '' },
    { what: say`blank`, count: rows.blank, where: '' },
    { what: say`together`, count: rows.total, where: '' },
  ]
  return (
    <div class="record-report">
      <p>
        {statistics.weibull
          ? say`${name}: mean ${mean}, greatest ${greatest}, Weibull k ${formatNumber(statistics.weibull.shape)}, A ${inMeasure(statistics.weibull.scale, 'm_per_s')}; a reading every ${averaging}, ${complete} % complete.`
          : say`${name}: mean ${mean}, greatest ${greatest}; a reading every ${averaging}, ${complete} % complete.`}{' '}
        {say`The wind carries ${formatNumber(statistics.patternFactor)} times what its mean alone would.`}
      </p>
      <Questions questions={report.questions} />
      <Year year={made.year} />
      <p>
        <button
          type="button"
          onClick={() => {
            takeRecord(made)
            setTaken(made)
          }}
        >
          {say`Put this wind into the design`}
        </button>{' '}
        <output aria-live="polite">
          {taken === made ? say`It is in the site now; check the height of the anemometer there.` : ''}
        </output>
      </p>
      <DataTable
        caption={say`What became of every row`}
        rows={counts}
        columns={[
          { head: say`row`, cell: ({ what }) => what },
          { head: say`count`, cell: ({ count }) => String(count) },
          { head: say`where`, cell: ({ where }) => where },
        ]}
      />
      {[
        ...layoutSentences(report).map((text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`),
        ...report.remarks,
      ].map((text) => (
        <p key={text} class="note">
          {told(text)}
        </p>
      ))}
      <DataTable
        caption={say`Wind by month`}
        rows={statistics.months}
        columns={[
          { head: say`month`, cell: ({ month, year }) => `${told(monthNames[month - 1]!)} ${year}` },
          {
            head: say`mean`,
            unit: signSaid('m_per_s'),
            cell: ({ mean }) => numberInMeasure(mean, 'm_per_s'),
          },
          {
            head: say`complete`,
            unit: '%',
            cell: ({ completeness }) => shown(formatNumber(100 * completeness)),
          },
        ]}
      />
      {statistics.rose ? (
        <>
          <DataTable
            caption={say`Wind by direction`}
            rows={statistics.rose.sectors}
            columns={[
              { head: say`from`, cell: ({ name: sector }) => told(sector) },
              { head: say`share`, unit: '%', cell: ({ share }) => formatNumber(100 * share) },
              {
                head: say`mean`,
                unit: signSaid('m_per_s'),
                cell: ({ mean }) => numberInMeasure(mean, 'm_per_s'),
              },
            ]}
          />
          {statistics.rose.shadowed.length > 0 ? (
            <p class="note">
              {say`From ${statistics.rose.shadowed.map(told).join(', ')} the wind is far weaker than from both sides: does mast, tower or house stand before the anemometer?`}
            </p>
          ) : null}
        </>
      ) : null}
      {statistics.turbulence.length > 0 ? (
        <DataTable
          caption={say`Turbulence within ten minutes`}
          rows={statistics.turbulence}
          columns={[
            {
              head: say`wind`,
              unit: signSaid('m_per_s'),
              cell: ({ wind }) => numberInMeasure(wind, 'm_per_s'),
            },
            { head: say`stretches`, cell: ({ count }) => String(count) },
            { head: say`mean`, unit: '%', cell: ({ mean }) => formatNumber(100 * mean) },
            { head: say`model`, unit: '%', cell: ({ model }) => formatNumber(100 * model) },
          ]}
        />
      ) : null}
      {recordNotes.map((text) => (
        <p key={text} class="note">
          {told(text)}
        </p>
      ))}
    </div>
  )
}

const statusText = (): string => {
  const state = record.value
  if (state.kind === 'running') return say`Reading …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Read.` : ''
}

export function RecordView() {
  const state = record.value
  const [over, setOver] = useState(false)
  return (
    <details class="card record" id="record">
      <summary>
        <h3>{say`A wind logger’s file`}</h3>
      </summary>
      <p class="note">
        {say`A file of times and wind speeds as a logger or a weather station writes it. It is read on this computer and goes nowhere. Every row is accounted for; what the file does not say is asked.`}
      </p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the same is done by the button inside */}
      <div
        class={`record-drop${over ? ' over' : ''}`}
        onDragOver={(event) => {
          event.preventDefault()
          setOver(true)
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault()
          setOver(false)
          const file = event.dataTransfer?.files[0]
          if (file) openRecord(file)
        }}
      >
        <label>
          {say`Open a record`}{' '}
          <input
            type="file"
            accept=".csv,.txt,.dat,.tsv,.log,text/csv,text/plain"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0]
              if (file) openRecord(file)
              event.currentTarget.value = ''
            }}
          />
        </label>{' '}
        {say`or drop it here.`}{' '}
        {state.kind === 'running' ? (
          <button type="button" onClick={stopRecord}>
            {say`Stop`}
          </button>
        ) : null}{' '}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label={say`Read so far`} max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report made={state.report} /> : null}
    </details>
  )
}
