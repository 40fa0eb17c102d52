/** Guards that refuse meaningless numbers in the one wording of the house. */
import type { RefusalCode } from './code.ts'

/** RangeError that carries its stable code beside the words. */
export class Refusal extends RangeError {
  readonly code: RefusalCode
  constructor(message: string, code: RefusalCode) {
    super(`${message} (${code})`)
    this.name = 'Refusal'
    this.code = code
  }
}

const received = (value: unknown, unit: string) => {
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? typeof value)
  return unit === '' ? text : `${text} ${unit}`
}

/** Says `name must be condition; received value unit (code)` by throwing it. */
export function refuse(fault: {
  readonly name: string
  readonly condition: string
  readonly value: unknown
  readonly unit?: string
  readonly code: RefusalCode
}): never {
  const { name, condition, value, unit = '', code } = fault
  throw new Refusal(`${name} must be ${condition}; received ${received(value, unit)}`, code)
}

export function requireFinite(name: string, value: number, unit = ''): void {
  if (!Number.isFinite(value)) refuse({ name, condition: 'a finite number', value, unit, code: 'not-finite' })
}

export function requirePositive(name: string, value: number, unit = ''): void {
  requireFinite(name, value, unit)
  if (value <= 0) refuse({ name, condition: 'above zero', value, unit, code: 'below-minimum' })
}

export function requireNotNegative(name: string, value: number, unit = ''): void {
  requireFinite(name, value, unit)
  if (value < 0) refuse({ name, condition: 'zero or above', value, unit, code: 'below-minimum' })
}

export function requireBetween(
  name: string,
  value: number,
  range: readonly [number, number],
  unit = '',
): void {
  requireFinite(name, value, unit)
  const [least, greatest] = range
  if (value < least)
    refuse({ name, condition: `at least ${received(least, unit)}`, value, unit, code: 'below-minimum' })
  if (value > greatest)
    refuse({ name, condition: `at most ${received(greatest, unit)}`, value, unit, code: 'above-maximum' })
}

/** Refuses flat lists whose length is not `length`. */
export function requireLength(name: string, list: ArrayLike<unknown>, length: number): void {
  if (list.length !== length)
    refuse({ name, condition: `${length} long`, value: list.length, code: 'wrong-length' })
}
