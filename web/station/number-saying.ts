/** How the number of one field is said, typed and stepped in the units and the language of the page. */
import {
  gaugeOfSection,
  isUnfinishedWire,
  spokenWireSize,
  steppedSection,
  steppedWireSize,
  typedSection,
  typedWireSize,
} from '../../src/data/spoken-wire.ts'
import type { FormField } from '../../src/index.ts'
import { steppedNumber } from '../../src/units/number-step.ts'
import { spokenNumber } from '../../src/units/spoken-number.ts'
import { inUnit, unitsOfKind } from '../../src/units/spoken-unit.ts'
import { isUnfinishedQuantity, type TypingFault, typedQuantity } from '../../src/units/typed-quantity.ts'
import { type Unit, unit, units } from '../../src/units/unit.ts'
import { decimalMark, measure, unitSaid } from '../store/measure.ts'
import type { Path } from '../store/raw-document.ts'
import { say, shown } from '../text/say.ts'

/** Why what stands in the field is no number; `no gauge`: a number or word that names no wire. */
export type NumberFault = TypingFault | 'no gauge'

export interface NumberSaying {
  readonly show: (kept: unknown) => string
  /** The number for the document; what is none stays as it was typed, for the engine to tell. */
  readonly read: (text: string) => unknown
  readonly fault: (text: string) => NumberFault | undefined
  /** In the middle of typing: not yet a number, and no mistake. */
  readonly unfinished: (text: string) => boolean
  /** Typed with more than digits and one mark: a minus, a fraction, a gauge. */
  readonly letters: boolean
  /** Behind the text of what is kept. */
  readonly unit: (kept: unknown) => string
  /** The same thing in other words; empty where there are none. */
  readonly also: (kept: unknown) => string
  readonly stepped: (kept: unknown, by: number) => unknown
  /** In the unit that is said, for those who do not see the text. */
  readonly said: (kept: unknown) => number | undefined
}

/** Suffix of the unit in a field's key; "1" for a pure number. */
export function suffixOf(keys: Path): string {
  const name = [...keys].reverse().find((key) => typeof key === 'string')
  const at = name?.indexOf('_') ?? -1
  const suffix = typeof name === 'string' && at > 0 ? name.slice(at + 1) : '1'
  return units.has(suffix) ? suffix : '1'
}

interface Reading {
  readonly kind: string
  readonly value?: unknown
  readonly why?: TypingFault
}

const readAs = (typed: Reading, text: string): unknown =>
  typed.kind === 'number' ? typed.value : typed.kind === 'nothing' ? undefined : text

const faultIn = (typed: Reading): NumberFault | undefined =>
  typed.kind === 'no gauge' ? 'no gauge' : typed.kind === 'refused' ? typed.why : undefined

/** A number of a chosen unit; `difference` for a spread. */
export function quantitySaying(
  { keys, minimum, maximum, kind }: Pick<FormField, 'keys' | 'minimum' | 'maximum' | 'kind'>,
  difference = false,
): NumberSaying {
  const kept = unit(suffixOf(keys))
  const said = unitSaid(kept.suffix)
  const place = { kept, said, mark: decimalMark(), difference }
  const typed = (text: string) => typedQuantity(text, place)
  const bound = (limit: number | undefined) => (limit === undefined ? undefined : inUnit(limit, kept, said))
  const saidNumber = (value: unknown) =>
    typeof value === 'number' ? inUnit(value, kept, said, difference) : undefined
  return {
    show: (value) =>
      typeof value === 'number' ? numberText(value, kept, said, difference) : plainText(value),
    read: (text) => readAs(typed(text), text),
    fault: (text) => faultIn(typed(text)),
    unfinished: (text) => isUnfinishedQuantity(text, place),
    letters: (minimum ?? 0) < 0 || ['in', 'ft'].includes(said.suffix),
    unit: () => shown(said.symbol.trim()),
    also: () => '',
    said: saidNumber,
    stepped: (value, by) => {
      const here = saidNumber(value)
      if (here === undefined) return value
      const next = steppedNumber(here, by, {
        least: difference ? 0 : bound(minimum),
        most: difference ? undefined : bound(maximum),
        whole: kind === 'count',
        ruler: said.suffix === 'in',
      })
      const back = inUnit(next, said, kept, difference)
      // a bound has its own exact number
      if (!difference && minimum !== undefined && back < minimum) return minimum
      return !difference && maximum !== undefined && back > maximum ? maximum : back
    },
  }
}

const plainText = (value: unknown): string =>
  value === undefined ? '' : typeof value === 'object' ? JSON.stringify(value) : String(value)

const numberText = (value: number, kept: Unit, said: Unit, difference: boolean): string =>
  shown(spokenNumber(value, { kept, said, difference }))

function wireSaying(): NumberSaying {
  const as = measure.value.wire
  const spoken = (value: unknown) =>
    typeof value === 'number' || typeof value === 'string' ? spokenWireSize(value, as) : undefined
  const typed = (text: string) => {
    const found = typedWireSize(text, as, decimalMark())
    return found.kind === 'size' ? { kind: 'number', value: found.size } : found
  }
  return {
    show: (value) => shown(spoken(value)?.text ?? plainText(value)),
    read: (text) => readAs(typed(text), text),
    fault: (text) => faultIn(typed(text)),
    unfinished: (text) => isUnfinishedWire(text, decimalMark()),
    letters: false,
    unit: (value) => spoken(value)?.unit ?? as,
    also: (value) => {
      const found = spoken(value)
      if (found === undefined || found.also === '') return ''
      return found.same ? say`That is ${found.also}.` : say`The nearest gauge is ${found.also}.`
    },
    said: (value) => {
      const number = Number.parseFloat(spoken(value)?.text ?? '')
      return Number.isFinite(number) ? number : undefined
    },
    stepped: (value, by) =>
      typeof value === 'number' || typeof value === 'string' ? steppedWireSize(value, as, by) : value,
  }
}

function sectionSaying(field: FormField): NumberSaying {
  const plain = quantitySaying(field)
  const typed = (text: string) => typedSection(text, decimalMark())
  const gaugeOf = (value: unknown) =>
    measure.value.wire !== 'mm' && typeof value === 'number' ? gaugeOfSection(value) : undefined
  return {
    ...plain,
    show: (value) => gaugeOf(value) ?? plain.show(value),
    read: (text) => readAs(typed(text), text),
    fault: (text) => faultIn(typed(text)),
    unfinished: (text) => isUnfinishedWire(text, decimalMark()) || plain.unfinished(text),
    unit: (value) => (gaugeOf(value) === undefined ? plain.unit(value) : ''),
    also: (value) => (gaugeOf(value) === undefined ? '' : say`That is ${`${plainText(value)} mm²`}.`),
    stepped: (value, by) => (typeof value === 'number' ? steppedSection(value, by) : value),
  }
}

/** Of the fields that hold one number. */
export function numberSaying(field: FormField): NumberSaying {
  if (field.kind === 'wire size') return wireSaying()
  return suffixOf(field.keys) === 'mm2' ? sectionSaying(field) : quantitySaying(field)
}

/** What the control of a number needs of how it is said. */
export const numberManner = (
  { stepped, unfinished, letters, said, show, unit: unitOf }: NumberSaying,
  value: unknown,
) => ({
  stepped,
  unfinished,
  letters,
  spoken: { number: said(value), text: `${show(value)} ${unitOf(value)}`.trim() },
})

/** So that the words of a sentence leave typed digits as they were typed. */
const asTyped = (text: string): string => text.slice(0, 60).replaceAll('.', '\u2060.')

/** The house's sentence for what was typed, with the way out in it. */
export function faultSentence(field: FormField, text: string, fault: NumberFault): string {
  const { path } = field
  const received = `"${asTyped(text)}"`
  const digits = text.replace(/[^\d.,]/g, '')
  switch (fault) {
    case 'several marks':
    case 'gap in digits':
      return say`${path} must be a number without marks or gaps between its thousands, such as ${'1234.5'}; received ${received} (wrong-type)`
    case 'mark of thousands':
      return say`${path} must be a number that reads one way only: type ${digits.replace(/[.,]/g, '')} for thousands, or ${digits.replace(',', '.')} for decimals; received ${received} (wrong-type)`
    case 'nothing under the line':
      return say`${path} must be a fraction with a number above zero under its line; received ${received} (wrong-type)`
    case 'unknown unit': {
      const known = unitsOfKind(suffixOf(field.keys))
        .map(({ words }) => words[0])
        .filter((word) => word !== '')
      return known.length === 0
        ? say`${path} must be a number alone, without a word behind it; received ${received} (wrong-type)`
        : say`${path} must be a number alone or with one of these behind it: ${known.join(', ')}; received ${received} (wrong-type)`
    }
    case 'no gauge':
      return say`${path} must be a gauge of the tables (AWG 0 to 44, SWG 4 to 45), or a diameter with its unit such as ${'0.8 mm'}; received ${received} (not-a-choice)`
  }
}
