/** Flux through the coils of a stator that does not stand square: each coil at its own distance from the magnets. */
import { type CurvePiece, curveQuadrature } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import { type FourierSeries, seriesDelayed, seriesScaled, seriesSum } from '../numerics/fourier.ts'
import type { RotorField } from './air-gap-field.ts'
import { type Coil, type ConductorLayout, type ConductorShape, conductorLayout } from './conductor-layout.ts'
import { keptHarmonics, type Linkage, rotorLinkage } from './flux-linkage.ts'

/** The machine with all of its winding so much farther from the magnets. */
export function withdrawn(machine: Machine, by: number): Machine {
  const { winding } = machine.stator
  const moved =
    winding.kind === 'coils'
      ? { ...winding, distance: winding.distance + by }
      : {
          ...winding,
          phases: winding.phases.map((phase) => ({ ...phase, distance: phase.distance + by })),
        }
  return { ...machine, stator: { ...machine.stator, winding: moved } }
}

/** Longest arc that counts as in one place [rad of its own]. */
const longestArc = Math.PI / 4

/** A piece in parts short enough; one that climbs stays whole. */
function shortPieces(piece: CurvePiece): CurvePiece[] {
  const { shape, rise } = piece
  if (shape.kind !== 'arc' || rise !== undefined) return [piece]
  const count = Math.max(1, Math.ceil(Math.abs(shape.sweep) / longestArc - 1e-9))
  const sweep = shape.sweep / count
  return Array.from({ length: count }, (_, k) => ({
    ...piece,
    shape: { ...shape, start: shape.start + k * sweep, sweep },
  }))
}

/** The shape piece by piece of its path: legs, runs, ends. */
function piecesOf(shape: ConductorShape): ConductorShape[] {
  const filaments = shape.filaments.map((filament) => ({
    ...filament,
    pieces: filament.curve.pieces.flatMap(shortPieces),
  }))
  return filaments[0]!.pieces.map((_, k) => ({
    ...shape,
    repeats: 1,
    parity: 'none',
    filaments: filaments.map(({ pieces, ...filament }) => ({
      ...filament,
      curve: { closed: false, pieces: [pieces[k]!] },
    })),
  }))
}

/** Azimuth and radius of the middle of a piece. */
function middleOf({ filaments, turnLength }: ConductorShape): {
  readonly angle: number
  readonly radius: number
} {
  const { points, steps } = curveQuadrature(filaments[0]!.curve, { longestStep: turnLength / 20, order: 2 })
  let [x, y, r, length] = [0, 0, 0, 0]
  for (let k = 0; k < points.length; k += 3) {
    const step = Math.hypot(steps[k]!, steps[k + 1]!, steps[k + 2]!)
    const radius = Math.hypot(points[k]!, points[k + 1]!)
    x += (step * points[k]!) / radius
    y += (step * points[k + 1]!) / radius
    r += step * radius
    length += step
  }
  return { angle: Math.atan2(y, x), radius: r / length }
}

/** Lagrange's weights of −1, 0 and 1. */
const parabola = (x: number): readonly [number, number, number] => [
  (x * (x - 1)) / 2,
  1 - x * x,
  (x * (x + 1)) / 2,
]

interface PieceLinkages {
  readonly angle: number
  readonly radius: number
  /** Nearer by the amplitude, in place, farther by it. */
  readonly at: readonly [Linkage, Linkage, Linkage]
}

function shapeLinkages(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
  amplitude: number,
): PieceLinkages[][] {
  const near = conductorLayout(withdrawn(machine, -amplitude)).shapes
  const far = conductorLayout(withdrawn(machine, amplitude)).shapes
  return layout.shapes.map((shape, k) => {
    const orders = keptHarmonics(machine, near[k]!)
    const linkages = (one: ConductorShape) =>
      piecesOf(one).map((piece) => rotorLinkage(machine, field, piece, orders))
    const [nearer, own, farther] = [linkages(near[k]!), linkages(shape), linkages(far[k]!)]
    return piecesOf(shape).map((piece, n) => ({
      ...middleOf(piece),
      at: [nearer[n]!, own[n]!, farther[n]!],
    }))
  })
}

/**
 * ψ of one turn of every coil in its place; undefined where the stator stands square.
 *
 * A piece of the path at azimuth α stands at its distance less a·cos(α − angle), on a disc in proportion to its
 * radius; its flux there is interpolated between three distances. A drum's winding has moved sideways: pieces at right
 * angles to the narrow side stand a/r ahead or behind.
 */
export function tiltedLinkages(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
): readonly Linkage[] | undefined {
  const { tilt } = machine.defects
  if (tilt === undefined || tilt.amplitude === 0) return undefined
  const { rotor } = machine
  const { amplitude, angle } = tilt
  const perShape = shapeLinkages(machine, field, layout, amplitude)
  const sideways =
    rotor.arrangement === 'drum' ? (rotor.windingSide === 'inside' ? -amplitude : amplitude) : 0
  const drum = rotor.arrangement === 'drum'
  return layout.coils.map((coil: Coil): Linkage => {
    const { repeats } = layout.shapes[coil.shape]!
    const pieces = perShape[coil.shape]!
    const { base } = pieces[0]!.at[0]
    const parts = Array.from({ length: repeats }, (_, k) => coil.angle + (2 * Math.PI * k) / repeats).flatMap(
      (place) =>
        pieces.map(({ angle: own, radius, at }): FourierSeries => {
          const α = own + place - angle
          const weights = parabola((drum ? -1 : -radius / rotor.pitchRadius) * Math.cos(α))
          const flux = seriesSum(at.map((linkage, j) => seriesScaled(linkage.flux, weights[j]!)))
          return seriesDelayed(flux, base * (place + (sideways * Math.sin(α)) / radius))
        }),
    )
    return { base, flux: seriesSum(parts) }
  })
}
