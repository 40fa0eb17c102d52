/** Section polars: lift and drag coefficients of a blade section over the whole circle of angles of attack. */
import { monotoneCubic } from '../../numerics/interpolate.ts'
import { refuse, requireFinite, requireLength, requirePositive } from '../../refusal/require.ts'

/** Measured or computed coefficients of one section at one Reynolds number. */
export interface Polar {
  /** Angles of attack, rising, within ±π. [rad] */
  readonly angle: Float64Array
  /** Lift coefficient at each angle. [1] */
  readonly lift: Float64Array
  /** Drag coefficient at each angle, above zero or zero. [1] */
  readonly drag: Float64Array
  /** Reynolds number on the chord. [1] */
  readonly reynolds: number
}

export interface SectionCoefficients {
  lift: number
  drag: number
}

/** Aspect ratios the drag ceiling of the extension was fitted for. */
export const viternaAspectRatioRange = [1, 50] as const

/** The part of the lift kept when the trailing edge leads, or when the section works upside down. */
export const reversedLiftShare = 0.7

/** Lift and drag between the measured points, checked. @internal */
export const polarFunctions = (polar: Polar) => {
  const { angle, lift, drag } = polar
  if (angle.length < 2)
    refuse({ name: 'polar.angle', condition: 'at least 2 long', value: angle.length, code: 'wrong-length' })
  requireLength('polar.lift', lift, angle.length)
  requireLength('polar.drag', drag, angle.length)
  requirePositive('polar.reynolds', polar.reynolds)
  for (let i = 0; i < angle.length; i++) {
    requireFinite(`polar.angle[${i}]`, angle[i]!, 'rad')
    requireFinite(`polar.lift[${i}]`, lift[i]!)
    requireFinite(`polar.drag[${i}]`, drag[i]!)
    if (drag[i]! < 0)
      refuse({
        name: `polar.drag[${i}]`,
        condition: 'zero or above',
        value: drag[i],
        code: 'below-minimum',
      })
    if (Math.abs(angle[i]!) > Math.PI * (1 + 1e-12))
      refuse({
        name: `polar.angle[${i}]`,
        condition: 'within −π to π',
        value: angle[i],
        unit: 'rad',
        code: angle[i]! > 0 ? 'above-maximum' : 'below-minimum',
      })
  }
  return [monotoneCubic(angle, lift), monotoneCubic(angle, drag)] as const
}

/** Lift and drag from one search: the cubics of the pieces, written out by powers of t. */
const togetherOf = (
  angle: Float64Array,
  lift: (at: number) => number,
  drag: (at: number) => number,
): ((at: number, out: SectionCoefficients) => void) => {
  const n = angle.length - 1
  const powers = new Float64Array(8 * n)
  for (let i = 0; i < n; i++) {
    const at = (t: number) => (t === 1 ? angle[i + 1]! : angle[i]! + t * (angle[i + 1]! - angle[i]!))
    for (const [j, f] of [lift, drag].entries()) {
      const [p, q, r, s] = [f(at(0)), f(at(1 / 3)), f(at(2 / 3)), f(at(1))]
      powers[8 * i + 4 * j] = p
      powers[8 * i + 4 * j + 1] = (-11 * p + 18 * q - 9 * r + 2 * s) / 2
      powers[8 * i + 4 * j + 2] = (9 * (2 * p - 5 * q + 4 * r - s)) / 2
      powers[8 * i + 4 * j + 3] = (9 * (-p + 3 * q - 3 * r + s)) / 2
    }
  }
  return (at, out) => {
    let i = 0
    let high = n
    while (high - i > 1) {
      const middle = (i + high) >> 1
      if (angle[middle]! <= at) i = middle
      else high = middle
    }
    const t = (at - angle[i]!) / (angle[i + 1]! - angle[i]!)
    const k = 8 * i
    out.lift = powers[k]! + t * (powers[k + 1]! + t * (powers[k + 2]! + t * powers[k + 3]!))
    out.drag = powers[k + 4]! + t * (powers[k + 5]! + t * (powers[k + 6]! + t * powers[k + 7]!))
  }
}

/** Viterna's four constants, joined to the measured point (α, lift, drag). */
const viterna = (α: number, lift: number, drag: number, aspectRatio: number) => {
  // Above 50 the blade is as good as endless: 2.01.
  const CDmax = 1.11 + 0.018 * Math.min(aspectRatio, viternaAspectRatioRange[1])
  const s = Math.sin(α)
  const c = Math.cos(α)
  const A1 = CDmax / 2
  const A2 = ((lift - CDmax * s * c) * s) / (c * c)
  const B2 = (drag - CDmax * s * s) / c
  return (at: number, out: SectionCoefficients) => {
    const sin = Math.sin(at)
    const cos = Math.cos(at)
    out.lift = A1 * Math.sin(2 * at) + (A2 * cos * cos) / sin
    out.drag = CDmax * sin * sin + B2 * cos
  }
}

const mix = (from: number, to: number, t: number) => from + t * (to - from)

/** Least angle at which the post-stall formula may be joined: below it cos²α/sin α runs away. [rad] */
const leastJoin = (8 * Math.PI) / 180

/**
 * Polar carried to every angle of attack: the measured points inside, Viterna–Corrigan outside them.
 *
 *   C_L = ½ C_Dmax sin 2α + A2 cos²α / sin α,   C_D = C_Dmax sin²α + B2 cos α,   C_Dmax = 1.11 + 0.018 AR ≤ 2.01
 *
 * A2 and B2 make both curves meet the last measured point. With the trailing edge or the belly leading the lift is 0.7 of the mirrored curve.
 *
 * Holds: stalled blades of aspect ratio 1…50, polar measured past stall. Accuracy: the measured part exact at its points; the
 * post-stall part about 20 % (a fit to rotor power, not to sections); the factor 0.7 is common practice, no source.
 *
 * @param polar                the section's points                       [1]
 * @param options.aspectRatio  AR  blade length over a typical chord, > 0 [1]
 * @returns                    lift and drag coefficient at an angle      [1]
 * @throws RangeError          lists of unequal length, angles not rising or beyond ±π, drag below zero, aspect ratio not above zero
 * @source viterna1982, equations for the stalled region, from memory, not opened
 * @example extendedPolar({ angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 }, { aspectRatio: 10 })(Math.PI / 2).drag // 1.29
 */
export function extendedPolar(
  polar: Polar,
  options: { readonly aspectRatio: number },
): (angle: number) => SectionCoefficients {
  const into = extendedPolarInto(polar, options)
  return (angle) => {
    requireFinite('angle', angle, 'rad')
    const out = { lift: 0, drag: 0 }
    into(angle, out)
    return out
  }
}

/** The same, writing into a given object: for loops that ask a hundred thousand times. @internal */
export const extendedPolarInto = (
  polar: Polar,
  { aspectRatio }: { readonly aspectRatio: number },
): ((angle: number, out: SectionCoefficients) => void) => {
  requirePositive('aspectRatio', aspectRatio)
  const [lift, drag] = polarFunctions(polar)
  const n = polar.angle.length
  const low = polar.angle[0]!
  const high = polar.angle[n - 1]!
  const dragAtZero = drag(0)
  const measured = togetherOf(polar.angle, lift, drag)

  // Upper join: the last measured point, or the least angle that lets the formula be joined.
  const joinHigh = Math.max(high, leastJoin)
  const CLs = lift(high)
  const CDs = drag(high)
  const above = joinHigh < 1.5 ? viterna(joinHigh, CLs, CDs, aspectRatio) : undefined
  // Lower join: the polar's own lower end if it goes as deep as the upper one, else the mirrored curve.
  const ownLow = low <= -leastJoin && -low >= joinHigh && low > -1.5
  const joinLow = low <= -1.5 ? -low : ownLow ? -low : joinHigh
  const CLl = ownLow || low <= -1.5 ? -lift(low) : reversedLiftShare * CLs
  const CDl = ownLow || low <= -1.5 ? drag(low) : CDs
  const below = low <= -1.5 ? undefined : viterna(joinLow, CLl, CDl, aspectRatio)

  /** Angles past the measured part, folded to one side: α > 0, the join at `join`. */
  const outside = (
    α: number,
    join: number,
    end: readonly [number, number],
    curve: typeof above,
    out: SectionCoefficients,
  ) => {
    if (curve === undefined) {
      // Measured to 90° or past it: straight to no lift, least drag at 180°.
      const t = join >= Math.PI ? 1 : (α - join) / (Math.PI - join)
      out.lift = mix(end[0], 0, t)
      out.drag = mix(end[1], dragAtZero, t)
    } else if (α <= Math.PI / 2) curve(α, out)
    else if (α <= Math.PI - join) {
      curve(Math.PI - α, out)
      out.lift *= -reversedLiftShare
    } else {
      const t = (α - (Math.PI - join)) / join
      out.lift = mix(-reversedLiftShare * end[0], 0, t)
      out.drag = mix(end[1], dragAtZero, t)
    }
  }

  return (angle, out) => {
    let α = angle
    if (α > Math.PI || α < -Math.PI) α -= 2 * Math.PI * Math.round(α / (2 * Math.PI))
    if (α >= low && α <= high) measured(α, out)
    else if (α > high) {
      if (α < joinHigh) {
        out.lift = CLs
        out.drag = CDs
      } else outside(α, joinHigh, [CLs, CDs], above, out)
    } else if (-α < joinLow) {
      // Between the mirrored stall point and the first measured one: a straight line.
      const t = (α + joinLow) / (low + joinLow)
      out.lift = mix(-CLl, lift(low), t)
      out.drag = mix(CDl, drag(low), t)
    } else {
      outside(-α, joinLow, [CLl, CDl], below, out)
      out.lift = -out.lift
    }
  }
}

/**
 * Angle of attack of the best glide, with the lift and drag there.
 *
 *   α* = arg max C_L / C_D
 *
 * Holds: inside the measured points. Accuracy: to 1/64 of the spacing of the points; the shape-keeping cubic decides between them.
 *
 * @param polar  the section's points                     [1]
 * @returns      angle [rad], lift, drag and their ratio  [1]
 * @throws RangeError  polar malformed, or no angle with lift above zero
 * @source derived, from the definition of the glide ratio
 * @example bestGlide({ angle: Float64Array.of(0, 0.1, 0.2), lift: Float64Array.of(0, 1, 1.2), drag: Float64Array.of(0.01, 0.02, 0.2), reynolds: 1e5 }).angle // 0.083
 */
export function bestGlide(polar: Polar): {
  readonly angle: number
  readonly lift: number
  readonly drag: number
  readonly ratio: number
} {
  const [lift, drag] = polarFunctions(polar)
  let best = { angle: 0, lift: 0, drag: 1, ratio: 0 }
  const steps = 64
  for (let i = 0; i + 1 < polar.angle.length; i++)
    for (let j = 0; j <= steps; j++) {
      const angle = mix(polar.angle[i]!, polar.angle[i + 1]!, j / steps)
      const cl = lift(angle)
      const cd = Math.max(drag(angle), 1e-9)
      if (cl / cd > best.ratio) best = { angle, lift: cl, drag: cd, ratio: cl / cd }
    }
  if (best.ratio === 0)
    refuse({ name: 'polar.lift', condition: 'above zero at some angle', value: 0, code: 'below-minimum' })
  return best
}

/**
 * Polar at a Reynolds number between those of measured ones, mixed along its logarithm.
 *
 *   C(Re) = C_i + (C_j − C_i) ln(Re/Re_i) / ln(Re_j/Re_i)
 *
 * Holds: polars of one section; outside their Reynolds numbers the nearest one is kept as it is. Accuracy: a laminar bubble can
 * come or go between two measured numbers; then no better than the difference of the two.
 *
 * @param polars    of one section, at rising Reynolds numbers  [1]
 * @param reynolds  Re  wanted                                  [1]
 * @returns         points at the angles common to both polars  [1]
 * @throws RangeError  no polar, Reynolds numbers not rising or not above zero, no common angles
 * @source derived, linear interpolation in ln Re
 * @example polarAtReynolds([{ angle: Float64Array.of(0, 0.1), lift: Float64Array.of(0, 0.4), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 }, { angle: Float64Array.of(0, 0.1), lift: Float64Array.of(0, 0.6), drag: Float64Array.of(0.01, 0.01), reynolds: 4e5 }], 2e5).lift[1] // 0.5
 */
export function polarAtReynolds(polars: readonly Polar[], reynolds: number): Polar {
  requirePositive('reynolds', reynolds)
  const first = polars[0]
  if (first === undefined)
    refuse({ name: 'polars', condition: 'at least 1 long', value: 0, code: 'wrong-length' })
  let i = 0
  for (let j = 1; j < polars.length; j++) {
    if (!(polars[j]!.reynolds > polars[j - 1]!.reynolds))
      refuse({
        name: `polars[${j}].reynolds`,
        condition: `above polars[${j - 1}].reynolds`,
        value: polars[j]!.reynolds,
        code: 'not-increasing',
      })
    if (polars[j]!.reynolds <= reynolds) i = j
  }
  const a = polars[i]!
  const b = polars[i + 1]
  if (b === undefined || reynolds <= a.reynolds) return a
  const t = Math.log(reynolds / a.reynolds) / Math.log(b.reynolds / a.reynolds)
  const [liftA, dragA] = polarFunctions(a)
  const [liftB, dragB] = polarFunctions(b)
  const least = Math.max(a.angle[0]!, b.angle[0]!)
  const most = Math.min(a.angle[a.angle.length - 1]!, b.angle[b.angle.length - 1]!)
  const angle = Float64Array.from(
    [...new Set([least, most, ...a.angle, ...b.angle])]
      .filter((x) => x >= least && x <= most)
      .sort((x, y) => x - y),
  )
  if (angle.length < 2)
    refuse({ name: 'polars', condition: 'at angles in common', value: [least, most], code: 'conflict' })
  return {
    angle,
    lift: angle.map((x) => mix(liftA(x), liftB(x), t)),
    drag: angle.map((x) => mix(dragA(x), dragB(x), t)),
    reynolds,
  }
}
