/** What a power converter loses: a standing part, a drop and a resistance, from its efficiency at a few points. */
import { linearSolve } from '../../numerics/linear-solve.ts'
import { refuse, requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** P_loss = standing + drop·I + resistance·I², I the input current; all zero or above. */
export interface ConverterLoss {
  /** [W] */
  readonly standing: number
  /** [V] */
  readonly drop: number
  /** [Ω] */
  readonly resistance: number
}

export interface EfficiencyPoint {
  /** At the input [V], [W]. */
  readonly voltage: number
  readonly power: number
  /** Output over input [1]. */
  readonly efficiency: number
}

/**
 * Loss coefficients of a converter from its efficiency at three points or more.
 *
 *   min Σ ((a + b I + c I² − (1 − η) P) / ((1 − η) P))²,  I = P/U,  a, b, c ≥ 0
 *
 * The standing part holds what the control and the cores take, the drop what junctions take, the resistance what
 * coils and channels take. The relative miss is made least, so that small loads count as much as large ones.
 *
 * Holds: converters that do not change their way of working between the points. Accuracy: exact at the points of a
 * converter that loses by this law; else the residual of the fit.
 *
 * @param points  U [V], P [W] at the input and η [1]; three or more, no two of the same current alone
 * @returns       a [W], b [V], c [Ω]
 * @throws RangeError   fewer than 3 points; voltage or power not above zero; efficiency outside 0 … 1
 * @source derived, non-negative least squares with three coefficients, every set of active ones tried
 * @example converterLoss([{ voltage: 10, power: 10, efficiency: 0.85 }, { voltage: 10, power: 50, efficiency: 0.87 }, { voltage: 10, power: 100, efficiency: 0.84 }]).standing // 0.61111
 */
export function converterLoss(points: readonly EfficiencyPoint[]): ConverterLoss {
  if (points.length < 3)
    refuse({ name: 'points', condition: 'at least 3 long', value: points.length, code: 'wrong-length' })
  const rows = points.map(({ voltage, power, efficiency }, k) => {
    requirePositive(`points[${k}].voltage`, voltage, 'V')
    requirePositive(`points[${k}].power`, power, 'W')
    requireBetween(`points[${k}].efficiency`, efficiency, [1e-6, 1 - 1e-6])
    const loss = (1 - efficiency) * power
    const current = power / voltage
    return [1 / loss, current / loss, (current * current) / loss] as const
  })
  let best: readonly number[] = [0, 0, 0]
  let least = Number.POSITIVE_INFINITY
  for (let active = 1; active < 8; active++) {
    const used = [0, 1, 2].filter((k) => active & (1 << k))
    const n = used.length
    const A = new Float64Array(n * n)
    const b = new Float64Array(n)
    for (const row of rows)
      used.forEach((k, i) => {
        b[i] = b[i]! + row[k]!
        used.forEach((l, j) => {
          A[i * n + j] = A[i * n + j]! + row[k]! * row[l]!
        })
      })
    const x = solvedOrNone(A, b)
    if (x === undefined || x.some((value) => !(value >= 0))) continue
    const found = [0, 0, 0]
    used.forEach((k, i) => {
      found[k] = x[i]!
    })
    const miss = rows.reduce(
      (sum, row) => sum + (row[0] * found[0]! + row[1] * found[1]! + row[2] * found[2]! - 1) ** 2,
      0,
    )
    if (miss < least) {
      least = miss
      best = found
    }
  }
  return { standing: best[0]!, drop: best[1]!, resistance: best[2]! }
}

/** Points of equal current leave some coefficients open: those sets of them are left out. */
function solvedOrNone(A: Float64Array, b: Float64Array): Float64Array | undefined {
  try {
    return linearSolve(A, b)
  } catch {
    return undefined
  }
}

/**
 * Watts that come out of a converter.
 *
 *   P_out = P − (a + b P/U + c (P/U)²), not below zero
 *
 * Holds: steady state. Accuracy: that of the coefficients.
 *
 * @param loss           a [W], b [V], c [Ω] from `converterLoss`
 * @param input.voltage  U  at the input, > 0   [V]
 * @param input.power    P  into it, 0 or above [W]
 * @returns              P_out                  [W]
 * @throws RangeError   voltage not above zero; power below zero
 * @source derived, from the loss law of `converterLoss`
 * @example converterOutput({ standing: 1, drop: 0.5, resistance: 0.05 }, { voltage: 10, power: 100 }) // 89.0
 */
export function converterOutput(
  { standing, drop, resistance }: ConverterLoss,
  { voltage, power }: { readonly voltage: number; readonly power: number },
): number {
  requirePositive('voltage', voltage, 'V')
  requireNotNegative('power', power, 'W')
  const current = power / voltage
  return Math.max(0, power - standing - drop * current - resistance * current * current)
}
