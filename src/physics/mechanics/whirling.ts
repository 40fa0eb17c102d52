/** The speed at which a shaft with its discs whirls: influence coefficients, Dunkerley, Rayleigh, exact. */
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { symmetricEigen } from '../../numerics/symmetric-eigen.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'

export interface WhirlingShaft {
  readonly length: number
  readonly diameter: number
  readonly bore?: number | undefined
  readonly modulus: number
  readonly density: number
}

/** One bearing of two; rigid if no stiffness is given. */
export interface WhirlingBearing {
  readonly position: number
  readonly stiffness?: number | undefined
}

/** A disc, or a rotor of blades, as one mass; inertia about a diameter and about the axis, 0 if left out. */
export interface WhirlingDisc {
  readonly position: number
  readonly mass: number
  readonly diametralInertia?: number | undefined
  readonly polarInertia?: number | undefined
}

/** Speed over critical speed between which a rotor should not run for long (common practice, no source). */
export const whirlingMarginRange: readonly [number, number] = [0.7, 1.3]

const power = (x: number, n: number) => (x > 0 ? x ** n : 0)

/** Deflection y at x from force 1 at a, its slope in x, and both for couple 1 at a, which is the derivative in a. */
type Influence = (
  x: number,
  a: number,
) => readonly [y: number, slope: number, coupleY: number, coupleSlope: number]

/** Clamped at 0: a stub axle. */
const clampedInfluence =
  (stiffness: number): Influence =>
  (x, a) => {
    const u = x - a
    return [
      (power(u, 3) - x ** 3 + 3 * a * x * x) / (6 * stiffness),
      (power(u, 2) - x * x + 2 * a * x) / (2 * stiffness),
      (x * x - power(u, 2)) / (2 * stiffness),
      (x - power(u, 1)) / stiffness,
    ]
  }

/** On two bearings, load between them or beyond. */
const bearingInfluence =
  (stiffness: number, first: number, span: number, give: readonly [number, number]): Influence =>
  (at, from) => {
    const x = at - first
    const a = from - first
    const L = span
    const k = 6 * stiffness
    const one = (
      sign: readonly [number, number],
      load: (s: number) => number,
      dLoad: (s: number) => number,
    ) => {
      // Macaulay's brackets with reactions R1 at 0 and R2 at L; then y = what the bearings give at both.
      const [R1, R2] = sign
      const y0 = R1 * give[0]
      const yL = R2 * give[1]
      const bent = (s: number) => (load(s) - R1 * power(s, 3) - R2 * power(s - L, 3)) / k
      const c2 = y0 - bent(0)
      const c1 = (yL - bent(L) - c2) / L
      const turned = (dLoad(x) - 3 * R1 * power(x, 2) - 3 * R2 * power(x - L, 2)) / k
      return [bent(x) + c1 * x + c2, turned + c1] as const
    }
    const force = one(
      [1 - a / L, a / L],
      (s) => power(s - a, 3),
      (s) => 3 * power(s - a, 2),
    )
    const couple = one(
      [-1 / L, 1 / L],
      (s) => -3 * power(s - a, 2),
      (s) => -6 * power(s - a, 1),
    )
    return [force[0], force[1], couple[0], couple[1]]
  }

/**
 * First whirling speed of an even shaft with discs, clamped at one end or on two bearings, discs overhung or not.
 *
 *   1 / ω² = greatest eigenvalue of Δ diag(m, Id − s Ip);  Dunkerley 1 / ω² = Σ δii mi;
 *   Rayleigh ω² = g Σ mi yi / Σ mi yi²
 *
 * Holds: slender shaft of one diameter, plane bending, supports alike in all directions, no damping. s is
 * spin over whirl: 1 forward at the critical speed itself, −1 backward, 0 at rest. A clamp stands at 0.
 * Accuracy: shaft mass in 8 Gauss points per span, within 1e-4 of ω; shear of the shaft leaves out under 1 % at length over
 * diameter above 15. Dunkerley is a lower and Rayleigh an upper bound of ω at s = 0.
 *
 * @param rotor.shaft      length, diameter, bore [m], modulus [Pa], density ≥ 0; from 0 to length [kg/m3]
 * @param rotor.bearings   two places on the shaft, stiffness > 0 if not rigid; clamped at 0 if left out [m, N/m]
 * @param rotor.discs      place on the shaft [m], mass > 0 [kg], inertias ≥ 0                      [kg·m2]
 * @param rotor.spinRatio  s  any; 1 if left out                                                    [1]
 * @returns                speed ω, dunkerley, rayleigh                                             [rad/s]
 * @throws RangeError      a value not finite or out of its bounds; nothing that can move
 * @source timoshenko1974, section 1.5 on Rayleigh and 5.1 on whirling; for the spin friswell2010, section 6.3; from memory, not opened
 * @example whirlingSpeed({ shaft: { length: 0.5, diameter: 0.03, modulus: 2.1e11, density: 0 }, bearings: [{ position: 0 }, { position: 0.5 }], discs: [{ position: 0.25, mass: 10 }] }).speed // 566.2
 */
export function whirlingSpeed(rotor: {
  readonly shaft: WhirlingShaft
  readonly bearings?: readonly [WhirlingBearing, WhirlingBearing] | undefined
  readonly discs: readonly WhirlingDisc[]
  readonly spinRatio?: number | undefined
}): { readonly speed: number; readonly dunkerley: number; readonly rayleigh: number } {
  const { shaft, bearings, discs, spinRatio: s = 1 } = rotor
  const { length, diameter, bore = 0, modulus, density } = shaft
  requirePositive('shaft.length', length, 'm')
  requirePositive('shaft.diameter', diameter, 'm')
  requireNotNegative('shaft.bore', bore, 'm')
  requirePositive('shaft.diameter - bore', diameter - bore, 'm')
  requirePositive('shaft.modulus', modulus, 'Pa')
  requireNotNegative('shaft.density', density, 'kg/m3')
  requireFinite('spinRatio', s)
  const area = (Math.PI / 4) * (diameter - bore) * (diameter + bore)
  const stiffness = (modulus * area * (diameter ** 2 + bore ** 2)) / 16

  let influence = clampedInfluence(stiffness)
  const marks = [0, length]
  if (bearings) {
    bearings.forEach(({ position, stiffness: k }, i) => {
      requireBetween(`bearings[${i}].position`, position, [0, length], 'm')
      if (k !== undefined) requirePositive(`bearings[${i}].stiffness`, k, 'N/m')
    })
    const [first, second] = bearings
    if (first.position === second.position)
      refuse({
        name: 'bearings',
        condition: 'at two places',
        value: first.position,
        unit: 'm',
        code: 'conflict',
      })
    const give = ({ stiffness: k }: WhirlingBearing) => (k === undefined ? 0 : 1 / k)
    influence = bearingInfluence(stiffness, first.position, second.position - first.position, [
      give(first),
      give(second),
    ])
    if (second.position < first.position)
      influence = bearingInfluence(stiffness, second.position, first.position - second.position, [
        give(second),
        give(first),
      ])
    marks.push(first.position, second.position)
  }

  /** One row of the flexibility each: a place that shifts, or one that tilts. */
  const freedoms: {
    readonly at: number
    readonly tilts: boolean
    readonly inertia: number
    readonly still: number
  }[] = []
  discs.forEach(({ position, mass, diametralInertia: Id = 0, polarInertia: Ip = 0 }, i) => {
    requireBetween(`discs[${i}].position`, position, [0, length], 'm')
    requirePositive(`discs[${i}].mass`, mass, 'kg')
    requireNotNegative(`discs[${i}].diametralInertia`, Id, 'kg·m2')
    requireNotNegative(`discs[${i}].polarInertia`, Ip, 'kg·m2')
    freedoms.push({ at: position, tilts: false, inertia: mass, still: mass })
    if (Id > 0 || Ip > 0) freedoms.push({ at: position, tilts: true, inertia: Id - s * Ip, still: Id })
  })
  marks.sort((p, q) => p - q)
  if (density > 0)
    for (let i = 1; i < marks.length; i++) {
      if (!(marks[i]! > marks[i - 1]!)) continue
      const { nodes, weights } = gaussLegendreOn(8, marks[i - 1]!, marks[i]!)
      nodes.forEach((at, k) => {
        const mass = density * area * weights[k]!
        freedoms.push({ at, tilts: false, inertia: mass, still: mass })
      })
    }

  // A tilt counts as a shift over the shaft's length, which puts both into one unit.
  const n = freedoms.length
  const Δ = new Float64Array(n * n)
  let size = 0
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const p = freedoms[i]!
      const q = freedoms[j]!
      const all = influence(p.at, q.at)
      const value = all[(p.tilts ? 1 : 0) + (q.tilts ? 2 : 0)]!
      Δ[i * n + j] = value * (p.tilts ? length : 1) * (q.tilts ? length : 1)
      if (i === j) size = Math.max(size, Math.abs(Δ[i * n + j]!))
    }
  const massOf = (i: number, of: 'inertia' | 'still') =>
    freedoms[i]![of] / (freedoms[i]!.tilts ? length * length : 1)

  // Δ = S Sᵀ; then Sᵀ diag S is symmetric and has the eigenvalues of Δ diag, also where an inertia is below zero.
  const { values, vectors } = symmetricEigen(Δ, n)
  const S = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) S[i * n + j] = vectors[i * n + j]! * Math.sqrt(Math.max(values[j]!, 0))
  const A = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0
      for (let k = 0; k < n; k++) sum += S[k * n + i]! * massOf(k, 'inertia') * S[k * n + j]!
      A[i * n + j] = A[j * n + i] = sum
    }
  let greatest = 0
  for (const value of symmetricEigen(A, n).values) greatest = Math.max(greatest, value)
  let trace = 0
  let work = 0
  let motion = 0
  for (let i = 0; i < n; i++) {
    trace += Δ[i * n + i]! * massOf(i, 'still')
    if (freedoms[i]!.tilts) continue
    let y = 0
    for (let j = 0; j < n; j++) if (!freedoms[j]!.tilts) y += Δ[i * n + j]! * freedoms[j]!.still
    work += freedoms[i]!.still * y
    motion += freedoms[i]!.still * y * y
  }
  if (!(size > 0 && greatest > 0 && motion > 0))
    refuse({ name: 'discs', condition: 'free to move somewhere', value: n, code: 'conflict' })
  return {
    speed: 1 / Math.sqrt(greatest),
    dunkerley: 1 / Math.sqrt(trace),
    rayleigh: Math.sqrt(work / motion),
  }
}
