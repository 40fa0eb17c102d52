/** The blank page: a first machine from what somebody has at hand, an example, or a file. */
import { useEffect, useRef } from 'preact/hooks'
import {
  findFirst,
  firstCards,
  firstSearch,
  firstStale,
  stopFirst,
  takeFirst,
} from '../store/first-machine.ts'
import { measured } from '../store/measure.ts'
import { stockFaults, untold } from '../store/stock.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { FirstCardView, kindWords } from './first-card.tsx'
import { OpeningChoice } from './opening-choice.tsx'
import { stockFieldId } from './stock-field.tsx'
import { StockForm } from './stock-form.tsx'
import '../style/first.css'

function statusText(): string {
  const state = firstSearch.value
  switch (state.kind) {
    case 'running':
      return say`Trying machines: each is computed as a whole.`
    case 'refused':
      return told(measured(state.reason))
    case 'done':
      return say`Found: ${state.report.trials} whole machines were computed on the way.`
    default:
      return firstCards.value.length > 0 ? say`Stopped. These were the best until then.` : ''
  }
}

function Without() {
  const state = firstSearch.value
  if (state.kind !== 'done' || state.report.without.length === 0) return null
  return (
    <ul class="note">
      {state.report.without.map(({ kind, reason }) => (
        <li key={kind}>
          {kindWords(kind)}: {told(measured(reason))}
        </li>
      ))}
    </ul>
  )
}

function Found() {
  const state = firstSearch.value
  const cards = firstCards.value
  const done = state.kind === 'done'
  if (cards.length === 0)
    return done ? <p>{say`No machine can be built from these things as they are.`}</p> : null
  return (
    <>
      {firstStale.value ? (
        <p class="note">{say`What you have has been changed since; ask again for its machines.`}</p>
      ) : null}
      <ol class="first-cards">
        {cards.map((card, k) => (
          <FirstCardView
            key={card.kind}
            card={card}
            place={done ? k + 1 : undefined}
            reason={done && k === 0 ? state.report.reason : undefined}
            take={() => takeFirst(card)}
          />
        ))}
      </ol>
      {done ? (
        <p class="note">
          {say`A walk through the sizes finds a good machine, not the best there is. The ranges hold nine of ten outcomes that the guesses allow; measuring the wind narrows them most.`}
        </p>
      ) : (
        <p class="note">{say`How far the guesses let these numbers be off is worked out at the end.`}</p>
      )}
    </>
  )
}

export function FirstMachine() {
  const state = firstSearch.value
  const busy = state.kind === 'running'
  const head = useRef<HTMLElement>(null)
  const [fault] = stockFaults.value
  const refused = state.kind === 'refused' ? state : undefined
  useEffect(() => {
    // whoever sent the form finds the first entry to mend under the hand
    if (refused && fault) document.getElementById(stockFieldId(fault.path))?.focus()
  }, [refused])
  const ask = () => {
    findFirst()
    head.current?.scrollIntoView({ block: 'start' })
  }
  return (
    <div class="first-machine">
      <section class="card first-ask" ref={head}>
        <p>
          {untold.value
            ? say`Tell below what lies in your drawer, or press at once: an invented drawer of round magnets, thin wire and a 12 V battery stands in for it.`
            : say`From what you have told below.`}
        </p>
        <p class="first-press">
          <button type="button" class="first-button is-chief" disabled={busy} onClick={ask}>
            {say`Give me a first machine`}
          </button>
          {busy ? (
            <button type="button" class="first-button" onClick={stopFirst}>
              {say`Stop`}
            </button>
          ) : null}
        </p>
        <div class="first-status">
          <output aria-live="polite">{statusText()}</output>
          {busy ? <progress aria-label={say`Tried so far`} max={1} value={state.fraction} /> : null}
        </div>
      </section>
      <Found />
      <Without />
      <StockForm ask={ask} busy={busy} />
      <OpeningChoice />
    </div>
  )
}
