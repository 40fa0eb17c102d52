/** The magnets of a machine with their images in iron, at their working point, and the field in the gap. */
import type { Machine } from '../machine/machine.ts'
import { fourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import { type BlockMagnet, blockFluxDensity } from '../physics/magnetics/block-magnet.ts'
import { imageMagnets, imageReflectionsFor } from '../physics/magnetics/image-plane.ts'
import { discMagnets, drumMagnets } from '../physics/magnetics/magnet-ring.ts'
import { type WorkingPoint, workingPoint } from '../physics/magnetics/working-point.ts'

/** Error of one distant block's share; the windings' own quadrature is coarser. */
export const fieldError = 1e-4

/** Where the series of images is cut, as a share of the field; poles that alternate make the rest cancel further. */
export const imageError = 1e-3

/** Temperature to which grades and resistivities refer [K]. */
export const referenceTemperature = 293.15

export interface RotorField {
  /** The real blocks, with their working polarisation: what the builder glues on. */
  readonly magnets: readonly BlockMagnet[]
  /** Blocks and images: what the field is summed from. */
  readonly sources: readonly BlockMagnet[]
  readonly workingPoint: WorkingPoint
  /** Remanence at the magnets' temperature [T]. */
  readonly remanence: number
}

/** Where magnet faces and iron stand along the axis of a disc machine, z = 0 at the lower plate's surface. */
export interface DiscHeights {
  readonly face: number
  readonly upperFace: number | undefined
  readonly upperPlane: number | undefined
}

export function discHeights({ rotor }: Machine): DiscHeights {
  const face = rotor.magnet.thickness
  const opposite = rotor.faceDistance === undefined ? undefined : face + rotor.faceDistance
  const two = rotor.arrangement === 'two-discs'
  return {
    face,
    upperFace: two ? opposite : undefined,
    upperPlane: two
      ? rotor.backIron === undefined
        ? undefined
        : opposite! + rotor.magnet.thickness
      : rotor.opposite !== undefined
        ? opposite
        : undefined,
  }
}

function ring(machine: Machine, polarization: number): BlockMagnet[] {
  const { rotor } = machine
  const { magnet, sequence, pitchRadius: radius, poleCount: count } = rotor
  const block = { count, radius, width: magnet.width, thickness: magnet.thickness, polarization }
  if (rotor.arrangement === 'drum') {
    const towards = rotor.windingSide === 'inside' ? -polarization : polarization
    return drumMagnets({ ...block, axialLength: magnet.length, polarization: towards, sequence })
  }
  const disc = { ...block, radialLength: magnet.length, sequence }
  const lower = discMagnets({ ...disc, height: magnet.thickness / 2 })
  if (rotor.arrangement === 'disc') return lower
  return [...lower, ...discMagnets({ ...disc, height: 1.5 * magnet.thickness + rotor.faceDistance! })]
}

function withImages(machine: Machine, magnets: BlockMagnet[]): BlockMagnet[] {
  const { rotor } = machine
  if (rotor.arrangement === 'drum') return magnets
  const { upperPlane } = discHeights(machine)
  const lower = rotor.backIron === undefined ? {} : { lowerPlane: 0 }
  if (upperPlane === undefined) return imageMagnets({ magnets, ...lower })
  if (rotor.backIron === undefined) return imageMagnets({ magnets, upperPlane })
  const reflections = imageReflectionsFor({
    poleCount: rotor.poleCount,
    meanRadius: rotor.pitchRadius,
    planeDistance: upperPlane,
    relativeError: imageError,
  })
  return imageMagnets({ magnets, lowerPlane: 0, upperPlane, reflections })
}

/** Magnets at `temperature`, working against their own circuit. */
export function rotorField(machine: Machine, temperature: number = referenceTemperature): RotorField {
  const { magnet } = machine.rotor
  const remanence =
    magnet.remanence * (1 + magnet.temperatureCoefficient * (temperature - referenceTemperature))
  const real = ring(machine, remanence)
  const fixed = withImages(machine, real)
  const point = workingPoint({
    magnets: fixed,
    own: 0,
    remanence,
    recoilPermeability: magnet.recoilPermeability,
  })
  const share = point.polarization / remanence
  const atWork = (block: BlockMagnet) => ({ ...block, polarization: block.polarization * share })
  return {
    magnets: real.map(atWork),
    sources: fixed.map(atWork),
    workingPoint: point,
    remanence,
  }
}

export const fieldAt = ({ sources }: RotorField, points: Float64Array): Float64Array =>
  blockFluxDensity(sources, points, { relativeError: fieldError })

/** Radius (drum) or height (disc) of what lies `distance` above the magnet faces. */
export function levelAbove(machine: Machine, distance: number): number {
  const { rotor } = machine
  if (rotor.arrangement !== 'drum') return rotor.magnet.thickness + distance
  const face = rotor.magnet.thickness / 2 + distance
  return rotor.windingSide === 'outside' ? rotor.pitchRadius + face : rotor.pitchRadius - face
}

/** Flux density on the circle through the middle of a winding, over one pole pair from the first magnet's middle. */
export interface CircleField {
  /** Electrical angle [rad]. */
  readonly angle: Float64Array
  /** Through the winding: radial on a drum, axial on a disc [T]. */
  readonly normal: Float64Array
  /** Along the circle [T]. */
  readonly tangential: Float64Array
}

/** The field met `distance` above the faces. */
export function circleField(
  machine: Machine,
  field: RotorField,
  { distance, samples }: { readonly distance: number; readonly samples: number },
): CircleField {
  const { rotor } = machine
  const level = levelAbove(machine, distance)
  const drum = rotor.arrangement === 'drum'
  const r = drum ? level : rotor.pitchRadius
  const angle = Float64Array.from({ length: samples }, (_, k) => (2 * Math.PI * k) / samples)
  const points = new Float64Array(3 * samples)
  angle.forEach((electrical, k) => {
    const θ = electrical / rotor.polePairs
    points.set([r * Math.cos(θ), r * Math.sin(θ), drum ? 0 : level], 3 * k)
  })
  const B = fieldAt(field, points)
  const normal = new Float64Array(samples)
  const tangential = new Float64Array(samples)
  for (let k = 0; k < samples; k++) {
    const c = points[3 * k]! / r
    const s = points[3 * k + 1]! / r
    normal[k] = drum ? B[3 * k]! * c + B[3 * k + 1]! * s : B[3 * k + 2]!
    tangential[k] = -B[3 * k]! * s + B[3 * k + 1]! * c
  }
  return { angle, normal, tangential }
}

export interface GapProfile extends Pick<CircleField, 'angle' | 'normal'> {
  /** Peak amplitude of the fundamental [T]. */
  readonly fundamental: number
  readonly poleCentre: number
}

/** The field through the winding, `distance` above the faces. */
export function gapProfile(machine: Machine, field: RotorField, distance: number, samples = 72): GapProfile {
  const { angle, normal } = circleField(machine, field, { distance, samples })
  return {
    angle,
    normal,
    fundamental: harmonicAmplitude(fourierSeries(normal, 1), 1),
    poleCentre: normal[0]!,
  }
}

/**
 * Mean flux density in the steel behind the magnets: half a pole's flux through the plate's section [T].
 * The flux is that of the block's own face at its working point, which the plate must turn round.
 */
export function yokeFluxDensity(
  { rotor }: Machine,
  { workingPoint: { fluxDensity } }: RotorField,
): number | undefined {
  if (rotor.backIron === undefined) return undefined
  const { width } = rotor.magnet
  return (fluxDensity * width) / (2 * rotor.backIron.thickness)
}
