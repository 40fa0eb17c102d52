/** “I measured it”: a note set against a concern, with the file and the day of the reading. */
import { useSignal } from '@preact/signals'
import type { ShownConcern } from '../shown-concern.ts'
import { answerConcern, takeAnswerBack } from '../store/answer.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'

const today = (): string => new Date().toISOString().slice(0, 10)

export function ConcernAnswerView({ concern }: { readonly concern: ShownConcern }) {
  const { code, answeredBy, answer, severity } = concern
  const note = useSignal(answer?.note ?? '')
  const file = useSignal(answer?.file ?? '')
  const date = useSignal(answer?.date ?? today())
  if (answeredBy === undefined) return null
  const id = (name: string) => `answer-${code}-${name}`
  return (
    <details class="answer">
      <summary>{say`I measured it`}</summary>
      <p>{say`What answers it: ${told(answeredBy)}`}</p>
      {severity === 'blocking' ? (
        <p class="note">
          {say`It blocks this design’s class. An answer does not make it safe: the sign-off will say that it stands on your note, and local codes and licensed people stay as they are.`}
        </p>
      ) : null}
      <form
        onSubmit={(event) => {
          event.preventDefault()
          if (note.value.trim() === '') return
          answerConcern(concern, { note: note.value, file: file.value, date: date.value })
        }}
      >
        <label for={id('note')}>{say`What was read, with what, by whom`}</label>
        <textarea
          id={id('note')}
          rows={3}
          required
          maxLength={1000}
          value={note.value}
          onInput={({ currentTarget }) => {
            note.value = currentTarget.value
          }}
        />
        <label for={id('file')}>{say`Name of the file with the readings, if there is one`}</label>
        <input
          id={id('file')}
          type="text"
          maxLength={200}
          value={file.value}
          onInput={({ currentTarget }) => {
            file.value = currentTarget.value
          }}
        />
        <label for={id('date')}>{say`Day of the reading`}</label>
        <input
          id={id('date')}
          type="date"
          value={date.value}
          onInput={({ currentTarget }) => {
            date.value = currentTarget.value
          }}
        />
        <div class="fault-choice">
          <button type="submit">{say`Answer with this note`}</button>
          {answer === undefined ? null : (
            <button type="button" onClick={() => takeAnswerBack(code)}>
              {say`Take the answer out`}
            </button>
          )}
        </div>
      </form>
    </details>
  )
}
