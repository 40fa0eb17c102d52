/** How hard the shaft and its key are stressed in work and by a sudden short, and at which speed it whirls. */
import { mildSteel } from '../../data/steel.ts'
import type { Machine } from '../../machine/machine.ts'
import type { Bearings } from '../../machine/shaft-side.ts'
import { keyStress, shaftStress } from '../../physics/mechanics/shaft-stress.ts'
import { whirlingSpeed } from '../../physics/mechanics/whirling.ts'
import { keptAnswer } from '../kept-answer.ts'
import { shortCircuit } from '../short-circuit.ts'
import { shaftPower } from '../watts.ts'
import {
  axialPull,
  type ShaftChain,
  shaftLoads,
  stormThrust,
  type TurningMass,
  turningMass,
  usualBalanceGrade,
  yawRate,
} from './shaft-load.ts'

/** Greatest torque in work [N·m] and the speed there [rad/s]. */
export function workTorque({ rows }: Pick<ShaftChain, 'rows'>): {
  readonly torque: number
  readonly speed: number
} {
  let best = { torque: 0, speed: 0 }
  for (const { watts, speed } of rows)
    if (speed > 0 && shaftPower(watts) / speed > best.torque)
      best = { torque: shaftPower(watts) / speed, speed }
  return best
}

/** Speeds at which the torque of the short is looked for. */
const shortSpeeds = 24

/**
 * Torque of a sudden short, magnets' side: twice the greatest steady one [N·m]. With little resistance a sudden short
 * swings to k² m/L, the steady one is at most half of that where R = ωL.
 */
export function suddenShortTorque({ machine, voltage, runaway }: ShaftChain): number {
  const fastest = runaway.speed
  if (!(fastest > 0) || !(voltage.greatestLinePeak > 0)) return 0
  const short = shortCircuit(machine, voltage, 'leads')
  let most = 0
  for (let k = 1; k <= shortSpeeds; k++)
    most = Math.max(most, short((fastest * k) / shortSpeeds, machine.site.ambient).torque)
  return 2 * most
}

/** Shear that a shaft may carry for good, with a keyway and without [Pa]: khurmi2005, section 14.9, from memory, not opened. */
export const shaftShear = { keyed: 42e6, plain: 56e6 } as const

/** Simplified loads are multiplied by this before they meet a strength: iec61400-2, from memory, not opened. */
export const simpleLoadFactor = 3

export interface ShaftResult {
  readonly torque: number
  readonly shortTorque: number
  /** Bending in work [N·m]. */
  readonly moment: number
  /** Greatest shear in work [Pa] and what it may be. */
  readonly shear: number
  readonly shearLimit: number
  /** Greatest comparison stress of the rare states [Pa], which state that is, and its bending [N·m]. */
  readonly extreme: number
  readonly worst: 'yawing fast in work' | 'a sudden short at runaway'
  readonly extremeMoment: number
  readonly extremeLimit: number
  readonly key: { readonly shear: number; readonly pressure: number; readonly limit: number } | undefined
  /** First critical speed [rad/s]. */
  readonly critical: number
}

/** Undefined where diameter or places are not said, or the axis is upright. */
export const shaftResult = keptAnswer(resultOf)

function resultOf(chain: ShaftChain): ShaftResult | undefined {
  const { machine, runaway } = chain
  const { bearings, diameter, bore, key, balanceGrade: grade = usualBalanceGrade } = machine.shaft
  if (bearings === undefined || diameter === undefined || 'height' in machine.blades) return undefined
  const mass = turningMass(chain)
  const work = workTorque(chain)
  const fastestWork = chain.rows.reduce((most, { speed }) => Math.max(most, speed), 0)
  const yaw = yawRate(machine.blades.radius)
  const inWork = shaftLoads(bearings, mass, { speed: fastestWork, grade, yaw: 0 })
  const yawing = shaftLoads(bearings, mass, { speed: fastestWork, grade, yaw })
  const unloaded = shaftLoads(bearings, mass, { speed: runaway.speed, grade, yaw: 0 })
  const shortTorque = suddenShortTorque(chain)
  const axial = axialPull(chain)
  const push = axial + stormThrust(chain)
  const steady = shaftStress({ moment: inWork.moment, torque: work.torque, force: axial, diameter, bore })
  const rare = [
    {
      worst: 'yawing fast in work' as const,
      extremeMoment: yawing.moment,
      ...shaftStress({ moment: yawing.moment, torque: work.torque, force: push, diameter, bore }),
    },
    {
      worst: 'a sudden short at runaway' as const,
      extremeMoment: unloaded.moment,
      ...shaftStress({
        moment: unloaded.moment,
        torque: Math.max(shortTorque, work.torque),
        force: push,
        diameter,
        bore,
      }),
    },
  ]
  const { worst, extremeMoment, vonMises } = rare[0]!.vonMises > rare[1]!.vonMises ? rare[0]! : rare[1]!
  const flanks =
    key === undefined
      ? undefined
      : keyStress({ torque: Math.max(shortTorque, work.torque), diameter, ...key })
  const yieldStress = mildSteel.yield_MPa * 1e6
  return {
    torque: work.torque,
    shortTorque,
    moment: inWork.moment,
    shear: steady.tresca / 2,
    shearLimit: key === undefined ? shaftShear.plain : shaftShear.keyed,
    extreme: vonMises,
    worst,
    extremeMoment,
    extremeLimit: yieldStress / simpleLoadFactor,
    key: flanks === undefined ? undefined : { ...flanks, limit: yieldStress / 2 },
    critical: criticalSpeed(machine, bearings, mass, diameter, bore),
  }
}

function criticalSpeed(
  { blades, rotor }: Machine,
  { spacing, bladeOverhang, magnetOverhang }: Bearings,
  mass: TurningMass,
  diameter: number,
  bore: number,
): number {
  // of the shaft a third of what overhangs counts with the blades, as in a spring; the rest lies between the bearings
  const overhang =
    (mildSteel.density_kg_per_m3 * (Math.PI / 4) * (diameter ** 2 - bore ** 2) * Math.max(0, bladeOverhang)) /
    3
  // positions from the rear end of the shaft
  const rear = Math.min(-spacing, magnetOverhang)
  const front = Math.max(0, bladeOverhang, magnetOverhang)
  const wide = rotor.arrangement === 'drum' ? rotor.magnet.length : (rotor.faceDistance ?? 0)
  const whirl = (spinRatio: number) =>
    whirlingSpeed({
      spinRatio,
      shaft: {
        length: front - rear,
        diameter,
        bore,
        modulus: mildSteel.youngsModulus_GPa * 1e9,
        density: 0,
      },
      bearings: [{ position: -spacing - rear }, { position: -rear }],
      discs: [
        {
          position: bladeOverhang - rear,
          mass: mass.blades.mass + overhang,
          polarInertia: mass.blades.inertia,
          diametralInertia: mass.blades.inertia / 2,
        },
        {
          position: magnetOverhang - rear,
          mass: mass.magnets.mass,
          polarInertia: mass.magnets.inertia,
          diametralInertia: mass.magnets.inertia / 2 + (mass.magnets.mass * wide * wide) / 12,
        },
      ].filter((disc) => disc.mass > 0 && blades.radius > 0),
    }).speed
  // turning stiffens a rotor of blades against forward whirl; blades that flex do not all give that, so it is not counted on
  return Math.min(whirl(1), whirl(0))
}
