/** What flat iron adds to the mutual inductance of two wire paths, by images of the second path. */
import { mutualInductance, type NeumannOptions } from '../physics/magnetics/inductance.ts'

/** Iron surfaces across the machine axis, each undefined where there is none [m]. */
export interface IronPlanes {
  readonly lower: number | undefined
  readonly upper: number | undefined
}

/**
 * The series of images between two plates ends where a repeat adds less than this share of the reference. With the
 * dipoles beyond added in closed form, four times as much leaves less than 1e-3 out.
 */
export const imageShare = { none: 1e-3, dipole: 4e-3 } as const

/** Repeats after which it ends anyway: plates closer than a sixtieth of a coil's size are no machine. */
const mostRepeats = 64

/** The path with z → sense·z + shift; the points keep their order, so the current keeps its sense along the iron. */
function imagePath(path: Float64Array, sense: 1 | -1, shift: number): Float64Array {
  const image = Float64Array.from(path)
  for (let i = 2; i < image.length; i += 3) image[i] = sense * path[i]! + shift
  return image
}

export type PathPair = readonly [pathA: Float64Array, pathB: Float64Array]

/** Repeats of the images up and down; 0 without a second plate. */
export type ImageRepeats = number

export interface ImageSum {
  /** [H] */
  readonly inductance: number
  readonly repeats: ImageRepeats
}

/**
 * Mutual inductance of path A with the images of path B in unsaturated, unbounded, infinitely permeable plates:
 *
 *   one plate at P: B mirrored, z → 2P − z;  two: B mirrored and B itself, again and again at twice their distance D
 *
 * `end` holds the inductance of which `imageShare` ends the series, or the number of repeats another pair has needed.
 * Magnets count as air. With `far` 'dipole' the images left out, whose inductances fall with the cube of their
 * distance, are added as Σ n⁻³ ≈ 1/(2 (N + ½)²).
 */
export function imageInductance(
  [pathA, pathB]: PathPair,
  { lower, upper }: IronPlanes,
  options: NeumannOptions & {
    /** The same paths with longer chords, for images at least twice the plates' distance away. */
    readonly coarse?: PathPair
    readonly end: { readonly reference: number } | { readonly repeats: ImageRepeats }
    readonly far: 'dipole' | 'none'
  },
): ImageSum {
  const { end, far, coarse = [pathA, pathB], ...neumann } = options
  const M = (sense: 1 | -1, shift: number) => mutualInductance(pathA, imagePath(pathB, sense, shift), neumann)
  const distant = (sense: 1 | -1, shift: number) =>
    mutualInductance(coarse[0], imagePath(coarse[1], sense, shift), neumann)
  if (lower === undefined && upper === undefined) return { inductance: 0, repeats: 0 }
  if (lower === undefined || upper === undefined)
    return { inductance: M(-1, 2 * (lower ?? upper!)), repeats: 0 }
  const D = upper - lower
  let sum = M(-1, 2 * lower) + M(-1, 2 * upper)
  const most = 'repeats' in end ? end.repeats : mostRepeats
  let last = 0
  let n = 0
  while (n < most) {
    n++
    // mirrored in the lower plate and then moved down, mirrored in the upper and moved up, itself both ways
    const up = distant(1, 2 * n * D) + distant(-1, 2 * upper + 2 * n * D)
    last = up + distant(1, -2 * n * D) + distant(-1, 2 * lower - 2 * n * D)
    sum += last
    if ('reference' in end && Math.abs(last) < imageShare[far] * end.reference) break
  }
  if (far === 'dipole' && n > 0) sum += (last * n ** 3) / (2 * (n + 0.5) ** 2)
  return { inductance: sum, repeats: n }
}
