/** Arc magnets: segments of a tube, whole rings and round rods, as prisms with flat facets. */
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'
import type { PrismMagnet } from './prism-magnet.ts'

export interface ArcMagnet {
  /** On the arc's own axis, halfway along its length. */
  readonly centre: Vector3
  /** Rows: local x from the axis to the middle of the arc, local z along the arc's axis. */
  readonly frame: Frame3
  /** 0 for a sector, or for a solid rod when the span is a full turn [m]. */
  readonly innerRadius: number
  readonly outerRadius: number
  /** Along the arc's axis [m]. */
  readonly length: number
  /** Angle that the arc covers, up to 2π [rad]. */
  readonly span: number
  /** J along the radius at every place, along the radius of the arc's middle everywhere, or along the arc's axis. */
  readonly magnetization: 'radial' | 'parallel' | 'axial'
  /**
   * Angle from the outward radius (of the place or of the middle) to J, counter-clockwise seen from +local z; π/2 is J
   * along the circumference; 0 when left out [rad]. Of no use with 'axial'.
   */
  readonly lean?: number
  readonly polarization: number
  /** Flat facets round the arc; chosen by `arcFacets` when left out [1]. */
  readonly facets?: number
}

/** A full turn, with room for the rounding of 2π. */
const fullTurn = 2 * Math.PI * (1 - 1e-12)

function requireArc({ innerRadius, outerRadius, span }: ArcShape): void {
  requireNotNegative('innerRadius', innerRadius, 'm')
  requirePositive('outerRadius', outerRadius, 'm')
  if (!(outerRadius > innerRadius))
    refuse({
      name: 'outerRadius',
      condition: `above innerRadius ${innerRadius} m`,
      value: outerRadius,
      unit: 'm',
      code: 'conflict',
    })
  requirePositive('span', span, 'rad')
  requireBetween('span', span, [0, 2 * Math.PI], 'rad')
}

type ArcShape = Pick<ArcMagnet, 'innerRadius' | 'outerRadius' | 'span' | 'magnetization'>

/**
 * Flat facets that an arc needs for an error wished for at a distance from its faces.
 *
 *   n = s (0.006/ε)^(1/4) (r/d)^(3/4) (parallel, axial),  n = s √(0.05 r/(ε d)) (radial)
 *
 * Facets keep the area of the arc, so that their error falls with the fourth power of their number. Radial J is
 * constant within a facet, and that error falls with the square. Never fewer than an eighth turn or so asks for: facets
 * no wider than π/6.
 *
 * Holds: points at least d off the faces. Accuracy: an upper estimate, 1.2 to 10 times the error measured on spans of 27° to
 * 360°, r/d from 3 to 44.
 *
 * @param arc.innerRadius    outline                                             [m]
 * @param arc.outerRadius    r                                                   [m]
 * @param arc.span           s  angle covered                                    [rad]
 * @param arc.magnetization  radial, parallel or axial                           [word]
 * @param arc.clearance      d  nearest point of interest; half the radial thickness when left out [m]
 * @param arc.relativeError  ε  share of the largest field at that distance; 2e-3 when left out    [1]
 * @returns                  n  facets, at most 720                              [1]
 * @throws RangeError   radii not in order; span outside 0 … 2π; clearance not above zero; error outside 1e-9 … 0.5
 * @source derived, from the measured convergence of the facets
 * @example arcFacets({ innerRadius: 0.05, outerRadius: 0.055, span: 0.47, magnetization: 'parallel' }) // 7
 */
export function arcFacets(
  arc: ArcShape & { readonly clearance?: number; readonly relativeError?: number },
): number {
  requireArc(arc)
  const { innerRadius, outerRadius: r, span, magnetization } = arc
  const { clearance: d = (r - innerRadius) / 2, relativeError: ε = 2e-3 } = arc
  requirePositive('clearance', d, 'm')
  requireBetween('relativeError', ε, [1e-9, 0.5])
  const each =
    magnetization === 'radial' ? Math.sqrt((0.05 * r) / (ε * d)) : (0.006 / ε) ** 0.25 * (r / d) ** 0.75
  return Math.min(720, Math.ceil(span * Math.max(each, 6 / Math.PI) - 1e-9))
}

/**
 * An arc, ring or rod as prisms with flat facets of the same volume.
 *
 *   r′ = r √(δ/sin δ),  J′ = J sin(δ/2)/(δ/2) (radial)
 *
 * with δ the angle of a facet: the corners move out so far that area is kept, and J of a facet is the mean
 * over its angle, so that its moment is kept. Parallel and axial J give one prism with many corners (two half
 * rings for a whole hollow ring), radial J one prism for each facet.
 *
 * Holds: solid of uniform strength. Accuracy: as `arcFacets` says; the field on the facets themselves is that of a polygon.
 *
 * @param arc  centre, radii, length [m], frame, magnetization [word], span, lean [rad], facets [1], polarization [T]
 * @returns    prisms that do not overlap, counter-clockwise                     [m], [T]
 * @throws RangeError   radii not in order; span outside 0 … 2π; length not above zero; facets wider than a third of a turn
 * @source derived, from the areas of sector and triangle
 * @example arcMagnets({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], innerRadius: 0.05, outerRadius: 0.055, length: 0.03, span: 0.47, magnetization: 'radial', polarization: 1.2, facets: 8 })[0].polarization // 1.19983
 */
export function arcMagnets(arc: ArcMagnet): PrismMagnet[] {
  requireArc(arc)
  const { centre, frame, innerRadius, outerRadius, length, span, magnetization, lean = 0, polarization } = arc
  requirePositive('length', length, 'm')
  requireFinite('lean', lean, 'rad')
  requireFinite('polarization', polarization, 'T')
  const { facets = arcFacets(arc) } = arc
  const least = Math.ceil((span * 3) / (2 * Math.PI) - 1e-9)
  if (!Number.isInteger(facets) || facets < least)
    refuse({
      name: 'facets',
      condition: `a whole number, at least ${least} for this span`,
      value: facets,
      code: 'below-minimum',
    })
  const full = span >= fullTurn
  const hollow = innerRadius > 0
  const body = { centre, frame, height: length }
  const δ = span / facets
  const growth = Math.sqrt(δ / Math.sin(δ))
  const at = (radius: number, k: number): [number, number] => {
    const θ = k * δ - span / 2
    return [radius * growth * Math.cos(θ), radius * growth * Math.sin(θ)]
  }
  /** Outline of the facets `from` to `to`. */
  const outline = (from: number, to: number): Float64Array => {
    const corners: number[] = []
    const closed = full && !hollow && to - from === facets
    for (let k = from; k <= (closed ? to - 1 : to); k++) corners.push(...at(outerRadius, k))
    if (hollow) for (let k = to; k >= from; k--) corners.push(...at(innerRadius, k))
    else if (!closed) corners.push(0, 0)
    return new Float64Array(corners)
  }
  if (magnetization === 'radial')
    return Array.from({ length: facets }, (_, k): PrismMagnet => {
      const φ = (k + 0.5) * δ - span / 2 + lean
      return {
        ...body,
        outline: outline(k, k + 1),
        direction: [Math.cos(φ), Math.sin(φ), 0],
        polarization: (polarization * Math.sin(δ / 2)) / (δ / 2),
      }
    })
  const direction: Vector3 = magnetization === 'axial' ? [0, 0, 1] : [Math.cos(lean), Math.sin(lean), 0]
  // A whole hollow ring is no polygon without crossings
  const cuts = full && hollow ? [0, Math.floor(facets / 2), facets] : [0, facets]
  return cuts
    .slice(1)
    .map((to, i): PrismMagnet => ({ ...body, outline: outline(cuts[i]!, to), direction, polarization }))
}
