/** Mutual inductance of wire paths, by Neumann's double integral over straight pieces. */
import { completeElliptic } from '../../numerics/elliptic.ts'
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

const μ0 = 4e-7 * Math.PI

/** Segments of a polyline: start, unit direction and length of each, zero-length chords left out. */
interface Segments {
  readonly count: number
  readonly start: Float64Array
  readonly direction: Float64Array
  readonly length: Float64Array
}

function segmentsOf(name: string, polyline: Float64Array): Segments {
  if (polyline.length < 6 || polyline.length % 3 !== 0)
    refuse({
      name,
      condition: 'x y z of at least two points',
      value: polyline.length,
      code: 'wrong-length',
    })
  const most = polyline.length / 3 - 1
  const start = new Float64Array(3 * most)
  const direction = new Float64Array(3 * most)
  const length = new Float64Array(most)
  for (let i = 0; i < most; i++) {
    const x = polyline[3 * i + 3] - polyline[3 * i]
    const y = polyline[3 * i + 4] - polyline[3 * i + 1]
    const z = polyline[3 * i + 5] - polyline[3 * i + 2]
    const l = Math.sqrt(x * x + y * y + z * z)
    requireFinite(`${name} point ${i + 1}`, l, 'm')
    length[i] = l
    const scale = l > 0 ? 1 / l : 0
    start[3 * i] = polyline[3 * i]
    start[3 * i + 1] = polyline[3 * i + 1]
    start[3 * i + 2] = polyline[3 * i + 2]
    direction[3 * i] = x * scale
    direction[3 * i + 1] = y * scale
    direction[3 * i + 2] = z * scale
  }
  return { count: most, start, direction, length }
}

/** ∫∫ ds dt / distance of parallel segments: s in 0…l, t in p…q measured along the same line, `offset`² between. */
function parallelIntegral(l: number, p: number, q: number, squared: number): number {
  // lines on top of each other diverge; the caller refuses what is not finite
  if (squared === 0 && Math.min(q, l) - Math.max(p, 0) > 1e-12 * l) return Number.POSITIVE_INFINITY
  const f = (x: number) => {
    const r = Math.sqrt(x * x + squared)
    const a = Math.abs(x)
    if (a === 0) return -r
    return squared > 0 ? a * Math.log((a + r) / Math.sqrt(squared)) - r : a * Math.log(a) - r + a * Math.LN2
  }
  return f(q) + f(l - p) - f(p) - f(l - q)
}

/** weight · 2 artanh(side/(r + s)) as a logarithm; a vertex that touches has weight zero. */
function sideTerm(weight: number, side: number, r: number, s: number): number {
  const under = r + s - side
  return under > 1e-15 * side ? weight * Math.log((r + s + side) / under) : 0
}

const cornerDistance = (h2: number, s: number, t: number, cosine: number) =>
  Math.sqrt(Math.max(0, h2 + s * s + t * t - 2 * s * t * cosine))

/** Beyond this many times the summed length a pair is summed at Gauss points, not in closed form. */
const gaussFrom = 1.4
/** Beyond this many times the longer length a pair is summed from middle to middle with its second-order term. */
const middleFrom = 4.5
const gaussNode = 0.5 / Math.sqrt(3)

/**
 * ∫∫ ds dt / √(distance² + g²) over two straight segments, times the cosine between them (Grover 1946, chapter 7:
 * segments placed in any position; g enters as one more offset square to both).
 */
function pairIntegral(A: Segments, i: number, B: Segments, j: number, squaredMean: number): number {
  const l = A.length[i]
  const m = B.length[j]
  const a = 3 * i
  const b = 3 * j
  const ux = A.direction[a]
  const uy = A.direction[a + 1]
  const uz = A.direction[a + 2]
  const vx = B.direction[b]
  const vy = B.direction[b + 1]
  const vz = B.direction[b + 2]
  const cosine = ux * vx + uy * vy + uz * vz
  if (cosine < 1e-15 && cosine > -1e-15) return 0
  const wx = B.start[b] - A.start[a]
  const wy = B.start[b + 1] - A.start[a + 1]
  const wz = B.start[b + 2] - A.start[a + 2]
  const mx = wx + (vx * m - ux * l) / 2
  const my = wy + (vy * m - uy * l) / 2
  const mz = wz + (vz * m - uz * l) / 2
  const apart = mx * mx + my * my + mz * mz
  const longest = Math.max(l, m)
  const summed = l + m
  if (apart > gaussFrom * gaussFrom * summed * summed) {
    if (apart > middleFrom * middleFrom * longest * longest) {
      const R2 = apart + squaredMean
      const along = ux * mx + uy * my + uz * mz
      const other = vx * mx + vy * my + vz * mz
      const bend = l * l * ((3 * along * along) / R2 - 1) + m * m * ((3 * other * other) / R2 - 1)
      return ((cosine * l * m) / Math.sqrt(R2)) * (1 + bend / (24 * R2))
    }
    let sum = 0
    for (let side = -1; side < 2; side += 2) {
      const p = side * gaussNode
      const x = mx - ux * l * p
      const y = my - uy * l * p
      const z = mz - uz * l * p
      const t = gaussNode * m
      const near = x * x + y * y + z * z + t * t + squaredMean
      const skew = 2 * t * (x * vx + y * vy + z * vz)
      sum += 1 / Math.sqrt(near + skew) + 1 / Math.sqrt(near - skew)
    }
    return (cosine * sum * l * m) / 4
  }
  const uw = ux * wx + uy * wy + uz * wz
  // |u × v| from the cross product: √(1 − cos²) loses half the digits of small angles
  const cx = uy * vz - uz * vy
  const cy = uz * vx - ux * vz
  const cz = ux * vy - uy * vx
  const sine2 = cx * cx + cy * cy + cz * cz
  // w × u likewise, instead of differences of products
  const px = wy * uz - wz * uy
  const py = wz * ux - wx * uz
  const pz = wx * uy - wy * ux
  if (sine2 < 1e-12) {
    const squared = px * px + py * py + pz * pz + squaredMean
    const least = squared > 1e-24 * (uw * uw + l * l) ? squared : 0
    return cosine > 0 ? parallelIntegral(l, uw, uw + m, least) : -parallelIntegral(l, uw - m, uw, least)
  }
  // feet of the common perpendicular: A.start + s·u and B.start + t·v
  const s0 = ((wy * vz - wz * vy) * cx + (wz * vx - wx * vz) * cy + (wx * vy - wy * vx) * cz) / sine2
  const t0 = (px * cx + py * cy + pz * cz) / sine2
  const perpendicular = wx * cx + wy * cy + wz * cz
  const h2 = (perpendicular * perpendicular) / sine2 + squaredMean
  const sA = -s0
  const sB = l - s0
  const tA = -t0
  const tB = m - t0
  const R1 = cornerDistance(h2, sB, tB, cosine)
  const R2 = cornerDistance(h2, sB, tA, cosine)
  const R3 = cornerDistance(h2, sA, tA, cosine)
  const R4 = cornerDistance(h2, sA, tB, cosine)
  let sum =
    sideTerm(sB, m, R1, R2) + sideTerm(tB, l, R1, R4) - sideTerm(sA, m, R3, R4) - sideTerm(tA, l, R2, R3)
  const h = Math.sqrt(h2)
  const sine = Math.sqrt(sine2)
  if (h > 1e-14 * longest * sine) {
    const hc = h2 * cosine
    const hs = h * sine
    sum -=
      (h / sine) *
      (Math.atan((hc + sB * tB * sine2) / (hs * R1)) -
        Math.atan((hc + sB * tA * sine2) / (hs * R2)) +
        Math.atan((hc + sA * tA * sine2) / (hs * R3)) -
        Math.atan((hc + sA * tB * sine2) / (hs * R4)))
  }
  return cosine * sum
}

export interface NeumannOptions {
  /** Effective distance added square to the real one: the bundles' geometric mean distance, 0 for filaments [m]. */
  readonly meanDistance?: number
  /** Both paths are `repeats` copies turned by 2π/repeats: only the first part of the first path is summed. */
  readonly repeats?: number
}

/**
 * Mutual inductance of two polylines, each listed with both ends (a closed one ends with its first point).
 *
 *   M = μ0/(4π) ∮∮ dl·dl′ / √(r² + g²)
 *
 * Holds: free space, filaments; with g, bundles whose mean distance g is small against the radius of their bends.
 * Accuracy: closed form for near pairs of segments; further apart than 1.4 times their summed length Gauss points
 * or middles, each pair within 1e-4 of μ0/4π times its shorter length; the chords' own error comes on top.
 *
 * @param polylineA              x0 y0 z0 x1 … of the first path              [m]
 * @param polylineB              the same of the second                       [m]
 * @param options.meanDistance   g  geometric mean distance, 0 if not given   [m]
 * @param options.repeats        copies that make up each path, 1 if not given [1]
 * @returns                      M  positive when both currents link alike    [H]
 * @throws RangeError            fewer than two points; a value not finite; paths that share a stretch with g = 0
 * @source grover1946, chapter 7 (segments in any position); from memory, not opened
 * @example mutualInductance(new Float64Array([0, 0, 0, 1, 0, 0]), new Float64Array([0, 1, 0, 1, 1, 0])) // 9.3432e-8
 */
export function mutualInductance(
  polylineA: Float64Array,
  polylineB: Float64Array,
  options: NeumannOptions = {},
): number {
  const { meanDistance = 0, repeats = 1 } = options
  requireNotNegative('meanDistance', meanDistance, 'm')
  const A = segmentsOf('polylineA', polylineA)
  const B = polylineB === polylineA ? A : segmentsOf('polylineB', polylineB)
  if (!Number.isInteger(repeats) || repeats < 1 || A.count % repeats !== 0)
    refuse({
      name: 'repeats',
      condition: `a whole number that divides the ${A.count} segments of polylineA`,
      value: repeats,
      code: 'conflict',
    })
  const squaredMean = meanDistance * meanDistance
  const first = A.count / repeats
  let sum = 0
  if (A === B && repeats === 1)
    for (let i = 0; i < first; i++) {
      sum += pairIntegral(A, i, A, i, squaredMean)
      for (let j = i + 1; j < first; j++) sum += 2 * pairIntegral(A, i, A, j, squaredMean)
    }
  else
    for (let i = 0; i < first; i++)
      for (let j = 0; j < B.count; j++) sum += pairIntegral(A, i, B, j, squaredMean)
  if (!Number.isFinite(sum))
    refuse({
      name: 'meanDistance',
      condition: 'above zero for paths that share a stretch',
      value: meanDistance,
      unit: 'm',
      code: 'conflict',
    })
  return 1e-7 * repeats * sum
}

/** Side of the section over the radius of the bends up to which one filament errs by no more than 1 %. */
export const stoutBundleRatio = 2 / 3

/**
 * Self-inductance of a bundle of turns along a path, its section replaced by its geometric mean distance.
 *
 *   L = N² μ0/(4π) ∮∮ dl·dl′ / √(r² + g²)
 *
 * Holds: section small against the bends of the path, see `stoutBundleRatio`. Accuracy: circular coil of square
 * section c and mean radius R: low by 0.06 % at R = 5c, 0.2 % at 3c, 1.0 % at 1.5c (Brooks coil), 2.9 % at c; use
 * `bundleInductance` for stouter coils.
 *
 * @param bundle.polyline               x0 y0 z0 x1 …, both ends listed        [m]
 * @param bundle.geometricMeanDistance  g  of the section from itself, > 0     [m]
 * @param bundle.turns                  N                                      [1]
 * @param bundle.repeats                copies that make up the path, 1 if not given [1]
 * @returns                             L                                      [H]
 * @throws RangeError                   g or turns not above zero; polyline too short
 * @source grover1946, chapter 3 (geometric mean distances) with Neumann's integral; from memory, not opened
 * @example selfInductance({ polyline: new Float64Array([0, 0, 0, 1, 0, 0]), geometricMeanDistance: 0.001, turns: 1 }) // 1.32038e-6
 */
export function selfInductance(bundle: {
  readonly polyline: Float64Array
  readonly geometricMeanDistance: number
  readonly turns: number
  readonly repeats?: number
}): number {
  const { polyline, geometricMeanDistance, turns, repeats = 1 } = bundle
  requirePositive('geometricMeanDistance', geometricMeanDistance, 'm')
  requirePositive('turns', turns)
  return (
    turns * turns * mutualInductance(polyline, polyline, { meanDistance: geometricMeanDistance, repeats })
  )
}

/**
 * Self-inductance of a stout bundle from several filaments over its section.
 *
 *   L = N² Σ_i Σ_j w_i w_j M_ij
 *
 * M_ii is taken with the distance of filament i from its own share of the section (`sectionSelfDistances`).
 * Holds: turns spread evenly over the section. Accuracy: circular coils of square section at 3 × 3 Gauss points
 * within 0.03 % at R = 1.5c, 0.08 % at c, 0.3 % at 0.6c; at 2 × 2 four times that. Chords come on top.
 *
 * @param bundle.filaments      polylines of the filaments, x0 y0 z0 x1 …      [m]
 * @param bundle.weights        w  share of each, sum 1                        [1]
 * @param bundle.selfDistances  distance of each filament from its own share   [m]
 * @param bundle.turns          N                                              [1]
 * @param bundle.repeats        copies that make up each path, 1 if not given  [1]
 * @returns                     L                                              [H]
 * @throws RangeError           lists of unlike length; distances or turns not above zero
 * @source derived, from Neumann's integral with the logarithmic kernel's quadrature corrected to be exact for even density
 * @example bundleInductance({ filaments: [new Float64Array([0, 0, 0, 1, 0, 0])], weights: [1], selfDistances: [0.001], turns: 1 }) // 1.32038e-6
 */
export function bundleInductance(bundle: {
  readonly filaments: readonly Float64Array[]
  readonly weights: ArrayLike<number>
  readonly selfDistances: ArrayLike<number>
  readonly turns: number
  readonly repeats?: number
}): number {
  const { filaments, weights, selfDistances, turns, repeats = 1 } = bundle
  requirePositive('turns', turns)
  for (const [name, list] of [
    ['weights', weights],
    ['selfDistances', selfDistances],
  ] as const)
    if (list.length !== filaments.length || list.length === 0)
      refuse({ name, condition: 'one for each filament', value: list.length, code: 'wrong-length' })
  let sum = 0
  for (let i = 0; i < filaments.length; i++) {
    requirePositive(`selfDistances[${i}]`, selfDistances[i], 'm')
    requireFinite(`weights[${i}]`, weights[i])
    const own = mutualInductance(filaments[i], filaments[i], { meanDistance: selfDistances[i], repeats })
    sum += weights[i] * weights[i] * own
    for (let j = i + 1; j < filaments.length; j++)
      sum += 2 * weights[i] * weights[j] * mutualInductance(filaments[i], filaments[j], { repeats })
  }
  return turns * turns * sum
}

/**
 * Mutual inductance of two thin coaxial circular loops.
 *
 *   M = μ0 (r₁ + r₂) (K(κ) − E(κ)),  κ = (r₁ − r₂)/(r₁ + r₂),  r₁,₂ = √((a ± b)² + z²)
 *
 * Holds: filaments in free space, any radii and distance. Accuracy: rounding only, near and far (Landen's
 * transformation of Maxwell's form removes its cancellation).
 *
 * @param loops.radiusA  a  of the first loop, > 0          [m]
 * @param loops.radiusB  b  of the second, > 0              [m]
 * @param loops.apart    z  between their planes            [m]
 * @returns              M  positive for like senses        [H]
 * @throws RangeError    radius not above zero; the two loops are one and the same circle
 * @source maxwell1891, articles 701 and 704; from memory, not opened
 * @example coaxialLoopMutualInductance({ radiusA: 0.025, radiusB: 0.025, apart: 0.01 }) // 3.3768e-8
 */
export function coaxialLoopMutualInductance(loops: {
  readonly radiusA: number
  readonly radiusB: number
  readonly apart: number
}): number {
  const { radiusA: a, radiusB: b, apart: z } = loops
  requirePositive('radiusA', a, 'm')
  requirePositive('radiusB', b, 'm')
  requireFinite('apart', z, 'm')
  const r1 = Math.hypot(a + b, z)
  const r2 = Math.hypot(a - b, z)
  if (!(r2 > 1e-150 * r1))
    refuse({
      name: 'apart',
      condition: 'other than zero for equal radii',
      value: z,
      unit: 'm',
      code: 'conflict',
    })
  const sum = r1 + r2
  // r₁ − r₂ = 4ab/(r₁ + r₂), and κ′ = 2√(r₁r₂)/(r₁ + r₂)
  const κ = ((4 * a) / sum) * (b / sum)
  const { difference } = completeElliptic(Math.min(κ, 1), (2 * Math.sqrt(r1) * Math.sqrt(r2)) / sum)
  return μ0 * sum * difference
}
