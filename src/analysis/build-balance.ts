/** How a build turns: air that is left between rotor and stator, and mass off the axis. */
import { reachedGrade } from '../physics/mechanics/balance-grade.ts'
import type { BuildError } from './build-error.ts'
import type { Chain } from './compute.ts'
import { type ClearanceSide, clearances } from './mechanics/clearance.ts'
import { turningMass } from './mechanics/shaft-load.ts'

export interface BuildBalance {
  /** Least air all round [m]; below zero they touch. */
  readonly clearance: number
  /** Static unbalance of magnets and what carries them [kg·m], and the grade it means at the fastest working speed [m/s]. */
  readonly unbalance: number
  readonly grade: number
  /** Product of inertia of the same about a line across the shaft, through the middle between the rings [kg·m²]. */
  readonly couple: number
}

type Vector = readonly [number, number]

const plus = ([a, b]: Vector, [c, d]: Vector, times = 1): Vector => [a + times * c, b + times * d]

/** Name of the loss that play of the bearings is. */
const play = 'play of the bearings'

/** What closes a gap in every build: bending, growth, and the bearings' play at its worst [m]. */
const alwaysTaken = ({ losses }: ClearanceSide): number =>
  losses.reduce((sum, { name, closing, halfWidth }) => sum + closing + (name === play ? halfWidth : 0), 0)

/**
 * Air and balance of builds. Bending under the magnets' pull, growth by heat and damp, and the bearings' play close the
 * gap of every build; every magnet passes every coil, so the worst of both meet. What carries the magnets is true in
 * itself and errs only by its centre and its wobble, in which it turns about the shaft as a thin disc does.
 */
export function buildBalance(chain: Chain): (error: BuildError) => BuildBalance {
  const { machine } = chain
  const { rotor } = machine
  const [inner, outer] = clearances(chain).map((side) => side.drawn - alwaysTaken(side)) as [
    number,
    number | undefined,
  ]
  const rings = rotor.rings.length
  const one = rotor.magnet.density * rotor.magnet.volume * rotor.piecesPerPole
  const { magnets: whole } = turningMass(chain)
  const speed = chain.rows.reduce((most, row) => Math.max(most, row.speed), 0)
  const apartAlong = rings > 1 ? rotor.faceDistance! + rotor.magnet.thickness : 0
  return (error) => {
    const near = Math.max(...error.magnets[0]!.map(({ height }) => height))
    const far = rings > 1 ? Math.max(...error.magnets[1]!.map(({ height }) => height)) : 0
    const depth = (depth: number) => Math.max(0, depth) / 2
    const coilNear = Math.min(...error.coils.map((coil) => coil.away - coil.swing - depth(coil.depth)))
    const coilFar = Math.max(...error.coils.map((coil) => coil.away + coil.swing + depth(coil.depth)))
    const below = inner + coilNear - near
    const above = outer === undefined ? Number.POSITIVE_INFINITY : outer + error.apart - coilFar - far
    let unbalance: Vector = [0, 0]
    let couple: Vector = [0, 0]
    error.magnets.forEach((ring, r) => {
      let own: Vector = [0, 0]
      ring.forEach(({ around, outward }, k) => {
        const { shift, strength } = rotor.rings[r]![k]!
        // an empty place weighs nothing
        if (strength === 0) return
        const α = (2 * Math.PI * k) / ring.length + shift + around
        own = plus(own, [Math.cos(α), Math.sin(α)], one * (rotor.pitchRadius + outward))
      })
      const rest = whole.mass / rings - one * ring.length
      own = plus(own, error.centre[r]!, Math.max(0, rest))
      unbalance = plus(unbalance, own)
      const side = rings > 1 ? (r === 0 ? -1 : 1) : 0
      couple = plus(couple, own, (side * apartAlong) / 2)
      // the upper face leans down towards the winding where the lower one leans up
      const lean = (r === 0 ? 1 : -1) / rotor.pitchRadius
      couple = plus(couple, error.wobble[r]!, (lean * whole.inertia) / rings / 2)
    })
    const off = Math.hypot(...unbalance)
    // what rounding leaves of nothing is nothing
    const residual = off > 1e-12 * whole.mass * rotor.pitchRadius ? off : 0
    return {
      clearance: Math.min(below, above),
      unbalance: residual,
      grade: speed > 0 ? reachedGrade({ unbalance: residual, mass: whole.mass, speed }) : 0,
      couple: Math.hypot(...couple),
    }
  }
}
