/** Readings taken on a loose magnet or its machine, and what each would show against the magnet's remanence. */
import type { BlockMagnet } from '../physics/magnetics/block-magnet.ts'
import type { CylinderMagnet } from '../physics/magnetics/cylinder-magnet.ts'
import { imageMagnets } from '../physics/magnetics/image-plane.ts'
import { magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { blockPlatePull, cylinderPlatePull } from '../physics/magnetics/plate-pull.ts'
import { magnetLoadFactor } from '../physics/magnetics/working-point.ts'
import { requireFinite, requireNotNegative, requirePositive } from '../refusal/require.ts'
import { celsius } from './si.ts'

/** Temperature to which grades refer [K]. */
const referenceTemperature = celsius(20)

/** Half-width at 90 % of a normal distribution, in standard deviations. */
export const half90 = 1.6448536269514722

/** A loose magnet: a block by its edges, the last along the magnetisation, or a disc by its diameter [m]. */
export type LooseMagnet = (
  | { readonly shape: 'block'; readonly size: readonly [number, number, number] }
  | { readonly shape: 'disc'; readonly diameter: number; readonly thickness: number }
) & {
  /** μrec relative to μ0. */
  readonly recoilPermeability: number
  /** Of the remanence [1/K of the value at 20 °C]. */
  readonly temperatureCoefficient: number
}

/** Half-widths at 90 % are called spread, here as everywhere. */
interface Reading {
  /** Of the magnet when it was read [K]; 20 °C when left out. */
  readonly temperature?: number
}

/** On the axis of the loose magnet, `distance` from its face to the sensor's. */
export interface HallReading extends Reading {
  readonly kind: 'hall'
  /** [m] */
  readonly distance: number
  readonly distanceSpread?: number
  /** [T] */
  readonly fluxDensity: number
  readonly fluxDensitySpread?: number
  /** Where the sensor stops [T]. */
  readonly sensorRange?: number
}

/** Force that tears the magnet off thick, flat, bare steel. */
export interface PullReading extends Reading {
  readonly kind: 'pull'
  /** Between magnet and steel [m]. */
  readonly spacer: number
  readonly spacerSpread?: number
  /** [N] */
  readonly force: number
  readonly forceSpread?: number
}

/** A coil, or the machine's own winding, at a speed: only the ratio to what was computed for it counts. */
export interface VoltsReading extends Reading {
  readonly kind: 'volts'
  /** Both of one kind (rms or peak), at one speed [V]. */
  readonly voltage: number
  readonly computedVoltage: number
  /** Remanence at 20 °C for which it was computed [T], at the temperature of the reading. */
  readonly computedRemanence: number
  /** Of the ratio: meter, speed, gap and place of the coil together. */
  readonly ratioSpread?: number
}

export type MagnetReading = HallReading | PullReading | VoltsReading

/** What readings are taken to leave open when they do not say: common practice, no source; half-widths at 90 %. */
export const usualReadingSpread = {
  /** Ruler or spacer against the sensor's face [m]. */
  distance: 0.3e-3,
  /** Noise and zero of a sensor, as a share of the reading and at least [T]. */
  fluxDensityShare: 0.01,
  fluxDensity: 1e-3,
  /** Sensitivity of a sensor that was not calibrated, alike for all its readings. */
  sensorGain: 0.04,
  /** Thickness of paint, plating and spacer [m]. */
  spacer: 0.1e-3,
  /** Luggage scale, and steel that is neither flat nor ideal. */
  forceShare: 0.1,
  /** Coil in place and meter. */
  ratio: 0.05,
} as const

/** Depth of the sensing plate below the face of a usual package [m] and its spread: common practice, no source. */
export const usualSensorDepth = { value: 0.5e-3, spread: 0.3e-3 } as const

/** A reading this near the end of the sensor's range tells nothing: it may stand there whatever the field. */
export const rangeEndShare = 0.05

const straightFrame = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const

/** The magnet standing on z = 0 at a height, J = 1. */
function standing(magnet: LooseMagnet, height: number): BlockMagnet | CylinderMagnet {
  const thickness = magnet.shape === 'block' ? magnet.size[2] : magnet.thickness
  const pose = { centre: [0, 0, height + thickness / 2], frame: straightFrame, polarization: 1 } as const
  return magnet.shape === 'block'
    ? { ...pose, size: magnet.size }
    : { ...pose, radius: magnet.diameter / 2, height: thickness }
}

/** J over remanence in a circuit, the magnet giving way along its recoil line. */
function workingShare(magnet: LooseMagnet, spacer: number | undefined): number {
  const alone = standing(magnet, spacer ?? 0)
  const magnets = spacer === undefined ? [alone] : imageMagnets({ magnets: [alone], lowerPlane: 0 })
  return 1 / (1 - (magnet.recoilPermeability - 1) * magnetLoadFactor({ magnets, own: 0 }))
}

/** Flux density on the axis per tesla of J, and its slope, `distance` from the face. */
function axisField(
  magnet: LooseMagnet,
  distance: number,
): { readonly value: number; readonly slope: number } {
  const alone = standing(magnet, 0)
  const thickness = magnet.shape === 'block' ? magnet.size[2] : magnet.thickness
  const step = 1e-4 * (distance + thickness)
  const at = (d: number) => magnetFluxDensity([alone], Float64Array.of(0, 0, thickness + d))[2]!
  // on the face the slope is that of the outer side
  const [near, far] = [Math.max(0, distance - step), distance + step]
  return { value: at(distance), slope: (at(far) - at(near)) / (far - near) }
}

function platePull(magnet: LooseMagnet, spacer: number): number {
  return magnet.shape === 'block'
    ? blockPlatePull({ size: magnet.size, polarization: 1, spacer })
    : cylinderPlatePull({
        radius: magnet.diameter / 2,
        height: magnet.thickness,
        polarization: 1,
        spacer,
      })
}

/** What a reading would show against remanence, sensor gain and further sensor depth, and how far it may be off. */
export interface ReadingModel {
  readonly index: number
  readonly shown: number
  readonly deviation: number
  readonly at: (remanence: number, gain: number, depth: number) => number
  /** Derivatives by the same three. */
  readonly slopes: (remanence: number, gain: number, depth: number) => readonly [number, number, number]
}

export const spreadOr = (name: string, given: number | undefined, usual: number): number => {
  if (given === undefined) return usual
  requireNotNegative(name, given)
  // an exact reading would leave the others without a voice
  return Math.max(given, 1e-6 * usual)
}

function thermal({ temperatureCoefficient }: LooseMagnet, { temperature }: Reading): number {
  if (temperature === undefined) return 1
  requirePositive('temperature', temperature, 'K')
  return Math.max(0.01, 1 + temperatureCoefficient * (temperature - referenceTemperature))
}

function hallModel(magnet: LooseMagnet, reading: HallReading, index: number, depth: number): ReadingModel {
  requireNotNegative(`readings[${index}].distance`, reading.distance, 'm')
  const share = workingShare(magnet, undefined) * thermal(magnet, reading)
  const shown = Math.abs(reading.fluxDensity)
  const place = reading.distance + depth
  const here = axisField(magnet, place)
  const distanceSpread = spreadOr('distanceSpread', reading.distanceSpread, usualReadingSpread.distance)
  const own = spreadOr(
    'fluxDensitySpread',
    reading.fluxDensitySpread,
    Math.max(usualReadingSpread.fluxDensity, usualReadingSpread.fluxDensityShare * shown),
  )
  // the reading's own size stands for J in what a wrong distance does to it
  const slip = (here.slope / here.value) * shown * distanceSpread
  const field = (further: number) => axisField(magnet, Math.max(0, place + further))
  return {
    index,
    shown,
    deviation: Math.hypot(own, slip) / half90,
    at: (remanence, gain, further) => share * remanence * (1 + gain) * field(further).value,
    slopes: (remanence, gain, further) => {
      const { value, slope } = field(further)
      return [share * (1 + gain) * value, share * remanence * value, share * remanence * (1 + gain) * slope]
    },
  }
}

function pullModel(magnet: LooseMagnet, reading: PullReading, index: number): ReadingModel {
  requireNotNegative(`readings[${index}].spacer`, reading.spacer, 'm')
  const share = workingShare(magnet, reading.spacer) * thermal(magnet, reading)
  const spacerSpread = spreadOr('spacerSpread', reading.spacerSpread, usualReadingSpread.spacer)
  const perSquare = platePull(magnet, reading.spacer) * share ** 2
  const thinner = platePull(magnet, Math.max(0, reading.spacer - spacerSpread))
  const thicker = platePull(magnet, reading.spacer + spacerSpread)
  const span = Math.min(reading.spacer, spacerSpread) + spacerSpread
  const slip =
    span > 0
      ? (((thinner - thicker) / span) * spacerSpread * reading.force) / platePull(magnet, reading.spacer)
      : 0
  const own = spreadOr('forceSpread', reading.forceSpread, usualReadingSpread.forceShare * reading.force)
  return {
    index,
    shown: reading.force,
    deviation: Math.hypot(own, slip) / half90,
    at: (remanence) => perSquare * remanence ** 2,
    slopes: (remanence) => [2 * perSquare * remanence, 0, 0],
  }
}

function voltsModel(magnet: LooseMagnet, reading: VoltsReading, index: number): ReadingModel {
  requirePositive(`readings[${index}].computedVoltage`, reading.computedVoltage, 'V')
  requirePositive(`readings[${index}].computedRemanence`, reading.computedRemanence, 'T')
  const share = (reading.computedVoltage / reading.computedRemanence) * thermal(magnet, reading)
  const ratioSpread = spreadOr('ratioSpread', reading.ratioSpread, usualReadingSpread.ratio)
  return {
    index,
    shown: reading.voltage,
    deviation: (ratioSpread * reading.voltage) / half90,
    at: (remanence) => share * remanence,
    slopes: () => [share, 0, 0],
  }
}

/** Why a reading says nothing, or undefined. */
export function rejectionOf(reading: MagnetReading): string | undefined {
  const [name, value] =
    reading.kind === 'hall'
      ? (['field', Math.abs(reading.fluxDensity)] as const)
      : reading.kind === 'pull'
        ? (['force', reading.force] as const)
        : (['voltage', reading.voltage] as const)
  requireFinite(name, value)
  if (!(value > 0)) return `A ${name} of zero or below tells nothing of a magnet.`
  if (reading.kind !== 'hall' || reading.sensorRange === undefined) return undefined
  requirePositive('sensorRange', reading.sensorRange, 'T')
  if (value < (1 - rangeEndShare) * reading.sensorRange) return undefined
  return `The sensor stands within ${100 * rangeEndShare} % of the end of its range, where it may stay whatever the field.`
}

/** The model of an accepted reading; `depth` is that of the sensing plate below the sensor's face [m]. */
export function readingModel(
  magnet: LooseMagnet,
  reading: MagnetReading,
  index: number,
  depth: number,
): ReadingModel {
  if (reading.kind === 'hall') return hallModel(magnet, reading, index, depth)
  return reading.kind === 'pull' ? pullModel(magnet, reading, index) : voltsModel(magnet, reading, index)
}
