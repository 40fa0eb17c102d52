/** Blade roots, thrust and tower top by the simplified loads of the standard: information for those who sign for them. */
import {
  type SimplifiedTurbineLoads,
  simplifiedTurbineLoads,
} from '../../physics/mechanics/simplified-turbine-load.ts'
import { type ShaftChain, turningMass } from './shaft-load.ts'
import { workTorque } from './shaft-result.ts'

export interface RotorLoad {
  readonly loads: SimplifiedTurbineLoads
  /** Of one blade [kg], and half-width at 90 %, as a share. */
  readonly bladeMass: number
  readonly spread: number
  /** Yearly mean at the hub and the gust of fifty years that goes with it [m/s]. */
  readonly meanWind: number
  readonly extremeWind: number
}

/** Three-second gust of fifty years over the yearly mean: 1.4 V_ref with V_ref = 5 V_ave (iec61400-2, from memory, not opened). */
const gustRatio = 7

/** From the blades to the yaw axis where nothing is said, over the radius: a guess, no source. */
const yawShare = 0.25

/** Undefined for upright rotors and where no wind turns the rotor. */
export function rotorLoad(chain: ShaftChain): RotorLoad | undefined {
  const { machine, airDensity, runaway, year } = chain
  const mass = turningMass(chain)
  const { torque, speed } = workTorque(chain)
  if (mass.blade === undefined || !(speed > 0)) return undefined
  const { blade } = mass
  const { radius } = machine.blades
  const row = chain.rows.find((one) => one.speed === speed)!
  const bladeOverhang = machine.shaft.bearings?.bladeOverhang ?? 0
  const extremeWind = Math.max(gustRatio * year.meanWind, machine.site.stormWind)
  return {
    loads: simplifiedTurbineLoads({
      bladeCount: blade.count,
      radius,
      bladeMass: blade.mass,
      bladeCentre: blade.centre,
      bladeInertia: blade.inertia,
      rotorMass: mass.total,
      bladeOverhang,
      yawDistance: yawShare * radius,
      bladeArea: blade.area,
      torque,
      speed,
      fastest: runaway.speed,
      tipSpeedRatio: Math.max(row.tipSpeedRatio, 0.1),
      airDensity,
      meanWind: year.meanWind,
      extremeWind,
    }),
    bladeMass: blade.mass,
    spread: blade.spread,
    meanWind: year.meanWind,
    extremeWind,
  }
}
