/** Checks against printed digits: the tolerance is half a unit of the last digit printed. */
import { expect, test } from 'vitest'

/** Half a unit in the last place of a number as printed, "0.1768" → 0.00005, "1.2e-7" → 5e-9. */
export function halfLastDigit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e')
  const decimals = mantissa.includes('.') ? mantissa.length - mantissa.indexOf('.') - 1 : 0
  return 0.5 * 10 ** (Number(exponent) - decimals)
}

/** What a check leaves behind for `docs/accuracy.md`. */
export interface Achieved {
  readonly printed: string
  readonly allowed: number
  readonly difference: number
}

export interface Tolerance {
  /** Replaces the half digit; say why in the test's own words. */
  readonly absolute?: number
  readonly relative?: number
}

/**
 * One test that `actual` meets the digits a source prints. `title` starts with the source key in accuracy reports.
 * `actual` may be a thunk, so that a throwing computation fails its own test only.
 */
export function check(
  title: string,
  actual: number | (() => number),
  printed: string,
  tolerance: Tolerance = {},
) {
  test(title, ({ task }) => {
    const value = typeof actual === 'function' ? actual() : actual
    const wanted = Number(printed)
    const allowed =
      tolerance.absolute ??
      (tolerance.relative === undefined
        ? halfLastDigit(printed) * 1.000001
        : tolerance.relative * Math.abs(wanted))
    Object.assign(task.meta, { achieved: { printed, allowed, difference: Math.abs(value - wanted) } })
    expect(Math.abs(value - wanted), `${value} against ${printed} ± ${allowed}`).toBeLessThanOrEqual(allowed)
  })
}
