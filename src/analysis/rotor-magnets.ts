/** The magnets of one pole where it stands at angle 0, for every arrangement and shape, of unit polarisation. */
import type { Machine, Rotor } from '../machine/machine.ts'
import type { Frame3, Vector3 } from '../numerics/vector.ts'
import { arcFacets, arcMagnets } from '../physics/magnetics/arc-magnet.ts'
import type { Magnet } from '../physics/magnetics/magnet.ts'
import { raisedMagnet, scaledMagnet, turnedMagnet } from '../physics/magnetics/magnet-pose.ts'
import { wedgeMagnet } from '../physics/magnetics/wedge-magnet.ts'

const upright: Frame3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/** Local z outward along the radius, local x along the circumference. */
const outward: Frame3 = [
  [0, 1, 0],
  [0, 0, 1],
  [1, 0, 0],
]

/** Share of the field, as far off as the winding comes near, that flat facets may put in the place of an arc. */
const facetError = 1e-3

/** How near the winding comes to the magnets [m]. */
function clearance({ stator: { winding } }: Machine): number {
  const distances =
    winding.kind === 'serpentine' ? winding.phases.map(({ distance }) => distance) : [winding.distance]
  return Math.max(0.5e-3, Math.min(...distances) - winding.bundleDepth / 2)
}

/** On a drum: centred on the x axis, north outward. */
function drumMagnet(machine: Machine): Magnet[] {
  const { magnet, pitchRadius } = machine.rotor
  const { shape, length, width, thickness } = magnet
  const centre: Vector3 = [pitchRadius, 0, 0]
  switch (shape.kind) {
    case 'block':
      return [{ centre, frame: outward, size: [width, length, thickness], polarization: 1 }]
    case 'disc':
      return [{ centre, frame: outward, radius: width / 2, height: thickness, polarization: 1 }]
    case 'wedge': {
      const { innerWidth, outerWidth } = shape
      const body = { centre, frame: upright, innerWidth, outerWidth, length: thickness, height: length }
      return [wedgeMagnet({ ...body, direction: [1, 0, 0], polarization: 1 })]
    }
    case 'arc': {
      const arc = {
        innerRadius: pitchRadius - thickness / 2,
        outerRadius: pitchRadius + thickness / 2,
        span: shape.span,
        magnetization: shape.parallel ? ('parallel' as const) : ('radial' as const),
      }
      const facets = arcFacets({ ...arc, clearance: clearance(machine), relativeError: facetError })
      return arcMagnets({ ...arc, centre: [0, 0, 0], frame: upright, length, polarization: 1, facets })
    }
  }
}

/** On a disc: centred on the x axis at z = 0, north upward. */
function discMagnet(machine: Machine): Magnet[] {
  const { magnet, pitchRadius } = machine.rotor
  const { shape, length, width, thickness } = magnet
  const centre: Vector3 = [pitchRadius, 0, 0]
  switch (shape.kind) {
    case 'block':
      return [{ centre, frame: upright, size: [length, width, thickness], polarization: 1 }]
    case 'disc':
      return [{ centre, frame: upright, radius: width / 2, height: thickness, polarization: 1 }]
    case 'wedge': {
      const { innerWidth, outerWidth } = shape
      const body = { centre, frame: upright, innerWidth, outerWidth, length, height: thickness }
      return [wedgeMagnet({ ...body, polarization: 1 })]
    }
    case 'arc': {
      const arc = {
        innerRadius: pitchRadius - length / 2,
        outerRadius: pitchRadius + length / 2,
        span: shape.span,
        magnetization: 'axial' as const,
      }
      const facets = arcFacets({ ...arc, clearance: clearance(machine), relativeError: facetError })
      return arcMagnets({
        ...arc,
        centre: [0, 0, 0],
        frame: upright,
        length: thickness,
        polarization: 1,
        facets,
      })
    }
  }
}

/** Local z along the circumference. */
const around: Frame3 = [
  [0, 0, 1],
  [1, 0, 0],
  [0, 1, 0],
]

/** Magnetisation this close to an edge of the block lies along the other. */
const edgeTolerance = 1e-9

/**
 * A block whose magnetisation is turned by `lean` from `normal` (towards the winding) against the sense of turning:
 * then the piece beside it in the sense of turning adds its flux on the winding's side. Its two components are two
 * blocks in one place.
 */
function leaningBlock(
  { magnet: { length, width, thickness }, pitchRadius, arrangement }: Rotor,
  normal: 1 | -1,
  lean: number,
): Magnet[] {
  const drum = arrangement === 'drum'
  const centre: Vector3 = [pitchRadius, 0, 0]
  const up = Math.cos(lean) * normal
  const across = -Math.sin(lean)
  const blocks: Magnet[] = [
    {
      centre,
      frame: drum ? outward : upright,
      size: drum ? [width, length, thickness] : [length, width, thickness],
      polarization: up,
    },
    {
      centre,
      frame: around,
      size: drum ? [length, thickness, width] : [thickness, length, width],
      polarization: across,
    },
  ]
  return blocks.filter(({ polarization }) => Math.abs(polarization) > edgeTolerance)
}

/** A piece of a pole: bodies that share one material and one working point, side by side or, as components, in one place. */
export type Piece = readonly Magnet[]

/**
 * Pieces of the pole at angle 0 of each ring: on a drum north towards the winding, on discs polarised upward, so that
 * unlike poles face each other across the winding.
 */
export function polePieces(machine: Machine): readonly (readonly Piece[])[] {
  const { rotor } = machine
  const { piecesPerPole: n, arrangement, magnet, faceDistance } = rotor
  const step = Math.PI / rotor.polePairs / n
  const drum = arrangement === 'drum'
  const normal = drum && rotor.windingSide === 'inside' ? -1 : 1
  const plain = drum ? drumMagnet(machine).map((one) => scaledMagnet(one, normal)) : discMagnet(machine)
  const ring = (towards: 1 | -1, height: number, sense: 1 | -1): Piece[] =>
    Array.from({ length: n }, (_, j) => {
      const bodies =
        n === 1
          ? plain
          : leaningBlock(rotor, towards, (j * Math.PI) / n).map((one) => scaledMagnet(one, sense))
      return bodies.map((one) => turnedMagnet(raisedMagnet(one, height), j * step))
    })
  if (drum) return [ring(normal, 0, 1)]
  const lower = ring(1, magnet.thickness / 2, 1)
  if (arrangement === 'disc') return [lower]
  // opposite a north pole that looks up lies a south pole that looks down: both are polarised upward
  return [lower, ring(-1, 1.5 * magnet.thickness + faceDistance!, -1)]
}
