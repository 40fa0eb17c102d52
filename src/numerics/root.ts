/** Roots of a continuous function between two points of opposite sign. */
import { refuse } from '../refusal/require.ts'

/**
 * The x in `between` where f changes sign, by Brent's method (Brent 1973, chapter 4).
 * `tolerance` is absolute, on x. Refuses equal signs at the ends, an f that is not a number, and 200 steps
 * without success.
 */
export function root(
  f: (x: number) => number,
  between: readonly [number, number],
  tolerance = 1e-12,
): number {
  let [a, b] = between
  let fa = f(a)
  let fb = f(b)
  if (fa === 0) return a
  if (fb === 0) return b
  // Signs, not the product: 1e-200 · −1e-200 is zero in double precision.
  if (!((fa < 0 && fb > 0) || (fa > 0 && fb < 0)))
    refuse({
      name: 'f at the two ends',
      condition: 'of opposite sign',
      value: [fa, fb],
      code: 'no-convergence',
    })
  let c = a
  let fc = fa
  let d = b - a
  let e = d
  for (let step = 0; step < 200; step++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2
    const m = (c - b) / 2
    if (Math.abs(m) <= least || fb === 0) return b
    if (Math.abs(e) < least || Math.abs(fa) <= Math.abs(fb)) {
      d = m
      e = m
    } else {
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * m * s
        q = 1 - s
      } else {
        const r = fb / fc
        const t = fa / fc
        p = s * (2 * m * t * (t - r) - (b - a) * (r - 1))
        q = (t - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      if (2 * p < Math.min(3 * m * q - Math.abs(least * q), Math.abs(e * q))) {
        e = d
        d = p / q
      } else {
        d = m
        e = m
      }
    }
    a = b
    fa = fb
    b += Math.abs(d) > least ? d : Math.sign(m) * least
    fb = f(b)
    if (Number.isNaN(fb))
      refuse({ name: 'f', condition: 'a number between the ends', value: fb, code: 'not-finite' })
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      d = b - a
      e = d
    }
  }
  refuse({ name: 'root search', condition: 'done in 200 steps', value: b, code: 'no-convergence' })
}
