/** What a shaft on two bearings carries: weight, thrust, unbalance, yawing, the pull of a plate that stands still. */
import { constants } from '../../data/constant.ts'
import type { Bearings } from '../../machine/shaft-side.ts'
import { sweptArea } from '../../machine/swept-area.ts'
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import { bearingReactions } from '../../physics/mechanics/overhung-shaft.ts'
import type { Chain } from '../compute.ts'
import { limiterWind, type WindRow } from '../power-curve.ts'
import { type BladeBody, bladeBody, type InertiaPart, turningParts } from '../rotor-inertia.ts'
import { discPull } from './disc-pull.ts'

export type ShaftChain = Pick<
  Chain,
  'machine' | 'rotor' | 'airDensity' | 'rows' | 'runaway' | 'voltage' | 'field' | 'year'
>

/** [m/s²] */
export const gravity = constants.standardGravity.value

/** Where no target is said: G 16, common for small rotors turned out of wood and steel (common practice, no source). */
export const usualBalanceGrade = 16e-3

export interface TurningMass {
  readonly blades: InertiaPart
  /** Magnets, steel and what carries them. */
  readonly magnets: { readonly mass: number; readonly inertia: number }
  readonly total: number
  /** Of the total mass, half-width at 90 %, as a share. */
  readonly spread: number
  readonly blade: BladeBody | undefined
}

export function turningMass({ machine, rotor }: Pick<ShaftChain, 'machine' | 'rotor'>): TurningMass {
  const [blades, ...rest] = turningParts(machine, rotor) as [InertiaPart, ...InertiaPart[]]
  const sum = (of: (part: InertiaPart) => number) => rest.reduce((whole, part) => whole + of(part), 0)
  const magnets = { mass: sum(({ mass }) => mass), inertia: sum(({ inertia }) => inertia) }
  const total = blades.mass + magnets.mass
  const spread = Math.hypot(...[blades, ...rest].map((part) => part.mass * part.spread)) / total
  return { blades, magnets, total, spread, blade: bladeBody(machine, rotor) }
}

/** Thrust of the blades at a wind and a tip-speed ratio [N]. */
function thrustAt({ machine, rotor, airDensity }: ShaftChain): (wind: number, λ: number) => number {
  const coefficient = piecewiseLinear(Array.from(rotor.tipSpeedRatio), Array.from(rotor.thrust))
  const last = rotor.tipSpeedRatio.at(-1)!
  return (wind, λ) =>
    Math.max(0, coefficient(Math.min(Math.max(λ, 0), last))) *
    0.5 *
    airDensity *
    sweptArea(machine.blades) *
    wind *
    wind
}

/** Thrust in work: above the limiter's wind it is held at what it was there. */
export function workThrust(chain: ShaftChain): (row: WindRow) => number {
  const thrust = thrustAt(chain)
  const limit = limiterWind(chain.machine)
  const atLimit = chain.rows.reduce(
    (most, row) => (row.wind <= limit ? Math.max(most, thrust(row.wind, row.tipSpeedRatio)) : most),
    0,
  )
  return (row) => (row.wind > limit ? atLimit : row.speed > 0 ? thrust(row.wind, row.tipSpeedRatio) : 0)
}

/** The limiter stuck in the storm: thrust at whatever tip-speed ratio pushes hardest [N]. */
export function stormThrust(chain: ShaftChain): number {
  const thrust = thrustAt(chain)
  return Array.from(chain.rotor.tipSpeedRatio).reduce(
    (most, λ) => (λ <= chain.rotor.runaway ? Math.max(most, thrust(chain.runaway.wind, λ)) : most),
    0,
  )
}

/** Pull along the shaft that the bearings hold: of a plate that stands still [N]; discs that turn together hold each other. */
export const axialPull = ({ machine, field }: Pick<ShaftChain, 'machine' | 'field'>): number =>
  machine.rotor.arrangement === 'disc' ? (discPull(machine, field)?.pull ?? 0) : 0

/** Yaw rate of the simplified loads [rad/s]: iec61400-2, clause 7.4.3, from memory, not opened. */
export const yawRate = (radius: number): number => Math.max(0, 3 - 0.01 * (Math.PI * radius * radius - 2))

export interface ShaftLoads {
  /** Of either bearing, weight and everything across the shaft at its worst [N]. */
  readonly radial: readonly [number, number]
  /** Greatest bending moment [N·m]. */
  readonly moment: number
}

/** Weight, the unbalance that turns, and yawing, all in one plane: no worse can meet. */
export function shaftLoads(
  bearings: Bearings,
  mass: TurningMass,
  { speed, grade, yaw }: { readonly speed: number; readonly grade: number; readonly yaw: number },
): ShaftLoads {
  const { spacing, bladeOverhang, magnetOverhang } = bearings
  // F = m e ω² with e ω = G
  const unbalance = (part: number) => part * grade * speed
  const reach = (way: 1 | -1) =>
    bearingReactions({
      bearings: [0, -spacing],
      forces: [
        { position: bladeOverhang, force: mass.blades.mass * gravity + unbalance(mass.blades.mass) },
        { position: magnetOverhang, force: mass.magnets.mass * gravity + unbalance(mass.magnets.mass) },
      ],
      // two blades shake a yawing shaft with twice the mean couple
      couple: {
        moment: way * (mass.blade?.count === 2 ? 2 : 1) * mass.blades.inertia * speed * yaw,
        at: bladeOverhang,
      },
    })
  const both = [reach(1), reach(-1)]
  const most = (of: (one: (typeof both)[number]) => number) => Math.max(...both.map(of))
  return {
    radial: [
      most(({ reactions }) => Math.abs(reactions[0])),
      most(({ reactions }) => Math.abs(reactions[1])),
    ],
    moment: most(({ greatestMoment }) => greatestMoment),
  }
}
