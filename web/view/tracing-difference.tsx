/** The design against one tracing: the fields that differ, the figures with their sureness, the concerns that came and went. */
import { useEffect } from 'preact/hooks'
import { documentDifferences } from '../../src/analysis/design-difference.ts'
import type { ConcernDifference, FigureDifference, PairedSpread, SpreadOutput } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import {
  aloneText,
  differenceText,
  figureText,
  figureWords,
  pairedNote,
  surenessText,
} from '../../src/output/design-difference-words.ts'
import type { DifferenceReport } from '../job/difference.ts'
import { document as design, stale } from '../store/design.ts'
import type { Tracing } from '../store/tracing.ts'
import { difference, differenceReport, watchDifference } from '../store/tracing-difference.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { type Column, DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'
import { fieldName, fieldPlace, fieldValue } from './field-words.ts'

function Fields({ tracing }: { readonly tracing: Tracing }) {
  const list = documentDifferences(tracing.document, design.value)
  if (list.length === 0)
    return <p>{say`The design says the same as tracing ${tracing.letter}, field by field.`}</p>
  const columns: Column<(typeof list)[number]>[] = [
    {
      head: say`field`,
      cell: ({ path }) => (
        <>
          {fieldName(path)} <small>{fieldPlace(path)}</small>
        </>
      ),
    },
    { head: say`tracing ${tracing.letter}`, cell: ({ path, from }) => fieldValue(path, from) },
    { head: say`the design now`, cell: ({ path, to }) => fieldValue(path, to) },
  ]
  return <DataTable caption={say`Fields that differ`} columns={columns} rows={list} />
}

const spreadOf = (spread: PairedSpread | undefined, name: FigureDifference['name']) =>
  spread?.results[name as SpreadOutput]

function Figures({ tracing, report }: { readonly tracing: Tracing; readonly report: DifferenceReport }) {
  const { figures, spread, wind } = report
  const sureness = ({ name, difference }: FigureDifference): string => {
    const found = spreadOf(spread, name)
    if (found !== undefined) return engineWords(surenessText(name, found))
    if (difference === 0) return ''
    return spread === undefined && !unguessed.has(name) ? say`being drawn` : say`at the best guesses`
  }
  const columns: Column<FigureDifference>[] = [
    { head: say`figure`, cell: ({ name }) => engineWords(figureWords[name].title) },
    { head: say`tracing ${tracing.letter}`, cell: ({ name, from }) => engineWords(figureText(name, from)) },
    { head: say`the design now`, cell: ({ name, to }) => engineWords(figureText(name, to)) },
    {
      head: say`difference, and nine of ten draws of it`,
      cell: (each) => {
        const found = spreadOf(spread, each.name)
        return (
          <>
            <b>{engineWords(differenceText(each))}</b>
            <small>{sureness(each)}</small>
            {found === undefined || found.verdict === 'none' ? null : (
              <small>{say`each alone: ${engineWords(aloneText(each.name, found))}`}</small>
            )}
          </>
        )
      },
    },
  ]
  return (
    <>
      <DataTable
        caption={say`Figures; watts and copper in ${engineWords(`${shortNumber(wind)} m/s`)}`}
        columns={columns}
        rows={figures}
      />
      {spread === undefined ? null : <p class="note">{told(pairedNote(spread.samples))}</p>}
      {spread === undefined || spread.own.length === 0 ? null : (
        <p class="note">
          {say`Guessed apart in each, and so no surer in the difference: ${spread.own.map((path) => fieldName(path.split('.'))).join(', ')}.`}
        </p>
      )}
    </>
  )
}

/** Figures that are not among those drawn. */
const unguessed: ReadonlySet<FigureDifference['name']> = new Set([
  'motorConstant',
  'copperMass',
  'magnetMass',
  'wirePrice',
])

const severityWords = (severity: ConcernDifference['before']): string =>
  severity === undefined ? say`none` : told(severity)

function Concerns({ list }: { readonly list: readonly ConcernDifference[] }) {
  if (list.length === 0) return <p>{say`Both raise the same concerns, as gravely.`}</p>
  return (
    <ul class="tracing-concerns">
      {list.map(({ code, what, before, after }) => (
        <li key={code}>
          <b>
            {before === undefined
              ? say`New, ${severityWords(after)}:`
              : after === undefined
                ? say`Gone, was ${severityWords(before)}:`
                : say`${severityWords(before)} → ${severityWords(after)}:`}
          </b>{' '}
          {told(what)}
        </li>
      ))}
    </ul>
  )
}

export function TracingDifference({ tracing }: { readonly tracing: Tracing }) {
  useEffect(watchDifference, [])
  const state = difference.value
  const report = differenceReport.value
  return (
    <section
      class={`card tracing-difference${stale.value ? ' stale' : ''}`}
      aria-labelledby="tracing-difference"
    >
      <h3 id="tracing-difference">{say`From tracing ${tracing.letter} to the design now`}</h3>
      <Fields tracing={tracing} />
      <div class="contest-status">
        <output aria-live="polite">
          {state.kind === 'refused'
            ? told(state.reason)
            : state.kind === 'running'
              ? report === undefined
                ? say`Both are being computed …`
                : say`How sure the differences are is being drawn …`
              : ''}
        </output>
        {state.kind === 'running' ? (
          <progress aria-label={say`Drawn so far`} max={1} value={state.fraction} />
        ) : null}
      </div>
      {report === undefined ? null : (
        <>
          <Figures tracing={tracing} report={report} />
          <h4>{say`Concerns`}</h4>
          <Concerns list={report.concerns} />
        </>
      )}
    </section>
  )
}
