/** A kept number as it is said in a chosen unit: short, on the ruler of the trade, and back to the same number. */
import { inUnit } from './spoken-unit.ts'
import type { Unit } from './unit.ts'

/** Up to so many digits a decimal that reads back exactly is shown whole. */
const wholeDigits = 7

/** Digits of a number that no short decimal gives back. */
const roundedDigits = 4

/** Decimals of an inch that calipers show; finer things keep their first digits. */
const caliperDecimals = 4

function roundedText(value: number, said: Unit): string {
  const short = Number(value.toPrecision(roundedDigits))
  return String(
    said.suffix === 'in' && Math.abs(value) >= 0.01 ? Number(short.toFixed(caliperDecimals)) : short,
  )
}

/** The finest division of a ruler in inches. */
const finest = 64

/** In feet and inches the sixteenth is fine enough. */
const finestBesideFeet = 16

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b))

/** Whole number of `1/parts`, undefined where the value lies between two marks of such a ruler. */
function marksOf(value: number, parts: number): number | undefined {
  const marks = Math.round(value * parts)
  return marks !== 0 && Math.abs(value * parts - marks) < 1e-9 * marks ? marks : undefined
}

/** 1 1/4 of 5 quarters. */
function fractionText(marks: number, parts: number): string {
  const whole = Math.floor(marks / parts)
  const left = marks % parts
  if (left === 0) return String(whole)
  const divisor = greatestDivisor(left, parts)
  const fraction = `${left / divisor}/${parts / divisor}`
  return whole === 0 ? fraction : `${whole} ${fraction}`
}

/** The shortest decimal that reads back to the kept number; undefined where none is short. */
function exactDecimal(kept: number, there: (said: number) => number, said: number): string | undefined {
  for (let digits = 1; digits <= wholeDigits; digits++) {
    const short = Number(said.toPrecision(digits))
    if (there(short) === kept) return String(short)
  }
  return undefined
}

export interface Saying {
  /** Unit of the document. */
  readonly kept: Unit
  readonly said: Unit
  /** A spread: degrees lose their zero. */
  readonly difference?: boolean
}

/** Digits with a point, or a fraction; without its unit. In its own unit it is the number as it stands. */
export function spokenNumber(value: number, { kept, said, difference = false }: Saying): string {
  if (kept.suffix === said.suffix || !Number.isFinite(value)) return String(value)
  const there = (number: number) => inUnit(number, said, kept, difference)
  const here = inUnit(value, kept, said, difference)
  const size = Math.abs(here)
  const minus = here < 0 ? '-' : ''
  if (said.suffix === 'in') {
    const marks = marksOf(size, finest)
    if (marks !== undefined) return minus + fractionText(marks, finest)
  }
  const exact = exactDecimal(value, there, here)
  if (said.suffix === 'ft' && (exact === undefined || exact.replace(/\D/g, '').length > 3)) {
    const marks = marksOf(size * 12, finestBesideFeet)
    if (marks !== undefined) {
      const feet = Math.floor(marks / (12 * finestBesideFeet))
      return `${minus}${feet}' ${fractionText(marks - feet * 12 * finestBesideFeet, finestBesideFeet)}"`
    }
  }
  return exact ?? roundedText(here, said)
}
