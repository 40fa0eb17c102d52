/** Heat that crosses solids: slabs, shells, and windings of many insulated wires. */
import { refuse, requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Conductance of a flat layer.
 *
 *   G = k A / d
 *
 * Holds: heat straight across. Accuracy: exact.
 *
 * @param slab.conductivity  k  > 0                                    [W/(m·K)]
 * @param slab.area          A  ≥ 0                                    [m2]
 * @param slab.thickness     d  > 0                                    [m]
 * @returns                  G                                         [W/K]
 * @throws RangeError        a value not finite or out of its sign
 * @source derived, from Fourier's law
 * @example slabConductance({ conductivity: 0.2, area: 0.01, thickness: 0.002 }) // 1
 */
export function slabConductance(slab: {
  readonly conductivity: number
  readonly area: number
  readonly thickness: number
}): number {
  const { conductivity: k, area: A, thickness: d } = slab
  requirePositive('conductivity', k, 'W/(m·K)')
  requireNotNegative('area', A, 'm2')
  requirePositive('thickness', d, 'm')
  return (k * A) / d
}

/**
 * Conductance of a tube's wall, from inside to outside.
 *
 *   G = 2 π k L / ln(ro / ri)
 *
 * Holds: heat straight outward. Accuracy: exact, also for a wall thin against its radius.
 *
 * @param shell.conductivity  k   > 0                                  [W/(m·K)]
 * @param shell.inner         ri  > 0                                  [m]
 * @param shell.outer         ro  above ri                             [m]
 * @param shell.length        L   ≥ 0                                  [m]
 * @returns                   G                                        [W/K]
 * @throws RangeError         a value not finite or out of its sign; ro not above ri
 * @source derived, from Fourier's law
 * @example shellConductance({ conductivity: 1, inner: 1, outer: Math.E, length: 1 }) // 6.283185
 */
export function shellConductance(shell: {
  readonly conductivity: number
  readonly inner: number
  readonly outer: number
  readonly length: number
}): number {
  const { conductivity: k, inner: ri, outer: ro, length: L } = shell
  requirePositive('conductivity', k, 'W/(m·K)')
  requirePositive('inner', ri, 'm')
  requirePositive('outer', ro, 'm')
  requireNotNegative('length', L, 'm')
  if (ro <= ri)
    refuse({ name: 'outer', condition: 'above inner', value: ro, unit: 'm', code: 'below-minimum' })
  return (2 * Math.PI * k * L) / Math.log1p((ro - ri) / ri)
}

/**
 * Conductivity, across its axis, of the solid round bar that stands for a wire with its coat.
 *
 *   k = kc ((1 + v) kw + (1 − v) kc) / ((1 − v) kw + (1 + v) kc),  v = (d / D)²
 *
 * Holds: round wire in the middle of its coat. Accuracy: exact for a wire alone in a uniform heat flow.
 *
 * @param wire.conductivity  kw  of the metal, > 0                     [W/(m·K)]
 * @param wire.coating       kc  of the enamel, > 0                    [W/(m·K)]
 * @param wire.diameter      d   bare, > 0                             [m]
 * @param wire.outer         D   over the coat, at least d             [m]
 * @returns                  k                                         [W/(m·K)]
 * @throws RangeError        a value not finite or out of its sign; D below d
 * @source meeker2021, equivalent conductivity of an insulated wire, here derived anew from the two-dimensional dipole
 * @example coatedWireConductivity({ conductivity: 385, coating: 0.26, diameter: 1, outer: 1.062 }) // 4.280
 */
export function coatedWireConductivity(wire: {
  readonly conductivity: number
  readonly coating: number
  readonly diameter: number
  readonly outer: number
}): number {
  const { conductivity: kw, coating: kc, diameter: d, outer: D } = wire
  requirePositive('conductivity', kw, 'W/(m·K)')
  requirePositive('coating', kc, 'W/(m·K)')
  requirePositive('diameter', d, 'm')
  requirePositive('outer', D, 'm')
  if (D < d)
    refuse({ name: 'outer', condition: 'at least diameter', value: D, unit: 'm', code: 'below-minimum' })
  return mixed(kw, kc, (d / D) ** 2)
}

/** Round bars of k1 in a matrix of k0, share v of the section: Maxwell–Garnett, which is the lower bound of Hashin and Shtrikman. */
const mixed = (k1: number, k0: number, v: number) =>
  (k0 * ((1 + v) * k1 + (1 - v) * k0)) / ((1 - v) * k1 + (1 + v) * k0)

/** Shares of the section for which the formula stays within the accuracy stated. */
export const windingConductivityRange: readonly [number, number] = [0, 0.7]
/** A hand-wound bundle's conductivity across its wires lies within this factor of the formula: voids, uneven spread. */
export const windingConductivityFactor = 1.5

/**
 * Conductivity of a cast winding across its wires and along them.
 *
 *   across = km ((1 + v) kw + (1 − v) km) / ((1 − v) kw + (1 + v) km),  along = f kc + (1 − f) km
 *
 * Holds: wires spread evenly, matrix without voids. A dry-wound coil has air for its matrix: hand in 0.026.
 * Accuracy: the lower bound; 3 % low at v = 0.5 and 8 % low at v = 0.6 in a square pattern, less in a
 * hexagonal one. A hand-wound coil differs by windingConductivityFactor.
 *
 * @param winding.wire    kw  of the wire with its coat, across, > 0              [W/(m·K)]
 * @param winding.matrix  km  of the resin or air between, > 0                    [W/(m·K)]
 * @param winding.fill    v   share of the section that coated wires take, 0 to 1 [1]
 * @param winding.metal   kc  of the bare metal, > 0                              [W/(m·K)]
 * @param winding.metalFill f share of the section that metal takes, 0 to fill    [1]
 * @returns               across and along                                        [W/(m·K)]
 * @throws RangeError     a value not finite or out of its bounds
 * @source hashin-shtrikman1962, two-dimensional lower bound, from memory, not opened; its use for windings meeker2021
 * @example windingConductivity({ wire: 4.3, matrix: 0.2, fill: 0.6, metal: 385, metalFill: 0.5 }).across // 0.6824
 */
export function windingConductivity(winding: {
  readonly wire: number
  readonly matrix: number
  readonly fill: number
  readonly metal: number
  readonly metalFill: number
}): { readonly across: number; readonly along: number } {
  const { wire: kw, matrix: km, fill: v, metal: kc, metalFill: f } = winding
  requirePositive('wire', kw, 'W/(m·K)')
  requirePositive('matrix', km, 'W/(m·K)')
  requireBetween('fill', v, [0, 1])
  requirePositive('metal', kc, 'W/(m·K)')
  requireBetween('metalFill', f, [0, v])
  return { across: mixed(kw, km, v), along: f * kc + (1 - f) * km }
}

/**
 * How much hotter than its faces a slab is that is heated evenly inside and cooled at both faces alike.
 *
 *   mean = q d² / (12 k),  greatest = q d² / (8 k)
 *
 * Holds: both faces equally warm, heat straight across. Accuracy: exact.
 *
 * @param slab.heatDensity   q  heat per volume, ≥ 0                   [W/m3]
 * @param slab.thickness     d  face to face, ≥ 0                      [m]
 * @param slab.conductivity  k  > 0                                    [W/(m·K)]
 * @returns                  mean and greatest rise above the faces    [K]
 * @throws RangeError        a value not finite or out of its sign
 * @source derived, from the parabola that solves k T'' + q = 0
 * @example heatedSlabRise({ heatDensity: 1e6, thickness: 0.012, conductivity: 0.6 }).greatest // 30
 */
export function heatedSlabRise(slab: {
  readonly heatDensity: number
  readonly thickness: number
  readonly conductivity: number
}): { readonly mean: number; readonly greatest: number } {
  const { heatDensity: q, thickness: d, conductivity: k } = slab
  requireNotNegative('heatDensity', q, 'W/m3')
  requireNotNegative('thickness', d, 'm')
  requirePositive('conductivity', k, 'W/(m·K)')
  const rise = (q * d * d) / k
  return { mean: rise / 12, greatest: rise / 8 }
}
