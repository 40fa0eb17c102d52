/** The fair contest of the design with another one: the verdict, the watts by wind, every figure, the conditions. */
import { contestChart, contestTable } from '../../src/output/chart/contest.ts'
import type { ContestReport } from '../../src/output/contest-report.ts'
import { contest, contestStale } from '../store/contest.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { ContestChoice } from './contest-choice.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'

type Figure = ContestReport['figures'][number]

function Figures({ letters, figures }: Pick<ContestReport, 'letters' | 'figures'>) {
  const columns: Column<Figure>[] = [
    {
      head: say`figure`,
      cell: ({ name, unit }) => (
        <>
          {told(name)} <small>{unit}</small>
        </>
      ),
    },
    ...letters.map((head, k) => ({ head, cell: (row: Figure) => engineWords(row.values[k] ?? '') })),
  ]
  return <DataTable caption={say`Side by side`} columns={columns} rows={figures} />
}

const Sentences = ({ list }: { readonly list: readonly string[] }) => (
  <ul>
    {list.map((text) => (
      <li key={text}>{engineWords(text)}</li>
    ))}
  </ul>
)

function Report({ report }: { readonly report: ContestReport }) {
  const { rule, letters, names, changes, verdict, conditions, figures, winds } = report
  return (
    <div class="contest-report">
      {contestStale.value ? (
        <p class="note">{say`The design has been changed since; compare again for its new numbers.`}</p>
      ) : null}
      <p>{engineWords(rule)}</p>
      <ul>
        {letters.map((letter, k) => (
          <li key={letter}>
            <b>{letter}</b> {names[k]}: {engineWords(changes[k] ?? '')}
          </li>
        ))}
      </ul>
      <h4>{say`Verdict`}</h4>
      <Sentences list={verdict} />
      <ChartFrame
        name="contest"
        title={say`Watts into the load`}
        draw={(width) =>
          contestChart({
            width,
            height: Math.round(Math.min(340, Math.max(260, width * 0.45))),
            letters,
            winds,
          })
        }
        data={() => contestTable({ letters, winds })}
      />
      <Figures letters={letters} figures={figures} />
      <h4>{say`Conditions`}</h4>
      <Sentences list={conditions} />
    </div>
  )
}

function statusText(): string {
  const state = contest.value
  if (state.kind === 'running') return say`Comparing …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Compared.` : ''
}

export function ContestView() {
  const state = contest.value
  return (
    <section class="card contest" id="contest" aria-labelledby="contest-title">
      <h3 id="contest-title">{say`Compare with another design`}</h3>
      <p class="note">
        {say`Both get the same of what is held equal, by a wider or narrower bundle of the wire that fits; the turns follow, so that current begins at one speed. A is the design as it stands.`}
      </p>
      <ContestChoice />
      <div class="contest-status">
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label={say`Compared so far`} max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </section>
  )
}
