/** A control that keeps the text as typed, "1." included, until the value changes from elsewhere. */
import { useState } from 'preact/hooks'

/** What a number's control knows beside its text. */
export interface NumberManner {
  readonly stepped: (value: unknown, by: number) => unknown
  /** In the middle of typing: kept in the control until it is a number or the hand leaves. */
  readonly unfinished: (text: string) => boolean
  /** Typed with more than digits and one mark. */
  readonly letters: boolean
  /** As it stands, for those who do not see the text. */
  readonly spoken: { readonly number: number | undefined; readonly text: string }
}

interface TypedInputProps {
  readonly id: string
  readonly value: unknown
  readonly read: (text: string) => unknown
  readonly write: (value: unknown) => void
  readonly show: (value: unknown) => string
  /** The text is shown anew when this changes: another unit, another language. */
  readonly manner?: string
  readonly placeholder?: string
  readonly label?: string | undefined
  readonly describedBy?: string | undefined
  readonly invalid?: boolean
  readonly lines?: number
  readonly number?: NumberManner
}

const steps: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b)

export function TypedInput(props: TypedInputProps) {
  const { id, value, read, write, show, manner = '', number } = props
  const [typed, setTyped] = useState<{ text: string; manner: string; beside?: { value: unknown } }>({
    text: show(value),
    manner,
  })
  // an unfinished text stands beside the value that it has not replaced yet
  const asTyped = typed.manner === manner && same(typed.beside ? typed.beside.value : read(typed.text), value)
  const shown = asTyped ? typed.text : show(value)
  const onInput = ({ currentTarget }: { readonly currentTarget: { readonly value: string } }) => {
    const text = currentTarget.value
    if (number?.unfinished(text)) {
      setTyped({ text, manner, beside: { value } })
      return
    }
    setTyped({ text, manner })
    write(read(text))
  }
  const common = {
    id,
    value: shown,
    placeholder: props.placeholder,
    autocomplete: 'off',
    'aria-label': props.label,
    'aria-describedby': props.describedBy,
    'aria-invalid': props.invalid ? ('true' as const) : undefined,
    onInput,
  }
  if (props.lines !== undefined) return <textarea {...common} rows={props.lines} />
  if (number === undefined) return <input {...common} type="text" />
  return (
    <input
      {...common}
      type="text"
      inputMode={number.letters ? 'text' : 'decimal'}
      spellcheck={false}
      role="spinbutton"
      aria-valuenow={number.spoken.number}
      aria-valuetext={number.spoken.text}
      // a unit that was typed, or a half number, gives way to what is kept
      onBlur={() => {
        if (asTyped && typed.beside) write(read(typed.text))
        setTyped({ text: asTyped && typed.beside ? typed.text : show(value), manner })
      }}
      onKeyDown={(event) => {
        const by = steps[event.key]
        if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return
        event.preventDefault()
        const next = number.stepped(value, event.shiftKey && Math.abs(by) === 1 ? 10 * by : by)
        if (same(next, value)) return
        setTyped({ text: show(next), manner })
        write(next)
      }}
    />
  )
}
