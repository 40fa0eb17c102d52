/** One ring of a blade rotor: where the momentum of the air and the forces on its blade sections agree. */
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import {
  refuse,
  requireFinite,
  requireLength,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'
import { sineOverOneMinusInduction } from './induction.ts'
import type { Polar, SectionCoefficients } from './polar.ts'
import { sectionFamily } from './section-family.ts'
import { stallDelayFade, stallDelayShareAt } from './stall-delay.ts'
import { lossFactorAt } from './tip-loss.ts'

/** A rotor of equal blades, its axis along the wind. */
export interface BladeRotor {
  /** Number of blades. [1] */
  readonly bladeCount: number
  /** Of the tip from the axis. [m] */
  readonly radius: number
  /** Where the blade begins; 0 gives no hub loss. [m] */
  readonly hubRadius: number
  /** Distances from the axis at which the blade is given, rising; the end values go on beyond them. [m] */
  readonly station: Float64Array
  /** Chord at each station. [m] */
  readonly chord: Float64Array
  /** Angle between chord and disc at each station, positive when it turns the nose into the wind. [rad] */
  readonly twist: Float64Array
  /** Added to every twist. [rad] */
  readonly pitch: number
  /** Coefficients of the section, one for the whole blade. */
  readonly polar: Polar
  /** The same section at rising Reynolds numbers: where a stream is told, each ring takes its own. */
  readonly polars?: readonly Polar[]
  /** Whether turning delays the stall of the inner blade (stall-delay.ts). Default false. */
  readonly stallDelay?: boolean
}

/** Air as the Reynolds numbers need it. */
export interface AirStream {
  /** Far in front of the rotor, > 0. [m/s] */
  readonly windSpeed: number
  /** ν, > 0. [m²/s] */
  readonly kinematicViscosity: number
}

export interface ElementOptions {
  /** Rings of equal width the blade is cut into. Default 20. */
  readonly elements?: number
  /** Told, the rotor's polars are taken ring by ring at their own Reynolds number. */
  readonly stream?: AirStream
}

/** Elements used when none are asked for. */
export const usualElements = 20

/** Solidities B c / (2πr) for which the theory is more than an estimate; above it blades work as a cascade. */
export const solidityRange = [0, 0.4] as const

/** What one ring of the rotor does, in units of the wind. */
export interface Ring {
  φ: number
  α: number
  F: number
  /** Speed of the air past the section over the wind's. */
  W: number
  lift: number
  drag: number
}

export interface Cut {
  readonly Δr: number
  readonly r: Float64Array
  readonly c: Float64Array
  readonly θ: Float64Array
  /** Makes `section` that of ring i at a tip-speed ratio. */
  readonly choose: (i: number, λ: number) => void
  readonly section: (α: number, out: SectionCoefficients) => void
}

interface Cuts {
  readonly plain: Map<number, Cut>
  readonly streamed: Map<number, (stream: AirStream) => Cut>
}

const cuts = new WeakMap<BladeRotor, Cuts>()

/** The rotor cut into rings, radii in units of R; checked once, kept as long as the rotor lives. @internal */
export const cutOf = (rotor: BladeRotor, options: ElementOptions): Cut => {
  const n = options.elements ?? usualElements
  let known = cuts.get(rotor)
  if (known === undefined) {
    known = { plain: new Map(), streamed: new Map() }
    cuts.set(rotor, known)
  }
  const { stream } = options
  if (stream === undefined || rotor.polars === undefined) {
    const kept =
      known.plain.get(n) ?? newCut(rotor, n, [rotor.polar])({ windSpeed: 1, kinematicViscosity: 1 })
    known.plain.set(n, kept)
    return kept
  }
  requirePositive('stream.windSpeed', stream.windSpeed, 'm/s')
  requirePositive('stream.kinematicViscosity', stream.kinematicViscosity, 'm²/s')
  const make = known.streamed.get(n) ?? newCut(rotor, n, rotor.polars)
  known.streamed.set(n, make)
  return make(stream)
}

const newCut = (rotor: BladeRotor, n: number, polars: readonly Polar[]): ((stream: AirStream) => Cut) => {
  const { bladeCount, radius, hubRadius, station, chord, twist, pitch, stallDelay = false } = rotor
  if (!Number.isInteger(bladeCount) || bladeCount < 1)
    refuse({
      name: 'rotor.bladeCount',
      condition: 'a whole number of at least 1',
      value: bladeCount,
      code: 'below-minimum',
    })
  if (!Number.isInteger(n) || n < 1 || n > 1000)
    refuse({ name: 'elements', condition: 'a whole number from 1 to 1000', value: n, code: 'not-a-choice' })
  requirePositive('rotor.radius', radius, 'm')
  requireNotNegative('rotor.hubRadius', hubRadius, 'm')
  requireFinite('rotor.pitch', pitch, 'rad')
  if (hubRadius >= radius)
    refuse({
      name: 'rotor.hubRadius',
      condition: `below the radius of ${radius} m`,
      value: hubRadius,
      unit: 'm',
      code: 'above-maximum',
    })
  if (station.length < 1)
    refuse({ name: 'rotor.station', condition: 'at least 1 long', value: 0, code: 'wrong-length' })
  requireLength('rotor.chord', chord, station.length)
  requireLength('rotor.twist', twist, station.length)
  for (let i = 0; i < station.length; i++) {
    requireNotNegative(`rotor.station[${i}]`, station[i]!, 'm')
    requirePositive(`rotor.chord[${i}]`, chord[i]!, 'm')
    requireFinite(`rotor.twist[${i}]`, twist[i]!, 'rad')
  }
  const chordAt = piecewiseLinear(station, chord)
  const twistAt = piecewiseLinear(station, twist)
  const Δr = (1 - hubRadius / radius) / n
  const r = Float64Array.from({ length: n }, (_, i) => hubRadius / radius + (i + 0.5) * Δr)
  const c = r.map((x) => chordAt(x * radius) / radius)
  const θ = r.map((x) => twistAt(x * radius) + pitch)
  const family = sectionFamily(polars, { aspectRatio: radius / chordAt(0.75 * radius) })
  return ({ windSpeed, kinematicViscosity }) => {
    const perSpeed = (windSpeed * radius) / kinematicViscosity
    let share = 0
    let zeroLift = 0
    const choose = (i: number, λ: number) => {
      const x = λ * r[i]!
      // the wind in the disc is taken as two thirds of the free wind: 10 % of Re where it is another
      family.choose(perSpeed * c[i]! * Math.hypot(2 / 3, x))
      share = stallDelay ? stallDelayShareAt(c[i]! / r[i]!, x) : 0
      zeroLift = family.zeroLift()
    }
    const section = (α: number, out: SectionCoefficients) => {
      family.at(α, out)
      if (share > 0 && α > zeroLift && α < Math.PI / 2) {
        const lost = 2 * Math.PI * (α - zeroLift) - out.lift
        if (lost > 0) out.lift += share * stallDelayFade(α) * lost
      }
    }
    return { Δr, r, c, θ, choose, section }
  }
}

const scratch: SectionCoefficients = { lift: 0, drag: 0 }
const tinyAngle = 1e-9

/** Inflow angle at which momentum and blade forces of one ring agree; looked for about `near` first. @internal */
export const solveRing = (
  B: number,
  Rh: number,
  cut: Cut,
  i: number,
  λ: number,
  ring: Ring,
  near = Number.NaN,
): void => {
  const r = cut.r[i]!
  const θ = cut.θ[i]!
  const σ = (B * cut.c[i]!) / (2 * Math.PI * r)
  const x = λ * r
  cut.choose(i, λ)

  // Ning 2014 equation for the residual, times the local speed ratio and cos φ k' written out, so that it
  // stays finite for a rotor at rest. Drag slows the wind but does not swirl it: its wake is thin
  // (wilson1974), and with it a second, meaningless root appears at φ → 0.
  const residual = (φ: number): number => {
    let s = Math.sin(φ)
    if (Math.abs(s) < tinyAngle) s = s < 0 ? -tinyAngle : tinyAngle
    const c = Math.cos(φ)
    cut.section(φ - θ, scratch)
    const F = lossFactorAt(B, r, 1, Rh, Math.abs(s))
    const k = (σ * (scratch.lift * c + scratch.drag * s)) / (4 * F * s * s)
    return x * sineOverOneMinusInduction(k, F, s) - c + (σ * scratch.lift) / (4 * F)
  }

  const φ = rootAbout(residual, near) ?? inflowRoot(residual)
  let s = Math.sin(φ)
  if (Math.abs(s) < tinyAngle) s = s < 0 ? -tinyAngle : tinyAngle
  const c = Math.cos(φ)
  cut.section(φ - θ, scratch)
  const { lift, drag } = scratch
  const F = lossFactorAt(B, r, 1, Rh, Math.abs(s))
  const k = (σ * (lift * c + drag * s)) / (4 * F * s * s)
  // W sin φ = 1 − a and W cos φ = x (1 + a'): of the two the better conditioned.
  const g = sineOverOneMinusInduction(k, F, s)
  const h = c - (σ * lift) / (4 * F)
  ring.φ = φ
  ring.α = φ - θ
  ring.F = F
  ring.W = Math.abs(g) > 1e-9 && (Math.abs(g) * x >= 0.5 * Math.abs(h) || x === 0) ? 1 / g : x / h
  ring.lift = lift
  ring.drag = drag
  // Blades set far off (reversed, or filling the ring) can have roots only where the air would have to come
  // from behind the section: then the ring is left uninduced. Never met on blades with twist −5…35° and
  // solidity under 1; one ring in 700 of blades drawn without sense.
  if (!(ring.W >= 0) || !Number.isFinite(ring.W)) ring.W = Math.hypot(1, x)
}

/** A root within 0.12 rad of a guess, on the usual branch: the residual rises through it. */
const rootAbout = (f: (φ: number) => number, near: number): number | undefined => {
  const quarter = Math.PI / 2
  if (!(near > 2 * tinyAngle && near < quarter)) return undefined
  let a = near
  let fa = f(a)
  if (fa === 0) return a
  const sign = fa < 0 ? 1 : -1
  for (const step of [0.004, 0.016, 0.04, 0.12]) {
    const b = Math.min(quarter, Math.max(2 * tinyAngle, near + sign * step))
    const fb = f(b)
    if (fb * sign >= 0) return bracketed(f, a, fa, b, fb)
    a = b
    fa = fb
  }
  return undefined
}

/** Ning's brackets: wind from the front first, then propeller brake, then air driven round past the blade. */
const inflowRoot = (f: (φ: number) => number): number => {
  const quarter = Math.PI / 2
  const f0 = f(2 * tinyAngle)
  const f90 = f(quarter)
  if (f0 <= 0 && f90 >= 0) return bracketed(f, 2 * tinyAngle, f0, quarter, f90)
  // The bracket may still hold an even number of roots, or the root may lie outside it: walk.
  const steps = 24
  let a = 2 * tinyAngle
  let fa = f0
  for (let i = 1; i <= steps; i++) {
    const b = i === steps ? quarter : (quarter * i) / steps
    const fb = i === steps ? f90 : f(b)
    if (fa <= 0 && fb >= 0) return bracketed(f, a, fa, b, fb)
    a = b
    fa = fb
  }
  for (const [from, to] of [
    [-2 * tinyAngle, -quarter + 1e-6],
    [quarter, Math.PI - 1e-6],
  ] as const) {
    a = from
    fa = f(a)
    for (let i = 1; i <= steps; i++) {
      const b = from + ((to - from) * i) / steps
      const fb = f(b)
      if (fa * fb <= 0) return bracketed(f, a, fa, b, fb)
      a = b
      fa = fb
    }
  }
  return refuse({
    name: 'inflow angle',
    condition: 'found between −90° and 180°',
    value: [f0, f90],
    code: 'no-convergence',
  })
}

/** Regula falsi with the Anderson–Björck step: a bisection every fourth step keeps it from creeping. */
const bracketed = (f: (φ: number) => number, a0: number, fa0: number, b0: number, fb0: number): number => {
  let a = a0
  let fa = fa0
  let b = b0
  let fb = fb0
  if (fa === 0) return a
  if (fb === 0) return b
  for (let step = 0; step < 200; step++) {
    let m = step % 4 === 3 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa)
    if (!(m > Math.min(a, b) && m < Math.max(a, b))) m = (a + b) / 2
    const fm = f(m)
    if (fm === 0) return m
    if (fm * fb < 0) {
      a = b
      fa = fb
    } else {
      const g = 1 - fm / fb
      fa *= g > 0 ? g : 0.5
    }
    b = m
    fb = fm
    if (Math.abs(b - a) < 1e-10 || Math.abs(fm) < 1e-12) return b
  }
  return b
}

/** A ring to be written into. @internal */
export const newRing = (): Ring => ({ φ: 0, α: 0, F: 1, W: 0, lift: 0, drag: 0 })

/** Refuses what is no tip-speed ratio. @internal */
export const requireTipSpeedRatio = (λ: number) => requireNotNegative('tipSpeedRatio', λ)
