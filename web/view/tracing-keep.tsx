/** Keeps the design as it stands as a tracing, under a name proposed from what was changed last. */
import { useState } from 'preact/hooks'
import { changes, document as design, notice } from '../store/design.ts'
import { type Path, valueAt } from '../store/raw-document.ts'
import { keepTracing } from '../store/tracing.ts'
import { say } from '../text/say.ts'
import { fieldName, fieldValue } from './field-words.ts'

/** "Turns 31" after a field was changed; the words of any other step; else the design's own name. */
export function proposedName(): string {
  const { past, present } = changes.value
  const name = String(valueAt(design.value, ['name']) ?? '')
  if (past.length === 0) return name
  const { what } = present
  if (what.includes(' ')) return what
  const path: Path = what.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))
  const value = valueAt(design.value, path)
  const simple = typeof value !== 'object' || value === null || 'value' in value
  return simple ? `${fieldName(path)} ${fieldValue(path, value)}` : fieldName(path)
}

/** For any place of the page: one press keeps it. */
export function KeepTracing() {
  return (
    <button
      type="button"
      class="quiet keep-tracing"
      onClick={() => {
        const name = proposedName()
        void keepTracing(name).then((letter) => {
          notice.value = say`Kept as tracing ${letter}, “${name}”. It lies over the pictures; “Side by side” shows what differs.`
        })
      }}
    >
      {say`Keep a tracing`}
    </button>
  )
}

/** With the name to be chosen first. */
export function KeepTracingForm() {
  const [typed, setTyped] = useState<string | undefined>(undefined)
  return (
    <form
      class="tracing-keep"
      onSubmit={(event) => {
        event.preventDefault()
        void keepTracing(typed ?? proposedName())
        setTyped(undefined)
      }}
    >
      <label>
        {say`Name of the tracing`}
        <input
          type="text"
          maxLength={80}
          value={typed ?? proposedName()}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="chief">{say`Keep a tracing`}</button>
    </form>
  )
}
