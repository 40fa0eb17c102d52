/** The curve of an upright rotor: straight blades by streamtubes, half drums from the wind tunnel. */
import { dragRotors, dragRotorThrust, otherOverlapShare, twoStoreyGain } from '../data/drag-rotor.ts'
import type { VerticalBlades } from '../machine/vertical-blades.ts'
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import type { Polar } from '../physics/aerodynamics/polar.ts'
import { type StraightBladeRotor, straightBladeTurn } from '../physics/aerodynamics/streamtube.ts'
import type { RotorCurve } from './blade-rotor.ts'

type StraightBlades = Extract<VerticalBlades, { kind: 'straight-blade' }>
type DragRotorBlades = Extract<VerticalBlades, { kind: 'drag-rotor' }>

/** Torque round the turn, as C_q: an upright rotor does not pull evenly, and at rest it depends on where it stands. */
export interface TurnTorque {
  readonly restMean: number
  readonly restLeast: number
  /** Peak to peak over the mean at the best tip-speed ratio; undefined where nobody has measured it. */
  readonly ripple: number | undefined
  /** Of the first blade, 0 facing the wind [rad]; none where only mean and least are known. */
  readonly azimuth: Float64Array
  /** At rest and at the best tip-speed ratio, at each azimuth. */
  readonly rest: Float64Array
  readonly best: Float64Array
}

/** What the curve is computed for: the winds of its Reynolds numbers [m/s], the one that is shown first. */
export interface VerticalRotorAir {
  readonly winds: readonly number[]
  readonly viscosity: number
  /** Of the blades' section. */
  readonly polars: readonly Polar[]
  readonly points: number
}

const straightBladeRotor = (blades: StraightBlades, polars: readonly Polar[]): StraightBladeRotor => ({
  bladeCount: blades.bladeCount,
  radius: blades.radius,
  height: blades.height,
  chord: blades.chord,
  pitch: blades.pitch,
  mount: blades.mount,
  polars,
  struts: blades.struts,
})

/** Runaway is looked for from here down. */
const greatestRatio = 20

function runawayOf(torque: (λ: number, tubes: number) => number): number {
  const coarse = 6
  let high = greatestRatio
  let low = high
  do {
    high = low
    low /= 1.12
  } while (low > 0.05 && torque(low, coarse) <= 0)
  if (low <= 0.05) return 0
  const fine = (λ: number) => torque(λ, 18)
  const [from, to] = [0.9 * low, 1.1 * high]
  return fine(from) > 0 && fine(to) < 0 ? root(fine, [from, to], 1e-3 * low) : (low + high) / 2
}

const rippleOf = (torque: Float64Array): number | undefined => {
  const mean = torque.reduce((sum, value) => sum + value, 0) / torque.length
  return mean > 0 ? (Math.max(...torque) - Math.min(...torque)) / mean : undefined
}

const largest = (ratios: Float64Array, power: Float64Array): RotorCurve['best'] => {
  const at = monotoneCubic(ratios, power)
  const last = ratios[ratios.length - 1]!
  let best = { tipSpeedRatio: 0, power: 0 }
  for (let k = 0; k <= 400; k++) {
    const λ = (last * k) / 400
    if (at(λ) > best.power) best = { tipSpeedRatio: λ, power: at(λ) }
  }
  return best
}

function straightBladeCurve(blades: StraightBlades, air: VerticalRotorAir): RotorCurve {
  const rotor = straightBladeRotor(blades, air.polars)
  const turnIn = (windSpeed: number, λ: number, tubes?: number) =>
    straightBladeTurn(
      rotor,
      λ,
      { windSpeed, kinematicViscosity: air.viscosity },
      tubes === undefined ? {} : { tubes },
    )
  // where the Reynolds number is greatest an unloaded rotor runs fastest
  const fastest = Math.max(...air.winds)
  const runaway = runawayOf((λ, tubes) => turnIn(fastest, λ, tubes).torque)
  const last = Math.max(1.05 * runaway, 1)
  const tipSpeedRatio = Float64Array.from(
    { length: air.points },
    (_, k) => last * (k / (air.points - 1)) ** 1.3,
  )
  const byWind = air.winds.map((wind) => {
    const turns = Array.from(tipSpeedRatio, (λ) => turnIn(wind, λ))
    return {
      wind,
      power: Float64Array.from(turns, ({ power }) => power),
      torque: Float64Array.from(turns, ({ torque }) => torque),
      thrust: Float64Array.from(turns, ({ thrust }) => thrust),
    }
  })
  const [shown] = byWind
  const best = largest(tipSpeedRatio, shown!.power)
  const rest = turnIn(shown!.wind, 0)
  const working = turnIn(shown!.wind, best.tipSpeedRatio)
  return {
    tipSpeedRatio,
    power: shown!.power,
    torque: shown!.torque,
    thrust: shown!.thrust,
    best,
    runaway,
    shape: undefined,
    byWind: [...byWind].sort((one, other) => one.wind - other.wind),
    turn: {
      restMean: rest.torque,
      restLeast: Math.min(...rest.rotorTorque),
      ripple: rippleOf(working.rotorTorque),
      azimuth: rest.azimuth,
      rest: rest.rotorTorque,
      best: working.rotorTorque,
    },
  }
}

function dragRotorCurve(blades: DragRotorBlades, points: number): RotorCurve {
  const table = dragRotors.find(({ buckets }) => buckets === blades.buckets)!
  const share = blades.usualOverlap ? 1 : otherOverlapShare.share
  const ratios = table.rows.map(([λ]) => λ)
  const at = monotoneCubic(
    ratios,
    table.rows.map(([, torque]) => share * torque),
  )
  const runaway = ratios[ratios.length - 1]!
  const tipSpeedRatio = Float64Array.from({ length: points }, (_, k) => (runaway * k) / (points - 1))
  const torque = tipSpeedRatio.map(at)
  const power = torque.map((value, k) => value * tipSpeedRatio[k]!)
  const storeys = blades.storeys === 2 ? twoStoreyGain.factor : 1
  return {
    tipSpeedRatio,
    power,
    torque,
    thrust: tipSpeedRatio.map(() => dragRotorThrust.coefficient),
    best: largest(tipSpeedRatio, power),
    runaway,
    shape: undefined,
    turn: {
      restMean: share * table.restMean,
      restLeast: share * Math.min(storeys * table.restLeast, table.restMean),
      ripple: undefined,
      azimuth: new Float64Array(0),
      rest: new Float64Array(0),
      best: new Float64Array(0),
    },
  }
}

export const verticalCurve = (blades: VerticalBlades, air: VerticalRotorAir): RotorCurve =>
  blades.kind === 'drag-rotor' ? dragRotorCurve(blades, air.points) : straightBladeCurve(blades, air)
