/** Self and mutual inductances of all coils of a machine with its iron, by Neumann's integral and images. */
import { curvePolyline, turnedCurve } from '../geometry/curve.ts'
import type { Iron, Machine } from '../machine/machine.ts'
import { rectangleMeanDistance, sectionSelfDistances } from '../physics/magnetics/geometric-mean-distance.ts'
import { bundleInductance, mutualInductance, selfInductance } from '../physics/magnetics/inductance.ts'
import { ironTubeInductance, type TubedPaths } from '../physics/magnetics/iron-cylinder-inductance.ts'
import { discHeights, levelAbove } from './air-gap-field.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import { type IronPlanes, imageInductance } from './image-inductance.ts'

/** Chords may miss the curve by this share of a turn's length; inductance moves by less than a per cent. */
const sagittaShare = 0.001

/** Likewise towards images: those of other coils, and a coil's own beyond the first. */
const coarseShare = 0.004

/** Bundles that all but coincide still leak this much: more than the quadrature's error, less than any other. */
const closestCoupling = 1 - 1e-4

/** A coil's bundle is not small against its bends: several filaments stand for it. */
function stoutInductance({ filaments, bundle, turnLength }: ConductorShape): number {
  const weights = filaments.map(({ weight }) => weight)
  return bundleInductance({
    filaments: filaments.map(({ curve }) => curvePolyline(curve, { sagitta: sagittaShare * turnLength })),
    weights,
    selfDistances: sectionSelfDistances({
      ...bundle,
      offsets: filaments.map(({ offset }) => offset),
      weights,
    }),
    turns: 1,
  })
}

/** Iron plates before and behind the winding of a disc machine; the iron of a drum is no plate. */
export function ironPlanes(machine: Machine): IronPlanes {
  if (machine.rotor.arrangement === 'drum') return { lower: undefined, upper: undefined }
  return {
    lower: machine.rotor.backIron === undefined ? undefined : 0,
    upper: discHeights(machine).upperPlane,
  }
}

/** Iron tubes of a drum machine: the ring behind the magnets, through which they count as air, and the sleeve. */
function ironTubes(machine: Machine): Pick<TubedPaths, 'inner' | 'outer'> | undefined {
  const { rotor } = machine
  const { backIron, sleeve, magnet } = rotor
  if (rotor.arrangement !== 'drum' || (backIron === undefined && sleeve === undefined)) return undefined
  const tube = (iron: Iron | undefined, distance: number) =>
    iron === undefined ? undefined : { radius: levelAbove(machine, distance), thickness: iron.thickness }
  const behind = tube(backIron, -magnet.thickness)
  const beyond = tube(sleeve, sleeve?.distance ?? 0)
  const [inner, outer] = rotor.windingSide === 'outside' ? [behind, beyond] : [beyond, behind]
  return { ...(inner === undefined ? {} : { inner }), ...(outer === undefined ? {} : { outer }) }
}

/** What a drum's iron adds per turn between two shapes an angle apart: all angles of a pair of shapes at once. */
function tubeInductances(
  machine: Machine,
  { shapes, coils }: ConductorLayout,
  lines: readonly Float64Array[],
): (a: number, b: number, apart: number) => number {
  const tubes = ironTubes(machine)
  if (tubes === undefined) return () => 0
  const key = (apart: number) => apart.toFixed(9)
  const known = new Map<string, ReadonlyMap<string, number>>()
  const ofPair = (a: number, b: number): ReadonlyMap<string, number> => {
    const found = known.get(`${a} ${b}`)
    if (found !== undefined) return found
    const angles = new Map<string, number>([[key(0), 0]])
    for (const one of coils)
      for (const two of coils)
        if (one.shape === a && two.shape === b && one.number < two.number)
          angles.set(key(two.angle - one.angle), two.angle - one.angle)
    const repeats = shapes[a]!.repeats === shapes[b]!.repeats ? shapes[a]!.repeats : 1
    const added = ironTubeInductance({
      pathA: lines[a]!,
      pathB: lines[b]!,
      ...tubes,
      repeats,
      angles: [...angles.values()],
    })
    const values = new Map([...angles.keys()].map((name, k) => [name, added[k]!] as const))
    known.set(`${a} ${b}`, values)
    return values
  }
  return (a, b, apart) => ofPair(a, b).get(key(apart))!
}

/** Coil × coil of one turn each, senses as wound [H]. */
function turnInductances(machine: Machine, layout: ConductorLayout): number[][] {
  const { shapes, coils } = layout
  const planes = ironPlanes(machine)
  const chords = ({ curve, turnLength, repeats }: ConductorShape, angle: number, share: number) =>
    curvePolyline(angle === 0 ? curve : turnedCurve(curve, angle), {
      sagitta: (share * turnLength) / repeats,
    })
  const lines = shapes.map((shape) => chords(shape, 0, sagittaShare))
  const coarseLines = shapes.map((shape) => chords(shape, 0, coarseShare))
  const byTubes = tubeInductances(machine, layout, lines)
  const spread = shapes.map(({ bundle }) => rectangleMeanDistance(bundle))
  const own = shapes.map((shape, k) => {
    const free =
      shape.repeats > 1
        ? selfInductance({
            polyline: lines[k]!,
            geometricMeanDistance: spread[k]!,
            turns: 1,
            repeats: shape.repeats,
          })
        : stoutInductance(shape)
    const images = imageInductance([lines[k]!, lines[k]!], planes, {
      coarse: [coarseLines[k]!, coarseLines[k]!],
      meanDistance: spread[k]!,
      repeats: shape.repeats,
      end: { reference: free },
      far: 'dipole',
    })
    const round = byTubes(k, k, 0)
    return { inductance: free + images.inductance + round, repeats: images.repeats }
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
      const round = byTubes(first.shape, second.shape, apart)
      const M = closestCoupling * (direct + images.inductance + round)
      found.set(key, M)
      return M
    }),
  )
}

/** What was last worked out: more turns, or thicker wire, leave the coils where they are. */
let last: { readonly of: string; readonly perTurns: number[][] } | undefined

/**
 * Coil × coil, turns included, senses as wound [H]. Plates count as infinitely permeable and unbounded, magnets as
 * air; in the images a coil's bundle is one filament, softened by its section's mean distance: some 1 % low in all.
 * A wave on a disc is also one turn round the shaft, whose flux unbounded plates overrate; it links all phases alike
 * and drops out where their currents sum to nothing. The iron of a drum counts as endless along the shaft.
 */
export function coilInductances(machine: Machine, layout: ConductorLayout): number[][] {
  const { shapes, coils } = layout
  const places = [shapes.map((shape) => ({ ...shape, turns: 1 })), coils]
  const of = JSON.stringify([places, ironPlanes(machine), ironTubes(machine)])
  if (last?.of !== of) last = { of, perTurns: turnInductances(machine, layout) }
  const turns = coils.map(({ shape }) => shapes[shape]!.turns)
  return last.perTurns.map((row, i) => row.map((L, k) => turns[i]! * turns[k]! * L))
}
