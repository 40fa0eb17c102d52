/** The field in a plane through the gap, over two poles, as a grid of points: along the circumference and away from the magnets. */
import type { Machine } from '../machine/machine.ts'
import { fieldAt, levelAbove, type RotorField } from './air-gap-field.ts'
import type { Chain } from './compute.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { type LegCut, legCuts } from './leg-cut.ts'
import type { Steps } from './step.ts'

export interface GapMap {
  /** Azimuths of the plane's ends [rad]: half a pole before the first magnet's middle to half a pole past the second's. */
  readonly from: number
  readonly to: number
  /** Magnet faces to the plane's upper edge [m]; there is steel or a second ring of magnets where `beyond` says so. */
  readonly height: number
  readonly beyond: 'air' | 'steel' | 'magnets'
  /** Radius at which a length along the picture is true [m]. */
  readonly radius: number
  readonly columns: number
  readonly rows: number
  /** In the middle of each cell, row by row from the magnets: away from them and along growing azimuth [T]. */
  readonly normal: Float64Array
  readonly tangential: Float64Array
  /** Middle, half angle [rad] and sense of the two magnets, and of those opposite where there are. */
  readonly poles: readonly { readonly angle: number; readonly half: number; readonly sense: 1 | -1 | 0 }[]
  readonly opposite: GapMap['poles']
  /** Sides of the winding in the plane: azimuth within it, distance from the faces to the middle [m]. */
  readonly sides: readonly (Pick<LegCut, 'coil' | 'phase' | 'width' | 'thickness' | 'angle'> & {
    readonly distance: number
    /** Positive current comes out of the picture: azimuth to the right, away from the magnets up. */
    readonly outward: boolean
  })[]
}

/** Cells of the grid: fine enough for the eye, few enough for a page. */
export const gapMapCells = { columns: 48, rows: 18 } as const

/** A plane that nothing closes ends this far beyond the winding, in thicknesses of all of it. */
const openBeyond = 0.5

function upperEdge({ rotor }: Machine, sides: GapMap['sides']): Pick<GapMap, 'height' | 'beyond'> {
  if (rotor.faceDistance !== undefined && rotor.arrangement === 'two-discs')
    return { height: rotor.faceDistance, beyond: 'magnets' }
  if (rotor.faceDistance !== undefined && rotor.opposite !== undefined)
    return { height: rotor.faceDistance, beyond: 'steel' }
  if (rotor.sleeve !== undefined) return { height: rotor.sleeve.distance, beyond: 'steel' }
  const top = Math.max(...sides.map(({ distance, thickness }) => distance + thickness / 2))
  const foot = Math.min(...sides.map(({ distance, thickness }) => distance - thickness / 2))
  return { height: top + openBeyond * (top - foot), beyond: 'air' }
}

const turn = 2 * Math.PI

function sidesWithin(
  machine: Machine,
  layout: ConductorLayout,
  [from, to]: readonly [number, number],
): GapMap['sides'] {
  const face = levelAbove(machine, 0)
  // azimuth × away from the magnets: outward on a disc, against the shaft's direction on a drum wound outside
  const facing = machine.rotor.arrangement === 'drum' && machine.rotor.windingSide === 'outside' ? -1 : 1
  return legCuts(machine, layout).flatMap((cut) => {
    const margin = cut.width / machine.rotor.pitchRadius
    return [-turn, 0, turn]
      .map((whole) => cut.angle + whole)
      .filter((angle) => angle > from - margin && angle < to + margin)
      .map((angle) => ({
        ...cut,
        angle,
        distance: Math.abs(cut.level - face),
        outward: cut.direction === facing,
      }))
  })
}

/** Yields the fraction done; the rotor stands at angle 0. */
export function* gapMap(
  { machine, field, layout }: Pick<Chain, 'machine' | 'layout'> & { readonly field: RotorField },
  { columns, rows }: { readonly columns: number; readonly rows: number } = gapMapCells,
): Steps<GapMap> {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const pitch = turn / rotor.poleCount
  const [from, to] = [-pitch / 2, 1.5 * pitch]
  const sides = sidesWithin(machine, layout, [from, to])
  const { height, beyond } = upperEdge(machine, sides)
  const normal = new Float64Array(columns * rows)
  const tangential = new Float64Array(columns * rows)
  const outward = drum && rotor.windingSide === 'inside' ? -1 : 1
  for (let row = 0; row < rows; row++) {
    const level = levelAbove(machine, ((row + 0.5) / rows) * height)
    const r = drum ? level : rotor.pitchRadius
    const points = new Float64Array(3 * columns)
    const azimuth = (k: number) => from + ((k + 0.5) / columns) * (to - from)
    for (let k = 0; k < columns; k++)
      points.set([r * Math.cos(azimuth(k)), r * Math.sin(azimuth(k)), drum ? 0 : level], 3 * k)
    const B = fieldAt(field, points)
    for (let k = 0; k < columns; k++) {
      const [c, s] = [Math.cos(azimuth(k)), Math.sin(azimuth(k))]
      const radial = B[3 * k]! * c + B[3 * k + 1]! * s
      normal[row * columns + k] = drum ? outward * radial : B[3 * k + 2]!
      tangential[row * columns + k] = B[3 * k + 1]! * c - B[3 * k]! * s
    }
    yield (row + 1) / rows
  }
  const half = rotor.magnet.width / 2 / rotor.pitchRadius
  const polesOf = (ring: (typeof rotor.rings)[number] | undefined): GapMap['poles'] =>
    (ring ?? []).slice(0, 2).map(({ sense, strength, shift }, k) => ({
      angle: k * pitch + shift,
      half,
      sense: strength > 0 ? sense : 0,
    }))
  return {
    from,
    to,
    height,
    beyond,
    radius: drum ? levelAbove(machine, 0) : rotor.pitchRadius,
    columns,
    rows,
    normal,
    tangential,
    poles: polesOf(rotor.rings[0]),
    opposite: beyond === 'magnets' ? polesOf(rotor.rings[1]) : [],
    sides,
  }
}
