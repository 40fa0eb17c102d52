/** Harmonics, round a drum and along it, of the potential of one radially polarised block. */
import { type ModifiedBessel, modifiedBessel } from '../../numerics/bessel.ts'
import { gaussLegendre } from '../../numerics/quadrature.ts'

export interface DrumBlock {
  /** Axis to the block's centre [m]. */
  readonly radius: number
  /** Edge along the circumference [m]. */
  readonly width: number
  /** Edge along the axis [m]. */
  readonly axialLength: number
  /** Edge along the radius [m]. */
  readonly thickness: number
}

/** One flat face as charge on lines along the axis: w cos mθ at distances from the axis near `middle`. */
interface Face {
  readonly middle: number
  readonly distance: Float64Array
  readonly charge: Float64Array
  /** The same charge as if it never cancelled itself: what is left of order m at the best place for it. */
  readonly envelope: Float64Array
}

export interface BlockHarmonic {
  readonly order: number
  readonly faces: readonly Face[]
}

/** @internal The two charged faces of a block of unit polarization, weighted for order m. */
export function blockHarmonic({ radius, width, thickness }: DrumBlock, order: number): BlockHarmonic {
  const half = width / 2
  const faces = [1, -1].map((side) => {
    const x = radius + (side * thickness) / 2
    const corner = Math.hypot(x, half)
    const angle = order * Math.atan2(half, x)
    const { nodes, weights } = gaussLegendre(Math.min(6 + Math.ceil(0.5 * angle), 128))
    const distance = nodes.map((node) => Math.hypot(x, (half * (1 + node)) / 2))
    const charge = nodes.map(
      (node, j) => side * half * weights[j]! * Math.cos(order * Math.atan2((half * (1 + node)) / 2, x)),
    )
    const envelope = weights.map((weight) => (side * half * weight) / Math.max(1, angle))
    return { middle: (x + corner) / 2, distance, charge, envelope }
  })
  return { order, faces }
}

/** Sums over all charge of I_m(kr′) and of K_m(kr′), over e^lnI and e^lnK. */
export interface SourceWave {
  readonly sumI: number
  readonly lnI: number
  readonly sumK: number
  readonly lnK: number
  readonly envelopeI: number
  readonly envelopeK: number
}

/** @internal ln f(x + δ) − ln f(x) as a polynomial without constant, from the slope p = f′/f and Bessel's equation p′ = 1 + n²/x² − p/x − p², to δ⁴. */
export function growth(n: number, x: number, p: number): readonly [number, number, number, number] {
  const q = (n * n) / (x * x)
  const p1 = 1 + q - p / x - p * p
  const p2 = (-2 * q) / x + p / (x * x) - p1 / x - 2 * p * p1
  const p3 = (6 * q) / (x * x) - (2 * p) / x ** 3 + (2 * p1) / (x * x) - p2 / x - 2 * (p1 * p1 + p * p2)
  return [p, p1 / 2, p2 / 6, p3 / 24]
}

/** @internal Sources of one axial wave number k: the block's charge seen from outside (I) and from inside (K). */
export function sourceWave({ order, faces }: BlockHarmonic, k: number): SourceWave {
  const at: ModifiedBessel[] = faces.map(({ middle }) => modifiedBessel(order, k * middle))
  const lnI = at[0]!.lnI
  const lnK = at[1]!.lnK
  let sumI = 0
  let sumK = 0
  let envelopeI = 0
  let envelopeK = 0
  for (let f = 0; f < 2; f++) {
    const { middle, distance, charge, envelope } = faces[f]!
    const bessel = at[f]!
    const a = growth(order, k * middle, bessel.slopeI)
    const b = growth(order, k * middle, bessel.slopeK)
    const moreI = bessel.lnI - lnI
    const moreK = bessel.lnK - lnK
    for (let j = 0; j < distance.length; j++) {
      const δ = k * (distance[j]! - middle)
      const I = Math.exp(moreI + δ * (a[0] + δ * (a[1] + δ * (a[2] + δ * a[3]))))
      const K = Math.exp(moreK + δ * (b[0] + δ * (b[1] + δ * (b[2] + δ * b[3]))))
      sumI += charge[j]! * I
      sumK += charge[j]! * K
      envelopeI += envelope[j]! * I
      envelopeK += envelope[j]! * K
    }
  }
  return { sumI, lnI, sumK, lnK, envelopeI, envelopeK }
}
