/** Blade shapes for a chosen tip-speed ratio: the optimum of momentum theory with wake rotation, and shapes fit to be carved. */
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { refuse, requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'
import type { BladeRotor } from './blade-ring.ts'
import { optimumInduction } from './induction.ts'
import { bestGlide, type Polar } from './polar.ts'
import { lossFactorAt } from './tip-loss.ts'

/** Design tip-speed ratios for which such blades are built. */
export const designRatioRange = [1, 12] as const

/** What is asked of the blade. */
export interface OptimumRotorRequest {
  /** B. [1] */
  readonly bladeCount: number
  /** Of the tip. [m] */
  readonly radius: number
  /** Where the blade begins. [m] */
  readonly hubRadius: number
  /** λ the shape is best at. [1] */
  readonly tipSpeedRatio: number
  readonly polar: Polar
  /** Angle of attack to work at; the polar's best glide when left out. [rad] */
  readonly attackAngle?: number
  /** Lift coefficient to work at, with attackAngle. [1] */
  readonly liftCoefficient?: number
  /** Chord smaller by Prandtl's factor towards the tip. Default false: the tip is cut off in practice anyway. */
  readonly tipLoss?: boolean
  /** Stations from hub to tip. Default 17. */
  readonly stations?: number
  /** Widest chord that fits the plank or printer. [m] */
  readonly greatestChord?: number
  /** Narrowest chord that can be carved or printed. [m] */
  readonly leastChord?: number
}

/**
 * Rotor whose chord and twist follow the optimum with wake rotation at the design tip-speed ratio.
 *
 *   φ = ⅔ arctan(R / (λ r)),   σ C_l = 4 (1 − cos φ) F,   c = 2πr σ / B,   θ = φ − α
 *
 * Chords are then cut to the limits asked for; at the hub the optimum is wider than any plank.
 *
 * Holds: no drag in the shape (its effect is in rotorCoefficients), F = 1 unless tipLoss. Accuracy: C_p at the design ratio within
 * 0.2 % of the best that one factor on all chords and one pitch can add; tipLoss adds 1…2 %.
 *
 * @param request  blade count, radii [m], tip-speed ratio [1], polar, limits of chord [m]
 * @returns        a BladeRotor: stations and chords [m], twists [rad], pitch 0
 * @throws RangeError  radii or ratio not above zero, hub not inside the tip, limits crossed, only one of attackAngle and liftCoefficient
 * @source glauert1935, chapter on the ideal windmill, from memory, not opened
 * @example optimumRotor({ bladeCount: 3, radius: 0.75, hubRadius: 0.1, tipSpeedRatio: 6, polar: { angle: Float64Array.of(0, 0.1, 0.2), lift: Float64Array.of(0, 1, 1.2), drag: Float64Array.of(0.01, 0.02, 0.2), reynolds: 1e5 } }).chord[16] // 0.041958
 */
export function optimumRotor(request: OptimumRotorRequest): BladeRotor {
  const { bladeCount: B, radius: R, hubRadius: Rh, tipSpeedRatio: λ, polar } = request
  const { stations = 17, tipLoss = false } = request
  const { leastChord = 0, greatestChord = Number.MAX_VALUE } = request
  if (!Number.isInteger(B) || B < 1)
    refuse({ name: 'bladeCount', condition: 'a whole number of at least 1', value: B, code: 'below-minimum' })
  requirePositive('radius', R, 'm')
  requirePositive('hubRadius', Rh, 'm')
  requireBetween('hubRadius', Rh, [0, 0.95 * R], 'm')
  requirePositive('tipSpeedRatio', λ)
  if (!Number.isInteger(stations) || stations < 2 || stations > 1000)
    refuse({
      name: 'stations',
      condition: 'a whole number from 2 to 1000',
      value: stations,
      code: 'not-a-choice',
    })
  requireFinite('leastChord', leastChord, 'm')
  requirePositive('greatestChord', greatestChord, 'm')
  if (leastChord > greatestChord)
    refuse({
      name: 'leastChord',
      condition: `at most greatestChord, ${greatestChord} m`,
      value: leastChord,
      unit: 'm',
      code: 'conflict',
    })
  if ((request.attackAngle === undefined) !== (request.liftCoefficient === undefined))
    refuse({
      name: 'attackAngle',
      condition: 'given together with liftCoefficient, or neither',
      value: request.attackAngle ?? null,
      code: 'missing-key',
    })
  const design =
    request.attackAngle === undefined || request.liftCoefficient === undefined
      ? bestGlide(polar)
      : { angle: request.attackAngle, lift: request.liftCoefficient }
  requireFinite('attackAngle', design.angle, 'rad')
  requirePositive('liftCoefficient', design.lift)
  const station = Float64Array.from({ length: stations }, (_, i) => Rh + ((R - Rh) * i) / (stations - 1))
  const chord = new Float64Array(stations)
  const twist = new Float64Array(stations)
  station.forEach((r, i) => {
    const φ = optimumInduction((λ * r) / R).inflowAngle
    const F = tipLoss ? lossFactorAt(B, r / R, 1, 0, Math.sin(φ)) : 1
    const σ = (8 * Math.sin(φ / 2) ** 2 * F) / design.lift
    chord[i] = Math.min(greatestChord, Math.max(leastChord, (2 * Math.PI * r * σ) / B))
    twist[i] = φ - design.angle
  })
  // Prandtl's factor is zero at the very tip: no blade ends in a point of no chord.
  if (chord[stations - 1]! <= 1e-3 * chord[stations - 2]!)
    chord[stations - 1] = Math.max(leastChord, 0.25 * chord[stations - 2]!)
  return { bladeCount: B, radius: R, hubRadius: Rh, station, chord, twist, pitch: 0, polar }
}

/**
 * The same rotor with chord, and twist if asked, made straight lines through two of its stations.
 *
 *   c(r) = c_1 + (c_2 − c_1) (r − r_1) / (r_2 − r_1)
 *
 * The stations for the chord are the source's; those for the twist were chosen here as the pair that keeps most C_p.
 *
 * Holds: the outer part of the blade, which does most of the work. Accuracy: for three blades of a thin section at design ratios
 * 3…8 the straight chord costs up to 2 % of C_p, chord and twist together up to 5 %.
 *
 * @param rotor                 chord [m] and twist [rad] at its stations
 * @param options.through       r/R of the two stations whose chord is kept; default 0.7 and 0.9   [1]
 * @param options.twist         straight twist too; default false: only the taper                  [1]
 * @param options.twistThrough  r/R of the two stations whose twist is kept; default 0.4 and 0.8   [1]
 * @param options.leastChord    no narrower than this                                              [m]
 * @param options.greatestChord no wider than this                                                 [m]
 * @returns                     a BladeRotor with the same stations [m]
 * @throws RangeError           the two stations equal or outside the blade, a straight chord that is not above zero
 * @source burton2011, section 3.7.2 on a practical blade design, from memory, not opened
 * @example straightenedRotor({ bladeCount: 3, radius: 1, hubRadius: 0.1, station: Float64Array.of(0.1, 0.7, 0.9, 1), chord: Float64Array.of(0.3, 0.11, 0.09, 0.07), twist: Float64Array.of(0.4, 0.1, 0.05, 0.03), pitch: 0, polar: { angle: Float64Array.of(0, 0.1), lift: Float64Array.of(0, 1), drag: Float64Array.of(0.01, 0.02), reynolds: 1e5 } }).chord[0] // 0.17
 */
export function straightenedRotor(
  rotor: BladeRotor,
  options: {
    readonly through?: readonly [number, number]
    readonly twist?: boolean
    readonly twistThrough?: readonly [number, number]
    readonly leastChord?: number
    readonly greatestChord?: number
  } = {},
): BladeRotor {
  const { through = [0.7, 0.9], twist = false, leastChord = 0, greatestChord = Number.MAX_VALUE } = options
  const { twistThrough = [0.4, 0.8] } = options
  const { station, radius } = rotor
  const least = rotor.hubRadius / radius
  if (station.length < 2)
    refuse({
      name: 'rotor.station',
      condition: 'at least 2 long',
      value: station.length,
      code: 'wrong-length',
    })
  const at = (values: Float64Array, r: number) => {
    let i = 0
    while (i + 2 < station.length && station[i + 1]! < r) i++
    const t = (r - station[i]!) / (station[i + 1]! - station[i]!)
    return values[i]! + t * (values[i + 1]! - values[i]!)
  }
  const straight = (values: Float64Array, name: string, [near, far]: readonly [number, number]) => {
    requireBetween(`${name}[0]`, near, [least, 1])
    requireBetween(`${name}[1]`, far, [least, 1])
    if (!(far > near))
      refuse({ name: `${name}[1]`, condition: `above ${name}[0]`, value: far, code: 'not-increasing' })
    const [r1, r2] = [near * radius, far * radius]
    const [v1, v2] = [at(values, r1), at(values, r2)]
    return station.map((r) => v1 + ((v2 - v1) * (r - r1)) / (r2 - r1))
  }
  const chord = straight(rotor.chord, 'through', through).map((c) =>
    Math.min(greatestChord, Math.max(leastChord, c)),
  )
  chord.forEach((c, i) => {
    requirePositive(`chord[${i}]`, c, 'm')
  })
  return { ...rotor, chord, twist: twist ? straight(rotor.twist, 'twistThrough', twistThrough) : rotor.twist }
}

/**
 * Power coefficient of the ideal rotor with wake rotation: endless number of blades, no drag.
 *
 *   C_p = (8/λ²) ∫ (1 − a) a' x³ dx from 0 to λ
 *
 * Holds: λ > 0; tends to 16/27 as λ grows. Accuracy: 1e-9.
 *
 * @param tipSpeedRatio  λ  > 0    [1]
 * @returns              C_p       [1]
 * @throws RangeError    tip-speed ratio not above zero
 * @source glauert1935, table of the ideal windmill, from memory, not opened
 * @example idealPowerCoefficient(6) // 0.57586
 */
export function idealPowerCoefficient(tipSpeedRatio: number): number {
  requirePositive('tipSpeedRatio', tipSpeedRatio)
  const λ = tipSpeedRatio
  const integrand = (x: number) => {
    const { axial, tangential } = optimumInduction(x)
    return (1 - axial) * tangential * x ** 3
  }
  let sum = 0
  // The integrand grows like x and is smooth; pieces that double keep the points where it bends.
  let from = 0
  let to = Math.min(λ, 0.5)
  while (from < λ) {
    const { nodes, weights } = gaussLegendreOn(24, from, to)
    nodes.forEach((x, i) => {
      sum += weights[i]! * integrand(x)
    })
    from = to
    to = Math.min(λ, 2 * to)
  }
  return (8 * sum) / λ ** 2
}
