/** How a rectangular wall bends that is held at its foot and both ends, its top held or not: what a pocket's wall is. */
import { linearSolve } from '../../numerics/linear-solve.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** How the top edge is held: clamped w = w′ = 0; supported w = 0; free. Foot and both ends are clamped. */
export type WallTop = 'clamped' | 'supported' | 'free'

/** Wall thickness over its shorter side for which thin-plate bending holds; thicker walls bear more than it says. */
export const wallThicknessRange: readonly [number, number] = [0, 0.25]

/** Width over height within which the polynomials follow the bending. */
export const wallSideRange: readonly [number, number] = [0.2, 5]

/** Terms along the width, even about its middle, and up the height. */
const across = 6
const upward = 6

/** Values, slopes and curvatures of one family of shapes at one place of 0 … 1. */
type Family = (place: number) => readonly (readonly [w: number, slope: number, curvature: number])[]

/** (a b)″ by the product rule. */
const product = (
  [a, da, dda]: readonly [number, number, number],
  [b, db, ddb]: readonly [number, number, number],
): readonly [number, number, number] => [a * b, da * b + a * db, dda * b + 2 * da * db + a * ddb]

/** Legendre's polynomials on −1 … 1 with two derivatives by `scale` times the place: they keep the system well scaled. */
function legendre(count: number, x: number, scale: number): [number, number, number][] {
  const all: [number, number, number][] = [
    [1, 0, 0],
    [x, scale, 0],
  ]
  for (let n = 1; all.length < count; n++) {
    const [p, dp, ddp] = all[n]!
    const [q, dq, ddq] = all[n - 1]!
    const k = (2 * n + 1) / (n + 1)
    const j = n / (n + 1)
    all.push([k * x * p - j * q, k * (scale * p + x * dp) - j * dq, k * (2 * scale * dp + x * ddp) - j * ddq])
  }
  return all.slice(0, count)
}

const ends: Family = (u) => {
  // u²(1 − u)² clamps both ends
  const hold = [u * u * (1 - u) ** 2, 2 * u * (1 - u) * (1 - 2 * u), 2 * (1 - 6 * u + 6 * u * u)] as const
  return legendre(2 * across, 2 * u - 1, 2)
    .filter((_, n) => n % 2 === 0)
    .map((one) => product(hold, one))
}

const heights = (top: WallTop): Family => {
  const hold = (u: number): readonly [number, number, number] => {
    if (top === 'free') return [u * u, 2 * u, 2]
    if (top === 'supported') return [u * u * (1 - u), 2 * u - 3 * u * u, 2 - 6 * u]
    return [u * u * (1 - u) ** 2, 2 * u * (1 - u) * (1 - 2 * u), 2 * (1 - 6 * u + 6 * u * u)]
  }
  return (u) => legendre(upward, 2 * u - 1, 2).map((one) => product(hold(u), one))
}

const { nodes, weights } = gaussLegendreOn(18, 0, 1)

/** ∫ of the p-th derivative of i times the q-th of j, and ∫ of i alone. */
function integrals(family: Family, count: number) {
  const at = Array.from(nodes, family)
  const of = (p: 0 | 1 | 2, q: 0 | 1 | 2): number[] =>
    Array.from({ length: count * count }, (_, m) =>
      at.reduce(
        (sum, all, k) => sum + weights[k]! * all[Math.floor(m / count)]![p]! * all[m % count]![q]!,
        0,
      ),
    )
  const whole = Array.from({ length: count }, (_, i) =>
    at.reduce((sum, all, k) => sum + weights[k]! * all[i]![0], 0),
  )
  return { of, whole }
}

/** Places at which the stress is looked for, along half of the width and up the height. */
const looks = 12

/** All that does not depend on a wall's sizes. */
function basis(top: WallTop) {
  const rows = heights(top)
  const [x, y] = [integrals(ends, across), integrals(rows, upward)]
  return {
    x: {
      whole: x.whole,
      d00: x.of(0, 0),
      d02: x.of(0, 2),
      d20: x.of(2, 0),
      d11: x.of(1, 1),
      d22: x.of(2, 2),
    },
    y: {
      whole: y.whole,
      d00: y.of(0, 0),
      d02: y.of(0, 2),
      d20: y.of(2, 0),
      d11: y.of(1, 1),
      d22: y.of(2, 2),
    },
    along: Array.from({ length: looks + 1 }, (_, p) => ends(p / looks / 2)),
    up: Array.from({ length: looks + 1 }, (_, q) => rows(q / looks)),
  }
}

const known = new Map<WallTop, ReturnType<typeof basis>>()

function basisOf(top: WallTop): ReturnType<typeof basis> {
  const found = known.get(top) ?? basis(top)
  known.set(top, found)
  return found
}

/**
 * Greatest bending stress and bulge of a wall under even pressure, foot and ends clamped.
 *
 *   δ ∫∫ (D/2 (w_xx² + w_yy² + 2 ν w_xx w_yy + 2 (1 − ν) w_xy²) − p w) dA = 0,  σ = 6 max(|Mx|, |My|)/t²
 *
 * by Ritz, 6 × 6 polynomials that keep the held edges.
 *
 * Holds: elastic, t within wallThicknessRange of the shorter side, bulge below t/2, sides within wallSideRange.
 * Accuracy: 1 % of thin-plate theory for sides up to 3 to 1, 6 % at the ends of the range and for the stress of a free
 * top near its corners, on the safe side; a
 * magnet leans mostly on the wall's edges, which is on the safe side too.
 *
 * @param wall.force      F  spread evenly over w h, ≥ 0                            [N]
 * @param wall.width      w  between the clamped ends, > 0                          [m]
 * @param wall.height     h  from the clamped foot to the top, > 0                  [m]
 * @param wall.thickness  t  > 0                                                    [m]
 * @param wall.modulus    E  > 0                                                    [Pa]
 * @param wall.poisson    ν  from 0 to below 0.5; 0.35 if left out                  [1]
 * @param wall.top        how the top edge is held: clamped, supported or free      [1]
 * @returns               greatest stress [Pa] and deflection                       [m]
 * @throws RangeError     a value not finite or out of its bounds
 * @source timoshenko1959, article 82 the energy method and article 44 clamped edges, from memory, not opened
 * @example wallBending({ force: 100, width: 0.02, height: 0.02, thickness: 0.002, modulus: 2e9, poisson: 0.3, top: 'clamped' }).stress // 7.70e6
 */
export function wallBending(wall: {
  readonly force: number
  readonly width: number
  readonly height: number
  readonly thickness: number
  readonly modulus: number
  readonly poisson?: number | undefined
  readonly top: WallTop
}): { readonly stress: number; readonly deflection: number } {
  const { force: F, width: w, height: h, thickness: t, modulus: E, poisson: ν = 0.35, top } = wall
  requireNotNegative('force', F, 'N')
  requirePositive('width', w, 'm')
  requirePositive('height', h, 'm')
  requirePositive('thickness', t, 'm')
  requirePositive('modulus', E, 'Pa')
  requireNotNegative('poisson', ν)
  requirePositive('0.5 - poisson', 0.5 - ν)
  const { x, y, along, up } = basisOf(top)
  // Lengths over h and loads over D, so that the system is well scaled.
  const s = h / w
  const n = across * upward
  const K = new Float64Array(n * n)
  const load = new Float64Array(n)
  for (let a = 0; a < n; a++) {
    const [i, j] = [Math.floor(a / upward), a % upward]
    load[a] = x.whole[i]! * y.whole[j]!
    for (let b = 0; b < n; b++) {
      const X = i * across + Math.floor(b / upward)
      const Y = j * upward + (b % upward)
      K[a * n + b] =
        s ** 4 * x.d22[X]! * y.d00[Y]! +
        x.d00[X]! * y.d22[Y]! +
        s * s * (ν * (x.d20[X]! * y.d02[Y]! + x.d02[X]! * y.d20[Y]!) + 2 * (1 - ν) * x.d11[X]! * y.d11[Y]!)
    }
  }
  const c = linearSolve(K, load)
  let deflection = 0
  let moment = 0
  for (const X of along)
    for (const Y of up) {
      let [value, xx, yy] = [0, 0, 0]
      for (let a = 0; a < n; a++) {
        const [i, j] = [Math.floor(a / upward), a % upward]
        value += c[a]! * X[i]![0] * Y[j]![0]
        xx += c[a]! * s * s * X[i]![2] * Y[j]![0]
        yy += c[a]! * X[i]![0] * Y[j]![2]
      }
      deflection = Math.max(deflection, Math.abs(value))
      moment = Math.max(moment, Math.abs(xx + ν * yy), Math.abs(yy + ν * xx))
    }
  const pressure = F / (w * h)
  const D = (E * t ** 3) / (12 * (1 - ν * ν))
  return {
    stress: (6 * moment * pressure * h * h) / (t * t),
    deflection: (deflection * pressure * h ** 4) / D,
  }
}
