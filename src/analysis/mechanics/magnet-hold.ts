/** What holds one magnet against being thrown out, glue left out: the wall of its pocket, a band, or a test. */
import type { Machine } from '../../machine/machine.ts'
import { bandHoopStress, shearStress } from '../../physics/mechanics/retention.ts'
import { type WallTop, wallBending, wallThicknessRange } from '../../physics/mechanics/wall-bending.ts'

export type HoldWay = 'a test' | 'wall bending' | 'wall shear' | 'band hoop'

export interface MagnetHold {
  /** Outward force on one magnet that its weakest way of being held bears for years [N]; 0 for glue alone. */
  readonly hold: number
  /** The weakest way; undefined for glue alone. */
  readonly way: HoldWay | undefined
  /** Every way that is there, with the force it bears [N] and, save for a test, its stress under one newton [Pa]. */
  readonly ways: readonly { readonly way: HoldWay; readonly hold: number; readonly stress?: number }[]
  /** The wall is too stocky for plate theory: it bears more than is told. */
  readonly stocky: boolean
  /** Whether all of the wall or band fits before the winding, and how thick it is counted [m]. */
  readonly fits: boolean
  readonly thickness: number
}

/** Shear that a material bears beside its tension, by the shape-change hypothesis. */
const shearShare = 1 / Math.sqrt(3)

/** Of lengths that come from different fields [m]. */
const roundingError = 1e-9

interface Wall {
  readonly width: number
  readonly height: number
  readonly thickness: number
  readonly top: WallTop
}

/**
 * Thickness of wall or band that there is room for. On a drum wound outside it lies in the gap, before the faces: of a
 * thicker one only what fits between them and the winding counts.
 */
function roomFor({ rotor, stator: { winding } }: Machine): number {
  const { wall } = rotor.retention
  if (rotor.arrangement !== 'drum' || rotor.windingSide === 'inside') return wall
  const distances =
    winding.kind === 'serpentine' ? winding.phases.map(({ distance }) => distance) : [winding.distance]
  return Math.min(wall, Math.max(0, Math.min(...distances) - winding.bundleDepth / 2))
}

/**
 * The wall that a magnet leans on. On a drum it lies before the pole face, held all round. On a disc it stands at the
 * magnet's outer end: held by the disc and by the pocket's sides; a cover over the faces holds its top as a tie.
 */
function wallOf(machine: Machine): Wall {
  const { magnet, arrangement, cover } = machine.rotor
  const thickness = roomFor(machine)
  if (arrangement === 'drum') return { width: magnet.width, height: magnet.length, thickness, top: 'clamped' }
  return { width: magnet.width, height: magnet.thickness, thickness, top: cover > 0 ? 'supported' : 'free' }
}

/** Stress under one newton by the wall's sizes alone; walls change seldom, and bending takes a while. */
const bent = new Map<string, number>()

function bendingStress(machine: Machine, { width, height, thickness, top }: Wall): number {
  const { modulus } = machine.rotor.retention
  const key = [width, height, thickness, top].join(' ')
  const found = bent.get(key)
  if (found !== undefined) return found
  const { stress } = wallBending({ force: 1, width, height, thickness, modulus, top })
  if (bent.size > 64) bent.clear()
  bent.set(key, stress)
  return stress
}

function pocketWays(machine: Machine): MagnetHold['ways'] {
  const { allowableStress } = machine.rotor.retention
  const wall = wallOf(machine)
  const { width, height, thickness: t, top } = wall
  if (!(t > 0)) return [{ way: 'wall bending', hold: 0 }]
  const bending = bendingStress(machine, wall)
  const held = 2 * height + width * (top === 'free' ? 1 : 2)
  const shear = shearStress({ force: 1, area: held * t })
  return [
    { way: 'wall bending', hold: allowableStress / bending, stress: bending },
    { way: 'wall shear', hold: (shearShare * allowableStress) / shear, stress: shear },
  ]
}

/** A band round all magnets of a ring; at speed its own weight takes a part of its strength. */
function bandWays(machine: Machine, speed: number): MagnetHold['ways'] {
  const { retention, magnet, pitchRadius, poleCount, piecesPerPole, arrangement } = machine.rotor
  const thickness = roomFor(machine)
  if (!(thickness > 0)) return [{ way: 'band hoop', hold: 0 }]
  const drum = arrangement === 'drum'
  const reach = pitchRadius + (drum ? magnet.thickness : magnet.length) / 2
  const band = {
    radius: reach + thickness / 2,
    width: drum ? magnet.length : magnet.thickness,
    thickness,
    density: retention.density,
    massRadius: pitchRadius,
  }
  const own = bandHoopStress({ ...band, carriedMass: 0, speed })
  // one newton on each magnet: at 1 rad/s a mass of 1/r pulls with it
  const each = (poleCount * piecesPerPole) / pitchRadius
  const stress = bandHoopStress({ ...band, density: 0, carriedMass: each, speed: 1 })
  return [{ way: 'band hoop', hold: Math.max(0, retention.allowableStress - own) / stress, stress }]
}

/** Long-term hold of one magnet at a speed [rad/s]. A force found by test counts alone. */
export function magnetHold(machine: Machine, speed: number): MagnetHold {
  const { retention } = machine.rotor
  const ways: MagnetHold['ways'] =
    retention.hold !== undefined
      ? [{ way: 'a test', hold: retention.hold }]
      : retention.kind === 'glue'
        ? []
        : retention.kind === 'band'
          ? bandWays(machine, speed)
          : pocketWays(machine)
  const weakest = ways.reduce<(typeof ways)[number] | undefined>(
    (least, one) => (least === undefined || one.hold < least.hold ? one : least),
    undefined,
  )
  const { width, height, thickness } = wallOf(machine)
  return {
    hold: weakest?.hold ?? 0,
    way: weakest?.way,
    ways,
    stocky:
      retention.kind === 'pocket' &&
      retention.hold === undefined &&
      thickness > wallThicknessRange[1] * Math.min(width, height),
    fits:
      retention.hold !== undefined ||
      retention.kind === 'glue' ||
      thickness >= retention.wall - roundingError,
    thickness,
  }
}
