/** The electrical side's safety: what wires bear, what labels must say, in which order it is switched, who to ask. */
import type { ResultSpread } from '../../src/index.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import type { SafetyReport } from '../../src/output/safety-report.ts'
import type { Snapshot } from '../snapshot.ts'
import { spreads } from '../store/design.ts'
import { useSight } from '../store/sight.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'
import { fieldName } from './field-words.ts'
import { dominantGuess } from './guess-words.ts'
import { showField } from './show-field.ts'

type Label = SafetyReport['labels'][number]

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const signs: Readonly<Record<Label['verdict'], string>> = {
  fits: '✓',
  'does not fit': '✗',
  'not said': '?',
}
const verdictWords: Readonly<Record<Label['verdict'], () => string>> = {
  fits: () => say`fits`,
  'does not fit': () => say`does not fit`,
  'not said': () => say`not said`,
}

function LabelLine({ part, need, said, verdict, path }: Label) {
  const name = capital(told(part))
  return (
    <li class={`label-line is-${verdict.replaceAll(' ', '-')}`}>
      <p class="label-head">
        <strong>{name}</strong>{' '}
        <span class="verdict">
          <span aria-hidden="true">{signs[verdict]}</span> {verdictWords[verdict]()}
        </span>
      </p>
      <dl>
        <div>
          <dt>{say`must be`}</dt>
          <dd>{engineWords(need)}</dd>
        </div>
        <div>
          <dt>{say`said`}</dt>
          <dd>{engineWords(said)}</dd>
        </div>
      </dl>
      {path === undefined || verdict === 'fits' ? null : (
        <button
          type="button"
          class="quiet"
          aria-label={say`go to ${fieldName(path.split('.'))}, for: ${name}`}
          onClick={() => showField(path)}
        >
          {say`go to ${fieldName(path.split('.'))}`}
        </button>
      )}
    </li>
  )
}

export function Labels({ labels, air }: Pick<SafetyReport, 'labels' | 'air'>) {
  return (
    <section class="card labels">
      <h3>{say`What must stand on the labels`}</h3>
      <ul>
        {labels.map((label) => (
          <LabelLine key={label.part} {...label} />
        ))}
      </ul>
      {air === undefined ? null : <p>{capital(engineWords(air))}</p>}
    </section>
  )
}

/** As numbered steps, so that they can be printed and hung beside the switch. */
export function Switching({ steps }: { readonly steps: SafetyReport['switching'] }) {
  return (
    <section class="card switching">
      <h3>{say`Order of switching`}</h3>
      <div class="switching-parts">
        {steps
          .filter((part) => part.steps.length > 0)
          .map((part) => (
            <div key={part.name}>
              <h4>{capital(told(part.name))}</h4>
              <ol>
                {part.steps.map((step) => (
                  <li key={step}>{told(step)}</li>
                ))}
              </ol>
            </div>
          ))}
      </div>
    </section>
  )
}

/** The volts without load are what every label rests on; the guesses let them be off. */
function lostSentence({ runaway }: Snapshot, spread: ResultSpread | undefined): string {
  const volts = told(intervalText(runaway.directVoltage, 'V', spread))
  return say`With the load lost ${volts} stand behind the bridge. ${dominantGuess(spread)}`.trim()
}

interface Shown {
  readonly result: Snapshot
}

export function SafetyView({ result }: Shown) {
  const report = useSight('safety')
  if (report === undefined) return <p class="note waiting">{say`It is being worked out.`}</p>
  const { states, duties, statesNote, limit, labels, air, switching, whoToAsk } = report
  return (
    <>
      <section class="card duties">
        <h3>{say`Volts and amps of each conductor`}</h3>
        <p>{lostSentence(result, spreads.value?.runawayVoltage)}</p>
        {limit === undefined ? null : <p class="limit-line">{engineWords(limit)}</p>}
        <DataTable
          caption={say`The greatest of each`}
          rows={duties}
          columns={[
            { head: say`conductor`, cell: ({ conductor }) => capital(told(conductor)) },
            ...states.map((state, k) => ({
              head: told(state),
              cell: ({ cells }: (typeof duties)[number]) => engineWords(cells[k] ?? '–'),
            })),
          ]}
        />
        <p class="note">{engineWords(statesNote)}</p>
      </section>
      <Labels labels={labels} air={air} />
      <Switching steps={switching} />
      <section class="card who-to-ask">
        <h3>{say`Who to ask`}</h3>
        <ul>
          {whoToAsk.map((text) => (
            <li key={text}>{told(text)}</li>
          ))}
        </ul>
        <p class="note">
          {say`Computed from the document; it replaces no permit, no code and no licensed person.`}
        </p>
      </section>
    </>
  )
}

/** Labels of the battery's side alone, by their names in the engine. */
const batterySide: ReadonlySet<string> = new Set(['fuse', 'battery’s leads', 'dump load', 'capacitor'])

/** The store's own part of it: its fuse and leads, and the order of switching. */
export function StoreSafety() {
  const report = useSight('safety')
  if (report === undefined) return null
  const labels = report.labels.filter(({ part }) => batterySide.has(part))
  return (
    <>
      {labels.length === 0 ? null : <Labels labels={labels} air={report.air} />}
      <Switching steps={report.switching} />
    </>
  )
}
