/** Self and mutual inductances of all coils of a machine with its iron, by Neumann's integral and images. */
import { curvePolyline, turnedCurve } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import { rectangleMeanDistance, sectionSelfDistances } from '../physics/magnetics/geometric-mean-distance.ts'
import { bundleInductance, mutualInductance, selfInductance } from '../physics/magnetics/inductance.ts'
import { discHeights } from './air-gap-field.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import { type IronPlanes, imageInductance } from './image-inductance.ts'

/** Chords may miss the curve by this share of a turn's length; inductance moves by less than a per cent. */
const sagittaShare = 0.001

/** Likewise towards images: those of other coils, and a coil's own beyond the first. */
const coarseShare = 0.004

/** Bundles that all but coincide still leak this much: more than the quadrature's error, less than any other. */
const closestCoupling = 1 - 1e-4

/** A coil's bundle is not small against its bends: several filaments stand for it. */
function stoutInductance({ filaments, bundle, turns, turnLength }: ConductorShape): number {
  const weights = filaments.map(({ weight }) => weight)
  return bundleInductance({
    filaments: filaments.map(({ curve }) => curvePolyline(curve, { sagitta: sagittaShare * turnLength })),
    weights,
    selfDistances: sectionSelfDistances({
      ...bundle,
      offsets: filaments.map(({ offset }) => offset),
      weights,
    }),
    turns,
  })
}

/** Iron plates before and behind the winding of a disc machine; the iron of a drum is no plate and is left out. */
export function ironPlanes(machine: Machine): IronPlanes {
  if (machine.rotor.arrangement === 'drum') return { lower: undefined, upper: undefined }
  return {
    lower: machine.rotor.backIron === undefined ? undefined : 0,
    upper: discHeights(machine).upperPlane,
  }
}

/**
 * Coil × coil, turns included, senses as wound [H]. Plates count as infinitely permeable and unbounded, magnets as
 * air; in the images a coil's bundle is one filament, softened by its section's mean distance: some 1 % low in all.
 * A wave on a disc is also one turn round the shaft, whose flux unbounded plates overrate; it links all phases alike
 * and drops out where their currents sum to nothing.
 */
export function coilInductances(machine: Machine, layout: ConductorLayout): number[][] {
  const { shapes, coils } = layout
  const planes = ironPlanes(machine)
  const chords = ({ curve, turnLength, repeats }: ConductorShape, angle: number, share: number) =>
    curvePolyline(angle === 0 ? curve : turnedCurve(curve, angle), {
      sagitta: (share * turnLength) / repeats,
    })
  const lines = shapes.map((shape) => chords(shape, 0, sagittaShare))
  const coarseLines = shapes.map((shape) => chords(shape, 0, coarseShare))
  const spread = shapes.map(({ bundle }) => rectangleMeanDistance(bundle))
  const own = shapes.map((shape, k) => {
    const free =
      shape.repeats > 1
        ? selfInductance({
            polyline: lines[k]!,
            geometricMeanDistance: spread[k]!,
            turns: shape.turns,
            repeats: shape.repeats,
          })
        : stoutInductance(shape)
    const square = shape.turns ** 2
    const images = imageInductance([lines[k]!, lines[k]!], planes, {
      coarse: [coarseLines[k]!, coarseLines[k]!],
      meanDistance: spread[k]!,
      repeats: shape.repeats,
      end: { reference: free / square },
      far: 'dipole',
    })
    return { inductance: free + square * images.inductance, repeats: images.repeats }
  })
  // every pair gets as many images as the neediest coil: only then can no current pattern store negative energy
  const end = { repeats: own.reduce((most, { repeats }) => Math.max(most, repeats), 0) }
  // alike shapes at alike angles apart have the same mutual inductance
  const found = new Map<string, number>()
  return coils.map((a) =>
    coils.map((b) => {
      if (a === b) return own[a.shape]!.inductance
      const [first, second] = a.number < b.number ? [a, b] : [b, a]
      const shapeA = shapes[first.shape]!
      const shapeB = shapes[second.shape]!
      const apart = second.angle - first.angle
      const key = `${first.shape} ${second.shape} ${(first.shape === second.shape ? Math.cos(apart) : apart).toFixed(9)}`
      const known = found.get(key)
      if (known !== undefined) return known
      const line = chords(shapeB, apart, sagittaShare)
      // the same softening as the self-inductance's: only then can no current pattern store negative energy
      const options = {
        meanDistance: spread[first.shape]!,
        repeats: shapeA.repeats === shapeB.repeats ? shapeA.repeats : 1,
      }
      const direct = mutualInductance(lines[first.shape]!, line, options)
      // longer chords enclose a little less: a coil's own images stay the larger ones
      const coarse = [coarseLines[first.shape]!, chords(shapeB, apart, coarseShare)] as const
      const images = imageInductance(coarse, planes, { ...options, end, far: 'dipole' })
      const M = closestCoupling * shapeA.turns * shapeB.turns * (direct + images.inductance)
      found.set(key, M)
      return M
    }),
  )
}
