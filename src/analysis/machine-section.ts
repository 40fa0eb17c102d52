/** The machine cut through a magnet and the winding over it: bodies in true size, and the stack of what lies on what. */
import type { Machine } from '../machine/machine.ts'
import type { Chain } from './compute.ts'
import { coilFormOf } from './conductor-layout.ts'
import { cornerRise } from './mechanics/drawn-gap.ts'

export type SectionKind = 'steel' | 'magnet' | 'cover' | 'winding'

/** Rectangle in the plane of the section: away from the first magnets' faces, and along the radius (disc) or shaft (drum) [m]. */
export interface SectionBody {
  readonly kind: SectionKind
  readonly label: string
  readonly foot: number
  readonly top: number
  readonly start: number
  readonly end: number
  /** Of a winding, from 0; else undefined. */
  readonly phase: number | undefined
  /** Crowns and coil ends beside the stack: no layer of it. */
  readonly aside: boolean
}

export interface SectionLayer {
  readonly kind: SectionKind | 'air'
  readonly label: string
  /** [m] */
  readonly thickness: number
  /** Where its middle stands [m]. */
  readonly at: number
}

export interface MachineSection {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  readonly windingSide: 'outside' | 'inside'
  readonly bodies: readonly SectionBody[]
  /** From the first body to the last, without a gap. */
  readonly stack: readonly SectionLayer[]
  /** Of the shaft's axis: across the stack on a disc, along it on a drum [m]. */
  readonly axis: number
  /** Corners of flat magnets on a drum stand out by so much beyond the middle of their faces [m]. */
  readonly cornerRise: number
}

/** Thinner than this is no layer [m]. */
const nothing = 1e-7

const phaseName = (phase: number): string => String.fromCharCode(65 + phase)

function windingBodies(machine: Machine): SectionBody[] {
  const { winding } = machine.stator
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  if (winding.kind === 'coils') {
    const { extent, rise } = coilFormOf(machine, winding)
    const middle = drum ? 0 : winding.centreRadius
    const body = (level: number, label: string, aside: boolean): SectionBody => ({
      kind: 'winding',
      label,
      foot: winding.distance + level - winding.bundleDepth / 2,
      top: winding.distance + level + winding.bundleDepth / 2,
      start: middle - extent.length / 2,
      end: middle + extent.length / 2,
      phase: undefined,
      aside,
    })
    return rise.legs > nothing
      ? [body(0, 'winding, lower level', false), body(rise.legs, 'winding, upper level', false)]
      : [body(0, 'winding', false)]
  }
  const middle = drum ? 0 : rotor.pitchRadius
  const half = winding.runLength / 2
  return winding.phases.flatMap(({ distance, crownLift }, phase) =>
    Array.from({ length: winding.layers }, (_, layer) => layer).flatMap((layer): SectionBody[] => {
      const level = distance + layer * winding.layerPitch
      const part = (lift: number, start: number, end: number, aside: boolean): SectionBody => ({
        kind: 'winding',
        label: winding.layers > 1 ? `${phaseName(phase)}, layer ${layer + 1}` : `phase ${phaseName(phase)}`,
        foot: level + lift - winding.bundleDepth / 2,
        top: level + lift + winding.bundleDepth / 2,
        start: middle + start,
        end: middle + end,
        phase,
        aside,
      })
      const crown = winding.crownHeight
      return [
        part(0, -half, half, false),
        ...(crown > 0
          ? [part(crownLift, -half - crown, -half, true), part(crownLift, half, half + crown, true)]
          : []),
      ]
    }),
  )
}

function rotorBodies({ rotor }: Machine): SectionBody[] {
  const drum = rotor.arrangement === 'drum'
  const middle = drum ? 0 : rotor.pitchRadius
  const { length, thickness } = rotor.magnet
  const body = (
    kind: SectionKind,
    label: string,
    [foot, top]: readonly [number, number],
    [start, end]: readonly [number, number] = [middle - length / 2, middle + length / 2],
  ): SectionBody => ({ kind, label, foot, top, start, end, phase: undefined, aside: false })
  const plate = (iron: NonNullable<Machine['rotor']['backIron']>): readonly [number, number] => [
    drum ? middle - length / 2 : (iron.innerRadius ?? middle - 0.6 * length),
    drum ? middle + length / 2 : (iron.outerRadius ?? middle + 0.6 * length),
  ]
  const { backIron, faceDistance, opposite, sleeve, cover } = rotor
  const two = rotor.arrangement === 'two-discs'
  return [
    ...(backIron === undefined
      ? []
      : [body('steel', 'back iron', [-thickness - backIron.thickness, -thickness], plate(backIron))]),
    body('magnet', 'magnet', [-thickness, 0]),
    ...(cover > nothing ? [body('cover', 'cover', [0, cover])] : []),
    ...(sleeve === undefined
      ? []
      : [body('steel', 'sleeve', [sleeve.distance, sleeve.distance + sleeve.thickness], plate(sleeve))]),
    ...(faceDistance === undefined || opposite === undefined
      ? []
      : [
          body('steel', 'plate opposite', [faceDistance, faceDistance + opposite.thickness], plate(opposite)),
        ]),
    ...(faceDistance === undefined || !two
      ? []
      : [
          ...(cover > nothing ? [body('cover', 'cover', [faceDistance - cover, faceDistance])] : []),
          body('magnet', 'magnet', [faceDistance, faceDistance + thickness]),
          ...(backIron === undefined
            ? []
            : [
                body(
                  'steel',
                  'back iron',
                  [faceDistance + thickness, faceDistance + thickness + backIron.thickness],
                  plate(backIron),
                ),
              ]),
        ]),
  ]
}

/** Windings that share a level lie beside each other along the circumference: one layer of the stack. */
function levels(bodies: readonly SectionBody[]): SectionBody[] {
  const sorted = bodies.filter(({ aside }) => !aside).sort((a, b) => a.foot - b.foot || a.top - b.top)
  const joined: SectionBody[] = []
  for (const body of sorted) {
    const last = joined.at(-1)
    if (last?.kind === 'winding' && body.kind === 'winding' && body.foot < last.top - nothing)
      joined[joined.length - 1] = {
        ...last,
        label: `${last.label}, ${body.label}`,
        top: Math.max(last.top, body.top),
      }
    else joined.push(body)
  }
  return joined
}

function stackOf(bodies: readonly SectionBody[]): SectionLayer[] {
  return levels(bodies).flatMap(({ kind, label, foot, top }, k, all): SectionLayer[] => {
    const own: SectionLayer = { kind, label, thickness: top - foot, at: (foot + top) / 2 }
    const room = k === 0 ? 0 : foot - all[k - 1]!.top
    return room > nothing ? [{ kind: 'air', label: 'air', thickness: room, at: foot - room / 2 }, own] : [own]
  })
}

export function machineSection({ machine }: Pick<Chain, 'machine'>): MachineSection {
  const { rotor } = machine
  const bodies = [...rotorBodies(machine), ...windingBodies(machine)]
  const face = rotor.pitchRadius + (rotor.windingSide === 'outside' ? 0.5 : -0.5) * rotor.magnet.thickness
  return {
    arrangement: rotor.arrangement,
    windingSide: rotor.windingSide,
    bodies,
    stack: stackOf(bodies),
    axis: rotor.arrangement === 'drum' ? (rotor.windingSide === 'outside' ? -face : face) : 0,
    cornerRise: rotor.magnet.shape.kind === 'block' ? cornerRise(machine) : 0,
  }
}
