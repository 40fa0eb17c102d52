/** Flux that magnets send into a plate which stands for unbounded ideal iron, ring by ring and order by order. */
import { requirePositive } from '../../refusal/require.ts'
import type { RadialGrid } from './yoke-plate-air.ts'

/** Where magnets stand on the plate: there the flux density steps by their polarization. */
export interface MagnetFootprint {
  /** Radii between which magnets stand [m]. */
  readonly innerRadius: number
  readonly outerRadius: number
  /** J of the magnet at angle 0, along z; 0 where none touches the plate [T]. */
  readonly polarization: number
  /** h of the magnets along z [m], and μrec relative to μ0: the plate's drop of potential moves their working point. */
  readonly thickness: number
  readonly recoilPermeability: number
  /** Angles from … to that half of the magnet at angle 0 covers at a radius, equal where none [rad]. */
  readonly angles: (radius: number) => readonly [number, number]
}

/**
 * Half of a block's footprint on the plate, as angles it covers at a radius.
 *
 *   acos(r_outer/r) ≤ θ ≤ min(acos(r_inner/r), asin(w/2r))
 *
 * Holds: a rectangle, its middle line along a radius. Accuracy: exact.
 *
 * @param block.radius        axis to the block's centre              [m]
 * @param block.radialLength  edge along the radius                   [m]
 * @param block.width         w  edge across                          [m]
 * @param block.thickness     h  edge along z                         [m]
 * @param block.polarization  J  of the block at angle 0, along z     [T]
 * @param block.recoilPermeability  μrec relative to μ0               [1]
 * @returns                   footprint for `yokePlate`               [m], [rad], [T]
 * @throws RangeError   lengths not above zero; block across the axis
 * @source derived, from the rectangle in polar coordinates
 * @example blockFootprint({ radius: 0.09, radialLength: 0.04, width: 0.02, thickness: 0.01, polarization: 1.3, recoilPermeability: 1.05 }).angles(0.09)[1] // 0.11134
 */
export function blockFootprint(block: {
  readonly radius: number
  readonly radialLength: number
  readonly width: number
  readonly thickness: number
  readonly polarization: number
  readonly recoilPermeability: number
}): MagnetFootprint {
  const { radius, radialLength, width, thickness, polarization, recoilPermeability } = block
  requirePositive('radius', radius, 'm')
  requirePositive('radialLength', radialLength, 'm')
  requirePositive('width', width, 'm')
  const near = radius - radialLength / 2
  const far = radius + radialLength / 2
  requirePositive('radius − radialLength/2', near, 'm')
  return {
    innerRadius: near,
    outerRadius: Math.hypot(far, width / 2),
    thickness,
    polarization,
    recoilPermeability,
    angles: (r) => {
      const from = r <= far ? 0 : Math.acos(far / r)
      const to = r <= near ? 0 : Math.min(Math.acos(near / r), Math.asin(Math.min(1, width / (2 * r))))
      return [from, Math.max(from, to)]
    },
  }
}

/** Flux per ring, positive where it leaves the plate for the gap. */
export interface PlaneSource {
  /** By order, for cos((2o + 1)pθ) [Wb per rad]. */
  readonly orders: readonly Float64Array[]
  /** Over half a pole, all orders [Wb]. */
  readonly halfPole: Float64Array
}

/** Pieces of a step between rings over which the edge of the magnets is followed. */
const parts = 8

/**
 * @internal Source on the plane `height`, whose field side looks along `side`·z. Where magnets stand, B steps by J:
 * the step is integrated in closed form over θ, the smooth rest by the middles of `angleCount` equal angles.
 */
export function planeSource(plane: {
  readonly grid: RadialGrid
  readonly polePairs: number
  readonly orderCount: number
  readonly angleCount: number
  readonly fluxDensity: (points: Float64Array) => Float64Array
  readonly height: number
  readonly side: 1 | -1
  readonly magnets: MagnetFootprint | undefined
}): PlaneSource {
  const { grid, polePairs: p, orderCount, angleCount, height, side, magnets } = plane
  const { radius, area } = grid
  const n = radius.length
  const points = sectorPoints(radius, p, angleCount, height)
  const B = plane.fluxDensity(points)
  const orders = Array.from({ length: orderCount }, () => new Float64Array(n))
  const halfPole = new Float64Array(n)
  const δ = Math.PI / (2 * p * angleCount)
  for (let i = 0; i < n; i++) {
    const [from, to] = magnets?.angles(radius[i]!) ?? [0, 0]
    for (let q = 0; q < angleCount; q++) {
      const θ = (q + 0.5) * δ
      const J = magnets !== undefined && θ > from && θ < to ? magnets.polarization : 0
      const flux = side * (B[3 * (i * angleCount + q) + 2]! - J) * area[i]!
      halfPole[i] = halfPole[i]! + flux * δ
      for (let o = 0; o < orderCount; o++)
        orders[o]![i] = orders[o]![i]! + (2 / angleCount) * flux * Math.cos((2 * o + 1) * p * θ)
    }
  }
  if (magnets === undefined) return { orders, halfPole }
  const J = side * magnets.polarization
  const covered = coveredArea(grid, magnets, p, orderCount)
  for (let i = 0; i < n; i++) {
    halfPole[i] = halfPole[i]! + J * covered.area[i]!
    for (let o = 0; o < orderCount; o++)
      orders[o]![i] = orders[o]![i]! + ((4 * p) / Math.PI) * J * covered.orders[o]![i]!
  }
  return { orders, halfPole }
}

/** @internal Half of one magnet's footprint, ring by ring: its area, and ∫∫ cos((2o + 1)pθ) over it [m²]. */
export function coveredArea(
  { radius, step }: RadialGrid,
  magnets: MagnetFootprint,
  polePairs: number,
  orderCount: number,
): { readonly area: Float64Array; readonly orders: readonly Float64Array[] } {
  const n = radius.length
  const area = new Float64Array(n)
  const orders = Array.from({ length: orderCount }, () => new Float64Array(n))
  for (let j = 0; j + 1 < n; j++) {
    if (radius[j + 1]! < magnets.innerRadius || radius[j]! > magnets.outerRadius) continue
    for (let k = 0; k < parts; k++) {
      const r = radius[j]! * Math.exp((step[j]! * (k + 0.5)) / parts)
      if (r < magnets.innerRadius || r > magnets.outerRadius) continue
      const [from, to] = magnets.angles(r)
      const ring = k < parts / 2 ? j : j + 1
      const strip = (r * r * step[j]!) / parts
      area[ring] = area[ring]! + strip * (to - from)
      for (let o = 0; o < orderCount; o++) {
        const m = (2 * o + 1) * polePairs
        orders[o]![ring] = orders[o]![ring]! + (strip * (Math.sin(m * to) - Math.sin(m * from))) / m
      }
    }
  }
  return { area, orders }
}

/** @internal Points at the middles of equal angles of half a pole, radius by radius: x0 y0 z0 x1 … */
export function sectorPoints(
  radii: ArrayLike<number>,
  polePairs: number,
  angleCount: number,
  height: number,
): Float64Array {
  const points = new Float64Array(3 * radii.length * angleCount)
  for (let i = 0; i < radii.length; i++)
    for (let q = 0; q < angleCount; q++) {
      const θ = (Math.PI * (q + 0.5)) / (2 * polePairs * angleCount)
      const at = 3 * (i * angleCount + q)
      points[at] = radii[i]! * Math.cos(θ)
      points[at + 1] = radii[i]! * Math.sin(θ)
      points[at + 2] = height
    }
  return points
}
