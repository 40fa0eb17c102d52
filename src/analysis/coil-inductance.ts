/** Self and mutual inductances of all coils of a machine, by Neumann's integral over their middle lines. */
import { curvePolyline, turnedCurve } from '../geometry/curve.ts'
import { rectangleMeanDistance, sectionSelfDistances } from '../physics/magnetics/geometric-mean-distance.ts'
import { bundleInductance, mutualInductance, selfInductance } from '../physics/magnetics/inductance.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'

/** Chords may miss the curve by this share of a turn's length; inductance moves by less than a per cent. */
const sagittaShare = 0.001

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

/** Coil × coil, turns included, senses as wound [H]; iron nearby is left out. */
export function coilInductances(layout: ConductorLayout): number[][] {
  const { shapes, coils } = layout
  const lines = shapes.map(({ curve, turnLength, repeats }) =>
    curvePolyline(curve, { sagitta: (sagittaShare * turnLength) / repeats }),
  )
  const own = shapes.map((shape, k) =>
    shape.repeats > 1
      ? selfInductance({
          polyline: lines[k]!,
          geometricMeanDistance: rectangleMeanDistance(shape.bundle),
          turns: shape.turns,
          repeats: shape.repeats,
        })
      : stoutInductance(shape),
  )
  // alike shapes at alike angles apart have the same mutual inductance
  const found = new Map<string, number>()
  return coils.map((a) =>
    coils.map((b) => {
      if (a === b) return own[a.shape]!
      const [first, second] = a.number < b.number ? [a, b] : [b, a]
      const shapeA = shapes[first.shape]!
      const shapeB = shapes[second.shape]!
      const apart = second.angle - first.angle
      const key = `${first.shape} ${second.shape} ${(first.shape === second.shape ? Math.cos(apart) : apart).toFixed(9)}`
      const known = found.get(key)
      if (known !== undefined) return known
      const sagitta = (sagittaShare * shapeB.turnLength) / shapeB.repeats
      const line = curvePolyline(turnedCurve(shapeB.curve, apart), { sagitta })
      // the same softening as the self-inductance's: only then can no current pattern store negative energy
      const meanDistance = rectangleMeanDistance(shapeA.bundle)
      const repeats = shapeA.repeats === shapeB.repeats ? shapeA.repeats : 1
      const M =
        closestCoupling *
        shapeA.turns *
        shapeB.turns *
        mutualInductance(lines[first.shape]!, line, { meanDistance, repeats })
      found.set(key, M)
      return M
    }),
  )
}
