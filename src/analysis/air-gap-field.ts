/** The magnets of a machine with their images in iron, at their working point, and the field in the gap. */
import type { Machine, MagnetMaterial } from '../machine/machine.ts'
import { fourierSeries, harmonicAmplitude, seriesValue } from '../numerics/fourier.ts'
import { imageMagnets, imageReflectionsFor } from '../physics/magnetics/image-plane.ts'
import type { FieldPair } from '../physics/magnetics/iron-cylinder.ts'
import { type Magnet, magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { scaledMagnet, turnedMagnet } from '../physics/magnetics/magnet-pose.ts'
import type { WorkingPoint } from '../physics/magnetics/working-point.ts'
import { drumResponse, type IronResponse, plateResponse } from './iron-response.ts'
import { type MagnetCircuit, magnetCircuit, workingPointAt } from './magnet-circuit.ts'
import { polePieces } from './rotor-magnets.ts'

/** Error of one distant block's share; the windings' own quadrature is coarser. */
export const fieldError = 1e-4

/** Error of one distant block where its field enters steel: only the drop there is computed from it. */
const steelError = 1e-3

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
  /** What the steel does beyond flat, ideal images; undefined without steel. */
  readonly iron: IronResponse | undefined
  /** With steel round a drum: its answer to the fundamental, by radius. */
  readonly fundamental: ((radius: number) => FieldPair) | undefined
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

/** Radii apart by less than this share one answer [m]. */
const radiusStep = 1e-6

function byRadius(machine: Machine, { gain }: IronResponse): (radius: number) => FieldPair {
  const known = new Map<number, FieldPair>()
  return (radius) => {
    const key = Math.round(radius / radiusStep)
    const found = known.get(key) ?? gain(machine.rotor.polePairs, distanceOf(machine, radius), 'run')
    known.set(key, found)
    return found
  }
}

/** The working point of magnets whose load factor steel round the drum has changed. */
function relieved(point: WorkingPoint, recoilPermeability: number, change: number): WorkingPoint {
  if (change === 0) return point
  const slope = recoilPermeability - 1
  const loadFactor = point.loadFactor + change
  const polarization = (point.polarization * (1 - slope * point.loadFactor)) / (1 - slope * loadFactor)
  return workingPointAt(polarization, loadFactor)
}

/** The steel's answer to sound, alternating poles: `sources` are those of one pole of each ring, images included. */
function ironResponse(
  machine: Machine,
  { workingPoint: { polarization } }: MagnetCircuit,
  sources: readonly Magnet[],
): IronResponse | undefined {
  const { rotor, stator } = machine
  if (rotor.arrangement === 'drum')
    return drumResponse(machine, { polarization, level: (distance) => levelAbove(machine, distance) })
  const all = Array.from({ length: rotor.poleCount }, (_, k) =>
    sources.map((one) =>
      turnedMagnet(scaledMagnet(one, k % 2 === 0 ? 1 : -1), (2 * Math.PI * k) / rotor.poleCount),
    ),
  ).flat()
  // on the lower plate's own surface the field stands upright, and every source has its like below: half of them serve
  const folded =
    rotor.backIron === undefined
      ? undefined
      : all
          .filter(({ centre }) => centre[2] > -1e-9)
          .map((one) => (one.centre[2] > 1e-9 ? scaledMagnet(one, 2) : one))
  const fluxDensity = (points: Float64Array): Float64Array => {
    const onPlate = folded !== undefined && points.every((z, k) => k % 3 !== 2 || z === 0)
    const B = magnetFluxDensity(onPlate ? folded : all, points, { relativeError: steelError })
    return onPlate ? B.map((value, k) => (k % 3 === 2 ? value : 0)) : B
  }
  const { winding } = stator
  const distance = winding.kind === 'serpentine' ? winding.phases[0]!.distance : winding.distance
  return plateResponse(machine, {
    polarization,
    fluxDensity,
    windingHeight: levelAbove(machine, distance),
    planeDistance: discHeights(machine).upperPlane,
  })
}

/** Magnets at `temperature`, working against their own circuit. */
export function rotorField(machine: Machine, temperature: number = referenceTemperature): RotorField {
  const { rotor } = machine
  const remanenceOf = ({ remanence, temperatureCoefficient }: MagnetMaterial) =>
    remanence * (1 + temperatureCoefficient * (temperature - referenceTemperature))
  const pieces = polePieces(machine)
  const images = (magnets: readonly Magnet[]) => withImages(machine, magnets)
  const circuit = magnetCircuit(machine, pieces, images, remanenceOf)
  const perUnit = pieces.map((ring) =>
    ring.flatMap((piece, j) => piece.map((one) => scaledMagnet(one, circuit.polarizations[j]!))),
  )
  const imaged = perUnit.map(images)
  const iron = ironResponse(machine, circuit, imaged.flat())
  const workingPoint = relieved(circuit.workingPoint, rotor.magnet.recoilPermeability, iron?.loadFactor ?? 0)
  const relief = workingPoint.polarization / circuit.workingPoint.polarization
  const strength = relief * (iron?.strength ?? 1)
  const poles = perUnit.map((pole, r): Pole => {
    const places = rotor.rings[r]!.map(({ shift }, k) => ({
      angle: (2 * Math.PI * k) / rotor.poleCount + shift,
      factor: circuit.factors[r]![k]!,
    }))
    return {
      magnets: pole.map((one) => scaledMagnet(one, relief)),
      sources: imaged[r]!.map((one) => scaledMagnet(one, strength)),
      places,
    }
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
    workingPoint,
    iron,
    fundamental: rotor.arrangement === 'drum' && iron !== undefined ? byRadius(machine, iron) : undefined,
    remanence: remanenceOf(rotor.magnet),
  }
}

/**
 * Field at points in the gap. Steel round a drum counts by its answer to the fundamental at each radius; what differs
 * for the harmonics is kept to `circleField` and to the linkages.
 */
export function fieldAt({ sources, iron, fundamental }: RotorField, points: Float64Array): Float64Array {
  const B = magnetFluxDensity(sources, points, { relativeError: fieldError })
  if (iron === undefined || fundamental === undefined) return B
  for (let k = 0; k < B.length; k += 3) {
    const r = Math.hypot(points[k]!, points[k + 1]!)
    if (r === 0) continue
    const [c, s] = [points[k]! / r, points[k + 1]! / r]
    const { normal, tangential } = fundamental(r)
    const radial = normal * (B[k]! * c + B[k + 1]! * s)
    const around = tangential * (B[k + 1]! * c - B[k]! * s)
    B[k] = radial * c - around * s
    B[k + 1] = radial * s + around * c
    B[k + 2]! *= normal
  }
  return B
}

/** Radius (drum) or height (disc) of what lies `distance` above the magnet faces. */
export function levelAbove(machine: Machine, distance: number): number {
  const { rotor } = machine
  if (rotor.arrangement !== 'drum') return rotor.magnet.thickness + distance
  const face = rotor.magnet.thickness / 2 + distance
  return rotor.windingSide === 'outside' ? rotor.pitchRadius + face : rotor.pitchRadius - face
}

/** Distance from the faces of a drum's magnets to a radius. */
function distanceOf({ rotor }: Machine, radius: number): number {
  const beyond = rotor.windingSide === 'outside' ? radius - rotor.pitchRadius : rotor.pitchRadius - radius
  return beyond - rotor.magnet.thickness / 2
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
  const B = magnetFluxDensity(field.sources, points, { relativeError: fieldError })
  const normal = new Float64Array(samples)
  const tangential = new Float64Array(samples)
  for (let k = 0; k < samples; k++) {
    const c = points[3 * k]! / r
    const s = points[3 * k + 1]! / r
    normal[k] = drum ? B[3 * k]! * c + B[3 * k + 1]! * s : B[3 * k + 2]!
    tangential[k] = -B[3 * k]! * s + B[3 * k + 1]! * c
  }
  if (field.iron === undefined) return { angle, normal, tangential }
  const { gain } = field.iron
  return {
    angle,
    normal: weighted(normal, (n) => gain(n * rotor.polePairs, distance, 'middle').normal),
    tangential: weighted(tangential, (n) => gain(n * rotor.polePairs, distance, 'middle').tangential),
  }
}

/** Samples of one period with each harmonic weighted. */
function weighted(samples: Float64Array, weight: (order: number) => number): Float64Array {
  const most = Math.floor((samples.length - 1) / 2)
  const series = fourierSeries(samples, most)
  const scale = series.cos.map((value, n) =>
    n > 0 && Math.hypot(value, series.sin[n]!) > 1e-12 ? weight(n) : 1,
  )
  const of = (values: Float64Array) => values.map((value, n) => value * scale[n]!)
  const whole = { cos: of(series.cos), sin: of(series.sin) }
  return samples.map((_, k) => seriesValue(whole, (2 * Math.PI * k) / samples.length))
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
