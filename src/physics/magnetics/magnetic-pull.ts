/** Pull between magnetised discs, or between a disc and iron: Maxwell's stress over a plane in the air. */
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import { type BlockMagnet, blockFluxDensity } from './block-magnet.ts'

const μ0 = 4e-7 * Math.PI

/**
 * Pull over an area crossed at right angles by a flux density.
 *
 *   F = B² A / (2 μ0)
 *
 * Holds: field normal to the area, B the root mean square over it. Accuracy: exact for that field; with the peak
 * instead of the mean square it overstates.
 *
 * @param cut.fluxDensity  B  root mean square over the area, normal to it   [T]
 * @param cut.area         A                                                 [m²]
 * @returns                F  attraction of the two sides                    [N]
 * @throws RangeError   area below zero; any value not finite
 * @source jackson1999, section 6.7 Maxwell stress tensor (from memory, not opened)
 * @example magneticPull({ fluxDensity: 0.6, area: 96e-4 }) // 1375
 */
export function magneticPull(cut: { readonly fluxDensity: number; readonly area: number }): number {
  requireFinite('fluxDensity', cut.fluxDensity, 'T')
  requireNotNegative('area', cut.area, 'm²')
  return (cut.fluxDensity ** 2 * cut.area) / (2 * μ0)
}

export interface PullPlane {
  /** The whole arrangement, images included. */
  readonly magnets: readonly BlockMagnet[]
  /** z of a plane in the air, between what pulls and what is pulled [m]. */
  readonly height: number
  /** The plane is cut off at this radius [m]. */
  readonly outerRadius: number
  /** The field repeats, sign aside, this many times round the axis; 1 when left out [1]. */
  readonly period?: number
  /** Gauss points along the radius in each of four rings, 12 when left out [1]. */
  readonly radialOrder?: number
  /** Evenly spaced points along one period, 24 when left out [1]. */
  readonly angularOrder?: number
}

/**
 * Axial pull across a plane of the air, from the field of all magnets and images.
 *
 *   F = ∮ (Bz² − Bx² − By²) dA / (2 μ0)
 *
 * Holds: plane z = constant, free of magnets, wide enough that the field has died at `outerRadius`. Accuracy:
 * 1e-3 with the default points for a twelve-pole disc half a thickness away, faster convergence farther out.
 *
 * @param plane.magnets       blocks and images                                  [m], [T]
 * @param plane.height        z of the plane                                     [m]
 * @param plane.outerRadius   cut of the integral                                [m]
 * @param plane.period        repeats of the field round the axis                [1]
 * @param plane.radialOrder   Gauss points in each of four rings                 [1]
 * @param plane.angularOrder  points along one period                            [1]
 * @returns                   F  above zero: the sides attract                   [N]
 * @throws RangeError   radius not above zero; orders not whole; what `blockFluxDensity` refuses
 * @source jackson1999, section 6.7 Maxwell stress tensor (from memory, not opened)
 * @example pullAcrossPlane({ magnets: [{ centre: [0, 0, -0.015], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }, { centre: [0, 0, 0.015], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }], height: 0, outerRadius: 0.1 }) // 44.386
 */
export function pullAcrossPlane(plane: PullPlane): number {
  const { magnets, height, outerRadius, period = 1, radialOrder = 12, angularOrder = 24 } = plane
  requireFinite('height', height, 'm')
  requirePositive('outerRadius', outerRadius, 'm')
  for (const [name, value] of [
    ['period', period],
    ['angularOrder', angularOrder],
  ] as const)
    if (!Number.isInteger(value) || value < 1)
      refuse({ name, condition: 'a whole number, 1 or more', value, code: 'below-minimum' })
  const rings = 4
  const points = new Float64Array(3 * rings * radialOrder * angularOrder)
  const areas = new Float64Array(rings * radialOrder * angularOrder)
  const angle = (2 * Math.PI) / period / angularOrder
  let at = 0
  for (let ring = 0; ring < rings; ring++) {
    const from = (outerRadius * ring) / rings
    const { nodes, weights } = gaussLegendreOn(radialOrder, from, from + outerRadius / rings)
    for (let i = 0; i < radialOrder; i++)
      for (let k = 0; k < angularOrder; k++, at++) {
        points[3 * at] = nodes[i]! * Math.cos(k * angle)
        points[3 * at + 1] = nodes[i]! * Math.sin(k * angle)
        points[3 * at + 2] = height
        areas[at] = weights[i]! * nodes[i]! * 2 * Math.PI * (1 / angularOrder)
      }
  }
  const B = blockFluxDensity(magnets, points, { relativeError: 1e-8 })
  let sum = 0
  for (let i = 0; i < areas.length; i++)
    sum += areas[i]! * (B[3 * i + 2]! ** 2 - B[3 * i]! ** 2 - B[3 * i + 1]! ** 2)
  return sum / (2 * μ0)
}
