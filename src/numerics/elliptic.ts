/** Complete elliptic integrals by the arithmetic-geometric mean. */
import { refuse, requireBetween, requireFinite } from '../refusal/require.ts'

export interface CompleteElliptic {
  /** First kind K(k). */
  readonly K: number
  /** Second kind E(k). */
  readonly E: number
  /** K − E, summed on its own so that small moduli lose no digits. */
  readonly difference: number
}

/**
 * K, E and K − E of modulus k, 0 ≤ k < 1 (Abramowitz & Stegun 1964, 17.6.3 and 17.6.4).
 * `complement` is k′ = √(1 − k²); give it when 1 − k² would cancel, that is for k close to 1.
 */
export function completeElliptic(k: number, complement = Math.sqrt((1 - k) * (1 + k))): CompleteElliptic {
  requireBetween('k', k, [0, 1])
  requireFinite('complement', complement)
  if (complement <= 0)
    refuse({ name: 'complement', condition: 'above zero', value: complement, code: 'below-minimum' })
  let a = 1
  let g = complement
  let c = k
  let power = 0.5
  let sum = power * c * c
  for (let step = 0; step < 64 && Math.abs(c) > 1e-17 * a; step++) {
    // c of the next row as c²/4a: the difference (a − g)/2 would cancel
    const next = (a + g) / 2
    g = Math.sqrt(a * g)
    c = (c * c) / (4 * next)
    a = next
    power *= 2
    sum += power * c * c
  }
  const K = Math.PI / (2 * a)
  return { K, E: K * (1 - sum), difference: K * sum }
}
