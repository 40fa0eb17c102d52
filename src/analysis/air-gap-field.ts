/** The magnets of a machine with their images in iron, at their working point, and the field in the gap. */
import type { Machine, MagnetMaterial } from '../machine/machine.ts'
import { fourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import { imageMagnets, imageReflectionsFor } from '../physics/magnetics/image-plane.ts'
import { type Magnet, magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { scaledMagnet, turnedMagnet } from '../physics/magnetics/magnet-pose.ts'
import type { WorkingPoint } from '../physics/magnetics/working-point.ts'
import { magnetCircuit } from './magnet-circuit.ts'
import { polePieces } from './rotor-magnets.ts'

/** Error of one distant block's share; the windings' own quadrature is coarser. */
export const fieldError = 1e-4

/** Where the series of images is cut, as a share of the field; poles that alternate make the rest cancel further. */
export const imageError = 1e-3

/** Temperature to which grades and resistivities refer [K]. */
export const referenceTemperature = 293.15

/** One pole of a ring as it stands at angle 0 in a sound rotor, and where copies of it stand. */
export interface Pole {
  /** At their working polarisation, north as `polePieces` says. */
  readonly magnets: readonly Magnet[]
  /** With their images in flat iron. */
  readonly sources: readonly Magnet[]
  /** Signed strength over the sound pole's, and angle about the shaft [rad]. */
  readonly places: readonly { readonly angle: number; readonly factor: number }[]
}

export interface RotorField {
  /** Ring by ring. */
  readonly poles: readonly Pole[]
  /** The real magnets, with their working polarisation: what the builder glues on. */
  readonly magnets: readonly Magnet[]
  /** Magnets and images: what the field is summed from. */
  readonly sources: readonly Magnet[]
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

/** The magnets with their images in flat iron; the iron of a drum answers otherwise. */
function withImages(machine: Machine, magnets: readonly Magnet[]): readonly Magnet[] {
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
  const { rotor } = machine
  const remanenceOf = ({ remanence, temperatureCoefficient }: MagnetMaterial) =>
    remanence * (1 + temperatureCoefficient * (temperature - referenceTemperature))
  const pieces = polePieces(machine)
  const images = (magnets: readonly Magnet[]) => withImages(machine, magnets)
  const circuit = magnetCircuit(machine, pieces, images, remanenceOf)
  const atWork = pieces.map((ring) =>
    ring.flatMap((piece, j) => piece.map((one) => scaledMagnet(one, circuit.polarizations[j]!))),
  )
  const poles = atWork.map((pole, r): Pole => {
    const places = rotor.rings[r]!.map(({ shift }, k) => ({
      angle: (2 * Math.PI * k) / rotor.poleCount + shift,
      factor: circuit.factors[r]![k]!,
    }))
    return { magnets: pole, sources: images(pole), places }
  })
  const placed = (bodies: (pole: Pole) => readonly Magnet[]) =>
    poles.flatMap((pole) =>
      pole.places.flatMap(({ angle, factor }) =>
        bodies(pole).map((one) => turnedMagnet(scaledMagnet(one, factor), angle)),
      ),
    )
  return {
    poles,
    magnets: placed(({ magnets }) => magnets),
    sources: placed(({ sources }) => sources),
    workingPoint: circuit.workingPoint,
    remanence: remanenceOf(rotor.magnet),
  }
}

export const fieldAt = ({ sources }: RotorField, points: Float64Array): Float64Array =>
  magnetFluxDensity(sources, points, { relativeError: fieldError })

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
