/** Weibull distribution fitted to a record of wind speeds by maximum likelihood. */
import { root } from '../../numerics/root.ts'
import { refuse, requireLength, requireNotNegative } from '../../refusal/require.ts'
import { shapeBounds, type WindDistribution } from './weibull.ts'

/** Speeds, each with how often or how long it blew; weights left out are all alike. */
export interface WindRecord {
  /** ≥ 0; calms are left out of the fit. [m/s] */
  readonly speed: ArrayLike<number>
  /** ≥ 0. [1] */
  readonly weight?: ArrayLike<number>
}

/**
 * Distribution that makes a record of wind speeds most likely; calms at 0 m/s are no part of it.
 *
 *   1/k = Σ w v^k ln v / Σ w v^k − Σ w ln v / Σ w,   A = (Σ w v^k / Σ w)^(1/k)
 *
 * Holds: at least two different speeds above zero. Accuracy: root to 1e-10; the shape of n independent winds is known to 0.78 k/√n (one standard error), of a logger's record, whose winds hang together over hours, several times worse.
 *
 * @param record.speed   v  ≥ 0                               [m/s]
 * @param record.weight  w  times each was met; default 1     [1]
 * @returns              A [m/s] and k                        [1]
 * @throws RangeError    fewer than two different speeds above zero, a speed or weight below zero, a shape outside 0.3…100
 * @source seguro-lambert2000, equations of the maximum likelihood method, from memory, not opened
 * @example likeliestWindDistribution({ speed: [1, 2, 3, 4] }).shape // 2.4532
 */
export function likeliestWindDistribution(record: WindRecord): WindDistribution {
  const { speed, weight } = record
  if (weight) requireLength('weight', weight, speed.length)
  let greatest = 0
  let W = 0
  for (let i = 0; i < speed.length; i++) {
    requireNotNegative('speed', speed[i]!, 'm/s')
    if (weight) requireNotNegative('weight', weight[i]!)
    const w = weight ? weight[i]! : 1
    if (speed[i]! > 0 && w > 0) {
      W += w
      greatest = Math.max(greatest, speed[i]!)
    }
  }
  // Equal speeds are gathered: a logger has a few hundred different ones in a million.
  const gathered = new Map<number, number>()
  for (let i = 0; i < speed.length; i++) {
    const w = weight ? weight[i]! : 1
    if (speed[i]! > 0 && w > 0) gathered.set(speed[i]!, (gathered.get(speed[i]!) ?? 0) + w)
  }
  if (gathered.size < 2)
    refuse({
      name: 'speeds above zero',
      condition: 'at least 2 different ones',
      value: gathered.size,
      code: 'wrong-length',
    })
  // ln(v/greatest) ≤ 0, so that no power overflows
  const ln = Float64Array.from(gathered.keys(), (v) => Math.log(v) - Math.log(greatest))
  const w = Float64Array.from(gathered.values(), (each) => each / W)
  let meanLn = 0
  for (let i = 0; i < ln.length; i++) meanLn += w[i]! * ln[i]!
  const excess = (lnK: number) => {
    const k = Math.exp(lnK)
    let power = 0
    let moment = 0
    for (let i = 0; i < ln.length; i++) {
      const term = w[i]! * Math.exp(k * ln[i]!)
      power += term
      moment += term * ln[i]!
    }
    return moment / power - meanLn - 1 / k
  }
  const [least, most] = [Math.log(shapeBounds[0]), Math.log(shapeBounds[1])]
  if (excess(least) > 0 || excess(most) < 0)
    refuse({
      name: 'the record',
      condition: 'of a shape from 0.3 to 100',
      value: excess(least) > 0 ? 'a wider one' : 'a narrower one',
      code: excess(least) > 0 ? 'below-minimum' : 'above-maximum',
    })
  const k = Math.exp(root(excess, [least, most], 1e-11))
  let power = 0
  for (let i = 0; i < ln.length; i++) power += w[i]! * Math.exp(k * ln[i]!)
  return { scale: greatest * power ** (1 / k), shape: k }
}
