/** How well what turns must be balanced, what mass that is, and what a maker can see of it on his own bearings. */
import { balancingMass, permissibleUnbalance, reachedGrade } from '../../physics/mechanics/balance-grade.ts'
import { gravity, type ShaftChain, turningMass, usualBalanceGrade } from './shaft-load.ts'

export interface Balance {
  /** Target G [m/s], said or usual. */
  readonly grade: number
  readonly said: boolean
  /** Greatest speed in work [rad/s]. */
  readonly speed: number
  /** All that turns [kg]. */
  readonly mass: number
  /** Allowed in all [kg·m], and as a mass at the blades' tips [kg]. */
  readonly allowed: number
  readonly tipMass: number
  /** Least unbalance that turns the rotor against its own starting friction, heavy side level with the shaft [kg·m]. */
  readonly seen: number
  /** Grade that this leaves unseen [m/s]. */
  readonly reached: number
}

/** Undefined where nothing turns in the site's winds. */
export function balance(chain: Pick<ShaftChain, 'machine' | 'rotor' | 'rows'>): Balance | undefined {
  const { machine, rows } = chain
  const speed = rows.reduce((most, row) => Math.max(most, row.speed), 0)
  const { total: mass } = turningMass(chain)
  if (!(speed > 0) || !(mass > 0)) return undefined
  const { balanceGrade, startingFriction } = machine.shaft
  const grade = balanceGrade ?? usualBalanceGrade
  const { total } = permissibleUnbalance({ grade, mass, speed })
  const seen = startingFriction / gravity
  return {
    grade,
    said: balanceGrade !== undefined,
    speed,
    mass,
    allowed: total,
    tipMass: balancingMass({ unbalance: total, radius: machine.blades.radius }),
    seen,
    reached: reachedGrade({ unbalance: seen, mass, speed }),
  }
}
