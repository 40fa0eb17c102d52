/** Double-multiple streamtubes: power, thrust and torque of an upright rotor with straight blades. */
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'
import type { RotorCoefficients } from './blade-element.ts'
import { readDynamicSection } from './dynamic-stall.ts'
import { flowCurvatureAngle } from './flow-curvature.ts'
import type { Polar, SectionCoefficients } from './polar.ts'
import { readSection, type SectionTable, sectionTable } from './section-table.ts'
import { type Struts, strutTorqueCoefficient } from './strut-drag.ts'

/** An upright rotor of straight blades of constant chord. */
export interface StraightBladeRotor {
  readonly bladeCount: number
  /** From the axis to the blades. [m] */
  readonly radius: number
  /** Length of the blades. [m] */
  readonly height: number
  readonly chord: number
  /** Positive: leading edge outward. [rad] */
  readonly pitch: number
  /** Where the blade is mounted, from the leading edge, over the chord. [1] */
  readonly mount: number
  /** Of the section, at rising Reynolds numbers. */
  readonly polars: readonly Polar[]
  readonly struts: Struts | undefined
}

/** The air a rotor works in: it decides the Reynolds numbers. */
export interface StreamtubeAir {
  /** Far in front of the rotor. [m/s] */
  readonly windSpeed: number
  readonly kinematicViscosity: number
}

export interface StreamtubeOptions {
  /** Tubes across the rotor; each is crossed twice. Default 18. */
  readonly tubes?: number
  /** Whether the flow needs time to let go and to lie on again. Default true. */
  readonly dynamicStall?: boolean
}

/** Chord over radius up to which the theory has been compared with measured rotors. [1] */
export const streamtubeChordRange = [0.05, 0.28] as const

const usualTubes = 18

/**
 * Wind left for the downwind half where the upwind half takes more than momentum theory can say, over the free wind: common practice, no
 * source. It is what momentum theory leaves at an induction of 0.4, from which the empirical thrust curve takes over.
 */
const leastWake = 0.2

/** What one blade meets and gives round the turn; azimuth 0 faces the wind, the blade then moves with the wind beside it. */
export interface StreamtubeTurn extends RotorCoefficients {
  /** θ of the middle of each arc, from −π/2 to 3π/2: the upwind half first. [rad] */
  readonly azimuth: Float64Array
  /** α of one blade, flow curvature included. [rad] */
  readonly attackAngle: Float64Array
  /** Wind at the blade over the free wind. [1] */
  readonly windRatio: Float64Array
  /** Air speed past the blade over the free wind. [1] */
  readonly airSpeed: Float64Array
  /** Torque of one blade, as its part of C_q. [1] */
  readonly bladeTorque: Float64Array
  /** Drag of one blade times its air speed, as a part of C_p: what the blade makes into eddies. [1] */
  readonly bladeLoss: Float64Array
  /** Streamwise force of one blade, as its part of C_t. [1] */
  readonly bladeThrust: Float64Array
  /** C_q of the whole rotor with its first blade at each azimuth, arms included. [1] */
  readonly rotorTorque: Float64Array
}

const tables = new WeakMap<StraightBladeRotor, SectionTable>()

/** The blade's coefficients; the rotor is checked once and kept as long as it lives. */
function tableOf(rotor: StraightBladeRotor): SectionTable {
  const kept = tables.get(rotor)
  if (kept) return kept
  const { bladeCount, radius, height, chord } = rotor
  if (!Number.isInteger(bladeCount) || bladeCount < 1)
    refuse({
      name: 'rotor.bladeCount',
      condition: 'a whole number of at least 1',
      value: bladeCount,
      code: 'below-minimum',
    })
  requirePositive('rotor.radius', radius, 'm')
  requirePositive('rotor.height', height, 'm')
  requirePositive('rotor.chord', chord, 'm')
  requireFinite('rotor.pitch', rotor.pitch, 'rad')
  requireBetween('rotor.mount', rotor.mount, [0, 1])
  const table = sectionTable(rotor.polars, height / chord)
  tables.set(rotor, table)
  return table
}

/** Momentum theory, and Buhl's curve above its reach; wind sped up for a < 0. */
const momentumThrust = (a: number): number =>
  a <= 0.4 ? 4 * a * (1 - a) : 8 / 9 - (4 / 9) * a + (14 / 9) * a * a

/** One blade at one place; written into. */
interface Place {
  v: number
  α: number
  W: number
  lift: number
  drag: number
  thrust: number
  tangential: number
}

const coefficients: SectionCoefficients = { lift: 0, drag: 0 }

/** Solves the tubes of one rotor at one tip-speed ratio. */
function solver(
  rotor: StraightBladeRotor,
  λ: number,
  air: StreamtubeAir,
  { dynamicStall, Δθ }: { readonly dynamicStall: boolean; readonly Δθ: number },
) {
  const table = tableOf(rotor)
  const { chord: c, radius: R, pitch: β } = rotor
  const logUnit = Math.log((air.windSpeed * c) / air.kinematicViscosity)
  const curvature = flowCurvatureAngle({
    chordOverRadius: c / R,
    mount: rotor.mount,
    tipSpeedRatio: λ,
    airSpeed: 1,
  })
  /** Chords of air that pass a blade between two tubes, over its air speed. */
  const chordsUnit = λ > 0 ? (Δθ * R) / (λ * c) : Number.POSITIVE_INFINITY
  let attached = 1
  let attachedNow = 1

  /** Forces at azimuth θ with the wind v there, all over the free wind's. */
  const at = (sinθ: number, cosθ: number, v: number, place: Place): void => {
    const N = v * cosθ
    const T = λ - v * sinθ
    const W = Math.max(Math.sqrt(N * N + T * T), 1e-6)
    const φ = Math.atan2(N, T)
    const α = φ - β + curvature / W
    const logReynolds = logUnit + Math.log(W)
    if (dynamicStall) {
      attachedNow = readDynamicSection(table, logReynolds, α, attached, chordsUnit * W, coefficients)
    } else readSection(table, logReynolds, α, coefficients)
    const { lift, drag } = coefficients
    const sin = N / W
    const cos = T / W
    place.v = v
    place.α = α
    place.W = W
    place.lift = lift
    place.drag = drag
    place.tangential = lift * sin - drag * cos
    place.thrust = (lift * cos + drag * sin) * cosθ + place.tangential * sinθ
  }

  /** Induction at which blades and momentum agree in a tube that brings the wind `ve`: the least one, as the wind builds it up. */
  const solve = (sinθ: number, cosθ: number, ve: number, place: Place): number => {
    const σ = (rotor.bladeCount * c) / (2 * Math.PI * R * Math.abs(cosθ) * ve * ve)
    const surplus = (a: number): number => {
      at(sinθ, cosθ, (1 - a) * ve, place)
      return σ * place.W * place.W * place.thrust - momentumThrust(a)
    }
    let a = 0
    let fa = surplus(0)
    if (fa === 0) return 0
    const way = fa > 0 ? 0.1 : -0.1
    let b = a
    let fb = fa
    for (let k = 1; k <= 20; k++) {
      b = k * way
      if (b > 1) return 1
      fb = surplus(b)
      if (fa * fb <= 0) break
      a = b
      fa = fb
    }
    if (fa * fb > 0) return b
    for (let k = 0; k < 60 && Math.abs(b - a) > 1e-7; k++) {
      let m = k % 4 === 3 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa)
      if (!(m > Math.min(a, b) && m < Math.max(a, b))) m = (a + b) / 2
      const fm = surplus(m)
      if (Math.abs(fm) < 1e-9) return m
      if (fm * fb < 0) {
        a = b
        fa = fb
      } else {
        const g = 1 - fm / fb
        fa *= g > 0 ? g : 0.5
      }
      b = m
      fb = fm
    }
    return b
  }
  return {
    solve,
    /** The blade goes on to the next tube, with the flow as it lies on now. */
    goOn: (): void => {
      attached = attachedNow
    },
  }
}

const newPlace = (): Place => ({ v: 0, α: 0, W: 0, lift: 0, drag: 0, thrust: 0, tangential: 0 })

/** Sum of the blades' torque with the first at azimuth number k, straight lines between the samples. */
function wholeTorque(bladeTorque: Float64Array, bladeCount: number): Float64Array {
  const n = bladeTorque.length
  return bladeTorque.map((_, k) => {
    let sum = 0
    for (let blade = 0; blade < bladeCount; blade++) {
      const place = k + (blade * n) / bladeCount
      const low = Math.floor(place)
      const t = place - low
      sum += (1 - t) * bladeTorque[low % n]! + t * bladeTorque[(low + 1) % n]!
    }
    return sum
  })
}

/**
 * The turn of an upright rotor: what each blade meets and gives at every azimuth, and the rotor's torque round the turn.
 *
 *   σ W² C_x / (|cos θ| w²) = 4 a (1 − a),   σ = B c / (2πR),   C_q = B ⟨c W² C_t / (2R)⟩,   C_p = λ C_q
 *
 * In each tube the wind is slowed twice, by the upwind half and, starting from the wake 1 − 2a of that, by the downwind half. W and the free
 * wind are in units of the wind; C_x is the streamwise, C_t the tangential force coefficient. Above a = 0.4 Buhl's curve replaces the parabola.
 *
 * Holds: straight blades, steady wind, chord to a fifth of the radius; tubes that neither widen nor mix, no wake of the shaft. Accuracy: the
 * greatest normal force of a slender rotor (chord 0.12 R, its own polar) 3 % and its C_p 14 % low; the greatest C_p of a towed rotor of
 * chord 0.10 R 5 % low, of one of 0.28 R 1 % low, both at a tip-speed ratio 0.9 too high and well below the measured one at lower ratios; of
 * one in the open wind 41 % too high: the section at low Reynolds numbers decides. 18 tubes: C_p within 0.015 of many.
 *
 * @param rotor                 shape and section                               [1]
 * @param tipSpeedRatio         λ  ωR/v, 0 for a rotor at rest                  [1]
 * @param air                   wind [m/s] and viscosity [m²/s]: Reynolds numbers
 * @param options.tubes         across the rotor, 2…400, default 18             [1]
 * @param options.dynamicStall  default true                                    [1]
 * @returns                     lists round the turn, angles [rad], the rest [1]; C_p, C_t, C_q on 2RH
 * @throws RangeError           rotor malformed, tip-speed ratio below zero
 * @source paraschivoiu2002, double-multiple streamtubes with two induction factors, from memory, not opened
 * @example straightBladeTurn({ bladeCount: 3, radius: 1, height: 2, chord: 0.1, pitch: 0, mount: 0.25, struts: undefined, polars: [{ angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 }] }, 4, { windSpeed: 6, kinematicViscosity: 1.5e-5 }).azimuth[0] // -1.48353
 */
export function straightBladeTurn(
  rotor: StraightBladeRotor,
  tipSpeedRatio: number,
  air: StreamtubeAir,
  options: StreamtubeOptions = {},
): StreamtubeTurn {
  requireNotNegative('tipSpeedRatio', tipSpeedRatio)
  requirePositive('windSpeed', air.windSpeed, 'm/s')
  requirePositive('kinematicViscosity', air.kinematicViscosity, 'm²/s')
  const { tubes = usualTubes, dynamicStall = true } = options
  if (!Number.isInteger(tubes) || tubes < 2 || tubes > 400)
    refuse({ name: 'tubes', condition: 'a whole number from 2 to 400', value: tubes, code: 'not-a-choice' })
  const λ = tipSpeedRatio
  const { solve, goOn } = solver(rotor, λ, air, { dynamicStall, Δθ: Math.PI / tubes })
  const n = 2 * tubes
  const list = () => new Float64Array(n)
  const Δθ = Math.PI / tubes
  const out = {
    azimuth: list().map((_, i) => -Math.PI / 2 + (i + 0.5) * Δθ),
    attackAngle: list(),
    windRatio: list(),
    airSpeed: list(),
    bladeTorque: list(),
    bladeLoss: list(),
    bladeThrust: list(),
  }
  const place = newPlace()
  const half = rotor.chord / (2 * rotor.radius)
  let crossing = 0
  const keep = (i: number) => {
    const q = half * place.W * place.W
    out.attackAngle[i] = place.α
    out.windRatio[i] = place.v
    out.airSpeed[i] = place.W
    out.bladeTorque[i] = q * place.tangential
    out.bladeThrust[i] = q * place.thrust
    out.bladeLoss[i] = q * place.W * place.drag
    crossing += place.v / n
  }
  const wake = new Float64Array(tubes)
  for (let i = 0; i < n; i++) {
    const upwind = i < tubes
    const tube = upwind ? i : n - 1 - i
    const a = solve(Math.sin(out.azimuth[i]!), Math.cos(out.azimuth[i]!), upwind ? 1 : wake[tube]!, place)
    if (upwind) wake[tube] = Math.max(1 - 2 * a, leastWake)
    goOn()
    keep(i)
  }
  const B = rotor.bladeCount
  const strut = rotor.struts
    ? strutTorqueCoefficient(rotor.struts, {
        tipSpeedRatio: λ,
        radius: rotor.radius,
        height: rotor.height,
        windRatio: Math.max(crossing, 0),
      })
    : 0
  const mean = (values: Float64Array) => (B * values.reduce((sum, value) => sum + value, 0)) / n
  const torque = mean(out.bladeTorque) + strut
  return {
    ...out,
    rotorTorque: wholeTorque(out.bladeTorque, B).map((value) => value + strut),
    torque,
    power: λ * torque,
    thrust: mean(out.bladeThrust),
  }
}
