/** Faults that two fields have together, and the comparisons that find most of them. */
import type { RefusalCode } from '../refusal/code.ts'
import { unit } from '../units/unit.ts'
import { type Fault, receivedText } from './fault.ts'

/** Shares of a length that count as nothing: what decimal fractions leave behind. */
export const slack = 1e-9

/** A number as a message shows it: six digits, and no zeros behind them. */
const digits = (value: number): string => String(Number(value.toPrecision(6)))

export const amount = (value: number, suffix: string): string => digits(value) + unit(suffix).symbol

export function fault(
  path: string,
  condition: string,
  received: number | string,
  { suffix = '1', code = 'conflict' }: { readonly suffix?: string; readonly code?: RefusalCode } = {},
): Fault {
  const text = typeof received === 'number' ? amount(received, suffix) : receivedText(received)
  return { path, condition, received: text, code }
}

/** A length in mm that must not be below, or not be above, a limit that other fields set. */
export const mm = { suffix: 'mm' } as const
export const atLeast = (path: string, value: number, least: number, why: string): Fault[] =>
  value >= least - slack * Math.max(1, Math.abs(least))
    ? []
    : [fault(path, `at least ${amount(least, 'mm')}, ${why}`, value, mm)]
export const atMost = (path: string, value: number, most: number, why: string): Fault[] =>
  value <= most + slack * Math.max(1, Math.abs(most))
    ? []
    : [fault(path, `at most ${amount(most, 'mm')}, ${why}`, value, mm)]

/** The values of a list must rise; every one that does not is a fault of its own. */
export const rising = (
  values: readonly number[],
  least: number,
  path: (k: number) => string,
  suffix: string,
) =>
  values.flatMap((value, k) =>
    k === 0 || value >= values[k - 1]! + least
      ? []
      : [
          fault(
            path(k),
            least > 0
              ? `at least ${amount(least, suffix)} above the one before, ${amount(values[k - 1]!, suffix)}`
              : `above the one before, ${amount(values[k - 1]!, suffix)}`,
            value,
            { suffix, code: 'not-increasing' },
          ),
        ],
  )
