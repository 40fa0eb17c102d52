/** A thin sheet of saturable steel that carries flux along itself: its magnetic potential. */
import { choleskyFactor, choleskySolve } from '../../numerics/cholesky.ts'
import { refuse } from '../../refusal/require.ts'
import type { BhCurve } from './bh-curve.ts'

export interface Sheet {
  /** Radii of the rings' edges [m] and the differences of their logarithms [1]. */
  readonly radius: Float64Array
  readonly step: Float64Array
  /** [m]. */
  readonly thickness: number
  readonly steel: BhCurve
  /** Angular orders m of the potential's cosines. */
  readonly orders: readonly number[]
  /** Per order: rings × rings, flux that leaves into the air per potential. */
  readonly stiffness: readonly Float64Array[]
}

/** Angles between the middle of a pole and its end at which the steel's state is looked at, per order. */
const samplesPerOrder = 2

/** Largest flux out of balance, as a share of the largest that a ring receives. */
const tolerance = 1e-5

/** How flux follows field strength: straight, as the first guess went beyond the steel, as the steel does. */
type Rule = 'easy' | 'worn' | 'steel'

/** Angle-dependent tables of a sheet: cos mθ and m sin mθ at the samples. */
function tables({ orders }: Sheet) {
  const count = samplesPerOrder * orders.length
  const half = Math.PI / (2 * orders[0]!)
  const cos = new Float64Array(count * orders.length)
  const sin = new Float64Array(count * orders.length)
  for (let q = 0; q < count; q++)
    orders.forEach((m, n) => {
      const mθ = (m * half * (q + 0.5)) / count
      cos[q * orders.length + n] = Math.cos(mθ)
      sin[q * orders.length + n] = m * Math.sin(mθ)
    })
  return { count, cos, sin }
}

/**
 * @internal Potential that minimises the magnetic energy of sheet and air, ring by ring, order by order:
 * −div(t B(|H|) H/|H|) + G φ = −source with H = −grad φ, a convex problem, by Newton's method with a line search.
 */
export function sheetPotential(
  sheet: Sheet,
  source: readonly Float64Array[],
  start?: Float64Array,
): Float64Array {
  const { radius, step, thickness, steel, orders, stiffness } = sheet
  const rings = radius.length
  const N = orders.length
  const size = rings * N
  const { count, cos, sin } = tables(sheet)
  const easiest = steel.relativePermeability(1) * 4e-7 * Math.PI
  const φ = start === undefined ? new Float64Array(size) : Float64Array.from(start)
  const g = new Float64Array(size)
  const uu = new Float64Array(N * N)
  const uθ = new Float64Array(N * N)
  const θθ = new Float64Array(N * N)
  const bu = new Float64Array(N)
  const bθ = new Float64Array(N)

  /** Adds the sheet's share of the gradient to `g`, of the second derivative to `K`. */
  function addSteel(at: Float64Array, K: Float64Array, rule: Rule): void {
    for (let j = 0; j + 1 < rings; j++) {
      const r = Math.sqrt(radius[j]! * radius[j + 1]!)
      const h = step[j]!
      const weight = (r * r * h * thickness * 2) / count
      const [low, high] = [j * N, (j + 1) * N]
      bu.fill(0)
      bθ.fill(0)
      uu.fill(0)
      uθ.fill(0)
      θθ.fill(0)
      for (let q = 0; q < count; q++) {
        const row = q * N
        let Hu = 0
        let Hθ = 0
        for (let n = 0; n < N; n++) {
          Hu += (at[high + n]! - at[low + n]!) * cos[row + n]!
          Hθ += (at[high + n]! + at[low + n]!) * sin[row + n]!
        }
        // Gradient with the sign of +grad φ; the sign of the θ part cancels with its own derivative
        Hu /= h * r
        Hθ /= 2 * r
        const H = Math.hypot(Hu, Hθ)
        let secant = easiest
        let slope = easiest
        if (H > 0 && rule === 'steel') {
          const B = steel.fluxDensity(H)
          secant = B / H
          slope = 1 / steel.differentialReluctivity(B)
        } else if (H > 0 && rule === 'worn') {
          // The flux that easy steel took, as far as this steel takes it, asks for so much more H
          const B = Math.min(easiest * H, 1.1 * steel.knee)
          secant = Math.min(easiest, B / steel.fieldStrength(B))
          slope = secant
        }
        const wu = (weight * secant * Hu) / (h * r)
        const wθ = (weight * secant * Hθ) / (2 * r)
        for (let n = 0; n < N; n++) {
          bu[n] = bu[n]! + wu * cos[row + n]!
          bθ[n] = bθ[n]! + wθ * sin[row + n]!
        }
        const twist = slope - secant
        const [eu, eθ] = H > 0 ? [Hu / H, Hθ / H] : [0, 0]
        const kuu = (weight * (secant + twist * eu * eu)) / (h * h * r * r)
        const kuθ = (weight * twist * eu * eθ) / (2 * h * r * r)
        const kθθ = (weight * (secant + twist * eθ * eθ)) / (4 * r * r)
        for (let n = 0; n < N; n++) {
          const cn = kuu * cos[row + n]!
          const en = kuθ * cos[row + n]!
          const sn = kθθ * sin[row + n]!
          for (let k = 0; k < N; k++) uθ[n * N + k] = uθ[n * N + k]! + en * sin[row + k]!
          for (let k = 0; k <= n; k++) {
            uu[n * N + k] = uu[n * N + k]! + cn * cos[row + k]!
            θθ[n * N + k] = θθ[n * N + k]! + sn * sin[row + k]!
          }
        }
      }
      for (let n = 0; n < N; n++) {
        g[high + n] = g[high + n]! + bu[n]! + bθ[n]!
        g[low + n] = g[low + n]! - bu[n]! + bθ[n]!
      }
      for (let n = 0; n < N; n++)
        for (let k = 0; k < N; k++) {
          const entry = k <= n ? n * N + k : k * N + n
          const a = uu[entry]!
          const b = θθ[entry]!
          const c = uθ[n * N + k]!
          const d = uθ[k * N + n]!
          const [hh, hl, ll] = [
            (high + n) * size + high + k,
            (high + n) * size + low + k,
            (low + n) * size + low + k,
          ]
          K[hh] = K[hh]! + a + b + c + d
          K[hl] = K[hl]! - a + b + c - d
          K[ll] = K[ll]! + a + b - c - d
        }
    }
  }
  function addAir(at: Float64Array): void {
    for (let n = 0; n < N; n++) {
      const G = stiffness[n]!
      for (let i = 0; i < rings; i++) {
        let sum = source[n]![i]!
        for (let j = 0; j < rings; j++) sum += G[i * rings + j]! * at[j * N + n]!
        g[i * N + n] = g[i * N + n]! + sum
      }
    }
  }
  const along = (d: Float64Array) => d.reduce((sum, value, i) => sum + value * g[i]!, 0)
  let scale = 0
  for (const list of source) for (const value of list) scale = Math.max(scale, Math.abs(value))
  if (scale === 0) return new Float64Array(size)
  const K = new Float64Array(size * size)
  const next = new Float64Array(size)
  /** Gradient and second derivative at `at`. */
  const look = (at: Float64Array, rule: Rule) => {
    K.fill(0)
    for (let n = 0; n < N; n++) {
      const G = stiffness[n]!
      for (let i = 0; i < rings; i++)
        for (let j = 0; j <= i; j++) K[(i * N + n) * size + j * N + n] = G[i * rings + j]!
    }
    g.fill(0)
    addAir(at)
    addSteel(at, K, rule)
  }
  const missed = () => g.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const move = () => {
    const d = choleskySolve(choleskyFactor(K, size), g)
    for (let i = 0; i < size; i++) d[i] = -d[i]!
    return d
  }
  if (start === undefined)
    for (const rule of ['easy', 'worn'] as const) {
      look(φ, rule)
      move().forEach((value, i) => {
        φ[i] = φ[i]! + value
      })
    }
  look(φ, 'steel')
  let miss = missed()
  for (let iteration = 0; iteration < 80; iteration++) {
    if (miss <= tolerance * scale) return φ
    const d = move()
    const downhill = along(d)
    // The energy along d is convex: stop where its slope has died down, not far beyond where it turns
    let share = 1
    for (let halving = 0; halving < 30; halving++) {
      for (let i = 0; i < size; i++) next[i] = φ[i]! + share * d[i]!
      look(next, 'steel')
      const slope = along(d)
      if (slope <= -0.5 * downhill) break
      share *= Math.max(0.1, Math.min(0.5, downhill / (downhill - slope)))
    }
    φ.set(next)
    miss = missed()
  }
  refuse({
    name: 'potential of the plate',
    condition: `balanced to ${tolerance} of the flux in 80 steps`,
    value: miss / scale,
    code: 'no-convergence',
  })
}

/** @internal Flux density of the steel along r and θ at one angle, between neighbouring rings: r0 θ0 r1 θ1 … [T]. */
export function sheetFluxDensity(sheet: Sheet, φ: Float64Array, angle: number): Float64Array {
  const { radius, step, steel, orders } = sheet
  const N = orders.length
  const B = new Float64Array(2 * step.length)
  for (let j = 0; j < step.length; j++) {
    const r = Math.sqrt(radius[j]! * radius[j + 1]!)
    let Hr = 0
    let Hθ = 0
    orders.forEach((m, n) => {
      const low = φ[j * N + n]!
      const high = φ[(j + 1) * N + n]!
      Hr -= ((high - low) * Math.cos(m * angle)) / (step[j]! * r)
      Hθ += (m * (high + low) * Math.sin(m * angle)) / (2 * r)
    })
    const H = Math.hypot(Hr, Hθ)
    if (H === 0) continue
    const permeability = steel.fluxDensity(H) / H
    B[2 * j] = permeability * Hr
    B[2 * j + 1] = permeability * Hθ
  }
  return B
}
