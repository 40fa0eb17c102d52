/** A wind logger's file on the page: dropped or chosen, its report, and the way into the design. */
import { useState } from 'preact/hooks'
import { monthNames } from '../../src/analysis/worth-verdict.ts'
import type { SpeedUnit, WindQuestion } from '../../src/index.ts'
import { refusalKinds } from '../../src/measurement/import-report.ts'
import { durationText, layoutSentences, linesText, recordNotes } from '../../src/output/wind-page.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { RecordReport } from '../record.ts'
import { openRecord, record, stopRecord, takeRecord, tellRecord } from '../store/record.ts'
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
        {question.text}{' '}
        <select value="" onChange={(event) => tellRecord(answerOf(question, event.currentTarget.value))}>
          <option value="">as it is, or …</option>
          {question.choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      </label>
    </p>
  ))
}

function Year({ year }: Pick<RecordReport, 'year'>) {
  if ('reason' in year) return <p class="note">The design’s year was not computed: {year.reason}</p>
  return (
    <p>
      The design in this wind, {formatSi(year.hubWind, 'm_per_s')} at the hub:{' '}
      <b>{formatSi(year.byHistogram, 'kWh')}</b> a year by the measured frequencies
      {year.byWeibull === undefined ? '' : `, ${formatSi(year.byWeibull, 'kWh')} by the Weibull distribution`}
      ; cubing the mean wind would promise {formatSi(year.byMean, 'kWh')}.
    </p>
  )
}

function Report({ made }: { readonly made: RecordReport }) {
  const { report, statistics, name } = made
  const { rows } = report
  const [taken, setTaken] = useState<RecordReport | undefined>(undefined)
  const counts = [
    { what: 'readings', count: rows.read, where: '' },
    ...report.refused.map(({ kind, lines }) => ({
      what: `refused: ${refusalKinds[kind]}`,
      count: lines.length,
      where: linesText(lines),
    })),
    { what: 'heads', count: rows.header, where: '' },
    { what: 'comments', count: rows.comment, where: '' },
    { what: 'blank', count: rows.blank, where: '' },
    { what: 'together', count: rows.total, where: '' },
  ]
  return (
    <div class="record-report">
      <p>
        {name}: mean {formatSi(statistics.mean, 'm_per_s')}, greatest{' '}
        {formatSi(statistics.greatest, 'm_per_s')}
        {statistics.weibull
          ? `, Weibull k ${formatNumber(statistics.weibull.shape)}, A ${formatSi(statistics.weibull.scale, 'm_per_s')}`
          : ''}
        ; a reading every {durationText(statistics.averaging)}, {formatNumber(100 * report.completeness)} %
        complete. The wind carries {formatNumber(statistics.patternFactor)} times what its mean alone would.
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
          Put this wind into the design
        </button>{' '}
        <output aria-live="polite">
          {taken === made ? 'It is in the site now; check the height of the anemometer there.' : ''}
        </output>
      </p>
      <DataTable
        caption="What became of every row"
        rows={counts}
        columns={[
          { head: 'row', cell: ({ what }) => what },
          { head: 'count', cell: ({ count }) => String(count) },
          { head: 'where', cell: ({ where }) => where },
        ]}
      />
      {[
        ...layoutSentences(report).map((text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`),
        ...report.remarks,
      ].map((text) => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
      <DataTable
        caption="Wind by month"
        rows={statistics.months}
        columns={[
          { head: 'month', cell: ({ month, year }) => `${monthNames[month - 1]} ${year}` },
          { head: 'mean', unit: 'm/s', cell: ({ mean }) => formatNumber(mean) },
          { head: 'complete', unit: '%', cell: ({ completeness }) => formatNumber(100 * completeness) },
        ]}
      />
      {statistics.rose ? (
        <>
          <DataTable
            caption="Wind by direction"
            rows={statistics.rose.sectors}
            columns={[
              { head: 'from', cell: ({ name: sector }) => sector },
              { head: 'share', unit: '%', cell: ({ share }) => formatNumber(100 * share) },
              { head: 'mean', unit: 'm/s', cell: ({ mean }) => formatNumber(mean) },
            ]}
          />
          {statistics.rose.shadowed.length > 0 ? (
            <p class="note">
              From {statistics.rose.shadowed.join(', ')} the wind is far weaker than from both sides: does
              mast, tower or house stand before the anemometer?
            </p>
          ) : null}
        </>
      ) : null}
      {statistics.turbulence.length > 0 ? (
        <DataTable
          caption="Turbulence within ten minutes"
          rows={statistics.turbulence}
          columns={[
            { head: 'wind', unit: 'm/s', cell: ({ wind }) => formatNumber(wind) },
            { head: 'stretches', cell: ({ count }) => String(count) },
            { head: 'mean', unit: '%', cell: ({ mean }) => formatNumber(100 * mean) },
            { head: 'model', unit: '%', cell: ({ model }) => formatNumber(100 * model) },
          ]}
        />
      ) : null}
      {recordNotes.map((text) => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
    </div>
  )
}

const statusText = (): string => {
  const state = record.value
  if (state.kind === 'reading') return 'Reading …'
  if (state.kind === 'refused') return state.reason
  return state.kind === 'done' ? 'Read.' : ''
}

export function RecordView() {
  const state = record.value
  const [over, setOver] = useState(false)
  return (
    <details class="card record" id="record">
      <summary>
        <h3>A wind logger’s file</h3>
      </summary>
      <p class="note">
        A file of times and wind speeds as a logger or a weather station writes it. It is read on this
        computer and goes nowhere. Every row is accounted for; what the file does not say is asked.
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
          Open a record{' '}
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
        or drop it here.{' '}
        {state.kind === 'reading' ? (
          <button type="button" onClick={stopRecord}>
            Stop
          </button>
        ) : null}{' '}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'reading' ? (
          <progress aria-label="Read so far" max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report made={state.report} /> : null}
    </details>
  )
}
