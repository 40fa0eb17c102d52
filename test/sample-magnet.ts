/** Magnets of all shapes and their fields at one point, as checks ask for them. */
import fc from 'fast-check'
import { type Frame3, identityFrame, type Vector3 } from '../src/numerics/vector.ts'
import type { CylinderMagnet } from '../src/physics/magnetics/cylinder-magnet.ts'
import { type Magnet, magnetFluxDensity, magnetVectorPotential } from '../src/physics/magnetics/magnet.ts'
import type { FieldAccuracy } from '../src/physics/magnetics/magnet-argument.ts'
import type { PrismMagnet } from '../src/physics/magnetics/prism-magnet.ts'

export const cylinder = (
  radius: number,
  height: number,
  more: Partial<CylinderMagnet> = {},
): CylinderMagnet => ({ centre: [0, 0, 0], frame: identityFrame, radius, height, polarization: 1, ...more })

export const prism = (
  outline: readonly number[],
  height: number,
  more: Partial<PrismMagnet> = {},
): PrismMagnet => ({
  centre: [0, 0, 0],
  frame: identityFrame,
  outline: new Float64Array(outline),
  height,
  direction: [0, 0, 1],
  polarization: 1,
  ...more,
})

/** Corners of a regular polygon with the area of a circle. */
export const roundOutline = (radius: number, n: number): number[] => {
  const r = radius * Math.sqrt((2 * Math.PI) / n / Math.sin((2 * Math.PI) / n))
  return Array.from({ length: 2 * n }, (_, i) =>
    i % 2 === 0 ? r * Math.cos((Math.PI * i) / n) : r * Math.sin((Math.PI * (i - 1)) / n),
  )
}

export const unit = (v: Vector3): Vector3 => {
  const r = Math.hypot(...v)
  return [v[0] / r, v[1] / r, v[2] / r]
}

/** Rotation from three angles, right-handed and orthonormal to rounding. */
export function frameOf(α: number, β: number, γ: number): Frame3 {
  const [ca, sa, cb, sb, cg, sg] = [α, β, γ].flatMap((x) => [Math.cos(x), Math.sin(x)]) as number[]
  return [
    [ca! * cb!, sa! * cb!, -sb!],
    [ca! * sb! * sg! - sa! * cg!, sa! * sb! * sg! + ca! * cg!, cb! * sg!],
    [ca! * sb! * cg! + sa! * sg!, sa! * sb! * cg! - ca! * sg!, cb! * cg!],
  ]
}

/** A vector of a magnet's local axes in the machine frame. */
export const out = ({ frame }: { readonly frame: Frame3 }, v: Vector3): Vector3 =>
  [0, 1, 2].map((k) => v[0] * frame[0][k]! + v[1] * frame[1][k]! + v[2] * frame[2][k]!) as unknown as Vector3

const single = (f: Float64Array): Vector3 => [f[0]!, f[1]!, f[2]!]
export const fieldOf = (
  magnets: Magnet | readonly Magnet[],
  p: Vector3,
  accuracy: FieldAccuracy = {},
): Vector3 => single(magnetFluxDensity([magnets].flat() as Magnet[], new Float64Array(p), accuracy))
export const potentialOf = (
  magnets: Magnet | readonly Magnet[],
  p: Vector3,
  accuracy: FieldAccuracy = {},
): Vector3 => single(magnetVectorPotential([magnets].flat() as Magnet[], new Float64Array(p), accuracy))

/** Points evenly spread in a cube of the half edge given; never quite on its middle planes. */
export const placeWithin = (half: number): fc.Arbitrary<Vector3> => {
  const one = fc.integer({ min: -1e6, max: 1e6 }).map((k) => ((k + 0.37) / 1e6) * half)
  return fc.tuple(one, one, one)
}

/** curl A − B, div A and div B by fourth-order central differences. */
export function maxwellFaults(magnets: Magnet | readonly Magnet[], p: Vector3, h: number) {
  const slope = (f: (q: Vector3) => Vector3, axis: number): Vector3 => {
    const at = (k: number) => f(p.map((x, i) => (i === axis ? x + k * h : x)) as unknown as Vector3)
    const [m2, m1, p1, p2] = [at(-2), at(-1), at(1), at(2)]
    return [0, 1, 2].map(
      (i) => (8 * (p1![i]! - m1![i]!) - (p2![i]! - m2![i]!)) / (12 * h),
    ) as unknown as Vector3
  }
  const a = [0, 1, 2].map((axis) => slope((q) => potentialOf(magnets, q), axis))
  const b = [0, 1, 2].map((axis) => slope((q) => fieldOf(magnets, q), axis))
  const B = fieldOf(magnets, p)
  return {
    curl: Math.hypot(a[1]![2] - a[2]![1] - B[0], a[2]![0] - a[0]![2] - B[1], a[0]![1] - a[1]![0] - B[2]),
    divA: Math.abs(a[0]![0] + a[1]![1] + a[2]![2]),
    divB: Math.abs(b[0]![0] + b[1]![1] + b[2]![2]),
  }
}

export const refusalCode = (f: () => unknown): string => {
  try {
    f()
  } catch (error) {
    return (error as { code?: string }).code ?? 'no code'
  }
  return 'none'
}
