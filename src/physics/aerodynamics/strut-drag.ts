/** Drag of the arms that carry the blades of an upright rotor. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

export interface Struts {
  /** Arms in all, each from the shaft to a blade. [1] */
  readonly count: number
  /** Width facing the flow. [m] */
  readonly thickness: number
  /** On that width. [1] */
  readonly dragCoefficient: number
}

const radii = 12
const azimuths = 24

/**
 * Torque coefficient that the arms of an upright rotor cost, below zero for a rotor that turns.
 *
 *   C_q = −(n t C_d / (2 R² H)) ⟨∫ u |u| r dr⟩,   u = λ r / R − w sin θ
 *
 * Holds: straight horizontal arms from the shaft to the blades, crossed by the flow at right angles. Accuracy: that of the drag coefficient,
 * and of the wind inside the rotor, here one for all arms.
 *
 * @param struts              arms: number, width [m], drag coefficient       [1]
 * @param at.tipSpeedRatio    λ    ≥ 0                                       [1]
 * @param at.radius           R    > 0                                       [m]
 * @param at.height           H    of the blades, > 0                        [m]
 * @param at.windRatio        w    wind inside the rotor over the free wind  [1]
 * @returns                   C_q  on the area 2RH and the radius            [1]
 * @throws RangeError         a value out of its bounds
 * @source derived, drag per length integrated along the arm and round the turn
 * @example strutTorqueCoefficient({ count: 6, thickness: 0.01, dragCoefficient: 1 }, { tipSpeedRatio: 3, radius: 1, height: 2, windRatio: 0 }) // -0.033633
 */
export function strutTorqueCoefficient(
  struts: Struts,
  at: {
    readonly tipSpeedRatio: number
    readonly radius: number
    readonly height: number
    readonly windRatio: number
  },
): number {
  requireNotNegative('struts.count', struts.count)
  requireNotNegative('struts.thickness', struts.thickness, 'm')
  requireNotNegative('struts.dragCoefficient', struts.dragCoefficient)
  requireNotNegative('tipSpeedRatio', at.tipSpeedRatio)
  requirePositive('radius', at.radius, 'm')
  requirePositive('height', at.height, 'm')
  requireNotNegative('windRatio', at.windRatio)
  const { tipSpeedRatio: λ, height: H, windRatio: w } = at
  let sum = 0
  for (let i = 0; i < radii; i++) {
    const r = (i + 0.5) / radii
    for (let k = 0; k < azimuths; k++) {
      const u = λ * r - w * Math.sin(((k + 0.5) * 2 * Math.PI) / azimuths)
      sum += u * Math.abs(u) * r
    }
  }
  // the midpoint rule in r falls short of ∫ r³ dr = 1/4 by 1/(2 n²)
  const mean = sum / (radii * azimuths)
  return (-struts.count * struts.thickness * struts.dragCoefficient * mean) / (2 * H)
}
