/** What the rules have to say of the design, the gravest first. */
import { remedyWords } from '../../src/analysis/concern/concern.ts'
import type { Concern } from '../../src/index.ts'
import { words } from '../station/label.ts'
import { form } from '../store/design.ts'
import { showField } from './show-field.ts'

const order: readonly Concern['severity'][] = ['blocking', 'warning', 'note']

const placeWords = (path: string): string => path.split('.').map(words).join(', ').toLowerCase()

export function ConcernList({ concerns }: { readonly concerns: readonly Concern[] }) {
  const sorted = [...concerns].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
  const has = (path: string) => form.value.some((field) => field.path.startsWith(path))
  return (
    <section class="card concerns" id="concerns" aria-labelledby="concerns-head">
      <h3 id="concerns-head">
        Concerns <small>{sorted.length}</small>
      </h3>
      {sorted.length === 0 ? <p class="note">No rule objects to this design.</p> : null}
      {sorted.map((concern, k) => (
        <details
          key={`${concern.code} ${concern.path}`}
          class={`concern is-${concern.severity}`}
          open={k === 0 && concern.severity === 'blocking'}
        >
          <summary>
            <span class="severity">{concern.severity}</span> {concern.what}
          </summary>
          <p>{concern.why}</p>
          <p class="figures-line">{concern.figures}</p>
          {concern.remedies.length === 0 ? null : (
            <ul>
              {concern.remedies.map((remedy) => (
                <li key={remedyWords(remedy)}>{remedyWords(remedy)}</li>
              ))}
            </ul>
          )}
          {has(concern.path) ? (
            <button type="button" class="quiet" onClick={() => showField(concern.path)}>
              go to {placeWords(concern.path)}
            </button>
          ) : null}
        </details>
      ))}
    </section>
  )
}
