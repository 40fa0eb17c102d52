/** Working point of a magnet with recoil permeability: the fixed polarization that stands for it. */
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { refuse, requireBetween, requireFinite } from '../../refusal/require.ts'
import { type BlockMagnet, blockFluxDensity } from './block-magnet.ts'
import { cuboidDemagnetizingFactor } from './demagnetizing-factor.ts'

export interface MagnetInCircuit {
  /** The whole arrangement, images included, as `imageMagnets` returns it. */
  readonly magnets: readonly BlockMagnet[]
  /** Index of the magnet in question; of a merged one the iron side counts as magnet, which it mirrors. */
  readonly own: number
  /** Br at the working temperature [T]. */
  readonly remanence: number
  /** μrec relative to μ0 [1]. */
  readonly recoilPermeability: number
}

export interface WorkingPoint {
  /** Fixed J that gives the same field outside [T]. */
  readonly polarization: number
  /** Mean B along the magnet's axis over its volume [T]. */
  readonly fluxDensity: number
  /** Mean H along the magnet's axis over its volume, below zero when demagnetising [A/m]. */
  readonly fieldStrength: number
  /** −B/(μ0 H); the largest finite number when nothing demagnetises [1]. */
  readonly permeanceCoefficient: number
  /** h = ⟨μ0 H⟩/J of the arrangement, −1 … 0 in ordinary circuits [1]. */
  readonly loadFactor: number
}

const μ0 = 4e-7 * Math.PI

/** Recoil permeability range over which the correction was held against finite elements. */
export const recoilPermeabilityRange = [1, 1.1] as const

/**
 * Mean demagnetising field of a magnet by its arrangement, as a share of its polarization.
 *
 *   h = −N + (1/V) ∫ B·n̂ dV / J = ⟨μ0 H⟩/J
 *
 * N is the block's own demagnetizing factor in closed form, B the field of all others at 6 × 6 × 6 Gauss points.
 *
 * Holds: blocks of fixed polarization in free space (images stand for iron), own magnet not of zero J.
 * Accuracy: 2e-4 with another block a tenth of the thickness away, better farther off; 1e-3 when one touches.
 *
 * @param circuit.magnets  the whole arrangement, images included   [m], [T]
 * @param circuit.own      index of the magnet in question          [1]
 * @returns                h  share of J, negative: demagnetising   [1]
 * @throws RangeError   own not an index; that magnet's J zero; what `blockFluxDensity` refuses
 * @source derived, from B = μ0 H + J averaged over the block
 * @example magnetLoadFactor({ magnets: [{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }], own: 0 }) // -0.333333
 */
export function magnetLoadFactor(circuit: {
  readonly magnets: readonly BlockMagnet[]
  readonly own: number
}): number {
  const { magnets, own } = circuit
  const magnet = magnets[own]
  if (magnet === undefined)
    refuse({
      name: 'own',
      condition: `an index from 0 to ${magnets.length - 1}`,
      value: own,
      code: 'not-a-choice',
    })
  const { centre, frame, size, polarization } = magnet
  if (polarization === 0)
    refuse({
      name: `magnets[${own}].polarization`,
      condition: 'not zero, to have a working point',
      value: polarization,
      unit: 'T',
      code: 'conflict',
    })
  const { nodes, weights } = gaussLegendre(6)
  const order = nodes.length
  const points = new Float64Array(3 * order ** 3)
  let at = 0
  for (let i = 0; i < order; i++)
    for (let j = 0; j < order; j++)
      for (let k = 0; k < order; k++)
        for (let axis = 0; axis < 3; axis++)
          points[at++] =
            centre[axis]! +
            (nodes[i]! * size[0] * frame[0][axis]! +
              nodes[j]! * size[1] * frame[1][axis]! +
              nodes[k]! * size[2] * frame[2][axis]!) /
              2
  const others = magnets.filter((_, m) => m !== own)
  const B = blockFluxDensity(others, points, { relativeError: 1e-7 })
  const n = frame[2]
  let mean = 0
  at = 0
  for (let i = 0; i < order; i++)
    for (let j = 0; j < order; j++)
      for (let k = 0; k < order; k++, at += 3)
        mean +=
          (weights[i]! *
            weights[j]! *
            weights[k]! *
            (B[at]! * n[0] + B[at + 1]! * n[1] + B[at + 2]! * n[2])) /
          8
  return mean / polarization - cuboidDemagnetizingFactor(size)
}

/**
 * Working point of a magnet whose recoil line has a slope, in a circuit of like magnets.
 *
 *   J = Br / (1 − (μrec − 1) h),  B = J (1 + h),  μ0 H = h J
 *
 * On the recoil line B = Br + μrec μ0 H, so J = B − μ0 H = Br + (μrec − 1) μ0 H. All magnets of the circuit
 * share Br, so the field of the arrangement scales with J: ⟨μ0 H⟩ = h J with h from `magnetLoadFactor` at
 * any J. Taking J uniform at its mean and insert it above. The magnet's permeability across its axis is left out.
 *
 * Holds: straight recoil line (no knee), equal magnets, μrec within `recoilPermeabilityRange`. Accuracy:
 * against 3-D finite elements of twelve-pole discs at μrec 1.05, with images for the iron: up to 0.8 % high
 * over a pole centre and 0.5 % high in the fundamental (at μrec 1, where nothing is corrected, 0.2 %);
 * at μrec 1.1 up to 1.3 % and 0.9 %.
 *
 * @param circuit.magnets             the whole arrangement, images included, any common J   [m], [T]
 * @param circuit.own                 index of the magnet in question                        [1]
 * @param circuit.remanence           Br at the working temperature                          [T]
 * @param circuit.recoilPermeability  μrec relative to μ0                                    [1]
 * @returns   J [T], mean B [T], mean H [A/m], permeance coefficient [1], load factor h       [1]
 * @throws RangeError   own not an index; J of that magnet zero; μrec outside 1 … 10; values not finite
 * @source derived, from the straight recoil line and the superposition of equal magnets
 * @example workingPoint({ magnets: [{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }], own: 0, remanence: 1.3, recoilPermeability: 1.05 }).polarization // 1.279
 */
export function workingPoint(circuit: MagnetInCircuit): WorkingPoint {
  const { remanence: Br, recoilPermeability: μrec } = circuit
  requireFinite('remanence', Br, 'T')
  requireBetween('recoilPermeability', μrec, [1, 10])
  const h = magnetLoadFactor(circuit)
  const J = Br / (1 - (μrec - 1) * h)
  return {
    polarization: J,
    fluxDensity: J * (1 + h),
    fieldStrength: (h * J) / μ0,
    permeanceCoefficient: h < 0 ? -(1 + h) / h : Number.MAX_VALUE,
    loadFactor: h,
  }
}

/**
 * Fixed polarization that stands for a magnet with recoil permeability in its circuit.
 *
 *   J = Br / (1 − (μrec − 1) h)
 *
 * Holds: as `workingPoint`. Accuracy: as `workingPoint`.
 *
 * @param circuit.magnets             the whole arrangement, images included, any common J   [m], [T]
 * @param circuit.own                 index of the magnet in question                        [1]
 * @param circuit.remanence           Br at the working temperature                          [T]
 * @param circuit.recoilPermeability  μrec relative to μ0                                    [1]
 * @returns                           J of the equivalent fixed magnet                       [T]
 * @throws RangeError   as `workingPoint`
 * @source derived, from the straight recoil line and the superposition of equal magnets
 * @example workingPolarization({ magnets: [{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }], own: 0, remanence: 1.3, recoilPermeability: 1.05 }) // 1.279
 */
export function workingPolarization(circuit: MagnetInCircuit): number {
  return workingPoint(circuit).polarization
}
