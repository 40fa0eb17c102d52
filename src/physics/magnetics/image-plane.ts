/** Flat iron of infinite permeability, replaced by mirror images of the magnets before it. */
import { refuse, requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'
import type { Magnet } from './magnet.ts'
import {
  axialReach,
  localHeight,
  mirroredMagnet,
  raisedMagnet,
  standsUpright,
  stretchedMagnet,
} from './magnet-pose.ts'

export interface ImageArrangement<M extends Magnet = Magnet> {
  readonly magnets: readonly M[]
  /** z of an iron surface below all magnets [m]. */
  readonly lowerPlane?: number
  /** z of an iron surface above all magnets [m]. */
  readonly upperPlane?: number
  /** With two planes: how often the row is repeated up and down, see `imageReflectionsFor`. Unused with one. */
  readonly reflections?: number
}

/** A gap between magnet and iron under this share of the thickness counts as standing on the iron. */
export const standingTolerance = 1e-6

const parallelTolerance = 1e-9

/** The magnet with its own image in one plane: one of twice the thickness when it stands there, J upright. */
function withImage<M extends Magnet>(magnet: M, plane: number): M[] {
  const { centre } = magnet
  if (standsUpright(magnet, parallelTolerance)) {
    const side = centre[2] >= plane ? 0 : 1
    const gap = Math.abs(centre[2] - plane) - axialReach(magnet)[side]
    const height = localHeight(magnet)
    if (gap <= standingTolerance * height)
      return [stretchedMagnet(magnet, [centre[0], centre[1], plane], 2 * (height + gap))]
  }
  return [magnet, mirroredMagnet(magnet, plane)]
}

/**
 * Magnets before flat iron, together with their images: the field of the list is the field in the air.
 *
 *   B(air) = B(magnets) + Σ B(images),  J′ = (−Jx, −Jy, Jz) at z′ = 2 z_iron − z
 *
 * A magnet that stands on the iron with its J along the axis merges with its image into one of twice the
 * thickness. With two planes at distance D the pair of magnet and image in its nearer plane is repeated at
 * ±2nD, n = 1 … reflections; the order is magnet by magnet, the original (or merged) one first.
 *
 * Holds: infinitely permeable, unsaturated, unbounded flat iron. Accuracy: one plane exact; two planes cut
 * after `reflections`, relative error by `imageReflectionsFor`.
 *
 * @param arrangement.magnets      any shapes between the planes                [m], [T]
 * @param arrangement.lowerPlane   z of iron below, none when left out          [m]
 * @param arrangement.upperPlane   z of iron above, none when left out          [m]
 * @param arrangement.reflections  repeats each way, needed with two planes     [1]
 * @returns                        magnets whose field in free space is the field before the iron [m], [T]
 * @throws RangeError   magnet reaching into the iron; planes not in order; reflections missing or not whole
 * @source jackson1999, section 5.9 boundary conditions with image charges of opposite sign (from memory, not opened)
 * @example imageMagnets({ magnets: [{ centre: [0, 0, 0.005], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.04, 0.02, 0.01], polarization: 1.3 }], lowerPlane: 0 })[0].size[2] // 0.0200
 */
export function imageMagnets<M extends Magnet>(arrangement: ImageArrangement<M>): M[] {
  const { magnets, lowerPlane, upperPlane, reflections } = arrangement
  if (lowerPlane !== undefined) requireFinite('lowerPlane', lowerPlane, 'm')
  if (upperPlane !== undefined) requireFinite('upperPlane', upperPlane, 'm')
  if (lowerPlane !== undefined && upperPlane !== undefined && !(upperPlane > lowerPlane))
    refuse({
      name: 'upperPlane',
      condition: `above lowerPlane at ${lowerPlane} m`,
      value: upperPlane,
      unit: 'm',
      code: 'conflict',
    })
  magnets.forEach((magnet, m) => {
    const [down, up] = axialReach(magnet)
    const allowed = standingTolerance * localHeight(magnet)
    for (const [name, plane, side, half] of [
      ['lowerPlane', lowerPlane, 1, down],
      ['upperPlane', upperPlane, -1, up],
    ] as const)
      if (plane !== undefined && side * (magnet.centre[2] - plane) < half - allowed)
        refuse({
          name: `magnets[${m}]`,
          condition: `clear of the iron at ${name} ${plane} m; its centre must be ${half} m away`,
          value: side * (magnet.centre[2] - plane),
          unit: 'm',
          code: 'conflict',
        })
  })
  if (lowerPlane === undefined && upperPlane === undefined) return [...magnets]
  if (lowerPlane === undefined || upperPlane === undefined) {
    const plane = (lowerPlane ?? upperPlane) as number
    return magnets.flatMap((magnet) => withImage(magnet, plane))
  }
  if (reflections === undefined || !Number.isInteger(reflections) || reflections < 0)
    refuse({
      name: 'reflections',
      condition: 'a whole number, 0 or more, with two planes',
      value: reflections,
      code: reflections === undefined ? 'missing-key' : 'below-minimum',
    })
  const D = upperPlane - lowerPlane
  return magnets.flatMap((magnet) => {
    const z = magnet.centre[2]
    const pair = withImage(magnet, z - lowerPlane <= upperPlane - z ? lowerPlane : upperPlane)
    const row = [...pair]
    for (let n = 1; n <= reflections; n++)
      for (const one of pair) row.push(raisedMagnet(one, 2 * n * D), raisedMagnet(one, -2 * n * D))
    return row
  })
}

/**
 * Repeats each way that make the image series of an alternating ring between two iron planes converge.
 *
 *   ρ(N) = 2 e^(−p η(2ND)) / (1 − e^(−p η(2D))) ≤ ε,  η(d) = 2 asinh(d/(2r)),  p = poles/2
 *
 * A ring of alternating poles seen from above decays like exp(−p η), a toroidal harmonic; near the ring
 * that is the exp(−π d/τ) of a straight array of pole pitch τ. The first omitted images are at 2(N+1)D
 * from their own magnet, at least 2ND from any point between the planes.
 *
 * Holds: equal alternating magnets; points between the planes within 1.3 mean radii. Accuracy: an upper
 * estimate; measured errors relative to the largest field stay below ε for 4 … 32 poles and ε from 1e-2 to 1e-8.
 *
 * @param ring.poleCount      alternating poles, even                          [1]
 * @param ring.meanRadius     r  axis to block centres                         [m]
 * @param ring.planeDistance  D  iron to iron                                  [m]
 * @param ring.relativeError  ε  allowed, relative to the largest field        [1]
 * @returns                   N  repeats each way, at least 1                  [1]
 * @throws RangeError   poleCount odd or below 2; lengths not above zero; error outside 1e-14 … 0.5;
 *   more than 4096 repeats needed
 * @source derived, from the decay of toroidal harmonics Q_(p−1/2)(cosh η) ~ e^(−pη) above a ring
 * @example imageReflectionsFor({ poleCount: 12, meanRadius: 0.09, planeDistance: 0.036, relativeError: 1e-6 }) // 4
 */
export function imageReflectionsFor(ring: {
  readonly poleCount: number
  readonly meanRadius: number
  readonly planeDistance: number
  readonly relativeError: number
}): number {
  const { poleCount, meanRadius, planeDistance: D, relativeError: ε } = ring
  if (!Number.isInteger(poleCount) || poleCount < 2 || poleCount % 2 !== 0)
    refuse({
      name: 'poleCount',
      condition: 'a whole even number, 2 or more',
      value: poleCount,
      code: 'not-a-choice',
    })
  requirePositive('meanRadius', meanRadius, 'm')
  requirePositive('planeDistance', D, 'm')
  requireBetween('relativeError', ε, [1e-14, 0.5])
  const pη = (d: number) => poleCount * Math.asinh(d / (2 * meanRadius))
  const sum = 2 / -Math.expm1(-pη(2 * D))
  for (let N = 1; N <= 4096; N++) if (sum * Math.exp(-pη(2 * N * D)) <= ε) return N
  refuse({
    name: 'planeDistance',
    condition: 'wide enough for the image series to converge within 4096 repeats',
    value: D,
    unit: 'm',
    code: 'no-convergence',
  })
}
