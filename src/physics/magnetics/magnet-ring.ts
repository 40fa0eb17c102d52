/** Rings of block magnets: on a drum, polarised radially, or on a disc, polarised along the axis. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import type { BlockMagnet } from './block-magnet.ts'

export interface DrumRing {
  readonly count: number
  /** Axis to block centres [m]. */
  readonly radius: number
  /** Edge along the axis [m]. */
  readonly axialLength: number
  /** Edge along the circumference [m]. */
  readonly width: number
  /** Edge along the radius [m]. */
  readonly thickness: number
  /** Axial place of the block centres [m]; 0 when left out. */
  readonly height?: number
  /** J [T]. */
  readonly polarization: number
  /** +1 outward, −1 inward; magnet k sits at angle 2πk/count. */
  readonly sequence: readonly (1 | -1)[]
  /** Relative strength of each magnet, 0 for a missing one; all 1 when left out. */
  readonly strength?: readonly number[]
}

export interface DiscRing {
  readonly count: number
  /** Axis to block centres [m]. */
  readonly radius: number
  /** Axial place of the block centres [m]. */
  readonly height: number
  /** Edge along the radius [m]. */
  readonly radialLength: number
  /** Edge along the circumference [m]. */
  readonly width: number
  /** Edge along the axis [m]. */
  readonly thickness: number
  /** J [T]. */
  readonly polarization: number
  /** +1 along +z, −1 along −z; magnet k sits at angle 2πk/count. */
  readonly sequence: readonly (1 | -1)[]
  /** Relative strength of each magnet, 0 for a missing one; all 1 when left out. */
  readonly strength?: readonly number[]
}

interface Ring {
  readonly count: number
  readonly radius: number
  readonly width: number
  readonly polarization: number
  readonly sequence: readonly (1 | -1)[]
  readonly strength?: readonly number[]
}

function requireRing(ring: Ring, radialEdge: number): void {
  const { count, radius, width, polarization, sequence, strength } = ring
  requireFinite('count', count)
  if (!Number.isInteger(count) || count < 1)
    refuse({ name: 'count', condition: 'a whole number, 1 or more', value: count, code: 'below-minimum' })
  requirePositive('radius', radius, 'm')
  requirePositive('width', width, 'm')
  requireFinite('polarization', polarization, 'T')
  if (sequence.length !== count)
    refuse({
      name: 'sequence',
      condition: `${count} long, one sign for each magnet`,
      value: sequence.length,
      code: 'wrong-length',
    })
  sequence.forEach((sign, k) => {
    if (sign !== 1 && sign !== -1)
      refuse({ name: `sequence[${k}]`, condition: '1 or -1', value: sign, code: 'not-a-choice' })
  })
  if (strength !== undefined) {
    if (strength.length !== count)
      refuse({
        name: 'strength',
        condition: `${count} long, one number for each magnet`,
        value: strength.length,
        code: 'wrong-length',
      })
    strength.forEach((s, k) => {
      requireNotNegative(`strength[${k}]`, s)
    })
  }
  if (radius < radialEdge / 2)
    refuse({
      name: 'radius',
      condition: `at least ${radialEdge / 2} m, half the magnets' radial edge, so that none crosses the axis`,
      value: radius,
      unit: 'm',
      code: 'conflict',
    })
  const widest = largestBlockWidth({ count, radius, radialEdge })
  if (width > widest * (1 + 1e-12))
    refuse({
      name: 'width',
      condition: `at most ${widest} m, or the inner corners of neighbouring magnets collide`,
      value: width,
      unit: 'm',
      code: 'conflict',
    })
}

/**
 * Largest circumferential edge of blocks in a ring, inner corners of neighbours touching.
 *
 *   w = 2 (r − l/2) tan(π/N)
 *
 * Holds: equal blocks at equal angles; one or two blocks have no neighbour in the way. Accuracy: exact.
 *
 * @param ring.count       N  blocks in the ring                     [1]
 * @param ring.radius      r  axis to block centres                  [m]
 * @param ring.radialEdge  l  edge of a block along the radius       [m]
 * @returns                w  widest block that fits; the largest finite number when nothing limits it [m]
 * @throws RangeError   count below 1 or not whole; lengths not above zero
 * @source derived, from the inner face's corners meeting on the ray halfway between two blocks
 * @example largestBlockWidth({ count: 12, radius: 0.09, radialEdge: 0.04 }) // 0.0375129
 */
export function largestBlockWidth(ring: {
  readonly count: number
  readonly radius: number
  readonly radialEdge: number
}): number {
  const { count, radius, radialEdge } = ring
  if (!Number.isInteger(count) || count < 1)
    refuse({ name: 'count', condition: 'a whole number, 1 or more', value: count, code: 'below-minimum' })
  requirePositive('radius', radius, 'm')
  requirePositive('radialEdge', radialEdge, 'm')
  if (count < 3) return Number.MAX_VALUE
  return Math.max(0, 2 * (radius - radialEdge / 2) * Math.tan(Math.PI / count))
}

/**
 * Blocks round a drum, polarised along the radius; J of each in its place.
 *
 *   J_k = s_k m_k J r̂(2πk/N)
 *
 * The block's local axes: x along the circumference (+θ), y along the machine axis, z outward, so `size` reads width,
 * axial length, thickness.
 *
 * Holds: blocks that do not overlap. Accuracy: exact geometry.
 *
 * @param ring  count [1], radius, axialLength, width, thickness, height [m], polarization [T], sequence, strength [1]
 * @returns     one block for each magnet, k at angle 2πk/N                  [m], [T]
 * @throws RangeError   lists not `count` long; sizes not above zero; neighbours that collide, with the widest that fits
 * @source derived, from the definition of the ring
 * @example drumMagnets({ count: 2, radius: 0.03, axialLength: 0.05, width: 0.01, thickness: 0.004, polarization: 1.3, sequence: [1, -1] })[1].centre[0] // -0.0300
 */
export function drumMagnets(ring: DrumRing): BlockMagnet[] {
  const { count, radius, axialLength, width, thickness, height = 0, polarization, sequence, strength } = ring
  requirePositive('axialLength', axialLength, 'm')
  requirePositive('thickness', thickness, 'm')
  requireFinite('height', height, 'm')
  requireRing(ring, thickness)
  return sequence.map((sign, k) => {
    const [c, s] = cosSin(k, count)
    return {
      centre: [radius * c, radius * s, height],
      frame: [
        [-s, c, 0],
        [0, 0, 1],
        [c, s, 0],
      ],
      size: [width, axialLength, thickness],
      polarization: sign * (strength?.[k] ?? 1) * polarization,
    }
  })
}

/**
 * Blocks on a disc, polarised along the axis; J of each in its place.
 *
 *   J_k = s_k m_k J ẑ
 *
 * The block's local axes: x along the radius, y along the circumference (+θ), z along the machine axis, so
 * `size` reads radial length, width, thickness.
 *
 * Holds: blocks that do not overlap. Accuracy: exact geometry.
 *
 * @param ring  count [1], radius, height, radialLength, width, thickness [m], polarization [T], sequence, strength [1]
 * @returns     one block for each magnet, k at angle 2πk/N                  [m], [T]
 * @throws RangeError   lists not `count` long; sizes not above zero; neighbours that collide, with the widest that fits
 * @source derived, from the definition of the ring
 * @example discMagnets({ count: 4, radius: 0.09, height: 0, radialLength: 0.04, width: 0.02, thickness: 0.01, polarization: 1.28, sequence: [1, -1, 1, -1] })[1].centre[1] // 0.0900
 */
export function discMagnets(ring: DiscRing): BlockMagnet[] {
  const { count, radius, height, radialLength, width, thickness, polarization, sequence, strength } = ring
  requirePositive('radialLength', radialLength, 'm')
  requirePositive('thickness', thickness, 'm')
  requireFinite('height', height, 'm')
  requireRing(ring, radialLength)
  return sequence.map((sign, k) => {
    const [c, s] = cosSin(k, count)
    return {
      centre: [radius * c, radius * s, height],
      frame: [
        [c, s, 0],
        [-s, c, 0],
        [0, 0, 1],
      ],
      size: [radialLength, width, thickness],
      polarization: sign * (strength?.[k] ?? 1) * polarization,
    }
  })
}

/**
 * Signs of an alternating ring, north first.
 *
 *   s_k = (−1)^k
 *
 * Holds: an even number of poles. Accuracy: exact.
 *
 * @param count  N  poles                        [1]
 * @returns      +1, −1, +1 …                    [1]
 * @throws RangeError   count odd, not whole or below 2
 * @source derived, from the definition of an alternating ring
 * @example alternatingSequence(4)[3] // -1
 */
export function alternatingSequence(count: number): (1 | -1)[] {
  if (!Number.isInteger(count) || count < 2 || count % 2 !== 0)
    refuse({ name: 'count', condition: 'a whole even number, 2 or more', value: count, code: 'not-a-choice' })
  return Array.from({ length: count }, (_, k) => (k % 2 === 0 ? 1 : -1))
}

const cosSin = (k: number, count: number): readonly [number, number] => {
  const angle = (2 * Math.PI * k) / count
  return [Math.cos(angle), Math.sin(angle)]
}
