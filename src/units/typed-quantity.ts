/** What a person typed where a quantity is asked for: decimals, fractions of an inch, feet and inches, a unit behind. */
import { inUnit, unitInWords, unitsOfKind } from './spoken-unit.ts'
import type { Unit } from './unit.ts'

/** Why a text is no number, where a remedy can be named. */
export type TypingFault =
  /** Several points or commas: `1.234,5`. */
  | 'several marks'
  /** One mark that elsewhere parts the thousands: `1,200` where the point is before the decimals. */
  | 'mark of thousands'
  /** Digits in groups: `1 200`. */
  | 'gap in digits'
  /** `1/0` */
  | 'nothing under the line'
  /** A word behind the number that is no unit of this kind. */
  | 'unknown unit'

export type Typed =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'number'; readonly value: number; readonly withUnit: boolean }
  /** No number, and nothing better to say of it. */
  | { readonly kind: 'words' }
  | { readonly kind: 'refused'; readonly why: TypingFault }

export interface TypingPlace {
  /** Unit of the document. */
  readonly kept: Unit
  /** Unit of a number that is typed alone. */
  readonly said: Unit
  /** What stands before the decimals in the language of the page; the other is taken too where it cannot mislead. */
  readonly mark: '.' | ','
  /** A spread: degrees lose their zero. */
  readonly difference?: boolean
}

const refused = (why: TypingFault): Typed => ({ kind: 'refused', why })

/** Signs of printers and phones as the plain ones that are meant. */
const plain = (text: string): string =>
  text
    .replace(/[¼½¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKD')}`)
    .replace(/[−–]/g, '-')
    .replaceAll('⁄', '/')
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"')
    .replace(/[\u00a0\u2007\u2009\u202f\s]+/g, ' ')
    .trim()

const fractionPattern = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)(?![\d.,])(.*)$/
const decimalPattern = /^(\d[\d.,]*|[.,]\d[\d.,]*)(e[+-]?\d+)?(?![\d.,])(.*)$/i

interface Read {
  readonly value: number
  /** What stands behind the number. */
  readonly rest: string
}

function readDecimal(digits: string, power: string, mark: '.' | ','): number | TypingFault {
  const marks = digits.replace(/\d/g, '')
  if (marks.length > 1) return 'several marks'
  // 1,200 is twelve hundred to one reader and one and a fifth to the other
  if (marks !== '' && marks !== mark && /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits)) return 'mark of thousands'
  return Number(digits.replace(',', '.') + power)
}

function readNumber(text: string, mark: '.' | ','): Read | TypingFault | undefined {
  const fraction = fractionPattern.exec(text)
  if (fraction) {
    const [, whole = '0', above, below, rest = ''] = fraction
    if (Number(below) === 0) return 'nothing under the line'
    return { value: Number(whole) + Number(above) / Number(below), rest: rest.trim() }
  }
  const decimal = decimalPattern.exec(text)
  if (!decimal) return undefined
  const [, digits = '', power = '', rest = ''] = decimal
  const value = readDecimal(digits, power, mark)
  return typeof value === 'number' ? { value, rest: rest.trim() } : value
}

const feetPattern = /^(?:ft\.?|feet|foot|')\s*(.*)$/i
const inchPattern = /^(?:in\.?|inch(?:es)?|")?$/i

/** `5' 7 1/2"`: inches that follow feet; undefined where none do. */
function inchesAfter(rest: string, mark: '.' | ','): number | TypingFault | undefined {
  const behind = feetPattern.exec(rest)?.[1] ?? ''
  if (behind === '') return undefined
  const inches = readNumber(behind, mark)
  if (inches === undefined) return 'unknown unit'
  if (typeof inches === 'string') return inches
  return inchPattern.test(inches.rest) && inches.value < 12 ? inches.value : 'unknown unit'
}

/** The number in the document's unit, or why there is none; nothing is guessed where two readings are possible. */
export function typedQuantity(text: string, place: TypingPlace): Typed {
  const { kept, said, mark, difference = false } = place
  const bare = plain(text)
  if (bare === '') return { kind: 'nothing' }
  const [, sign = '', size = ''] = /^([+-]?) ?(.*)$/.exec(bare)!
  const read = readNumber(size, mark)
  if (read === undefined) return { kind: 'words' }
  if (typeof read === 'string') return refused(read)
  const signed = (value: number) => (sign === '-' ? -value : value)
  const number = (value: number, from: Unit, withUnit: boolean): Typed => {
    const next = inUnit(signed(value), from, kept, difference)
    return Number.isFinite(next) ? { kind: 'number', value: next, withUnit } : { kind: 'words' }
  }
  if (read.rest === '') return number(read.value, said, false)
  if (/^\d{3}(?: \d{3})*(?:[.,]\d+)?$/.test(read.rest)) return refused('gap in digits')
  const foot = unitInWords('ft', kept.suffix)
  const inches = foot && inchesAfter(read.rest, mark)
  if (typeof inches === 'string') return refused(inches)
  if (foot && inches !== undefined) return number(read.value + inches / 12, foot, true)
  const behind = unitInWords(read.rest, kept.suffix)
  return behind ? number(read.value, behind, true) : refused('unknown unit')
}

/** What may still follow when somebody is in the middle of a fraction, a sign, or feet and inches. */
const continuations = ['1', '/2', '1/2'] as const

/**
 * Whether a text that is no quantity yet becomes one when typing goes on: `1/`, `5 ft 7 i`, `-`. A page need not
 * complain of it under the hand.
 */
export function isUnfinishedQuantity(text: string, place: TypingPlace): boolean {
  const becomes = (longer: string) => typedQuantity(longer, place).kind === 'number'
  const now = typedQuantity(text, place)
  if (now.kind !== 'words' && !(now.kind === 'refused' && now.why === 'unknown unit')) return false
  if (continuations.some((next) => becomes(text + next))) return true
  const [tail] = /[^\d\s.,/]*$/.exec(text)!
  const before = text.slice(0, text.length - tail.length)
  return (
    tail !== '' &&
    unitsOfKind(place.kept.suffix).some(({ words }) =>
      words.some((word) => word.toLowerCase().startsWith(tail.toLowerCase()) && becomes(before + word)),
    )
  )
}
