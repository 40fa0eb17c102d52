/** What one magnet at its place does to one turn, harmonic by harmonic, and how that changes when either stands beside it. */
import type { Machine } from '../machine/machine.ts'
import type { FourierSeries } from '../numerics/fourier.ts'
import type { Magnet } from '../physics/magnetics/magnet.ts'
import { raisedMagnet } from '../physics/magnetics/magnet-pose.ts'
import { type Pole, type RotorField, rotorField } from './air-gap-field.ts'
import type { Chain } from './compute.ts'
import { type ConductorShape, conductorLayout } from './conductor-layout.ts'
import { keptHarmonics, rotorLinkage } from './flux-linkage.ts'
import type { Steps } from './step.ts'
import { withdrawn } from './tilted-linkage.ts'

/** Amplitudes of a series by order, re − j im of e^(jhθ): Σ re cos hθ + im sin hθ [Wb], and by distance [Wb/m], [Wb/m²]. */
export interface Phasors {
  readonly re: Float64Array
  readonly im: Float64Array
}

/** A parabola through three places: value, slope and half the bend. */
export interface Parabola {
  readonly slope: Phasors
  readonly bend: Phasors
}

/** ψ of one turn with one magnet of unit factor at angle 0, over a whole turn of the rotor. */
export interface TurnBasis {
  readonly own: Phasors
  /** The magnet moved along the radius of its disc, or along the shaft of a drum. */
  readonly across: Parabola | undefined
  /** The winding farther from the magnet. */
  readonly away: Parabola | undefined
  /** The opposite face, or plate, farther off. */
  readonly apart: Parabola | undefined
}

export interface BuildBasis {
  /** Mechanical orders that are kept: 0 … `orders`. */
  readonly orders: number
  /** Shape by shape, ring by ring. */
  readonly turns: readonly (readonly TurnBasis[])[]
  /** Ring by ring, place by place: change of the working factors by a unit more strength of the first ring's first magnet. */
  readonly coupling: readonly (readonly number[])[]
}

/** How far each error may reach [m]; 0 where it is not wanted. */
export interface BasisReach {
  readonly across: number
  readonly away: number
  readonly apart: number
}

const phasors = ({ cos, sin }: FourierSeries, orders: number): Phasors => ({
  re: Float64Array.from({ length: orders + 1 }, (_, h) => cos[h] ?? 0),
  im: Float64Array.from({ length: orders + 1 }, (_, h) => sin[h] ?? 0),
})

function parabola(before: Phasors, own: Phasors, after: Phasors, step: number): Parabola {
  const part = (of: 're' | 'im', weights: readonly [number, number, number]) =>
    own[of].map((value, h) => weights[0] * before[of][h]! + weights[1] * value + weights[2] * after[of][h]!)
  const slope = [-1 / (2 * step), 0, 1 / (2 * step)] as const
  const bend = [1 / (2 * step ** 2), -1 / step ** 2, 1 / (2 * step ** 2)] as const
  return {
    slope: { re: part('re', slope), im: part('im', slope) },
    bend: { re: part('re', bend), im: part('im', bend) },
  }
}

/** Series of one turn of a shape with one pole of a ring alone, its fellows left out. */
function lonePole(
  machine: Machine,
  field: RotorField,
  { pole, shape, kept }: { readonly pole: Pole; readonly shape: ConductorShape; readonly kept: number },
): FourierSeries {
  const alone: RotorField = { ...field, poles: [{ ...pole, places: [{ angle: 0, factor: 1 }] }] }
  const unlike: Machine = { ...machine, rotor: { ...machine.rotor, alternating: false } }
  return rotorLinkage(unlike, alone, shape, kept).flux
}

/** Sources of a pole moved across, images with them: plates are flat and go on beyond. */
const movedAcross =
  (drum: boolean, by: number) =>
  (magnet: Magnet): Magnet => {
    if (drum) return raisedMagnet(magnet, by)
    const [x, y, z] = magnet.centre
    return { ...magnet, centre: [x + by, y, z] }
  }

/**
 * The strengths of all magnets answer in proportion to that of one: what its fellows gain when it is stronger. Taken
 * from the first place of the first ring; by symmetry it holds from any other.
 */
function couplingOf(machine: Machine, field: RotorField): number[][] {
  const step = 0.1
  const [first, ...others] = machine.rotor.rings
  const own = first![0]!
  const changed = [{ ...own, strength: own.strength + step }, ...first!.slice(1)]
  const turned = rotorField(
    { ...machine, rotor: { ...machine.rotor, alternating: false, rings: [changed, ...others] } },
    machine.site.ambient,
  )
  return field.poles.map(({ places }, r) =>
    places.map(({ factor }, k) => ((turned.poles[r]!.places[k]!.factor - factor) * own.sense) / step),
  )
}

/** Clear of the magnets by so much of the way, whatever the reach asks [1]. */
const deepest = 0.8
/** Differences over less than this drown in the quadrature [m]. */
const leastStep = 0.2e-3

/**
 * Everything that an assembly needs, computed once: a magnet's linkage is taken at its place, and a step to either side
 * of it in three ways. Steel answers each with its nominal gains: it is neither moved nor magnetised anew. Yields the
 * fraction done.
 */
export function* buildBasis(
  { machine, field, layout, voltage }: Pick<Chain, 'machine' | 'field' | 'layout' | 'voltage'>,
  reach: BasisReach,
): Steps<BuildBasis> {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  // the chain drops orders that no circuit could tell; so does the build
  const orders = voltage.coils.reduce(
    (most, { emf }) => Math.max(most, voltage.base * (emf.cos.length - 1)),
    rotor.polePairs,
  )
  const room = Math.min(...layout.shapes.map(({ distance, bundle }) => distance - bundle.thickness / 2))
  const step = (wanted: number, most = Number.POSITIVE_INFINITY) =>
    wanted > 0 ? Math.min(Math.max(wanted, leastStep), most) : 0
  const across = step(reach.across)
  const away = step(reach.away, deepest * room)
  const apart = rotor.faceDistance === undefined ? 0 : step(reach.apart, 0.25 * rotor.faceDistance)
  const shapesAt = (by: number) => conductorLayout(withdrawn(machine, by)).shapes
  const nearer = away > 0 ? shapesAt(-away) : []
  const farther = away > 0 ? shapesAt(away) : []
  const fieldAt = (by: number): { machine: Machine; field: RotorField } => {
    const moved = { ...machine, rotor: { ...rotor, faceDistance: rotor.faceDistance! + by } }
    return { machine: moved, field: rotorField(moved, machine.site.ambient) }
  }
  const closer = apart > 0 ? fieldAt(-apart) : undefined
  yield 0.1
  const wider = apart > 0 ? fieldAt(apart) : undefined
  yield 0.2
  const turns: TurnBasis[][] = []
  for (const [s, shape] of layout.shapes.entries()) {
    const kept = keptHarmonics(machine, shape)
    const rings: TurnBasis[] = []
    for (const [r, pole] of field.poles.entries()) {
      const with_ = (one: { pole?: Pole; shape?: ConductorShape }) =>
        phasors(lonePole(machine, field, { pole: one.pole ?? pole, shape: one.shape ?? shape, kept }), orders)
      const own = with_({})
      const beside = (by: number) =>
        with_({ pole: { ...pole, sources: pole.sources.map(movedAcross(drum, by)) } })
      const opposite = (at: typeof closer) =>
        phasors(lonePole(at!.machine, at!.field, { pole: at!.field.poles[r]!, shape, kept }), orders)
      rings.push({
        own,
        across: across > 0 ? parabola(beside(-across), own, beside(across), across) : undefined,
        away:
          away > 0
            ? parabola(with_({ shape: nearer[s]! }), own, with_({ shape: farther[s]! }), away)
            : undefined,
        apart: apart > 0 ? parabola(opposite(closer), own, opposite(wider), apart) : undefined,
      })
      yield 0.2 + (0.7 * (s + (r + 1) / field.poles.length)) / layout.shapes.length
    }
    turns.push(rings)
  }
  return { orders, turns, coupling: couplingOf(machine, field) }
}
