/** The winding rolled out flat beside the poles: where every coil lies, which way it is wound, what it is joined to. */
import type { Chain } from './compute.ts'
import { coilPolyline } from './conductor-layout.ts'
import { type LegCut, legCuts } from './leg-cut.ts'

export interface PlanPole {
  /** Of its middle at the rotor's angle 0 [rad]. */
  readonly angle: number
  /** Half of the angle that the magnet covers [rad]. */
  readonly half: number
  /** +1 north towards the winding; 0 where the magnet is missing. */
  readonly sense: 1 | -1 | 0
}

export interface PlanCoil {
  /** From 1. */
  readonly number: number
  /** From 0. */
  readonly phase: number
  /** −1: start and finish exchanged in the chain of its phase. */
  readonly sense: 1 | -1
  /** Series group of the phase, from 0. */
  readonly group: number
  readonly turns: number
  /** Of its middle; of a wave that of its first run [rad]. */
  readonly angle: number
  /** It runs all round, as a wave does. */
  readonly wave: boolean
  /** Middle line in the direction of the wire from start to finish: azimuth, unwound, and place across [rad], [m]. */
  readonly around: Float64Array
  readonly across: Float64Array
  readonly sides: readonly LegCut[]
}

export interface WindingPlan {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  readonly windingSide: 'outside' | 'inside'
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  readonly polePairs: number
  readonly phaseCount: number
  /** Radius at which a length along the picture is true [m]. */
  readonly radius: number
  /** Ends of the magnets across the picture [m]. */
  readonly magnetAcross: readonly [number, number]
  readonly poles: readonly PlanPole[]
  readonly coils: readonly PlanCoil[]
}

/**
 * Drawn as seen against the surface's normal: a drum from outside, its shaft upright; a disc from the winding's side,
 * the edge of the disc below, so that the azimuth grows to the right in both. `across` grows upward.
 */
export function windingPlan({ machine, layout }: Pick<Chain, 'machine' | 'layout'>): WindingPlan {
  const { rotor, stator } = machine
  const drum = rotor.arrangement === 'drum'
  const half = rotor.magnet.length / 2
  const cuts = legCuts(machine, layout)
  return {
    arrangement: rotor.arrangement,
    windingSide: rotor.windingSide,
    connection: stator.connection,
    polePairs: rotor.polePairs,
    phaseCount: layout.phaseCount,
    radius: rotor.pitchRadius,
    magnetAcross: drum ? [-half, half] : [-(rotor.pitchRadius + half), -(rotor.pitchRadius - half)],
    poles: rotor.rings[0]!.map(({ sense, strength, shift }, k) => ({
      angle: (2 * Math.PI * k) / rotor.poleCount + shift,
      half: rotor.magnet.width / 2 / rotor.pitchRadius,
      sense: strength > 0 ? sense : 0,
    })),
    coils: layout.coils.map((coil): PlanCoil => {
      const shape = layout.shapes[coil.shape]!
      const points = coilPolyline(layout, coil, 2e-3 * rotor.pitchRadius)
      const around = new Float64Array(points.length / 3)
      const across = new Float64Array(points.length / 3)
      let before = coil.angle
      for (let k = 0; k < around.length; k++) {
        const [x, y, z] = [points[3 * k]!, points[3 * k + 1]!, points[3 * k + 2]!]
        const step = Math.atan2(y, x) - before
        before += Math.atan2(Math.sin(step), Math.cos(step))
        around[k] = before
        across[k] = drum ? z : -Math.hypot(x, y)
      }
      return {
        number: coil.number,
        phase: coil.phase,
        sense: coil.sense,
        group: coil.group,
        turns: shape.turns,
        angle: coil.angle,
        wave: shape.repeats > 1,
        around,
        across,
        sides: cuts.filter(({ coil: of }) => of === coil.number),
      }
    }),
  }
}
