/** Magnetisation curve of a soft steel: field strength over flux density, its inverse and its energy. */
import { root } from '../../numerics/root.ts'
import { refuse, requireFinite, requireLength } from '../../refusal/require.ts'

/** An initial (anhysteretic) curve through the origin, odd in its argument. */
export interface BhCurve {
  /** H(B) [A/m]. */
  readonly fieldStrength: (fluxDensity: number) => number
  /** B(H) [T]. */
  readonly fluxDensity: (fieldStrength: number) => number
  /** dH/dB at B [m/H]. */
  readonly differentialReluctivity: (fluxDensity: number) => number
  /** Secant permeability B/H over μ0 at flux density B; at B = 0 its limit [1]. */
  readonly relativePermeability: (fluxDensity: number) => number
  /** ∫ H dB from 0 to B [J/m³]. */
  readonly energyDensity: (fluxDensity: number) => number
  /** Last point of the table [T]; beyond it dB/dH = μ0. */
  readonly lastFluxDensity: number
  /** Least B at which a tenth more asks for half as much H again [T]. */
  readonly knee: number
}

export interface BhTable {
  /** Rising from 0 [T]. */
  readonly fluxDensity: ArrayLike<number>
  /** Rising from 0, as long [A/m]. */
  readonly fieldStrength: ArrayLike<number>
}

const μ0 = 4e-7 * Math.PI

function requireTable({ fluxDensity: B, fieldStrength: H }: BhTable): void {
  requireLength('fieldStrength', H, B.length)
  if (B.length < 2)
    refuse({ name: 'fluxDensity', condition: 'at least 2 long', value: B.length, code: 'wrong-length' })
  for (const [name, list] of [
    ['fluxDensity', B],
    ['fieldStrength', H],
  ] as const) {
    for (let i = 0; i < list.length; i++) requireFinite(`${name}[${i}]`, list[i]!)
    if (list[0] !== 0) refuse({ name: `${name}[0]`, condition: '0', value: list[0], code: 'conflict' })
    for (let i = 1; i < list.length; i++)
      if (!(list[i]! > list[i - 1]!))
        refuse({
          name: `${name}[${i}]`,
          condition: `above ${name}[${i - 1}]`,
          value: list[i],
          code: 'not-increasing',
        })
  }
}

/**
 * Slopes dH/dB at the points that keep the curve rising: inside, the weighted harmonic mean of the chords; at the
 * ends, the chord.
 */
function keptSlopes(B: ArrayLike<number>, H: ArrayLike<number>): Float64Array {
  const n = B.length
  const slope = new Float64Array(n)
  const chord = (i: number) => (H[i + 1]! - H[i]!) / (B[i + 1]! - B[i]!)
  slope[0] = chord(0)
  slope[n - 1] = chord(n - 2)
  for (let i = 1; i + 1 < n; i++) {
    const [before, after] = [B[i]! - B[i - 1]!, B[i + 1]! - B[i]!]
    const [w1, w2] = [2 * after + before, after + 2 * before]
    slope[i] = (w1 + w2) / (w1 / chord(i - 1) + w2 / chord(i))
  }
  return slope
}

/**
 * Magnetisation curve through the points of a table.
 *
 *   H(B) = monotone cubic through the points;  beyond the last, H = H_last + (B − B_last)/μ0
 *
 * H over B is the smoother of the two ways to draw the curve. The inverse solves the same cubic, so the two agree to
 * rounding; both are odd. Slopes as in Fritsch & Butland 1984 (fritsch1980 gives the condition they meet).
 *
 * Holds: isotropic steel without hysteresis, tables that rise from (0, 0). Accuracy: at the points exact; between
 * the points of a table in steps of 0.1 T by the shape only, no overshoot.
 *
 * @param table.fluxDensity    B  rising from 0                                  [T]
 * @param table.fieldStrength  H  rising from 0, as long                         [A/m]
 * @returns                    H(B) [A/m], B(H) [T], dH/dB [m/H], B/(μ0 H) [1], ∫H dB [J/m³], knee [T]
 * @throws RangeError   fewer than 2 points, lists not of one length, not rising from zero; values not finite
 * @source fritsch1980, conditions for a monotone cubic (from memory, not opened)
 * @example bhCurve({ fluxDensity: [0, 1, 1.5], fieldStrength: [0, 300, 900] }).fluxDensity(300) // 1.0000
 */
export function bhCurve(table: BhTable): BhCurve {
  requireTable(table)
  const B = Float64Array.from(table.fluxDensity)
  const H = Float64Array.from(table.fieldStrength)
  const m = keptSlopes(B, H)
  const last = B.length - 1
  const [Blast, Hlast] = [B[last]!, H[last]!]
  // H = H_i + x (c1 + x (c2 + x c3)) with x = B − B_i
  const c2 = new Float64Array(last)
  const c3 = new Float64Array(last)
  const energy = new Float64Array(last + 1)
  for (let i = 0; i < last; i++) {
    const step = B[i + 1]! - B[i]!
    const chord = (H[i + 1]! - H[i]!) / step
    c2[i] = (3 * chord - 2 * m[i]! - m[i + 1]!) / step
    c3[i] = (m[i]! + m[i + 1]! - 2 * chord) / (step * step)
    energy[i + 1] = energy[i]! + pieceEnergy(i, step)
  }
  function pieceEnergy(i: number, x: number): number {
    return x * (H[i]! + x * (m[i]! / 2 + x * (c2[i]! / 3 + (x * c3[i]!) / 4)))
  }
  /** The piece i with list[i] ≤ value < list[i + 1], value inside the table. */
  function pieceOf(list: Float64Array, value: number): number {
    let low = 0
    let high = last
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (list[middle]! <= value) low = middle
      else high = middle
    }
    return low
  }
  const slopeAt = (i: number, x: number) => m[i]! + x * (2 * c2[i]! + 3 * x * c3[i]!)
  /** x in piece i where the cubic reaches h: Newton's method kept inside a bracket. */
  function inPiece(i: number, h: number): number {
    const rest = h - H[i]!
    const step = B[i + 1]! - B[i]!
    let low = 0
    let high = step
    let x = (rest / (H[i + 1]! - H[i]!)) * step
    for (let iteration = 0; iteration < 60; iteration++) {
      const miss = x * (m[i]! + x * (c2[i]! + x * c3[i]!)) - rest
      if (miss > 0) high = x
      else low = x
      let next = x - miss / slopeAt(i, x)
      if (!(next >= low && next <= high)) next = (low + high) / 2
      const done = Math.abs(next - x) <= 4 * Number.EPSILON * step
      x = next
      if (done) break
    }
    return x
  }
  const fieldStrength = (fluxDensity: number): number => {
    requireFinite('fluxDensity', fluxDensity, 'T')
    const b = Math.abs(fluxDensity)
    let h: number
    if (b >= Blast) h = Hlast + (b - Blast) / μ0
    else {
      const i = pieceOf(B, b)
      const x = b - B[i]!
      h = H[i]! + x * (m[i]! + x * (c2[i]! + x * c3[i]!))
    }
    return fluxDensity < 0 ? -h : h
  }
  const fluxDensity = (fieldStrength: number): number => {
    requireFinite('fieldStrength', fieldStrength, 'A/m')
    const h = Math.abs(fieldStrength)
    let b: number
    if (h >= Hlast) b = Blast + μ0 * (h - Hlast)
    else {
      const i = pieceOf(H, h)
      b = B[i]! + inPiece(i, h)
    }
    return fieldStrength < 0 ? -b : b
  }
  const differentialReluctivity = (fluxDensity: number): number => {
    requireFinite('fluxDensity', fluxDensity, 'T')
    const b = Math.abs(fluxDensity)
    if (b >= Blast) return 1 / μ0
    const i = pieceOf(B, b)
    return slopeAt(i, b - B[i]!)
  }
  const energyDensity = (fluxDensity: number): number => {
    requireFinite('fluxDensity', fluxDensity, 'T')
    const b = Math.abs(fluxDensity)
    if (b >= Blast) return energy[last]! + (b - Blast) * (Hlast + (b - Blast) / (2 * μ0))
    const i = pieceOf(B, b)
    return energy[i]! + pieceEnergy(i, b - B[i]!)
  }
  const relativePermeability = (fluxDensity: number): number =>
    fluxDensity === 0 ? 1 / (m[0]! * μ0) : fluxDensity / (μ0 * fieldStrength(fluxDensity))
  const knee = bhKnee(fieldStrength, Blast)
  return {
    fieldStrength,
    fluxDensity,
    differentialReluctivity,
    relativePermeability,
    energyDensity,
    lastFluxDensity: Blast,
    knee,
  }
}

/** The least B up to `to` where a tenth more asks for half as much H again (knee of iec-61869-2), or `to`. */
function bhKnee(fieldStrength: (B: number) => number, to: number): number {
  const excess = (B: number) => fieldStrength(1.1 * B) - 1.5 * fieldStrength(B)
  const steps = 400
  for (let i = 2; i <= steps; i++) {
    const B = (to * i) / steps
    if (excess(B) >= 0) return root(excess, [(to * (i - 1)) / steps, B], 1e-9 * to)
  }
  return to
}
