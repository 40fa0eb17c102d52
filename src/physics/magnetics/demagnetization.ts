/** Permanent loss of a magnet's strength: the intrinsic curve with its knee, and how far a magnet goes down it. */
import { root } from '../../numerics/root.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireLength,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'

const μ0 = 4e-7 * Math.PI

/** A magnet material at the temperature in question. */
export interface MagnetMaterial {
  /** Br [T]. */
  readonly remanence: number
  /** μrec relative to μ0: the slope of the reversible line. */
  readonly recoilPermeability: number
  /** HcJ, as a magnitude [A/m]. */
  readonly intrinsicCoercivity: number
  /** Hk/HcJ, the knee as a share of the coercivity. */
  readonly squareness: number
}

/** Squareness within which the curve exists and was tried. */
export const squarenessRange = [0.3, 0.99] as const

/** The knee as defined in measuring hard magnets: J has come down to this share of the remanence. */
const kneeShare = 0.9
/** Where the reversible line alone comes down as far, the knee is this share of Br under that line. */
const leastKneeDrop = 0.02
/** The reversible line falls by no more than this share of Br up to HcJ. */
const greatestReversibleDrop = 0.5

interface Curve {
  readonly Br: number
  /** (μrec − 1) μ0 [T·m/A]. */
  readonly slope: number
  readonly Hc: number
  readonly Hk: number
  /** A of the exponential [T] and K HcJ. */
  readonly A: number
  readonly K: number
}

function curveOf(name: string, material: MagnetMaterial): Curve {
  const { remanence: Br, recoilPermeability, intrinsicCoercivity: Hc, squareness: q } = material
  requirePositive(`${name}.remanence`, Br, 'T')
  requirePositive(`${name}.intrinsicCoercivity`, Hc, 'A/m')
  requireBetween(`${name}.recoilPermeability`, recoilPermeability, [1, 10])
  requireBetween(`${name}.squareness`, q, squarenessRange)
  const slope = Math.min((recoilPermeability - 1) * μ0, (greatestReversibleDrop * Br) / Hc)
  const A = Br - slope * Hc
  const drop = Math.max((1 - kneeShare) * Br - slope * q * Hc, leastKneeDrop * Br) / A
  // (e^(−K(1−q)) − e^(−K))/(1 − e^(−K)) falls with K from q to 0
  const share = (K: number) => (Math.exp(-K * (1 - q)) - Math.exp(-K)) / -Math.expm1(-K)
  const most = 2 - (2 * Math.log(drop)) / (1 - q)
  const K = root((x) => share(x) - drop, [1e-3, most], 1e-9)
  return { Br, slope, Hc, Hk: q * Hc, A, K }
}

/** What the exponential has taken from J at a demagnetising field h [T], no more than turns the magnet round. */
function lostPolarization({ Br, Hc, A, K }: Curve, h: number): number {
  if (h <= 0) return 0
  // the exponent's bound keeps the largest finite number; long before it all is lost
  const lost = (A * (Math.exp(Math.min(K * (h / Hc - 1), 600)) - Math.exp(-K))) / -Math.expm1(-K)
  return Math.min(lost, 2 * Br)
}

const polarizationAt = (curve: Curve, h: number): number =>
  curve.Br - curve.slope * h - lostPolarization(curve, h)

/**
 * Polarization on the demagnetisation curve of a magnet that has not been overloaded before.
 *
 *   J = Br + (μrec − 1) μ0 H − A (e^(−K(1 − h/HcJ)) − e^(−K))/(1 − e^(−K)), h = −H, A = Br − (μrec − 1) μ0 HcJ
 *
 * so that J = Br at H = 0 and J = 0 at h = HcJ. K is such that J = 0.9 Br at Hk = squareness · HcJ; where the
 * reversible line alone comes down so far (high coercivities), such that the exponential takes 0.02 Br there. Past
 * HcJ the exponential ends at 2 Br, the magnet turned round. For H above zero the reversible line is extended.
 *
 * Holds: field along the easy axis, one phase (no second step in the curve), squareness within `squarenessRange`.
 * Accuracy: exact at H = 0, Hk and HcJ; between them a shape, which meets the normal
 * coercivities of printed sheets with a squareness of 0.87 to 0.97, or within 5 % at 0.9.
 *
 * @param material.remanence            Br                                     [T]
 * @param material.recoilPermeability   μrec relative to μ0                    [1]
 * @param material.intrinsicCoercivity  HcJ, as a magnitude                    [A/m]
 * @param material.squareness           Hk/HcJ                                 [1]
 * @param fieldStrength                 H  below zero where it demagnetises    [A/m]
 * @returns                             J                                      [T]
 * @throws RangeError   remanence or coercivity not above zero; μrec below 1; squareness outside its range
 * @source ruoho2007, the exponential model (from memory, not opened), here made exact at H = 0
 * @example demagnetizationPolarization({ remanence: 1.31, recoilPermeability: 1.05, intrinsicCoercivity: 955e3, squareness: 0.9 }, -859500) // 1.179
 */
export function demagnetizationPolarization(material: MagnetMaterial, fieldStrength: number): number {
  requireFinite('fieldStrength', fieldStrength, 'A/m')
  return polarizationAt(curveOf('material', material), -fieldStrength)
}

/**
 * Normal coercivity of a material: where its demagnetisation curve has B = 0.
 *
 *   J(−HcB) = μ0 HcB
 *
 * Holds: as `demagnetizationPolarization`. Accuracy: as there; a straight curve gives Br/(μ0 μrec).
 *
 * @param material.remanence            Br                       [T]
 * @param material.recoilPermeability   μrec relative to μ0      [1]
 * @param material.intrinsicCoercivity  HcJ, as a magnitude      [A/m]
 * @param material.squareness           Hk/HcJ                   [1]
 * @returns                             HcB, as a magnitude      [A/m]
 * @throws RangeError   as `demagnetizationPolarization`
 * @source derived, from B = μ0 H + J on the curve of ruoho2007
 * @example normalCoercivity({ remanence: 0.385, recoilPermeability: 1.1, intrinsicCoercivity: 199e3, squareness: 0.9 }) // 191.96e3
 */
export function normalCoercivity(material: MagnetMaterial): number {
  const curve = curveOf('material', material)
  return root((h) => polarizationAt(curve, h) - μ0 * h, [0, curve.Hc], 1e-9 * curve.Hc)
}

export interface DemagnetizationLoad {
  readonly material: MagnetMaterial
  /** μ0 H/J along the magnet's axis at each point, by all magnets at one common J; below zero demagnetises [1]. */
  readonly ownShare: Float64Array
  /** H along the magnet's axis that currents add at each point; below zero demagnetises [A/m]. */
  readonly appliedField: Float64Array
  /** Share of the volume that each point stands for, 0 for points that only watch the worst; sum above zero. */
  readonly weights: Float64Array
}

export interface Demagnetization {
  /** Mean J under the load [T]. */
  readonly polarization: number
  /** H at the worst point, below zero where it demagnetises [A/m]. */
  readonly worstField: number
  /** Its index. */
  readonly worstPoint: number
  /** Hk, as a magnitude [A/m]. */
  readonly kneeField: number
  /** −H/Hk at the worst point: above 1 it is past the knee; 0 where nothing demagnetises. */
  readonly kneeRatio: number
  /** Hk + H at the worst point: what is left [A/m]. */
  readonly margin: number
  /** Of the volume that is past the knee. */
  readonly shareBeyondKnee: number
  /** Part of the mean remanence that does not come back when the load has gone; above 1 the magnet is reversed. */
  readonly irreversibleLoss: number
}

/**
 * What a demagnetising load does to a magnet: how near its worst point comes to the knee and what it leaves behind.
 *
 *   J̄ = Σ w J(s J̄/μ0 + Ha), loss = 1 − Σ w (J + (μrec − 1) μ0 h)/Br
 *
 * J is the curve of `demagnetizationPolarization` at each point, s J̄/μ0 the field of the magnets there, Ha that of
 * currents. A magnet that gives way eases its own field: J̄ is found where both agree, all magnets alike. After the
 * load each point comes back along its recoil line, and what the exponential took from it stays lost.
 *
 * Holds: equal magnets under equal loads, field along the easy axis (the component across it is left out), J̄ in place
 * of each point's own J in the magnets' field. Accuracy: exact where the field is uniform (ellipsoid, wide plate);
 * with points on a block the mean is that of its quadrature.
 *
 * @param load.material      Br [T], μrec [1], HcJ [A/m], squareness [1], at temperature   [T], [1], [A/m]
 * @param load.ownShare      s  μ0 H/J by the magnets, at each point                        [1]
 * @param load.appliedField  Ha  by currents, at each point                                 [A/m]
 * @param load.weights       w  of each point                                               [1]
 * @returns                  mean J [T], worst H and margin [A/m], ratio to the knee and shares [1]
 * @throws RangeError   lists of unlike length or empty; a weight below zero; all zero; what the curve refuses;
 *   magnets whose own field magnetises without bound
 * @source derived, from the curve of ruoho2007, superposition of equal magnets and the recoil line
 * @example demagnetization({ material: { remanence: 1.31, recoilPermeability: 1.05, intrinsicCoercivity: 955e3, squareness: 0.9 }, ownShare: Float64Array.of(-1/3), appliedField: Float64Array.of(-6e5), weights: Float64Array.of(1) }).kneeRatio // 1.0321
 */
export function demagnetization(load: DemagnetizationLoad): Demagnetization {
  const { material, ownShare: s, appliedField: Ha, weights } = load
  const curve = curveOf('material', material)
  const n = weights.length
  if (n === 0) refuse({ name: 'weights', condition: 'not empty', value: n, code: 'wrong-length' })
  requireLength('ownShare', s, n)
  requireLength('appliedField', Ha, n)
  let whole = 0
  let aiding = 0
  let applied = 0
  let meanShare = 0
  let meanApplied = 0
  for (let i = 0; i < n; i++) {
    // a name for every number of every load would take longer than the load itself
    if (!(Number.isFinite(s[i]!) && Number.isFinite(Ha[i]!) && weights[i]! >= 0)) {
      requireFinite(`ownShare[${i}]`, s[i]!)
      requireFinite(`appliedField[${i}]`, Ha[i]!, 'A/m')
      requireNotNegative(`weights[${i}]`, weights[i]!)
    }
    whole += weights[i]!
    meanShare += weights[i]! * s[i]!
    meanApplied += weights[i]! * Ha[i]!
    aiding = Math.max(aiding, s[i]!)
    applied = Math.max(applied, Math.abs(Ha[i]!))
  }
  requirePositive('sum of weights', whole)
  const { Br, slope, Hk } = curve
  // J grows by slope/μ0 s J̄ with its own field: bounded while that is less than half of J̄
  const gain = (slope / μ0) * aiding
  if (gain >= 0.5)
    refuse({
      name: 'ownShare',
      condition: `below ${(0.5 * μ0) / slope}, or the magnets would magnetise each other without bound`,
      value: aiding,
      code: 'above-maximum',
    })
  const mean = (J: number) => {
    let sum = 0
    for (let i = 0; i < n; i++)
      if (weights[i]! > 0) sum += weights[i]! * polarizationAt(curve, -((s[i]! * J) / μ0 + Ha[i]!))
    return sum / whole
  }
  const most = 2 * (Br + slope * applied)
  // less J eases its own field, so that twice what is taken is more than is lost; unless a point's own field aids
  const lowest = (from: number, taken: number) =>
    mean(from - 2.2 * taken) >= from - 2.2 * taken ? from - 2.2 * taken : -most
  // the reversible line alone; the exponential only takes from it
  const straight = (Br + (slope * meanApplied) / whole) / (1 - ((slope / μ0) * meanShare) / whole)
  const taken = straight - mean(straight)
  const tolerance = 1e-12 * Br
  const J =
    taken <= tolerance ? straight : root((x) => mean(x) - x, [lowest(straight, taken), straight], tolerance)
  let worstPoint = 0
  let worstField = Number.POSITIVE_INFINITY
  let beyond = 0
  let lost = 0
  for (let i = 0; i < n; i++) {
    const H = (s[i]! * J) / μ0 + Ha[i]!
    if (H < worstField) {
      worstField = H
      worstPoint = i
    }
    if (-H > Hk) beyond += weights[i]!
    lost += weights[i]! * lostPolarization(curve, -H)
  }
  return {
    polarization: J,
    worstField,
    worstPoint,
    kneeField: Hk,
    kneeRatio: Math.max(0, -worstField / Hk),
    margin: Hk + worstField,
    shareBeyondKnee: beyond / whole,
    irreversibleLoss: lost / whole / Br,
  }
}

/** Temperatures between which the linear coefficients of sheets are measured [K]. */
export const coefficientTemperatureRange = [293.15, 373.15] as const

export interface MagnetAtKnee {
  /** Demagnetising field of the worst point, as a magnitude, all of it in proportion to Br [A/m]. */
  readonly field: number
  /** Hk, as a magnitude [A/m], at the same temperature. */
  readonly kneeField: number
  /** That temperature [K]. */
  readonly temperature: number
  /** Of Br and of HcJ, per kelvin of the value at 20 °C [1/K]. */
  readonly remanenceCoefficient: number
  readonly coercivityCoefficient: number
}

const reference = 293.15

/**
 * Temperature at which the worst point of a magnet reaches its knee.
 *
 *   H20 (1 + α ΔT) = Hk20 (1 + β ΔT), ΔT = (Hk20 − H20)/(H20 α − Hk20 β)
 *
 * H20 and Hk20 are the field and the knee carried to 20 °C. α > β (neodymium): heat brings the knee, the result is
 * the highest temperature; α < β (ferrite): cold does, the result is the lowest. One knee at most, for both are linear.
 *
 * Holds: linear coefficients, field in proportion to Br (own field and the currents that it drives). Accuracy:
 * exact for linear coefficients; outside `coefficientTemperatureRange` they bend, by some 10 % of HcJ at 150 °C.
 *
 * @param magnet.field                  H  at the worst point, a magnitude       [A/m]
 * @param magnet.kneeField              Hk, a magnitude                          [A/m]
 * @param magnet.temperature            T  of both                               [K]
 * @param magnet.remanenceCoefficient   α                                        [1/K]
 * @param magnet.coercivityCoefficient  β                                        [1/K]
 * @returns   T; 0 or the largest finite number where cold or heat never brings it  [K]
 * @throws RangeError   field below zero; knee not above zero; coefficients that leave no strength at T
 * @source derived, from the linear temperature coefficients of grade sheets
 * @example demagnetizationTemperature({ field: 600e3, kneeField: 860e3, temperature: 293.15, remanenceCoefficient: -0.0012, coercivityCoefficient: -0.007 }) // 342.2066
 */
export function demagnetizationTemperature(magnet: MagnetAtKnee): number {
  const { field, kneeField, temperature, remanenceCoefficient: α, coercivityCoefficient: β } = magnet
  requireNotNegative('field', field, 'A/m')
  requirePositive('kneeField', kneeField, 'A/m')
  requirePositive('temperature', temperature, 'K')
  requireFinite('remanenceCoefficient', α, '1/K')
  requireFinite('coercivityCoefficient', β, '1/K')
  const ofRemanence = 1 + α * (temperature - reference)
  const ofCoercivity = 1 + β * (temperature - reference)
  requirePositive('remanence at temperature, as a share', ofRemanence)
  requirePositive('coercivity at temperature, as a share', ofCoercivity)
  const H20 = field / ofRemanence
  const K20 = kneeField / ofCoercivity
  const slope = H20 * α - K20 * β
  if (slope === 0) return Number.MAX_VALUE
  const T = reference + (K20 - H20) / slope
  if (slope > 0) return Math.min(Number.MAX_VALUE, Math.max(0, T))
  return Math.max(0, T)
}
