/** The machine cut along its shaft, as far as the document knows it: bodies of revolution in true size about the axis. */
import { deepGrooveBearings } from '../../data/deep-groove-bearing.ts'
import type { Chain } from '../compute.ts'
import { machineSection } from '../machine-section.ts'

export type ShaftBodyKind = 'shaft' | 'bearing' | 'steel' | 'magnet' | 'winding' | 'carrier'

/** Between two radii, from a rear to a front end along the shaft; forward, towards the blades, counts [m]. */
export interface ShaftBody {
  readonly kind: ShaftBodyKind
  readonly label: string
  readonly rear: number
  readonly front: number
  readonly inner: number
  readonly outer: number
}

/** A distance along the shaft that the document gives [m]. */
export interface ShaftDistance {
  readonly label: string
  readonly from: number
  readonly to: number
}

export interface ShaftSection {
  readonly bodies: readonly ShaftBody[]
  /** Middles of the two bearings [m]; undefined where their places are not said. */
  readonly bearings: { readonly front: number; readonly rear: number; readonly sized: boolean } | undefined
  /** Plane of the blades, radius of their hub, where it is known, and of their tips [m]; undefined where the plane is not said, or they stand upright. */
  readonly blades:
    | { readonly at: number; readonly hubRadius: number | undefined; readonly radius: number }
    | undefined
  /** Of the shaft [m]; undefined where it is not said. */
  readonly diameter: number | undefined
  /** Both ends of the shaft as far as it is drawn [m]. */
  readonly ends: readonly [rear: number, front: number]
  readonly distances: readonly ShaftDistance[]
  readonly upright: boolean
  /** One disc alone: the document does not say to which side its magnets look. */
  readonly facingGuessed: boolean
  /** Fields of the document without which a part is missing. */
  readonly enter: readonly string[]
}

/** Of the shaft's length, what it is drawn longer than what it carries. */
const overhang = 0.04

/** The section through the gap, turned so that its axis is the shaft's, the middle of the magnets at 0. */
function rotorBodies(chain: Pick<Chain, 'machine'>): ShaftBody[] {
  const { arrangement, axis, windingSide, bodies } = machineSection(chain)
  const { rotor } = chain.machine
  const drum = arrangement === 'drum'
  const middle =
    arrangement === 'two-discs' ? (rotor.faceDistance ?? 0) / 2 : drum ? 0 : -rotor.magnet.thickness / 2
  const outward = windingSide === 'outside' ? 1 : -1
  return bodies
    .filter(({ kind }) => kind !== 'cover')
    .map(({ kind, label, foot, top, start, end }): ShaftBody => {
      const radii = drum ? [outward * (foot - axis), outward * (top - axis)] : [start, end]
      const [rear, front] = drum ? [start, end] : [foot - middle, top - middle]
      return {
        kind: kind === 'cover' ? 'carrier' : kind,
        label: kind === 'winding' ? 'winding' : label,
        rear,
        front,
        inner: Math.max(0, Math.min(...radii)),
        outer: Math.max(...radii),
      }
    })
}

/** A printed disc behind the magnets, from the hub that clamps it, or from the shaft. */
function carrierBodies({ machine: { rotor, shaft } }: Pick<Chain, 'machine'>): ShaftBody[] {
  const { carrier, arrangement, magnet, faceDistance = 0, backIron, pitchRadius } = rotor
  if (carrier === undefined || backIron !== undefined || arrangement === 'drum') return []
  const two = arrangement === 'two-discs'
  const far = two ? faceDistance / 2 + magnet.thickness : magnet.thickness / 2
  const body = (rear: number): ShaftBody => ({
    kind: 'carrier',
    label: `disc of ${carrier.material}`,
    rear,
    front: rear + carrier.thickness,
    inner: (shaft.diameter ?? 0) / 2,
    outer: pitchRadius + magnet.length / 2,
  })
  return [body(-far - carrier.thickness), ...(two ? [body(far)] : [])]
}

/** Front bearing at 0 where its place is said, else the middle of the magnets. */
export function shaftSection(chain: Pick<Chain, 'machine'>): ShaftSection {
  const { blades, shaft } = chain.machine
  const { bearings, diameter, bore } = shaft
  const upright = 'height' in blades
  const at = bearings?.magnetOverhang ?? 0
  const turning = [...rotorBodies(chain), ...carrierBodies(chain)].map((body) => ({
    ...body,
    rear: body.rear + at,
    front: body.front + at,
  }))
  const sized =
    bearings?.bore === undefined
      ? undefined
      : deepGrooveBearings.find(({ bore_mm }) => Math.abs(bore_mm / 1000 - bearings.bore!) < 1e-5)
  const places = bearings === undefined ? [] : [0, -bearings.spacing]
  const rings = places.flatMap((place): ShaftBody[] =>
    sized === undefined
      ? []
      : [
          {
            kind: 'bearing',
            label: place === 0 ? 'front bearing' : 'rear bearing',
            rear: place - sized.width_mm / 2000,
            front: place + sized.width_mm / 2000,
            inner: sized.bore_mm / 2000,
            outer: sized.outer_mm / 2000,
          },
        ],
  )
  const plane = bearings === undefined || upright ? undefined : bearings.bladeOverhang
  const fronts = [...turning.map(({ front }) => front), ...rings.map(({ front }) => front), ...places]
  const rears = [...turning.map(({ rear }) => rear), ...rings.map(({ rear }) => rear), ...places]
  const [rearmost, foremost] = [Math.min(...rears), Math.max(...fronts, plane ?? Number.NEGATIVE_INFINITY)]
  const more = overhang * (foremost - rearmost)
  const ends = [rearmost - more, foremost + more] as const
  return {
    bodies: [
      ...(diameter === undefined
        ? []
        : [
            {
              kind: 'shaft' as const,
              label: 'shaft',
              rear: ends[0],
              front: ends[1],
              inner: bore / 2,
              outer: diameter / 2,
            },
          ]),
      ...rings,
      ...turning,
    ],
    bearings:
      bearings === undefined ? undefined : { front: 0, rear: -bearings.spacing, sized: sized !== undefined },
    blades:
      plane === undefined || 'height' in blades
        ? undefined
        : {
            at: plane,
            hubRadius: 'hubRadius' in blades ? blades.hubRadius : undefined,
            radius: blades.radius,
          },
    diameter,
    ends,
    distances:
      bearings === undefined
        ? []
        : [
            { label: 'between the bearings', from: -bearings.spacing, to: 0 },
            ...(plane === undefined
              ? []
              : [{ label: 'front bearing forward to the blades', from: 0, to: bearings.bladeOverhang }]),
            {
              label: `front bearing ${bearings.magnetOverhang < 0 ? 'back' : 'forward'} to the magnets`,
              from: 0,
              to: bearings.magnetOverhang,
            },
          ],
    upright,
    facingGuessed: chain.machine.rotor.arrangement === 'disc',
    enter: [
      ...(diameter === undefined ? ['shaft.diameter_mm'] : []),
      ...(bearings === undefined
        ? ['shaft.bearings']
        : bearings.bore === undefined
          ? ['shaft.bearings.bore_mm']
          : []),
    ],
  }
}
