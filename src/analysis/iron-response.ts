/** What steel that saturates, ends or is bent round a drum does to every space harmonic of the magnets' field. */
import { mildSteel } from '../data/steel.ts'
import type { Iron, Machine, Rotor } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { bhCurve } from '../physics/magnetics/bh-curve.ts'
import {
  type FieldPair,
  type IronCylinder,
  type IronState,
  ironCylinderField,
} from '../physics/magnetics/iron-cylinder.ts'
import { type YokeArrangement, type YokePlate, yokePlate } from '../physics/magnetics/yoke-plate.ts'
import { blockFootprint, type MagnetFootprint } from '../physics/magnetics/yoke-plate-source.ts'
import type { PlateState } from '../physics/magnetics/yoke-plate-state.ts'

/** How one piece of steel fares. */
export interface SteelState {
  readonly place: 'behind' | 'opposite' | 'sleeve'
  readonly thickness: number
  /** Mean over the section half-way between two poles, and the largest anywhere [T]. */
  readonly fluxDensity: number
  readonly peakFluxDensity: number
  /** Flux of a pole that leaves by the side away from the magnets [Wb], and its share of what the steel takes in. */
  readonly backFlux: number
  readonly leakage: number
  readonly pastKnee: boolean
}

export interface IronResponse {
  /** Share of the ideal field's fundamental that is left in the whole gap: all magnets count by so much less. */
  readonly strength: number
  /**
   * Beyond `strength`, on the linkage of a run `distance` from the faces with the harmonic of mechanical order m, and on
   * the field there through the winding and along the circle: the mean over the run, or in the middle of the machine.
   */
  readonly gain: (order: number, distance: number, where: 'run' | 'middle') => FieldPair
  /** Change of the magnets' mean ⟨μ0 H⟩/J by steel round a drum. */
  readonly loadFactor: number
  readonly steel: readonly SteelState[]
}

const curve = bhCurve({
  fluxDensity: mildSteel.fluxDensity_T,
  fieldStrength: mildSteel.fieldStrength_A_per_m,
})

/** A plate whose rims the document leaves out reaches past the magnets by this share of their length. */
const overhang = 0.25

function plateOf({ pitchRadius, magnet: { length } }: Rotor, iron: Iron): YokePlate {
  return {
    thickness: iron.thickness,
    innerRadius: iron.innerRadius ?? Math.max(0, pitchRadius - length * (0.5 + overhang)),
    outerRadius: iron.outerRadius ?? pitchRadius + length * (0.5 + overhang),
  }
}

/** So far off an arc's edges, as a share of its length along the radius. */
const besideEdge = 0.02

/** Where the magnets stand on the plate, to their very edges: the field jumps there. */
function footprint({ magnet, pitchRadius: R }: Rotor, polarization: number): MagnetFootprint {
  const { shape, length, width, thickness, recoilPermeability } = magnet
  const own = { thickness, polarization, recoilPermeability }
  const block = blockFootprint({ ...own, radius: R, radialLength: length, width })
  switch (shape.kind) {
    case 'block':
      return block
    case 'disc': {
      const a = length / 2
      const to = (r: number) => Math.acos(Math.min(1, (r * r + R * R - a * a) / (2 * r * R)))
      return { ...own, innerRadius: R - a, outerRadius: R + a, angles: (r) => [0, to(r)] }
    }
    case 'arc':
      // the field is asked for at these radii: beside the edge, where it jumps along the whole arc
      return {
        ...own,
        innerRadius: R - length * (0.5 + besideEdge),
        outerRadius: R + length * (0.5 + besideEdge),
        angles: (r) => [0, Math.abs(r - R) <= length / 2 ? shape.span / 2 : 0],
      }
    case 'wedge': {
      const [near, far] = [R - length / 2, R + length / 2]
      // half the width at a distance x along the middle line is a + b x
      const b = (shape.outerWidth - shape.innerWidth) / (2 * length)
      const a = shape.innerWidth / 2 - b * near
      const side = (r: number) => Math.atan(b) + Math.asin(Math.min(1, a / (r * Math.hypot(1, b))))
      return {
        ...own,
        innerRadius: near,
        outerRadius: Math.hypot(far, shape.outerWidth / 2),
        angles: (r) => {
          const from = r <= far ? 0 : Math.acos(far / r)
          const to = r <= near ? 0 : Math.min(Math.acos(near / r), side(r))
          return [from, Math.max(from, to)]
        },
      }
    }
  }
}

export interface IdealField {
  /** Field of the sound rotor with ideal flat steel [T]. */
  readonly fluxDensity: (points: Float64Array) => Float64Array
  /** Polarisation of the magnets [T]. */
  readonly polarization: number
  /** Heights of the winding and of the opposite plate's surface above the lower plate's [m]. */
  readonly windingHeight: number
  readonly planeDistance: number | undefined
}

/** The machine seen from the other side: turned half round about the x axis, the plate at `top` becomes the lower one. */
const upsideDown =
  (fluxDensity: IdealField['fluxDensity'], top: number): IdealField['fluxDensity'] =>
  (points) => {
    const turned = Float64Array.from(points, (value, k) =>
      k % 3 === 0 ? value : k % 3 === 1 ? -value : top - value,
    )
    return fluxDensity(turned).map((value, k) => (k % 3 === 0 ? value : -value))
  }

function steelOfPlate(
  place: SteelState['place'],
  { thickness, innerRadius, outerRadius }: YokePlate,
  state: PlateState,
): SteelState {
  const through = state.backFlux
  const carried = 2 * state.sectionFluxDensity * thickness * (outerRadius - innerRadius)
  return {
    place,
    thickness,
    fluxDensity: state.sectionFluxDensity,
    peakFluxDensity: state.peakFluxDensity,
    backFlux: through,
    leakage: through / Math.max(through + carried, Number.MIN_VALUE),
    pastKnee: state.pastKnee,
  }
}

/** Steel discs behind the magnets or opposite them. */
export function plateResponse({ rotor }: Machine, ideal: IdealField): IronResponse | undefined {
  const { backIron, opposite, polePairs, pitchRadius, magnet } = rotor
  const { planeDistance: D = 0, windingHeight, polarization } = ideal
  const range = {
    innerRadius: pitchRadius - magnet.length / 2,
    outerRadius: pitchRadius + magnet.length / 2,
  }
  if (backIron === undefined && opposite === undefined) return undefined
  const common: Pick<YokeArrangement, 'polePairs' | 'steel'> = { polePairs, steel: curve }
  const behind = backIron === undefined ? undefined : plateOf(rotor, backIron)
  const facing = opposite === undefined ? undefined : plateOf(rotor, opposite)
  const state =
    behind === undefined
      ? yokePlate({
          ...common,
          plate: facing!,
          opposite: 'none',
          planeDistance: 0,
          fluxDensity: upsideDown(ideal.fluxDensity, D),
          magnets: footprint(rotor, 0),
          winding: { ...range, height: D - windingHeight },
        })
      : yokePlate({
          ...common,
          plate: behind,
          opposite: rotor.arrangement === 'two-discs' ? 'mirrored' : (facing ?? 'none'),
          planeDistance: D,
          fluxDensity: ideal.fluxDensity,
          magnets: footprint(rotor, polarization),
          winding: { ...range, height: windingHeight },
        })
  const relative = piecewiseLinear(
    state.harmonics.map(({ order }) => order),
    state.harmonics.map(({ gain }) => gain / state.gain),
  )
  const last = state.harmonics.at(-1)!.order
  const gain = (order: number) => relative(Math.min(last, Math.max(1, order / polePairs)))
  return {
    strength: state.gain,
    gain: (order) => ({ normal: gain(order), tangential: gain(order) }),
    loadFactor: 0,
    steel: [
      steelOfPlate(behind === undefined ? 'opposite' : 'behind', behind ?? facing!, state.plate),
      ...(state.opposite === undefined ? [] : [steelOfPlate('opposite', facing!, state.opposite)]),
    ],
  }
}

/** Length of a run about the middle of the machine [m]. */
function runLength({ stator: { winding }, rotor }: Machine): number {
  return winding.kind === 'serpentine' ? winding.runLength : rotor.magnet.length
}

/** Glue between magnets and ring, as a share of its radius. */
const touching = 1e-3

function steelOfTube(place: SteelState['place'], { thickness }: Iron, state: IronState): SteelState {
  return {
    place,
    thickness,
    fluxDensity: state.fluxDensity.middle,
    peakFluxDensity: state.fluxDensity.middle,
    backFlux: state.poleFlux * state.leakage,
    leakage: state.leakage,
    pastKnee: state.fluxDensity.middle > curve.knee,
  }
}

/** A ring behind a drum's magnets and a sleeve beyond its winding; as long as the magnets. */
export function drumResponse(
  { rotor, stator }: Machine,
  { polarization, level }: { readonly polarization: number; readonly level: (distance: number) => number },
): IronResponse | undefined {
  const { backIron, sleeve, magnet, pitchRadius, poleCount } = rotor
  if (backIron === undefined && sleeve === undefined) return undefined
  const { thickness, length: axialLength } = magnet
  // a disc or an arc counts as the block of its own volume: only the ratio to the open field is taken from here
  const width = magnet.volume / (thickness * axialLength)
  const tube = (iron: Iron | undefined, radius: number): IronCylinder | undefined =>
    iron === undefined
      ? undefined
      : { radius, thickness: iron.thickness, length: axialLength, permeability: curve.fieldStrength }
  const outside = rotor.windingSide === 'outside'
  // a ring inside the magnets touches the middle of their flat backs, one around them their corners
  const near = pitchRadius - thickness / 2
  const corners = Math.hypot(pitchRadius + thickness / 2, width / 2)
  const back = tube(backIron, outside ? near * (1 - touching) : corners * (1 + touching))
  const beyond = tube(sleeve, sleeve === undefined ? 0 : level(sleeve.distance))
  const [inner, outer] = outside ? [back, beyond] : [beyond, back]
  const field = ironCylinderField({
    magnets: { count: poleCount, radius: pitchRadius, width, axialLength, thickness, polarization },
    ...(inner === undefined ? {} : { inner }),
    ...(outer === undefined ? {} : { outer }),
  })
  const [behind, far] = outside ? [field.inner, field.outer] : [field.outer, field.inner]
  const length = runLength({ rotor, stator } as Machine)
  return {
    strength: 1,
    gain: (order, distance, where) =>
      field.gain(order, { radius: level(distance), length: where === 'run' ? length : 0 }),
    loadFactor: field.loadFactor,
    steel: [
      ...(behind === undefined ? [] : [steelOfTube('behind', backIron!, behind)]),
      ...(far === undefined ? [] : [steelOfTube('sleeve', sleeve!, far)]),
    ],
  }
}
