/** A shaft on two bearings with forces anywhere along it: reactions and the greatest bending moment. */
import { refuse, requireFinite } from '../../refusal/require.ts'

export interface ShaftForce {
  /** Along the axis [m]. */
  readonly position: number
  /** Across the axis, in one plane [N]. */
  readonly force: number
}

/**
 * Reactions of two bearings and the greatest bending moment under forces in one plane.
 *
 *   R2 = Σ F_i (x_i − x1) / (x2 − x1) + M / (x2 − x1),  R1 = Σ F_i − R2
 *
 * Holds: bearings that let the shaft tilt, forces within or beyond them; a couple acts at one place. Accuracy: exact
 * statics.
 *
 * @param shaft.bearings  x1, x2  places of the bearings, not the same          [m]
 * @param shaft.forces    F_i at x_i                                            [N, m]
 * @param shaft.couple    M  turning from x1 towards x2 like a force beyond x2, at `at`; 0 if left out [N·m]
 * @returns               reactions against the forces [N]; greatestMoment ≥ 0 [N·m] and where [m]
 * @throws RangeError     a value not finite; both bearings at one place
 * @source shigley, section 3-2 equilibrium and 3-3 shear force and bending moment, from memory, not opened
 * @example bearingReactions({ bearings: [0, 0.1], forces: [{ position: -0.05, force: 100 }] }).reactions[0] // 150
 */
export function bearingReactions(shaft: {
  readonly bearings: readonly [number, number]
  readonly forces: readonly ShaftForce[]
  readonly couple?: { readonly moment: number; readonly at: number } | undefined
}): {
  readonly reactions: readonly [number, number]
  readonly greatestMoment: number
  readonly at: number
} {
  const { bearings, forces, couple = { moment: 0, at: shaft.bearings[0] } } = shaft
  const [x1, x2] = bearings
  requireFinite('bearings[0]', x1, 'm')
  requireFinite('bearings[1]', x2, 'm')
  requireFinite('couple.moment', couple.moment, 'N·m')
  requireFinite('couple.at', couple.at, 'm')
  if (x1 === x2)
    refuse({ name: 'bearings', condition: 'at two places', value: x1, unit: 'm', code: 'conflict' })
  let sum = 0
  let turning = couple.moment
  forces.forEach(({ position, force }, i) => {
    requireFinite(`forces[${i}].position`, position, 'm')
    requireFinite(`forces[${i}].force`, force, 'N')
    sum += force
    turning += force * (position - x1)
  })
  const R2 = turning / (x2 - x1)
  const R1 = sum - R2
  const all = [...forces, { position: x1, force: -R1 }, { position: x2, force: -R2 }]
  const places = [...all.map(({ position }) => position), couple.at]
  const momentAt = (x: number, beyondCouple: boolean) =>
    all.reduce((M, { position, force }) => M + (position < x ? force * (x - position) : 0), 0) -
    (beyondCouple ? couple.moment : 0)
  let greatestMoment = 0
  let at = x1
  // a couple makes a step: both sides of it count
  for (const x of places)
    for (const beyond of x === couple.at ? [false, true] : [x > couple.at]) {
      const M = Math.abs(momentAt(x, beyond))
      if (M > greatestMoment) {
        greatestMoment = M
        at = x
      }
    }
  return { reactions: [R1, R2], greatestMoment, at }
}
