/** Magnets of any shape moved about: turned, raised, mirrored in iron, made stronger or weaker. */
import { turnAboutZ, type Vector3 } from '../../numerics/vector.ts'
import type { Magnet } from './magnet.ts'

/**
 * The magnet turned about the machine axis, J with it.
 *
 *   c′ = R(θ) c,  frame′ = R(θ) frame
 *
 * Holds: any shape and pose. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                                        [m], [T]
 * @param angle   θ  counter-clockwise seen from +z                [rad]
 * @returns       a magnet of the same shape                       [m], [T]
 * @throws RangeError   never; what is not finite is refused where the field is computed
 * @source derived, from the definition of a rotation
 * @example turnedMagnet({ centre: [1, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.1, height: 0.1, polarization: 1 }, Math.PI / 2).centre[1] // 1.000
 */
export function turnedMagnet<M extends Magnet>(magnet: M, angle: number): M {
  const [u, v, n] = magnet.frame
  return {
    ...magnet,
    centre: turnAboutZ(magnet.centre, angle),
    frame: [turnAboutZ(u, angle), turnAboutZ(v, angle), turnAboutZ(n, angle)],
  }
}

/**
 * The magnet raised along the machine axis.
 *
 *   z′ = z + h
 *
 * Holds: any shape and pose. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                                        [m], [T]
 * @param height  h  along +z                                      [m]
 * @returns       a magnet of the same shape                       [m], [T]
 * @throws RangeError   never; what is not finite is refused where the field is computed
 * @source derived, from the definition of a shift
 * @example raisedMagnet({ centre: [1, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.1, height: 0.1, polarization: 1 }, 0.25).centre[2] // 0.25
 */
export function raisedMagnet<M extends Magnet>(magnet: M, height: number): M {
  return { ...magnet, centre: [magnet.centre[0], magnet.centre[1], magnet.centre[2] + height] }
}

/**
 * The magnet with its J multiplied.
 *
 *   J′ = k J
 *
 * Holds: any shape and pose. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                                        [m], [T]
 * @param factor  k  sign allowed                                  [1]
 * @returns       a magnet of the same shape                       [m], [T]
 * @throws RangeError   never; what is not finite is refused where the field is computed
 * @source derived, from the linearity of the field in J
 * @example scaledMagnet({ centre: [1, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.1, height: 0.1, polarization: 1.2 }, -0.5).polarization // -0.6
 */
export function scaledMagnet<M extends Magnet>(magnet: M, factor: number): M {
  return { ...magnet, polarization: magnet.polarization * factor }
}

/**
 * Image of a magnet in infinitely permeable iron that fills the space behind a plane z = constant.
 *
 *   J′ = (−Jx, −Jy, Jz) at z′ = 2 z_iron − z
 *
 * The image charges have the opposite sign, so axial J stays and lateral J turns round.
 *
 * Holds: any shape and pose, magnet wholly on one side. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                                        [m], [T]
 * @param plane   z_iron                                           [m]
 * @returns       a magnet of the same shape                       [m], [T]
 * @throws RangeError   never; what is not finite is refused where the field is computed
 * @source jackson1999, section 5.9 boundary conditions with image charges of opposite sign (from memory, not opened)
 * @example mirroredMagnet({ centre: [0, 0, 0.03], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.1, height: 0.01, polarization: 1 }, 0.01).centre[2] // -0.01
 */
export function mirroredMagnet<M extends Magnet>(magnet: M, plane: number): M {
  const { centre, frame } = magnet
  const [u, v, n] = frame
  const image: M = {
    ...magnet,
    centre: [centre[0], centre[1], 2 * plane - centre[2]],
    frame: [
      [u[0], u[1], -u[2]],
      [v[0], v[1], -v[2]],
      [-n[0], -n[1], n[2]],
    ],
  }
  if (!('outline' in image)) return image
  // Local z is turned round, so that the frame stays right-handed; J's part along it is not
  const [a, b, c] = image.direction
  return { ...image, direction: [-a, -b, c] }
}

/** @internal How far a magnet reaches down and up from its `centre` along the machine axis [m]. */
export function axialReach(magnet: Magnet): readonly [number, number] {
  const { frame } = magnet
  const [u, v, n] = [frame[0][2], frame[1][2], frame[2][2]]
  if ('size' in magnet) {
    const { size } = magnet
    const half = (Math.abs(u) * size[0] + Math.abs(v) * size[1] + Math.abs(n) * size[2]) / 2
    return [half, half]
  }
  const along = (Math.abs(n) * magnet.height) / 2
  if ('radius' in magnet) {
    const half = along + magnet.radius * Math.hypot(u, v)
    return [half, half]
  }
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = 0; i < magnet.outline.length; i += 2) {
    const z = u * magnet.outline[i]! + v * magnet.outline[i + 1]!
    low = Math.min(low, z)
    high = Math.max(high, z)
  }
  return [along - low, along + high]
}

/**
 * Lowest and highest z of a magnet.
 *
 *   z = c_z ± (|u_z| a + |v_z| b + |n_z| c)/2 (block),  c_z ± (|n_z| h/2 + r √(1 − n_z²)) (cylinder)
 *
 * and for a prism the lowest and highest of its corners.
 *
 * Holds: any shape and pose. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                                        [m], [T]
 * @returns       lowest z, highest z                              [m]
 * @throws RangeError   never
 * @source derived, from elementary geometry
 * @example axialExtent({ centre: [0, 0, 0.03], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.1, height: 0.01, polarization: 1 })[1] // 0.035
 */
export function axialExtent(magnet: Magnet): readonly [number, number] {
  const [down, up] = axialReach(magnet)
  return [magnet.centre[2] - down, magnet.centre[2] + up]
}

/** @internal Edge along local z [m]. */
export function localHeight(magnet: Magnet): number {
  return 'size' in magnet ? magnet.size[2] : magnet.height
}

/** @internal The magnet with another edge along local z and another place. */
export function stretchedMagnet<M extends Magnet>(magnet: M, centre: Vector3, height: number): M {
  if ('size' in magnet) return { ...magnet, centre, size: [magnet.size[0], magnet.size[1], height] }
  return { ...magnet, centre, height }
}

/** @internal Whether local z and J both lie along the machine axis. */
export function standsUpright(magnet: Magnet, tolerance: number): boolean {
  if (!(Math.abs(Math.abs(magnet.frame[2][2]) - 1) <= tolerance)) return false
  return !('outline' in magnet) || Math.hypot(magnet.direction[0], magnet.direction[1]) <= tolerance
}
