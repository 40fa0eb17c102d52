/** One field of the form: label, control, unit, help, limits, and its fault directly under it. */
import { useState } from 'preact/hooks'
import type { FormField } from '../../src/index.ts'
import { waysOfKnowing } from '../../src/units/quantity.ts'
import { change, descriptions, document, setValue } from '../store/design.ts'
import { isRawObject, type Path, typedNumber } from '../store/raw-document.ts'
import { FaultNote, faultId, faultsOf } from './fault-note.tsx'
import { fieldId, labelOf } from './label.ts'
import { isVariantChoice, withVariant } from './variant.ts'

const shownText = (value: unknown): string =>
  value === undefined ? '' : typeof value === 'object' ? JSON.stringify(value) : String(value)

interface TypedInput {
  readonly id: string
  readonly value: unknown
  readonly read: (text: string) => unknown
  readonly write: (value: unknown) => void
  readonly show?: (value: unknown) => string
  readonly placeholder?: string
  readonly numeric?: boolean
  readonly label?: string
  readonly describedBy?: string
  readonly invalid?: boolean
  readonly lines?: number
}

/** Keeps the text as typed, "1." included, until the value changes from elsewhere. */
function TypedInput(props: TypedInput) {
  const {
    id,
    value,
    read,
    write,
    show = shownText,
    placeholder,
    numeric,
    label,
    describedBy,
    invalid,
    lines,
  } = props
  const [text, setText] = useState(show(value))
  const shown = JSON.stringify(read(text)) === JSON.stringify(value) ? text : show(value)
  const common = {
    id,
    value: shown,
    placeholder,
    autocomplete: 'off',
    spellcheck: lines !== undefined,
    'aria-label': label,
    'aria-describedby': describedBy,
    'aria-invalid': invalid ? ('true' as const) : undefined,
  }
  const typed = (next: string) => {
    setText(next)
    write(read(next))
  }
  return lines === undefined ? (
    <input
      {...common}
      type="text"
      inputMode={numeric ? 'decimal' : 'text'}
      onInput={(event) => typed(event.currentTarget.value)}
    />
  ) : (
    <textarea {...common} rows={lines} onInput={(event) => typed(event.currentTarget.value)} />
  )
}

const plainText = (text: string): string | undefined => (text === '' ? undefined : text)

const numberList = (text: string): unknown =>
  text.trim() === ''
    ? undefined
    : text
        .split(/[\s,;]+/)
        .filter((part) => part !== '')
        .map(typedNumber)

const listText = (value: unknown): string => (Array.isArray(value) ? value.join(', ') : shownText(value))

const limit = (value: number) =>
  (Math.abs(value) >= 1e5 ? value.toExponential(0) : String(value)).replace('-', '−')

function limitsText({ minimum, maximum, unit, kind }: FormField): string {
  if (kind === 'choice' || (minimum === undefined && maximum === undefined)) return ''
  const tail = unit === '' ? '' : ` ${unit}`
  if (minimum !== undefined && maximum !== undefined) return `${limit(minimum)} to ${limit(maximum)}${tail}`
  return minimum !== undefined ? `at least ${limit(minimum)}${tail}` : `at most ${limit(maximum!)}${tail}`
}

const bareValue = (value: unknown) => (isRawObject(value) ? value['value'] : value)

/** The number alone where nothing more is said of it. */
function quantityWith(value: unknown, key: 'value' | 'spread' | 'known', part: unknown): unknown {
  const parts: Record<string, unknown> = isRawObject(value) ? { ...value } : { value }
  if (part === undefined) delete parts[key]
  else parts[key] = part
  if (parts['spread'] === undefined && parts['known'] === undefined) return parts['value']
  return parts
}

function Certainty({ field, label }: { readonly field: FormField; readonly label: string }) {
  const { keys, value, path, unit } = field
  const parts = isRawObject(value) ? value : {}
  const id = fieldId(path)
  const put = (key: 'spread' | 'known', part: unknown) => setValue(keys, quantityWith(value, key, part))
  return (
    <div class="certainty" id={`${id}-certainty`}>
      <label for={`${id}-spread`}>±</label>
      <TypedInput
        id={`${id}-spread`}
        value={parts['spread']}
        read={typedNumber}
        write={(part) => put('spread', part)}
        numeric
        label={`${label}: give or take`}
      />
      <span class="unit">{unit}</span>
      <select
        aria-label={`${label}: how known`}
        value={String(parts['known'] ?? '')}
        onChange={(event) => put('known', plainText(event.currentTarget.value))}
      >
        <option value="">how known?</option>
        {waysOfKnowing.map((way) => (
          <option key={way} value={way}>
            {way}
          </option>
        ))}
      </select>
    </div>
  )
}

/** What every control needs: its field, its own id, and the ids of the texts that describe it. */
interface ControlProps {
  readonly field: FormField
  readonly id: string
  readonly describedBy: string
}

function Choice({ field, id, describedBy }: ControlProps) {
  const { keys, value, words, optional } = field
  const text = value === undefined ? '' : String(value)
  const choose = (word: string) =>
    isVariantChoice(descriptions.value, keys)
      ? change(withVariant(document.value, descriptions.value, keys, word))
      : setValue(keys, plainText(word))
  const none = field.default === undefined ? 'not given' : `usual: ${String(field.default)}`
  return (
    <select
      id={id}
      value={text}
      aria-describedby={describedBy}
      aria-invalid={faultsOf(field.path).length > 0 ? 'true' : undefined}
      onChange={(event) => choose(event.currentTarget.value)}
    >
      {optional || text === '' ? <option value="">{none}</option> : null}
      {text !== '' && !words.includes(text) ? <option value={text}>{text}</option> : null}
      {words.map((word) => (
        <option key={word} value={word}>
          {word}
        </option>
      ))}
    </select>
  )
}

function Control({ field, id, describedBy }: ControlProps) {
  const { keys, value, kind } = field
  const write = (keysOf: Path) => (next: unknown) => setValue(keysOf, next)
  const invalid = faultsOf(field.path).length > 0
  const placeholder =
    field.default === undefined || typeof field.default === 'object' ? '' : String(field.default)
  const common = { id, describedBy, invalid, placeholder }
  switch (kind) {
    case 'choice':
      return <Choice field={field} id={id} describedBy={describedBy} />
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
    case 'text':
      return (
        <TypedInput
          {...common}
          value={value}
          read={plainText}
          write={write(keys)}
          {...(['note', 'goal'].includes(String(keys.at(-1))) ? { lines: 3 } : {})}
        />
      )
    case 'list':
      return <TypedInput {...common} value={value} read={numberList} write={write(keys)} show={listText} />
    case 'quantity':
      return (
        <TypedInput
          {...common}
          value={bareValue(value)}
          read={typedNumber}
          write={(next) => setValue(keys, quantityWith(value, 'value', next))}
          numeric
        />
      )
    default:
      return (
        <TypedInput
          {...common}
          value={value}
          read={typedNumber}
          write={write(keys)}
          numeric={kind === 'count'}
        />
      )
  }
}

export function Field({ field }: { readonly field: FormField }) {
  const { path, kind, unit, help, keys, value } = field
  const id = fieldId(path)
  const label = labelOf(keys)
  const [asked, setAsked] = useState(false)
  const open = kind === 'quantity' && (asked || isRawObject(value))
  const limits = limitsText(field)
  const numeric = ['quantity', 'count', 'wire size'].includes(kind)
  const hasFault = faultsOf(path).length > 0
  const describedBy = hasFault ? `${id}-help ${faultId(path)}` : `${id}-help`
  const wide =
    kind === 'text' || kind === 'list' || (kind === 'choice' && field.words.some((word) => word.length > 16))
  return (
    <div class={`field field-${kind.replace(' ', '-')}${wide ? ' wide' : ''}${hasFault ? ' faulty' : ''}`}>
      <label for={id}>{label}</label>
      <span class="control">
        <Control field={field} id={id} describedBy={describedBy} />
        {numeric ? <span class="unit">{unit}</span> : null}
        {kind === 'quantity' ? (
          <button
            type="button"
            class="spread-button"
            aria-expanded={open}
            aria-label={`How sure is ${label.toLowerCase()}`}
            title="How sure?"
            onClick={() => setAsked(!open)}
            disabled={isRawObject(value)}
          >
            ±
          </button>
        ) : numeric ? (
          <span class="no-spread" />
        ) : null}
      </span>
      {open ? <Certainty field={field} label={label} /> : null}
      <FaultNote path={path} />
      <p class="help" id={`${id}-help`}>
        {help} {limits === '' ? null : <span class="limits">({limits})</span>}
      </p>
    </div>
  )
}
