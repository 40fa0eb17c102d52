/** The working points of all magnets of a rotor, like or unlike, in their common circuit. */
import type { Machine, MagnetMaterial, Rotor } from '../machine/machine.ts'
import type { Magnet } from '../physics/magnetics/magnet.ts'
import { magnetInfluence, selfFactor } from '../physics/magnetics/magnet-influence.ts'
import { turnedMagnet } from '../physics/magnetics/magnet-pose.ts'
import { type WorkingPoint, workingPolarizations } from '../physics/magnetics/working-point.ts'
import type { Piece } from './rotor-magnets.ts'

const μ0 = 4e-7 * Math.PI

export interface MagnetCircuit {
  /** Of the first piece of a sound pole among sound ones. */
  readonly workingPoint: WorkingPoint
  /** Polarisation of every piece of a sound pole [T]. */
  readonly polarizations: readonly number[]
  /** Ring by ring, place by place: signed polarisation over that of a sound pole. */
  readonly factors: readonly (readonly number[])[]
}

/** The bodies of a piece that feel for it: the middle facet of an arc, or all components in one place. */
function feelingOf(piece: Piece): readonly Magnet[] {
  const middle = piece[Math.floor(piece.length / 2)]!
  return 'outline' in middle
    ? [middle]
    : piece.filter(({ centre }) => centre.every((x, axis) => x === middle.centre[axis]))
}

/** Enough for the polarisation to within 1e-4: it takes a twentieth of what the load factor is off. */
const feelingAccuracy = { order: 4, relativeError: 1e-5 } as const

/** Mean field of the sources along the polarisation of which the feeling bodies are the components. */
const along = (bodies: readonly Magnet[], sources: readonly Magnet[]): number =>
  sources.length === 0
    ? 0
    : bodies.reduce(
        (sum, body) => sum + body.polarization * magnetInfluence(body, sources, feelingAccuracy),
        0,
      )

/**
 * Mean μ0H per unit polarisation that the pieces of ring r′, place k cause along the axis of piece j of the first ring's
 * place 0: [ring][place][own piece][other piece].
 */
function influences(
  pieces: readonly (readonly Piece[])[],
  images: (magnets: readonly Magnet[]) => readonly Magnet[],
  count: number,
): number[][][][] {
  const own = pieces[0]!.map(feelingOf)
  const withImages = pieces.map((ring) => ring.map((piece) => images(piece)))
  const at = (r: number, k: number): number[][] =>
    own.map((feeling, j) =>
      withImages[r]!.map((sources, i) => {
        if (r === 0 && k === 0 && i === j) return ownInfluence(feeling, pieces[0]![j]!, images)
        return along(
          feeling,
          k === 0 ? sources : sources.map((one) => turnedMagnet(one, (2 * Math.PI * k) / count)),
        )
      }),
    )
  // a pole of one piece is its own mirror image: what stands as far ahead does as what stands behind
  const mirrored = own.length === 1
  return pieces.map((_, r) => {
    const half = Array.from({ length: mirrored ? Math.floor(count / 2) + 1 : count }, (__, k) => at(r, k))
    return Array.from({ length: count }, (__, k) => half[k] ?? half[count - k]!)
  })
}

/** The same of a piece upon itself: the bodies that feel in closed form, their fellows and all images as sources. */
function ownInfluence(
  feeling: readonly Magnet[],
  piece: Piece,
  images: (magnets: readonly Magnet[]) => readonly Magnet[],
): number {
  let self = 0
  const rest = piece.flatMap((body) => {
    const sources = images([body])
    if (!feeling.includes(body)) return sources
    // the body comes first, merged with its image where it stands on steel: a merged body is symmetric about the steel,
    // so that its mean over both halves is the mean over the real one. Components in one place do not feel each other
    // on the average.
    self += body.polarization ** 2 * selfFactor(sources[0]!)
    return sources.slice(1)
  })
  return self + along(feeling, rest)
}

/** The working point of a polarisation [T] and its load factor. */
export const workingPointAt = (polarization: number, loadFactor: number): WorkingPoint => ({
  polarization,
  fluxDensity: polarization * (1 + loadFactor),
  fieldStrength: (loadFactor * polarization) / μ0,
  permeanceCoefficient: loadFactor < 0 ? -(1 + loadFactor) / loadFactor : Number.MAX_VALUE,
  loadFactor,
})

/** All working points, `remanenceOf` giving each material's remanence at the magnets' temperature. */
export function magnetCircuit(
  { rotor }: Machine,
  pieces: readonly (readonly Piece[])[],
  images: (magnets: readonly Magnet[]) => readonly Magnet[],
  remanenceOf: (material: MagnetMaterial) => number,
): MagnetCircuit {
  const { poleCount, rings, magnet, alternating } = rotor
  const h = influences(pieces, images, poleCount)
  const n = pieces[0]!.length
  // sound poles, alternating: pieces alike in every pole, both rings alike by symmetry
  const influence = new Float64Array(n * n)
  for (const ring of h)
    ring.forEach((place, k) => {
      const sign = k % 2 === 0 ? 1 : -1
      place.forEach((row, j) => {
        row.forEach((value, i) => {
          influence[n * j + i]! += sign * value
        })
      })
    })
  const remanence = remanenceOf(magnet)
  const polarizations = [
    ...workingPolarizations({
      influence,
      remanence: new Float64Array(n).fill(remanence),
      recoilPermeability: new Float64Array(n).fill(magnet.recoilPermeability),
    }),
  ]
  const J = polarizations[0]!
  const load = polarizations.reduce((sum, other, i) => sum + (influence[i]! * other) / J, 0)
  return {
    workingPoint: workingPointAt(J, load),
    polarizations,
    factors: alternating
      ? rings.map((ring) => ring.map(({ sense }) => sense))
      : unlikeFactors(rotor, h, { J, polarizations }, remanenceOf),
  }
}

/** Every place its own unknown: what it feels follows from its neighbours' actual strengths and senses. */
function unlikeFactors(
  { rings, magnet }: Rotor,
  h: readonly (readonly (readonly (readonly number[])[])[])[],
  { J, polarizations }: { readonly J: number; readonly polarizations: readonly number[] },
  remanenceOf: (material: MagnetMaterial) => number,
): number[][] {
  const count = rings[0]!.length
  // pieces of a pole rise and fall together; what the first of them feels stands for the pole
  const felt = (ring: number, k: number): number =>
    h[ring]![k]![0]!.reduce((sum, value, i) => sum + (value * polarizations[i]!) / J, 0)
  const size = rings.length * count
  const influence = new Float64Array(size * size)
  const places = rings.flat()
  places.forEach((own, a) => {
    if (own.strength === 0) return
    for (let b = 0; b < size; b++) {
      if (places[b]!.strength === 0) continue
      const ring = Math.floor(a / count) === Math.floor(b / count) ? 0 : 1
      influence[size * a + b] = felt(ring, ((b % count) - (a % count) + count) % count)
    }
  })
  const solved = workingPolarizations({
    influence,
    remanence: Float64Array.from(
      places,
      ({ sense, strength, material }) => sense * strength * remanenceOf(material ?? magnet),
    ),
    recoilPermeability: Float64Array.from(places, ({ material }) => (material ?? magnet).recoilPermeability),
  })
  return rings.map((_, r) => Array.from(solved.subarray(r * count, (r + 1) * count), (own) => own / J))
}
