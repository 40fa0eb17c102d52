/** What the rules have to say of the design, the gravest first, with what helps and what answers it. */
import { isOpen } from '../../src/analysis/concern/concern.ts'
import { signOffText } from '../../src/output/sign-off.ts'
import type { ShownConcern } from '../shown-concern.ts'
import { words } from '../station/label.ts'
import { form } from '../store/design.ts'
import { ConcernAnswerView } from './concern-answer.tsx'
import { ConcernRemedyView } from './concern-remedy.tsx'
import { showField } from './show-field.ts'

const order: readonly ShownConcern['severity'][] = ['blocking', 'warning', 'note']

const placeWords = (path: string): string => path.split('.').map(words).join(', ').toLowerCase()

export function ConcernList({ concerns }: { readonly concerns: readonly ShownConcern[] }) {
  const sorted = [...concerns].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
  const has = (path: string) => form.value.some((field) => field.path.startsWith(path))
  return (
    <section class="card concerns" id="concerns" aria-labelledby="concerns-head">
      <h3 id="concerns-head">
        Concerns <small>{sorted.length}</small>
      </h3>
      <p class="note sign-off">
        {sorted.length === 0 ? 'No rule objects to this design.' : signOffText(sorted)}
      </p>
      {sorted.map((concern, k) => (
        <details
          key={`${concern.code} ${concern.path}`}
          class={`concern is-${concern.severity}${isOpen(concern) ? '' : ' is-answered'}`}
          open={k === 0 && concern.severity === 'blocking'}
        >
          <summary>
            <span class="severity">
              {concern.severity}
              {isOpen(concern) ? '' : ', answered'}
            </span>{' '}
            {concern.what}
          </summary>
          {concern.answerTexts.map((text) => (
            <p key={text} class="answer-text">
              {text}
            </p>
          ))}
          <p>{concern.why}</p>
          <p class="figures-line">{concern.figures}</p>
          {concern.measure === undefined ? null : <p class="note">The rule looks at {concern.measure}.</p>}
          {concern.remedies.length === 0 ? null : (
            <ul>
              {concern.remedies.map((remedy) => (
                <li key={remedy}>{remedy}</li>
              ))}
            </ul>
          )}
          {has(concern.path) ? (
            <button type="button" class="quiet" onClick={() => showField(concern.path)}>
              go to {placeWords(concern.path)}
            </button>
          ) : null}
          {concern.triable ? <ConcernRemedyView code={concern.code} what={concern.what} /> : null}
          <ConcernAnswerView concern={concern} />
        </details>
      ))}
    </section>
  )
}
