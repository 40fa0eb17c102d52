/** What the rules have to say, at the station where it arises: the gravest first, with what helps and what answers it. */
import { isOpen } from '../../src/analysis/concern/concern.ts'
import { signOffText } from '../../src/output/sign-off.ts'
import type { ShownConcern } from '../shown-concern.ts'
import { words } from '../station/label.ts'
import { concerns, form } from '../store/design.ts'
import { measured } from '../store/measure.ts'
import { byGravity, concernsIn, roomOfPath } from '../store/place-concern.ts'
import { enter, type RoomKey, room, roomAddress } from '../store/room.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { ConcernAnswerView } from './concern-answer.tsx'
import { LaterView } from './later-view.tsx'
import { showField } from './show-field.ts'

const severityNames: Readonly<Record<ShownConcern['severity'], () => string>> = {
  blocking: () => say`blocking`,
  warning: () => say`warning`,
  note: () => say`note`,
}

const placeWords = (path: string): string => path.split('.').map(words).join(', ')

/** What helps is worked out when somebody asks, and so are its words. */
const loadRemedies = async () => (await import('./concern-remedy.tsx')).ConcernRemedyView

function Concern({ concern }: { readonly concern: ShownConcern }) {
  const open = isOpen(concern)
  const here = form.value.some((field) => field.path.startsWith(concern.path))
  return (
    <details class={`concern is-${concern.severity}${open ? '' : ' is-answered'}`}>
      <summary>
        <span class="severity">
          {open ? severityNames[concern.severity]() : say`${severityNames[concern.severity]()}, answered`}
        </span>{' '}
        {told(measured(concern.what))}
      </summary>
      {concern.answerTexts.map((text) => (
        <p key={text} class="answer-text">
          {told(text)}
        </p>
      ))}
      <p>{told(measured(concern.why))}</p>
      <p class="figures-line">{told(measured(concern.figures))}</p>
      {concern.measure === undefined ? null : (
        <p class="note">{say`The rule looks at ${told(measured(concern.measure))}.`}</p>
      )}
      {concern.remedies.length === 0 ? null : (
        <ul>
          {concern.remedies.map((remedy) => (
            <li key={remedy}>{told(remedy)}</li>
          ))}
        </ul>
      )}
      {here ? (
        <button type="button" class="quiet" onClick={() => showField(concern.path)}>
          {say`go to ${placeWords(concern.path)}`}
        </button>
      ) : null}
      {concern.triable ? (
        <LaterView load={loadRemedies} given={{ code: concern.code, what: concern.what }} />
      ) : null}
      <ConcernAnswerView concern={concern} />
    </details>
  )
}

const keyOf = ({ code, path }: ShownConcern): string => `${code} ${path}`

/** Those of one room. */
export function RoomConcerns({ of }: { readonly of: RoomKey }) {
  const here = concernsIn(concerns.value ?? [], of)
  if (here.length === 0) return null
  return (
    <section class="concerns" aria-label={say`Concerns at this station`}>
      {here.map((concern) => (
        <Concern key={keyOf(concern)} concern={concern} />
      ))}
    </section>
  )
}

/** All of them, with the way to the room of each, and what the sum of them says. */
export function ConcernList() {
  if (concerns.value === undefined) return null
  const sorted = byGravity(concerns.value)
  return (
    <section class="card concerns-all" id="concerns" aria-labelledby="concerns-head">
      <h3 id="concerns-head">
        {say`Concerns`} <small>{sorted.length}</small>
      </h3>
      <p class="note sign-off">
        {sorted.length === 0 ? say`No rule objects to this design.` : told(signOffText(sorted))}
      </p>
      <ul class="concern-lines">
        {sorted.map((concern) => {
          const place = roomOfPath(concern.path)
          return (
            <li
              key={keyOf(concern)}
              class={`concern-line is-${concern.severity}${isOpen(concern) ? '' : ' is-answered'}`}
            >
              {place === room.value ? (
                <Concern concern={concern} />
              ) : (
                <a
                  href={roomAddress(place)}
                  onClick={(event) => {
                    event.preventDefault()
                    enter(place)
                  }}
                >
                  <span class="severity">{severityNames[concern.severity]()}</span>{' '}
                  {told(measured(concern.what))}
                </a>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
