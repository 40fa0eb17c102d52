/** Pull of a disc of magnets on the disc or plate that it faces, against their distance. */
import type { Machine } from '../../machine/machine.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { imageMagnets, imageReflectionsFor } from '../../physics/magnetics/image-plane.ts'
import { type Magnet, magnetFluxDensity } from '../../physics/magnetics/magnet.ts'
import { raisedMagnet, scaledMagnet, turnedMagnet } from '../../physics/magnetics/magnet-pose.ts'
import { magneticPull } from '../../physics/magnetics/magnetic-pull.ts'
import { imageError, type RotorField, rotorField } from '../air-gap-field.ts'
import type { Steps } from '../step.ts'

export interface PullPoint {
  /** Face to face, or face to plate [m]. */
  readonly distance: number
  /** Attraction [N]. */
  readonly pull: number
  /** Work that the pull does from far away down to here [J]. */
  readonly work: number
}

/** At the distance of the drawing. */
export interface DiscPull {
  readonly distance: number
  /** Attraction [N]. */
  readonly pull: number
  /** −dF/dx: by so much it grows for each metre that the gap closes [N/m]. */
  readonly stiffness: number
  /** Gap over which it falls by e [m]. */
  readonly decay: number
  /** Root of the mean square of the field over the magnets' faces that would pull as hard [T]. */
  readonly fluxDensity: number
}

/** Points along the radius, under the magnets and beyond either end of them, and along half a pole. */
export interface PullMesh {
  readonly under: number
  readonly beyond: number
  readonly angular: number
}

export const coarseMesh: PullMesh = { under: 7, beyond: 4, angular: 4 }

/** Beyond the magnets' ends the integral goes on for this share of a pole pitch. */
const margin = 0.9

/** Share of one distant magnet's field allowed as error. */
const fieldError = 1e-3

const hasPartner = ({ rotor }: Machine): boolean =>
  rotor.arrangement === 'two-discs' || (rotor.arrangement === 'disc' && rotor.opposite !== undefined)

/** One pole of each ring, images included, with the faces `distance` apart; polarisation and steel as in `field`. */
function polesAt({ rotor }: Machine, { poles, iron }: RotorField, distance: number): Magnet[] {
  const two = rotor.arrangement === 'two-discs'
  const upper = rotor.magnet.thickness + distance
  const lowerPlane = rotor.backIron === undefined ? undefined : 0
  const upperPlane = two ? (lowerPlane === undefined ? undefined : upper + rotor.magnet.thickness) : upper
  const magnets = poles.flatMap(({ magnets: own }, ring) =>
    ring === 0 ? own : own.map((one) => raisedMagnet(one, distance - rotor.faceDistance!)),
  )
  const strength = iron?.strength ?? 1
  const imaged = imageMagnets({
    magnets,
    ...(lowerPlane === undefined ? {} : { lowerPlane }),
    ...(upperPlane === undefined ? {} : { upperPlane }),
    ...(lowerPlane === undefined || upperPlane === undefined
      ? {}
      : {
          reflections: imageReflectionsFor({
            poleCount: rotor.poleCount,
            meanRadius: rotor.pitchRadius,
            planeDistance: upperPlane,
            relativeError: imageError,
          }),
        }),
  })
  return imaged.map((one) => scaledMagnet(one, strength))
}

/**
 * Attraction at a distance [N], sound poles: F = ∮ Bz² dA/(2 μ0) over the plane half-way between two discs, or over the
 * plate's own surface, where the field stands upright by symmetry. Polarisation and steel's drop are those of `field`.
 */
export function discPullAt(
  machine: Machine,
  field: RotorField,
  distance: number,
  { under, beyond, angular }: PullMesh = coarseMesh,
): number {
  const { rotor } = machine
  if (!hasPartner(machine) || field.poles.length === 0) return 0
  const { poleCount, pitchRadius: R, magnet } = rotor
  const pole = polesAt(machine, field, distance)
  const sources = Array.from({ length: poleCount }, (_, k) =>
    pole.map((one) => turnedMagnet(scaledMagnet(one, k % 2 === 0 ? 1 : -1), (2 * Math.PI * k) / poleCount)),
  ).flat()
  const height =
    rotor.arrangement === 'two-discs' ? magnet.thickness + distance / 2 : magnet.thickness + distance
  const half = magnet.length / 2
  const reach = half + (margin * 2 * Math.PI * R) / poleCount
  const inner = Math.max(0, R - half)
  const pieces = [
    gaussLegendreOn(beyond, Math.max(0, R - reach), inner),
    gaussLegendreOn(under, inner, R + half),
    gaussLegendreOn(beyond, R + half, R + reach),
  ]
  const nodes = pieces.flatMap((piece) => [...piece.nodes])
  const weights = pieces.flatMap((piece) => [...piece.weights])
  // poles of one piece are their own mirror images: half a pole serves
  const mirrored = rotor.piecesPerPole === 1
  const count = mirrored ? angular : 2 * angular
  const span = (mirrored ? 1 : 2) * (Math.PI / poleCount)
  const points = new Float64Array(3 * nodes.length * count)
  let at = 0
  for (const r of nodes)
    for (let k = 0; k < count; k++, at += 3) {
      const θ = ((k + 0.5) * span) / count
      points.set([r * Math.cos(θ), r * Math.sin(θ), height], at)
    }
  const B = magnetFluxDensity(sources, points, { relativeError: fieldError })
  let square = 0
  let area = 0
  nodes.forEach((r, i) => {
    for (let k = 0; k < count; k++) {
      const dA = (weights[i]! * r * 2 * Math.PI) / count
      square += B[3 * (i * count + k) + 2]! ** 2 * dA
      area += dA
    }
  })
  return magneticPull({ fluxDensity: Math.sqrt(square / area), area })
}

/** Step of the slope, as a share of the distance. */
const slopeStep = 0.08

const kept = new WeakMap<RotorField, DiscPull | undefined>()

/** At the drawing's own distance; undefined where nothing is pulled. */
export function discPull(machine: Machine, field: RotorField): DiscPull | undefined {
  if (kept.has(field)) return kept.get(field)
  const found = pullOf(machine, field)
  kept.set(field, found)
  return found
}

function pullOf(machine: Machine, field: RotorField): DiscPull | undefined {
  const distance = machine.rotor.faceDistance
  if (distance === undefined || !hasPartner(machine)) return undefined
  const pull = discPullAt(machine, field, distance)
  if (!(pull > 0)) return undefined
  const h = slopeStep * distance
  const stiffness =
    (discPullAt(machine, field, distance - h) - discPullAt(machine, field, distance + h)) / (2 * h)
  const { poleCount, piecesPerPole, magnet } = machine.rotor
  const area = (poleCount * piecesPerPole * magnet.volume) / magnet.thickness
  return {
    distance,
    pull,
    stiffness,
    decay: pull / stiffness,
    fluxDensity: Math.sqrt((pull * 8e-7 * Math.PI) / area),
  }
}

/** The machine with its faces at another distance, the winding squeezed where it must be. */
export function apart(machine: Machine, distance: number): Machine {
  const { rotor, stator } = machine
  const { winding } = stator
  const squeezed = (own: number) => Math.min(own, distance / 2)
  return {
    ...machine,
    rotor: { ...rotor, faceDistance: distance },
    stator: {
      ...stator,
      winding:
        winding.kind === 'coils'
          ? { ...winding, distance: squeezed(winding.distance) }
          : {
              ...winding,
              phases: winding.phases.map((phase) => ({ ...phase, distance: squeezed(phase.distance) })),
            },
    },
  }
}

/** Distances of the table, as shares of the drawing's. */
const tableShares = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10] as const

/** Points finer than the rules need. */
const fineMesh: PullMesh = { under: 10, beyond: 6, angular: 6 }

/**
 * The whole table, magnets and steel solved anew at every distance; empty where nothing is pulled. Yields the fraction
 * done.
 */
export function* pullTable(machine: Machine, temperature: number): Steps<PullPoint[]> {
  const own = machine.rotor.faceDistance
  if (own === undefined || !hasPartner(machine)) return []
  const points: { distance: number; pull: number }[] = []
  for (const [k, share] of tableShares.entries()) {
    const moved = apart(machine, share * own)
    points.push({
      distance: share * own,
      pull: discPullAt(moved, rotorField(moved, temperature), share * own, fineMesh),
    })
    yield (k + 1) / tableShares.length
  }
  // between two distances the pull runs straight in its logarithm; beyond the last it goes on falling as it did there
  const piece = (a: { distance: number; pull: number }, b: { distance: number; pull: number }) =>
    ((a.pull - b.pull) * (b.distance - a.distance)) / Math.log(a.pull / b.pull)
  const [beforeLast, last] = points.slice(-2) as [PullPoint, PullPoint]
  let work = (last.pull * (last.distance - beforeLast.distance)) / Math.log(beforeLast.pull / last.pull)
  const table: PullPoint[] = []
  for (let k = points.length - 1; k >= 0; k--) {
    if (k < points.length - 1) work += piece(points[k]!, points[k + 1]!)
    table.unshift({ ...points[k]!, work })
  }
  return table
}

/** The distance at which the pull has fallen to `force` [m]; undefined where the table does not reach it. */
export function distanceOfPull(table: readonly PullPoint[], force: number): number | undefined {
  for (let k = 1; k < table.length; k++) {
    const [a, b] = [table[k - 1]!, table[k]!]
    if (a.pull >= force && b.pull < force)
      return a.distance + ((b.distance - a.distance) * Math.log(a.pull / force)) / Math.log(a.pull / b.pull)
  }
  return undefined
}
