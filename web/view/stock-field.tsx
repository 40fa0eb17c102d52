/** One question about what somebody has at hand: a number with its unit, a choice, or a tick. */
import type { ComponentChildren } from 'preact'
import type { FormField } from '../../src/index.ts'
import { fieldId } from '../station/label.ts'
import { faultSentence, numberManner, numberSaying } from '../station/number-saying.ts'
import { Stepper } from '../station/stepper.tsx'
import { TypedInput } from '../station/typed-input.tsx'
import { measure, measured } from '../store/measure.ts'
import { isRawObject, type Path } from '../store/raw-document.ts'
import { setStock, stockFaultsOf, stockValue } from '../store/stock.ts'
import { told } from '../text/engine-sentence.ts'
import { language, say } from '../text/say.ts'

export const stockFieldId = (path: string): string => fieldId(`stock.${path}`)

function Fault({ path, sentences }: { readonly path: string; readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null
  return (
    <p class="fault" id={`${stockFieldId(path)}-fault`}>
      {sentences.map((sentence) => (
        <span key={sentence}>{sentence}</span>
      ))}
    </p>
  )
}

const faultSentences = (path: string): readonly string[] =>
  stockFaultsOf(path).map(({ text }) => told(measured(text)))

interface NumberProps {
  readonly keys: Path
  readonly label: string
  readonly kind?: 'quantity' | 'count' | 'wire size'
  readonly help?: string
  readonly write?: (value: unknown) => void
  /** A hand on the buttons begins here where nothing stands yet. */
  readonly begin?: number
}

export function StockNumber(props: NumberProps) {
  const { keys, label, kind = 'quantity', help, begin, write = (value) => setStock(keys, value) } = props
  const path = keys.join('.')
  const id = stockFieldId(path)
  const kept = stockValue(keys)
  const bare = isRawObject(kept) ? kept['value'] : kept
  const field: FormField = {
    ...{ path, keys, kind, value: bare, help: '', unit: '', symbol: '', words: [] },
    ...{ minimum: 0, maximum: undefined, default: undefined, optional: true },
  }
  const saying = numberSaying(field)
  const typed = typeof bare === 'string' ? saying.fault(bare) : undefined
  const sentences = typed ? [faultSentence(field, String(bare), typed)] : faultSentences(path)
  const also = saying.also(bare)
  const stepped = (from: unknown, by: number) => (from === undefined ? begin : saying.stepped(from, by))
  const step = (by: number) => {
    const next = stepped(bare, by)
    if (next !== bare) write(next)
  }
  const describedBy = [...(help ? [`${id}-help`] : []), ...(sentences.length > 0 ? [`${id}-fault`] : [])]
  return (
    <div class="stock-field">
      <label for={id}>{label}</label>
      <span class="control">
        <Stepper sign="−" label={say`${label}: less`} step={() => step(-1)} />
        <TypedInput
          id={id}
          value={bare}
          read={saying.read}
          write={write}
          show={saying.show}
          manner={JSON.stringify([measure.value, language.value])}
          number={{ ...numberManner(saying, bare), stepped }}
          describedBy={describedBy.length > 0 ? describedBy.join(' ') : undefined}
          invalid={sentences.length > 0}
        />
        <Stepper sign="+" label={say`${label}: more`} step={() => step(1)} />
        <span class="unit">{saying.unit(bare)}</span>
      </span>
      {also === '' ? null : <p class="also">{also}</p>}
      <Fault path={path} sentences={sentences} />
      {help ? (
        <p class="note" id={`${id}-help`}>
          {help}
        </p>
      ) : null}
    </div>
  )
}

export interface Chosen {
  readonly key: string
  readonly words: string
  readonly note?: string
}

interface ChoiceProps {
  readonly name: string
  readonly legend: string
  readonly choices: readonly Chosen[]
  readonly value: string | undefined
  readonly choose: (key: string) => void
}

/** A few words side by side, each as large as a thumb in a glove. */
export function StockChoice({ name, legend, choices, value, choose }: ChoiceProps) {
  return (
    <fieldset class="stock-choice">
      <legend class="hidden">{legend}</legend>
      {choices.map(({ key, words, note }) => (
        <label key={key} class={value === key ? 'is-chosen' : ''}>
          <input type="radio" name={name} value={key} checked={value === key} onChange={() => choose(key)} />
          <span>
            {words}
            {note === undefined ? null : <small> {note}</small>}
          </span>
        </label>
      ))}
    </fieldset>
  )
}

interface SelectProps {
  readonly keys: Path
  readonly label: string
  readonly words: readonly string[]
  /** What stands for nothing chosen; left out, something must be. */
  readonly none?: string
  readonly help?: string
}

export function StockSelect({ keys, label, words, none, help }: SelectProps) {
  const path = keys.join('.')
  const id = stockFieldId(path)
  const value = String(stockValue(keys) ?? '')
  const sentences = faultSentences(path)
  return (
    <div class="stock-field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={sentences.length > 0 ? `${id}-fault` : help ? `${id}-help` : undefined}
        aria-invalid={sentences.length > 0 ? 'true' : undefined}
        onChange={(event) => setStock(keys, event.currentTarget.value || undefined)}
      >
        {none === undefined ? null : <option value="">{none}</option>}
        {value !== '' && !words.includes(value) ? <option value={value}>{value}</option> : null}
        {words.map((word) => (
          <option key={word} value={word}>
            {told(word)}
          </option>
        ))}
      </select>
      <Fault path={path} sentences={sentences} />
      {help ? (
        <p class="note" id={`${id}-help`}>
          {help}
        </p>
      ) : null}
    </div>
  )
}

export function StockTick({ keys, children }: { readonly keys: Path; readonly children: ComponentChildren }) {
  const id = stockFieldId(keys.join('.'))
  return (
    <label class="stock-tick" for={id}>
      <input
        id={id}
        type="checkbox"
        checked={stockValue(keys) !== false}
        onChange={(event) => setStock(keys, event.currentTarget.checked)}
      />
      <span>{children}</span>
    </label>
  )
}
