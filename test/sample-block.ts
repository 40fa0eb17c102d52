/** A cuboid magnet and its field at one point, as checks ask for them. */
import { identityFrame, type Vector3 } from '../src/numerics/vector.ts'
import {
  type BlockMagnet,
  blockFluxDensity,
  blockVectorPotential,
} from '../src/physics/magnetics/block-magnet.ts'

export const mm = 1e-3
export const block = (size: Vector3, polarization: number, more: Partial<BlockMagnet> = {}): BlockMagnet => ({
  centre: [0, 0, 0],
  frame: identityFrame,
  size,
  polarization,
  ...more,
})
export const B = (magnets: BlockMagnet | readonly BlockMagnet[], p: Vector3, accuracy = {}): Vector3 => {
  const f = blockFluxDensity([magnets].flat() as BlockMagnet[], new Float64Array(p), accuracy)
  return [f[0]!, f[1]!, f[2]!]
}
export const A = (magnets: BlockMagnet | readonly BlockMagnet[], p: Vector3, accuracy = {}): Vector3 => {
  const f = blockVectorPotential([magnets].flat() as BlockMagnet[], new Float64Array(p), accuracy)
  return [f[0]!, f[1]!, f[2]!]
}
export const gap = (a: ArrayLike<number>, b: ArrayLike<number>) =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!)
