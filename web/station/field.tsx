/** One field of the form: label, control, unit, how sure it is, its fault directly under it, and its help when asked. */
import { useComputed } from '@preact/signals'
import { useState } from 'preact/hooks'
import type { FormField } from '../../src/index.ts'
import { change, descriptions, document, setValue } from '../store/design.ts'
import { decimalMark, measure } from '../store/measure.ts'
import { isRawObject } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { language, say } from '../text/say.ts'
import { bareValue, Certainty, greatestGuess, quantityWith } from './certainty.tsx'
import { FaultNote, faultId, faultsOf } from './fault-note.tsx'
import { FieldHelp } from './field-help.tsx'
import { fieldId, labelOf } from './label.ts'
import { listText, numberList } from './number-list.ts'
import {
  faultSentence,
  type NumberSaying,
  numberManner,
  numberSaying,
  quantitySaying,
} from './number-saying.ts'
import { Stepper } from './stepper.tsx'
import { TypedInput } from './typed-input.tsx'
import { isVariantChoice, withVariant } from './variant.ts'

const plainText = (text: string): string | undefined => (text === '' ? undefined : text)

const shownText = (value: unknown): string =>
  value === undefined ? '' : typeof value === 'object' ? JSON.stringify(value) : String(value)

/** What every control needs: its field, its own id, and the ids of the texts that describe it. */
interface ControlProps {
  readonly field: FormField
  readonly id: string
  readonly label: string
  readonly describedBy: string
  readonly invalid: boolean
  /** Changes with the units and the language. */
  readonly manner: string
}

function Choice({ field, id, describedBy, invalid }: ControlProps) {
  const { keys, value, words, optional } = field
  const text = value === undefined ? '' : String(value)
  const choose = (word: string) =>
    isVariantChoice(descriptions.value, keys)
      ? change(withVariant(document.value, descriptions.value, keys, word))
      : setValue(keys, plainText(word))
  const none = field.default === undefined ? say`not given` : say`usual: ${told(String(field.default))}`
  return (
    <select
      id={id}
      value={text}
      aria-describedby={describedBy}
      aria-invalid={invalid ? 'true' : undefined}
      onChange={(event) => choose(event.currentTarget.value)}
    >
      {optional || text === '' ? <option value="">{none}</option> : null}
      {text !== '' && !words.includes(text) ? <option value={text}>{text}</option> : null}
      {words.map((word) => (
        <option key={word} value={word}>
          {told(word)}
        </option>
      ))}
    </select>
  )
}

/** A number with its steppers and its unit; what is said of it beside the value stays. */
function NumberControl({ saying, ...props }: ControlProps & { readonly saying: NumberSaying }) {
  const { field, id, label, describedBy, invalid, manner } = props
  const { keys, value, default: usual } = field
  const bare = bareValue(value)
  const write = (next: unknown) =>
    setValue(keys, isRawObject(value) ? quantityWith(value, 'value', next) : next)
  // where nothing stands yet, a hand on the buttons begins from what is usual
  const stepped = (from: unknown, by: number) => saying.stepped(from ?? usual, by)
  const step = (by: number) => {
    const next = stepped(bare, by)
    if (next !== bare) write(next)
  }
  return (
    <>
      <Stepper sign="−" label={say`${label}: less`} step={() => step(-1)} />
      <TypedInput
        id={id}
        value={bare}
        read={saying.read}
        write={write}
        show={saying.show}
        manner={manner}
        number={{ ...numberManner(saying, bare), stepped }}
        placeholder={usual === undefined || typeof usual === 'object' ? '' : saying.show(usual)}
        describedBy={describedBy}
        invalid={invalid}
      />
      <Stepper sign="+" label={say`${label}: more`} step={() => step(1)} />
      <span class="unit">{saying.unit(bare)}</span>
    </>
  )
}

function Control(props: ControlProps & { readonly saying: NumberSaying | undefined }) {
  const { field, id, describedBy, invalid, manner, saying } = props
  const { keys, value, kind } = field
  if (saying) return <NumberControl {...props} saying={saying} />
  const write = (next: unknown) => setValue(keys, next)
  const placeholder =
    field.default === undefined || typeof field.default === 'object' ? '' : String(field.default)
  const common = { id, value, write, describedBy, invalid, placeholder }
  switch (kind) {
    case 'choice':
      return <Choice {...props} />
    case 'flag':
      return (
        <input
          id={id}
          type="checkbox"
          checked={value === true}
          aria-describedby={describedBy}
          onChange={(event) => setValue(keys, event.currentTarget.checked)}
        />
      )
    case 'list':
      return (
        <TypedInput
          {...common}
          read={(text) => numberList(field, text, decimalMark())}
          show={(list) => listText(field, list, decimalMark())}
          manner={manner}
        />
      )
    default:
      return (
        <TypedInput
          {...common}
          read={plainText}
          show={shownText}
          {...(['note', 'goal'].includes(String(keys.at(-1))) ? { lines: 3 } : {})}
        />
      )
  }
}

/** What the field has against the text that stands in it, beside what the engine says. */
function typedFault(field: FormField, saying: NumberSaying | undefined): string {
  const { path, value, kind } = field
  const [bare, spread] = isRawObject(value) ? [value['value'], value['spread']] : [value, undefined]
  const fault = typeof bare === 'string' ? saying?.fault(bare) : undefined
  if (fault !== undefined) return faultSentence(field, String(bare), fault)
  if (kind !== 'quantity' || typeof spread !== 'string') return ''
  const ofSpread = quantitySaying(field, true).fault(spread)
  return ofSpread === undefined ? '' : faultSentence({ ...field, path: `${path}.spread` }, spread, ofSpread)
}

export function Field({ field }: { readonly field: FormField }) {
  const { path, kind, keys, value } = field
  const id = fieldId(path)
  const label = labelOf(keys)
  const [unsure, setUnsure] = useState(false)
  const [asked, setAsked] = useState(false)
  const saying = ['quantity', 'count', 'wire size'].includes(kind) ? numberSaying(field) : undefined
  const manner = JSON.stringify([measure.value, language.value])
  const typed = typedFault(field, saying)
  // drawn anew when its own faults or its own share of the spread change, not with those of other fields
  const faulty = useComputed(() => faultsOf(path).length > 0).value
  const hasFault = typed !== '' || faulty
  const also = saying?.also(bareValue(value)) ?? ''
  const bears = useComputed(() => greatestGuess(path)).value
  const describedBy = [
    `${id}-help`,
    ...(bears === '' ? [] : [`${id}-bears`]),
    ...(hasFault ? [faultId(path)] : []),
  ].join(' ')
  const open = kind === 'quantity' && (unsure || isRawObject(value))
  const wide =
    kind === 'text' || kind === 'list' || (kind === 'choice' && field.words.some((word) => word.length > 16))
  return (
    <div class={`field field-${kind.replace(' ', '-')}${wide ? ' wide' : ''}${hasFault ? ' faulty' : ''}`}>
      <span class="name">
        <label for={id}>{label}</label>
        <button
          type="button"
          class="ask"
          aria-expanded={asked}
          aria-controls={`${id}-help`}
          aria-label={say`What is this: ${label}`}
          onClick={() => setAsked(!asked)}
        >
          ?
        </button>
      </span>
      <span class="control">
        <Control {...{ field, id, label, describedBy, manner, saying }} invalid={hasFault} />
        {kind === 'quantity' ? (
          <button
            type="button"
            class="spread-button"
            aria-expanded={open}
            aria-label={say`How sure is ${label}`}
            title={say`How sure?`}
            onClick={() => setUnsure(!open)}
            disabled={isRawObject(value)}
          >
            ±
          </button>
        ) : null}
      </span>
      {open ? <Certainty field={field} label={label} manner={manner} /> : null}
      {also === '' ? null : <p class="also">{also}</p>}
      {bears === '' ? null : (
        <p class="bears" id={`${id}-bears`}>
          {bears}
        </p>
      )}
      <FaultNote path={path} typed={typed} />
      <FieldHelp field={field} asked={asked} />
    </div>
  )
}
