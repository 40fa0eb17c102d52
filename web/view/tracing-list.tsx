/** The list of tracings: each with its letter and line, and what can be done with it. */
import { useState } from 'preact/hooks'
import { type TracingLook, tracingLooks } from '../../src/output/chart/tracing.ts'
import { openId } from '../store/design.ts'
import {
  bringBack,
  laidOver,
  layOver,
  liftOff,
  renameTracing,
  type Tracing,
  takeAsDesign,
  takeAway,
  takenAway,
  tracings,
} from '../store/tracing.ts'
import { chooseTracing, chosenTracing } from '../store/tracing-difference.ts'
import { mostLaidOver } from '../store/tracing-look.ts'
import { say } from '../text/say.ts'

function LineSample({ look }: { readonly look: TracingLook | undefined }) {
  return (
    <svg class="tracing-line" viewBox="0 0 44 10" width="44" height="10" aria-hidden="true">
      {look === undefined ? null : (
        <path class={`line ${look.className}`} d="M1 5h42" stroke-dasharray={look.dash} />
      )}
    </svg>
  )
}

function Name({ tracing }: { readonly tracing: Tracing }) {
  const [typed, setTyped] = useState<string | undefined>(undefined)
  if (typed === undefined)
    return (
      <>
        <span class="tracing-name">{tracing.name}</span>
        <button
          type="button"
          class="quiet"
          aria-label={say`Rename tracing ${tracing.letter}`}
          onClick={() => setTyped(tracing.name)}
        >
          {say`rename`}
        </button>
      </>
    )
  return (
    <form
      class="tracing-rename"
      onSubmit={(event) => {
        event.preventDefault()
        renameTracing(tracing.id, typed)
        setTyped(undefined)
      }}
    >
      <input
        type="text"
        maxLength={80}
        aria-label={say`New name of tracing ${tracing.letter}`}
        value={typed}
        onInput={(event) => setTyped(event.currentTarget.value)}
      />
      <button type="submit">{say`Rename`}</button>
      <button type="button" class="quiet" onClick={() => setTyped(undefined)}>
        {say`leave it`}
      </button>
    </form>
  )
}

function One({ tracing, full }: { readonly tracing: Tracing; readonly full: boolean }) {
  const { id, letter, look, document, design } = tracing
  const chosen = chosenTracing.value?.id === id
  const answer = laidOver.value.find((each) => each.tracing.id === id)?.answer
  return (
    <li class={chosen ? 'is-chosen' : ''}>
      <p class="tracing-head">
        <b class="tracing-letter">{letter}</b>
        <LineSample look={look === undefined ? undefined : tracingLooks[look]} />
        <Name tracing={tracing} />
        {design === openId.value ? null : (
          <small class="note">{say`of the design “${String(document['name'] ?? '')}”`}</small>
        )}
      </p>
      {answer?.kind === 'refused' ? (
        <p class="fault">{say`Its numbers cannot be computed: ${answer.reason}`}</p>
      ) : null}
      <p class="tracing-acts">
        <button
          type="button"
          aria-pressed={look !== undefined}
          aria-label={say`Lay tracing ${letter} over`}
          disabled={look === undefined && full}
          onClick={() => (look === undefined ? layOver(id) : liftOff(id))}
        >
          {look === undefined ? say`Lay it over` : say`Lift it off`}
        </button>
        <button
          type="button"
          aria-pressed={chosen}
          aria-label={say`Compare with tracing ${letter}`}
          onClick={() => chooseTracing(id)}
        >
          {say`Compare`}
        </button>
        <button
          type="button"
          aria-label={say`Take tracing ${letter} back as the design`}
          onClick={() => takeAsDesign(tracing)}
        >
          {say`Take it back`}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={say`Take tracing ${letter} away`}
          onClick={() => takeAway(id)}
        >
          {say`take away`}
        </button>
      </p>
    </li>
  )
}

export function TracingList() {
  const gone = takenAway.value
  const over = tracings.value.filter(({ look }) => look !== undefined).length
  const full = over >= mostLaidOver
  return (
    <>
      {tracings.value.length === 0 ? null : (
        <ul class="tracing-list">
          {tracings.value.map((tracing) => (
            <One key={tracing.id} tracing={tracing} full={full} />
          ))}
        </ul>
      )}
      {full ? (
        <p class="note">{say`${mostLaidOver} lie over the design; lift one off to lay another over.`}</p>
      ) : null}
      {gone === undefined ? null : (
        <p class="note">
          {say`Tracing ${gone.letter}, “${gone.name}”, was taken away.`}{' '}
          <button type="button" onClick={bringBack}>
            {say`Bring it back`}
          </button>
        </p>
      )}
    </>
  )
}
