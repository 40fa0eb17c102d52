/** How much air is left between rotor and stator when every dimension errs. */
import { refuse, requireFinite, requireNotNegative } from '../../refusal/require.ts'

export interface GapContribution {
  /** How much it closes the gap on average; below zero opens it [m]. */
  readonly closing?: number | undefined
  /** Half of its tolerance band, ≥ 0 [m]. */
  readonly halfWidth?: number | undefined
}

export interface RunningClearance {
  /** Nominal less everything that closes the gap on average [m]. */
  readonly mean: number
  /** Every tolerance at its worst at once; below zero is contact [m]. */
  readonly worst: number
  /** Tolerances added as independent errors; below zero is contact [m]. */
  readonly likely: number
  /** Which contribution takes most of the tolerance, −1 for none. */
  readonly largest: number
}

/**
 * Least running clearance of a stack of dimensions.
 *
 *   worst = g − Σ c_i − Σ h_i,  likely = g − Σ c_i − (Σ h_i²)^(1/2)
 *
 * Holds: contributions add up along the gap. The second takes them as independent; with half-widths of
 * 3 standard deviations it is passed by one assembly in 740. Accuracy: exact.
 *
 * @param stack.nominal        g  ≥ 0                                             [m]
 * @param stack.contributions  closing c_i and half-width h_i, any number         [m]
 * @returns                    mean, worst and likely clearance                   [m]
 * @throws RangeError          a value not finite; nominal or a half-width below zero
 * @source shigley, section 1-14, dimensions and tolerances, from memory, not opened
 * @example runningClearance({ nominal: 0.002, contributions: [{ closing: 0.0002, halfWidth: 0.0003 }, { halfWidth: 0.0004 }] }).likely // 0.0013
 */
export function runningClearance(stack: {
  readonly nominal: number
  readonly contributions: readonly GapContribution[]
}): RunningClearance {
  const { nominal, contributions } = stack
  requireNotNegative('nominal', nominal, 'm')
  let mean = nominal
  let sum = 0
  let square = 0
  let largest = -1
  let most = 0
  contributions.forEach(({ closing = 0, halfWidth = 0 }, i) => {
    requireFinite(`contributions[${i}].closing`, closing, 'm')
    requireNotNegative(`contributions[${i}].halfWidth`, halfWidth, 'm')
    mean -= closing
    sum += halfWidth
    square = Math.hypot(square, halfWidth)
    if (halfWidth > most) {
      most = halfWidth
      largest = i
    }
  })
  if (!Number.isFinite(mean) || !Number.isFinite(sum))
    refuse({
      name: 'sum of the contributions',
      condition: 'a finite number',
      value: mean,
      code: 'not-finite',
    })
  return { mean, worst: mean - sum, likely: mean - square, largest }
}
