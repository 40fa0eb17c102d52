/** Loads of a small horizontal-axis rotor by the simplified equations of the standard for small wind turbines. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

export interface SimplifiedTurbine {
  readonly bladeCount: number
  readonly radius: number
  readonly bladeMass: number
  readonly bladeCentre: number
  readonly bladeInertia: number
  readonly rotorMass: number
  readonly bladeOverhang: number
  readonly yawDistance: number
  readonly bladeArea: number
  readonly torque: number
  readonly speed: number
  readonly fastest: number
  readonly tipSpeedRatio: number
  readonly airDensity: number
  readonly meanWind: number
  readonly extremeWind: number
  readonly eccentricity?: number | undefined
}

export interface SimplifiedTurbineLoads {
  /** Ranges in work, for fatigue: blade root pull [N], edgewise and flapwise moment, shaft thrust [N], torque, moment [N·m]. */
  readonly work: {
    readonly bladePull: number
    readonly bladeEdge: number
    readonly bladeFlap: number
    readonly thrust: number
    readonly shaftTorque: number
    readonly shaftMoment: number
  }
  /** Yawing at its fastest: rate [rad/s] and flapwise moment at the root [N·m]. */
  readonly yaw: { readonly rate: number; readonly bladeFlap: number }
  /** Greatest thrust in work [N]. */
  readonly thrust: number
  /** At the greatest speed: pull at a root [N], moment of the shaft [N·m]. */
  readonly fastest: { readonly bladePull: number; readonly shaftMoment: number }
  /** Torque of a short circuit [N·m]. */
  readonly shortTorque: number
  /** Parked in the extreme wind, blades broadside: flapwise moment at a root [N·m] and thrust [N]. */
  readonly parked: { readonly bladeFlap: number; readonly thrust: number }
}

/** Standard gravity [m/s²]. */
const g = 9.80665

/**
 * Simplified loads of a rigid-hub rotor upwind of its yaw axis, free to yaw.
 *
 *   A: ΔF_zB = 2 m_B R_cog ω²,  ΔM_xB = Q/B + 2 m_B g R_cog,  ΔM_yB = λ Q/B,
 *      ΔF_x = 3 λ Q/(2 R),  ΔM_x = Q + 2 m_r g e_r,  ΔM = 2 m_r g L_rb + R ΔF_x/6;
 *   B: ω_yaw = 3 − 0.01 (π R² − 2),  M_yB = m_B ω_yaw² L_rt R_cog + 2 ω_yaw I_B ω + R ΔF_x/9;
 *   D: F_x = ½ C_T ρ (2.5 v)² π R², C_T = 0.5;
 *   E: F_zB = m_B R_cog ω_max²,  M = m_r g L_rb + m_r e_r ω_max² L_rb;
 *   F: M_x = 2 Q;
 *   H: M_yB = ¼ · 1.5 ρ v_e² A_B R,  F_x = 1.5 · ½ B ρ v_e² A_B
 *
 * Holds: two or more cantilevered blades, swept area up to 200 m²; loads are multiplied by 3 before they meet a
 * strength. Accuracy: rough by its own account, some loads low and some high by half; for information, never for sign-off.
 *
 * @param turbine.bladeCount     B     whole, ≥ 1                                            [1]
 * @param turbine.radius         R     > 0                                                   [m]
 * @param turbine.bladeMass      m_B   of one blade, ≥ 0                                     [kg]
 * @param turbine.bladeCentre    R_cog from the axis to the blade's centre of mass, ≥ 0      [m]
 * @param turbine.bladeInertia   I_B   of one blade about its root, ≥ 0                      [kg·m2]
 * @param turbine.rotorMass      m_r   blades and hub, ≥ 0                                   [kg]
 * @param turbine.bladeOverhang  L_rb  from the blades to the front bearing, ≥ 0             [m]
 * @param turbine.yawDistance    L_rt  from the blades to the yaw axis, ≥ 0                  [m]
 * @param turbine.bladeArea      A_B   of one blade, broadside, ≥ 0                          [m2]
 * @param turbine.torque         Q     design torque, ≥ 0                                    [N·m]
 * @param turbine.speed          ω     design speed, > 0                                     [rad/s]
 * @param turbine.fastest        ω_max ≥ 0                                                   [rad/s]
 * @param turbine.tipSpeedRatio  λ     at the design point, > 0                              [1]
 * @param turbine.airDensity     ρ     > 0                                                   [kg/m3]
 * @param turbine.meanWind       v     yearly mean at the hub, ≥ 0                           [m/s]
 * @param turbine.extremeWind    v_e   three-second gust of fifty years, ≥ 0                 [m/s]
 * @param turbine.eccentricity   e_r   of the rotor's centre of mass; 0.005 R if left out    [m]
 * @returns                      loads of cases A, B, D, E, F, H                             [N], [N·m]
 * @throws RangeError            a value not finite or out of its sign
 * @source iec61400-2, clause 7.4, load cases A to H, from memory, not opened
 * @example simplifiedTurbineLoads({ bladeCount: 3, radius: 1.2, bladeMass: 1, bladeCentre: 0.45, bladeInertia: 0.3, rotorMass: 6, bladeOverhang: 0.1, yawDistance: 0.35, bladeArea: 0.1, torque: 27.69, speed: 41.888, fastest: 73.304, tipSpeedRatio: 4.224, airDensity: 1.225, meanWind: 8.5, extremeWind: 59.5 }).fastest.bladePull // 2418.1
 */
export function simplifiedTurbineLoads(turbine: SimplifiedTurbine): SimplifiedTurbineLoads {
  const {
    bladeCount: B,
    radius: R,
    bladeMass: mB,
    bladeCentre: Rcog,
    bladeInertia: IB,
    rotorMass: mr,
    bladeOverhang: Lrb,
    yawDistance: Lrt,
    bladeArea: AB,
    torque: Q,
    speed: ω,
    fastest: ωmax,
    tipSpeedRatio: λ,
    airDensity: ρ,
    meanWind: v,
    extremeWind: ve,
    eccentricity: er = 0.005 * turbine.radius,
  } = turbine
  for (const [name, value] of [
    ['bladeCount', B],
    ['radius', R],
    ['speed', ω],
    ['tipSpeedRatio', λ],
    ['airDensity', ρ],
  ] as const)
    requirePositive(name, value)
  for (const [name, value] of [
    ['bladeMass', mB],
    ['bladeCentre', Rcog],
    ['bladeInertia', IB],
    ['rotorMass', mr],
    ['bladeOverhang', Lrb],
    ['yawDistance', Lrt],
    ['bladeArea', AB],
    ['torque', Q],
    ['fastest', ωmax],
    ['meanWind', v],
    ['extremeWind', ve],
    ['eccentricity', er],
  ] as const)
    requireNotNegative(name, value)
  const Δthrust = (3 * λ * Q) / (2 * R)
  const rate = Math.max(0, 3 - 0.01 * (Math.PI * R * R - 2))
  return {
    work: {
      bladePull: 2 * mB * Rcog * ω * ω,
      bladeEdge: Q / B + 2 * mB * g * Rcog,
      bladeFlap: (λ * Q) / B,
      thrust: Δthrust,
      shaftTorque: Q + 2 * mr * g * er,
      shaftMoment: 2 * mr * g * Lrb + (R / 6) * Δthrust,
    },
    yaw: { rate, bladeFlap: mB * rate * rate * Lrt * Rcog + 2 * rate * IB * ω + (R / 9) * Δthrust },
    thrust: 0.5 * 0.5 * ρ * (2.5 * v) ** 2 * Math.PI * R * R,
    fastest: {
      bladePull: mB * Rcog * ωmax * ωmax,
      shaftMoment: mr * g * Lrb + mr * er * ωmax * ωmax * Lrb,
    },
    shortTorque: 2 * Q,
    parked: { bladeFlap: 0.25 * 1.5 * ρ * ve * ve * AB * R, thrust: 1.5 * 0.5 * B * ρ * ve * ve * AB },
  }
}
