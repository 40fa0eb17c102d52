/** The air on both sides of a plane with an iron plate in it: what flux a potential on that plane drives off. */
import { choleskyFactor, choleskySolve } from '../../numerics/cholesky.ts'
import { tridiagonalEigen } from '../../numerics/tridiagonal-eigen.ts'

/** Rings that divide the plane, finer where magnets and plates are, coarser far off. */
export interface RadialGrid {
  /** Rising [m]. */
  readonly radius: Float64Array
  /** Differences of ln r between neighbours [1]. */
  readonly step: Float64Array
  /** ∫ r dr that belongs to each ring [m²]. */
  readonly area: Float64Array
}

/** Growth of the step from ring to ring off the magnets. */
const growth = 1.6

/** Steps that begin with about `first`, grow, and add up to `length`. */
function growing(first: number, length: number): number[] {
  const steps: number[] = []
  for (let sum = 0, d = first; sum < length * (1 - 1e-9); d *= growth) {
    steps.push(d)
    sum += d
  }
  const total = steps.reduce((sum, d) => sum + d, 0)
  return steps.map((d) => (d * length) / total)
}

/**
 * @internal Rings `spacing` apart between the radii `dense`, farther and farther outside, through every rim, and on
 * by `reach`; spacing and reach in ln r.
 */
export function radialGrid(
  dense: readonly [number, number],
  rims: readonly number[],
  spacing: number,
  reach: number,
): RadialGrid {
  const [from, to] = [Math.log(dense[0]), Math.log(dense[1])]
  const marks = rims.map(Math.log)
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-3 * spacing
  const inside = [from, ...marks.filter((u) => u > from && u < to).sort((a, b) => a - b), to].filter(
    (u, i, all) => i === 0 || !near(u, all[i - 1]!),
  )
  const all: number[] = [inside[0]!]
  for (let i = 1; i < inside.length; i++) {
    const length = inside[i]! - inside[i - 1]!
    const count = Math.max(1, Math.ceil(length / spacing - 1e-9))
    for (let k = 1; k <= count; k++) all.push(inside[i - 1]! + (length * k) / count)
  }
  for (const side of [-1, 1] as const) {
    const start = side < 0 ? all[0]! : all[all.length - 1]!
    const beyond = marks
      .map((u) => side * (u - start))
      .filter((d) => d > 1e-3 * spacing)
      .sort((a, b) => a - b)
      .filter((d, i, list) => i === 0 || !near(d, list[i - 1]!))
    let at = 0
    let step = spacing
    const place = (d: number) => {
      at += d
      step = d
      if (side < 0) all.unshift(start - at)
      else all.push(start + at)
    }
    for (const mark of beyond) for (const d of growing(Math.min(step, mark - at), mark - at)) place(d)
    // Past the last rim short first: half of a rim's ring lies outside the plate and would widen it
    for (const d of growing(Math.min(step, spacing) / 3, reach)) place(d)
  }
  const n = all.length
  const radius = Float64Array.from(all, Math.exp)
  const step = Float64Array.from({ length: n - 1 }, (_, i) => all[i + 1]! - all[i]!)
  const area = Float64Array.from(radius, (r, i) => (r * r * ((step[i - 1] ?? 0) + (step[i] ?? 0))) / 2)
  return { radius, step, area }
}

/** Waves of one angular order on the plane: V with Vᵀ diag(area)⁻¹ V = 1, and their wave numbers. */
export interface PlaneWaves {
  /** [1/m]. */
  readonly waveNumber: Float64Array
  /** n × n, row by row; column j belongs to wave number j. */
  readonly shape: Float64Array
}

/**
 * @internal Eigenfunctions of −Δ on the plane for cos(mθ), zero at the ends of the grid: what they carry decays
 * from the plane like exp(−kz), so that any function of k is a matrix at once.
 */
export function planeWaves({ step, area }: RadialGrid, m: number): PlaneWaves {
  const n = area.length
  const diagonal = new Float64Array(n)
  const beside = new Float64Array(n - 1)
  for (let i = 0; i < n; i++) {
    const [before, after] = [step[i - 1] ?? step[0]!, step[i] ?? step[n - 2]!]
    diagonal[i] = (1 / before + 1 / after + (m * m * ((step[i - 1] ?? 0) + (step[i] ?? 0))) / 2) / area[i]!
    if (i + 1 < n) beside[i] = -1 / (after * Math.sqrt(area[i]! * area[i + 1]!))
  }
  const { values, vectors } = tridiagonalEigen(diagonal, beside)
  for (let i = 0; i < n; i++) {
    const root = Math.sqrt(area[i]!)
    for (let j = 0; j < n; j++) vectors[i * n + j] = vectors[i * n + j]! * root
  }
  return { waveNumber: values.map((λ) => Math.sqrt(Math.max(0, λ))), shape: vectors }
}

/** @internal Matrix of f(k): V f Vᵀ. */
export function waveOperator({ waveNumber, shape }: PlaneWaves, f: (k: number) => number): Float64Array {
  const n = waveNumber.length
  const scaled = new Float64Array(n * n)
  const factor = waveNumber.map(f)
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) scaled[i * n + j] = shape[i * n + j]! * factor[j]!
  const G = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0
      for (let k = 0; k < n; k++) sum += scaled[i * n + k]! * shape[j * n + k]!
      G[i * n + j] = sum
      G[j * n + i] = sum
    }
  return G
}

/** The plane outside a plate, where the potential is free, folded into the plate's own rings. */
export interface FoldedAir {
  /** G over the plate's rings, as if the air beside were gone. */
  readonly stiffness: Float64Array
  /** The source over the whole plane → the one that the plate's rings feel. */
  readonly foldedSource: (source: Float64Array) => Float64Array
  /** The potential on the plate → over the whole plane. */
  readonly unfolded: (plate: Float64Array, source: Float64Array) => Float64Array
}

/** @internal Eliminates the rings outside `first` … `last` from G φ = −source. */
export function foldedAir(G: Float64Array, n: number, first: number, last: number): FoldedAir {
  const size = last - first + 1
  const outside = Array.from({ length: n }, (_, i) => i).filter((i) => i < first || i > last)
  const free = outside.length
  const own = new Float64Array(free * free)
  outside.forEach((i, a) => {
    outside.forEach((j, b) => {
      own[a * free + b] = G[i * n + j]!
    })
  })
  const factor = choleskyFactor(own, free)
  // Columns of G_oo⁻¹ G_op
  const answer = Array.from({ length: size }, (_, b) =>
    choleskySolve(
      factor,
      outside.map((i) => G[i * n + first + b]!),
    ),
  )
  const stiffness = new Float64Array(size * size)
  for (let a = 0; a < size; a++)
    for (let b = 0; b <= a; b++) {
      let sum = G[(first + a) * n + first + b]!
      for (let k = 0; k < free; k++) sum -= G[(first + a) * n + outside[k]!]! * answer[b]![k]!
      stiffness[a * size + b] = sum
      stiffness[b * size + a] = sum
    }
  return {
    stiffness,
    foldedSource: (source) => {
      const folded = source.slice(first, last + 1)
      for (let a = 0; a < size; a++)
        for (let k = 0; k < free; k++) folded[a] = folded[a]! - answer[a]![k]! * source[outside[k]!]!
      return folded
    },
    unfolded: (plate, source) => {
      const whole = new Float64Array(n)
      whole.set(plate, first)
      const rest = choleskySolve(
        factor,
        outside.map((i) => -source[i]!),
      )
      outside.forEach((i, k) => {
        let value = rest[k]!
        for (let a = 0; a < size; a++) value -= answer[a]![k]! * plate[a]!
        whole[i] = value
      })
      return whole
    },
  }
}

/** @internal f(k) of a potential on the plane, as density on each ring [per m²]. */
export function waveDensity(
  { waveNumber, shape }: PlaneWaves,
  { area }: RadialGrid,
  φ: Float64Array,
  f: (k: number) => number,
): Float64Array {
  const n = φ.length
  const share = new Float64Array(n)
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) share[j] = share[j]! + shape[i * n + j]! * φ[i]!
  for (let j = 0; j < n; j++) share[j] = share[j]! * f(waveNumber[j]!)
  return area.map((a, i) => {
    let sum = 0
    for (let j = 0; j < n; j++) sum += shape[i * n + j]! * share[j]!
    return sum / a
  })
}

/** @internal Value at r of what is given on the rings, straight in ln r between them, zero beyond. */
export function ringValue({ radius, step }: RadialGrid, values: Float64Array, r: number): number {
  let j = 0
  while (j + 1 < radius.length && radius[j + 1]! < r) j++
  if (j + 1 >= radius.length || r < radius[0]!) return 0
  const t = Math.log(r / radius[j]!) / step[j]!
  return values[j]! * (1 - t) + values[j + 1]! * t
}

const μ0 = 4e-7 * Math.PI

/** cosh(a)/sinh(b), sinh(a)/sinh(b) for |a| ≤ b, without overflow. */
const coshOverSinh = (a: number, b: number) => (Math.exp(a - b) + Math.exp(-a - b)) / -Math.expm1(-2 * b)
const sinhOverSinh = (a: number, b: number) => (Math.exp(a - b) - Math.exp(-a - b)) / -Math.expm1(-2 * b)

/** What a potential on the plane z = 0 does in the gap above it, by wave number; `across` from the plane opposite. */
export interface GapWaves {
  /** Flux into the gap per potential of this plane and of the plane opposite. */
  readonly own: (k: number) => number
  readonly across: (k: number) => number
  /** Axial flux density and potential at z per potential of this plane. */
  readonly axial: (k: number, z: number) => number
  readonly potential: (k: number, z: number) => number
}

/** @internal Laplace's equation in a gap that is open, ends half-way at potential zero, or at a plane z = D. */
export function gapWaves(end: 'open' | 'middle' | 'plane', D: number): GapWaves {
  const none = () => 0
  if (end === 'open')
    return {
      own: (k) => μ0 * k,
      across: none,
      axial: (k, z) => μ0 * k * Math.exp(-k * z),
      potential: (k, z) => Math.exp(-k * z),
    }
  const d = end === 'middle' ? D / 2 : D
  return {
    own: (k) => μ0 * k * coshOverSinh(k * d, k * d),
    across: end === 'middle' ? none : (k) => -μ0 * k * coshOverSinh(0, k * d),
    axial: (k, z) => μ0 * k * coshOverSinh(k * Math.abs(d - z), k * d),
    potential: (k, z) => sinhOverSinh(k * (d - z), k * d),
  }
}
