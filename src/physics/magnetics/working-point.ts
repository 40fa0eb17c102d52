/** Working point of magnets with recoil permeability: the fixed polarization that stands for each. */
import { linearSolve } from '../../numerics/linear-solve.ts'
import { refuse, requireBetween, requireFinite, requireLength } from '../../refusal/require.ts'
import type { Magnet } from './magnet.ts'
import { magnetInfluence, selfFactor } from './magnet-influence.ts'

export interface MagnetInCircuit {
  /** The whole arrangement, images included, as `imageMagnets` returns it. */
  readonly magnets: readonly Magnet[]
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
 * N is the magnet's own demagnetizing factor, see `selfFactor`, B the field of all others, see `magnetInfluence`.
 *
 * Holds: magnets of fixed polarization in free space (images stand for iron), own magnet not of zero J.
 * Accuracy: 2e-4 with another magnet a tenth of the thickness away, better farther off; 1e-3 when one touches.
 *
 * @param circuit.magnets  the whole arrangement, images included   [m], [T]
 * @param circuit.own      index of the magnet in question          [1]
 * @returns                h  share of J, negative: demagnetising   [1]
 * @throws RangeError   own not an index; that magnet's J zero; what `magnetFluxDensity` refuses
 * @source derived, from B = μ0 H + J averaged over the block
 * @example magnetLoadFactor({ magnets: [{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }], own: 0 }) // -0.333333
 */
export function magnetLoadFactor(circuit: {
  readonly magnets: readonly Magnet[]
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
  const { polarization } = magnet
  if (polarization === 0)
    refuse({
      name: `magnets[${own}].polarization`,
      condition: 'not zero, to have a working point',
      value: polarization,
      unit: 'T',
      code: 'conflict',
    })
  const others = magnets.filter((_, m) => m !== own)
  return magnetInfluence(magnet, others) / polarization + selfFactor(magnet)
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

/**
 * Fixed polarizations that stand for unlike magnets with recoil permeability in one circuit.
 *
 *   J_i = Br_i + (μ_i − 1) Σ_j h_ij J_j
 *
 * with h_ij the mean μ0H along magnet i's own axis, over its volume, that magnet j causes per unit of its J: off the
 * diagonal `magnetInfluence` of j at J 1 T (with j's images), on it `selfFactor` (plus the own images' influence).
 * Each J is taken uniform; permeability across a magnet's axis is left out.
 *
 * Holds: straight recoil lines (no knee), μrec within `recoilPermeabilityRange`. Accuracy: as `workingPoint`.
 *
 * @param circuit.influence           h  n × n, row by row: row i is what magnet i feels   [1]
 * @param circuit.remanence           Br of each, signed along its own axis                [T]
 * @param circuit.recoilPermeability  μrec of each, relative to μ0                         [1]
 * @returns                           J of each equivalent fixed magnet, signed            [T]
 * @throws RangeError   lists that do not match; μrec outside 1 … 10; values not finite; a matrix that is singular
 * @source derived, from the straight recoil line and superposition
 * @example workingPolarizations({ influence: [-1 / 3], remanence: [1.3], recoilPermeability: [1.05] })[0] // 1.2787
 */
export function workingPolarizations(circuit: {
  readonly influence: ArrayLike<number>
  readonly remanence: ArrayLike<number>
  readonly recoilPermeability: ArrayLike<number>
}): Float64Array {
  const { influence, remanence, recoilPermeability } = circuit
  const n = remanence.length
  requireLength('recoilPermeability', recoilPermeability, n)
  requireLength('influence', influence, n * n)
  const matrix = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    requireFinite(`remanence[${i}]`, remanence[i]!, 'T')
    requireBetween(`recoilPermeability[${i}]`, recoilPermeability[i]!, [1, 10])
    for (let j = 0; j < n; j++) {
      requireFinite(`influence[${i * n + j}]`, influence[i * n + j]!)
      matrix[i * n + j] = (i === j ? 1 : 0) - (recoilPermeability[i]! - 1) * influence[i * n + j]!
    }
  }
  return linearSolve(matrix, remanence)
}
