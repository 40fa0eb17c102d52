/** Whether the numbers shown are those of the design as it stands, and what is wrong with it if not. */
import { behind, breakdown, faults, notice, progress } from '../store/design.ts'
import { measured } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { showField } from './show-field.ts'

export function Status() {
  const wrong = faults.value.length
  // what is back within a blink is not announced
  const share = behind.value ? progress.value : undefined
  const text =
    breakdown.value !== ''
      ? breakdown.value
      : wrong > 0
        ? wrong === 1
          ? say`One entry to mend.`
          : say`${wrong} entries to mend.`
        : share === undefined
          ? say`Computed.`
          : say`Computing …`
  return (
    <div
      class={`status${wrong > 0 || breakdown.value !== '' ? ' wrong' : share === undefined ? ' done' : ' busy'}`}
    >
      <output aria-live="polite" id="status">
        {text}
      </output>
      {share === undefined ? null : <progress aria-label={say`Computed so far`} max={1} value={share} />}
    </div>
  )
}

export function Notice() {
  return notice.value === '' ? null : (
    <p class="notice" role="status">
      {notice.value}
    </p>
  )
}

export function FaultSummary() {
  if (faults.value.length === 0) return null
  return (
    <section class="fault-summary" aria-label={say`Entries to mend`}>
      <ul>
        {faults.value.map(({ text, path }) => (
          <li key={text}>
            <span>{told(measured(text))}</span>{' '}
            <button
              type="button"
              class="quiet"
              onClick={() => showField(path)}
              aria-label={say`Go to ${path}`}
            >
              {say`go there`}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
