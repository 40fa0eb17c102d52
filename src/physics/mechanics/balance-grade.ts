/** How well a rigid rotor must be balanced, and what mass at what radius that is. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Unbalance that a balance quality grade allows a rotor.
 *
 *   e = G / Ω,  U = e m
 *
 * Holds: a rotor stiff at its speed. Accuracy: exact arithmetic; the grades are a scale of custom, each 2.5
 * times the next.
 *
 * @param rotor.grade  G  speed of the centre of mass, 6.3e-3 for grade G 6.3, > 0   [m/s]
 * @param rotor.mass   m  > 0                                                        [kg]
 * @param rotor.speed  Ω  greatest in service, > 0                                   [rad/s]
 * @returns            specific e [m], total U [kg·m]
 * @throws RangeError  a value not finite or not above zero
 * @source iso21940-11, clause 6.2, from memory, not opened
 * @example permissibleUnbalance({ grade: 6.3e-3, mass: 2, speed: 1047.2 }).total // 1.203e-5
 */
export function permissibleUnbalance(rotor: {
  readonly grade: number
  readonly mass: number
  readonly speed: number
}): { readonly specific: number; readonly total: number } {
  const { grade: G, mass: m, speed: Ω } = rotor
  requirePositive('grade', G, 'm/s')
  requirePositive('mass', m, 'kg')
  requirePositive('speed', Ω, 'rad/s')
  return { specific: G / Ω, total: (G / Ω) * m }
}

/**
 * Grade that a rotor reaches with the unbalance left in it.
 *
 *   G = U Ω / m
 *
 * Holds: a rotor stiff at its speed. Accuracy: exact arithmetic.
 *
 * @param rotor.unbalance  U  ≥ 0                                      [kg·m]
 * @param rotor.mass       m  > 0                                      [kg]
 * @param rotor.speed      Ω  > 0                                      [rad/s]
 * @returns                G                                           [m/s]
 * @throws RangeError      a value not finite or out of its sign
 * @source iso21940-11, clause 6.2, from memory, not opened
 * @example reachedGrade({ unbalance: 180e-6, mass: 6, speed: 523.6 }) // 0.015708
 */
export function reachedGrade(rotor: {
  readonly unbalance: number
  readonly mass: number
  readonly speed: number
}): number {
  const { unbalance: U, mass: m, speed: Ω } = rotor
  requireNotNegative('unbalance', U, 'kg·m')
  requirePositive('mass', m, 'kg')
  requirePositive('speed', Ω, 'rad/s')
  return (U / m) * Ω
}

/**
 * Parts of the permissible unbalance that the planes of the two bearings may keep.
 *
 *   UA = U LB / L,  UB = U LA / L, each within 0.3 U and 0.7 U, or 1.3 U if the centre of mass overhangs
 *
 * Holds: LA and LB from the centre of mass to bearing A and B, L between them. Accuracy: exact arithmetic.
 *
 * @param rotor.total     U  ≥ 0                                                 [kg·m]
 * @param rotor.bearingA  place of bearing A along the axis                      [m]
 * @param rotor.bearingB  place of bearing B, not that of A                      [m]
 * @param rotor.centre    place of the centre of mass                            [m]
 * @returns               planeA, planeB                                         [kg·m]
 * @throws RangeError     a value not finite or out of its sign; both bearings at one place
 * @source iso21940-11, clause 7.2.3, from memory, not opened
 * @example unbalanceShares({ total: 28.6e-3, bearingA: 0, bearingB: 2.4, centre: 1.5 }).planeA // 0.010725
 */
export function unbalanceShares(rotor: {
  readonly total: number
  readonly bearingA: number
  readonly bearingB: number
  readonly centre: number
}): { readonly planeA: number; readonly planeB: number } {
  const { total: U, bearingA, bearingB, centre } = rotor
  requireNotNegative('total', U, 'kg·m')
  requireFinite('bearingA', bearingA, 'm')
  requireFinite('bearingB', bearingB, 'm')
  requireFinite('centre', centre, 'm')
  if (bearingA === bearingB)
    refuse({
      name: 'bearingB',
      condition: 'away from bearingA',
      value: bearingB,
      unit: 'm',
      code: 'conflict',
    })
  const shareA = (bearingB - centre) / (bearingB - bearingA)
  const greatest = shareA < 0 || shareA > 1 ? 1.3 : 0.7
  const held = (share: number) => U * Math.min(Math.max(Math.abs(share), 0.3), greatest)
  return { planeA: held(shareA), planeB: held(1 - shareA) }
}

/**
 * Mass that makes a given unbalance at a radius: what may be left there, or what must be added or drilled away.
 *
 *   m = U / r
 *
 * Holds: a mass small against the radius. Accuracy: exact.
 *
 * @param spot.unbalance  U  ≥ 0                                       [kg·m]
 * @param spot.radius     r  > 0                                       [m]
 * @returns               m                                            [kg]
 * @throws RangeError     a value not finite or out of its sign
 * @source derived, from the definition of unbalance as mass times radius
 * @example balancingMass({ unbalance: 1.2e-5, radius: 0.06 }) // 2.0e-4
 */
export function balancingMass(spot: { readonly unbalance: number; readonly radius: number }): number {
  const { unbalance: U, radius: r } = spot
  requireNotNegative('unbalance', U, 'kg·m')
  requirePositive('radius', r, 'm')
  return U / r
}
