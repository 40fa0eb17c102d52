/** Guards of what the field functions of every magnet shape are given. */
import { dot, type Frame3, type Vector3 } from '../../numerics/vector.ts'
import { refuse, requireBetween, requireFinite } from '../../refusal/require.ts'
import { distantRatio } from './block-multipole.ts'

export interface FieldAccuracy {
  /**
   * Largest error of one magnet's contribution, as a fraction of the value its equal dipole would have at a
   * distance of half its longest edge. Left out: about 1e-10 (l³/V)^(2/3) of the contribution itself.
   */
  readonly relativeError?: number
}

interface Posed {
  readonly centre: Vector3
  readonly frame: Frame3
  readonly polarization: number
}

/** @internal Whether centre and polarization are finite, and the frame three unit vectors square to each other. */
export function isPosed({ centre, frame, polarization }: Posed): boolean {
  for (let i = 0; i < 3; i++) {
    if (!Number.isFinite(centre[i]!)) return false
    for (let j = i; j < 3; j++)
      if (!(Math.abs(dot(frame[i]!, frame[j]!) - (i === j ? 1 : 0)) <= 1e-9)) return false
  }
  return Number.isFinite(polarization)
}

/** @internal Refuses what `isPosed` finds at fault, by its name. */
export function requirePosed(name: string, magnet: Posed): void {
  for (let i = 0; i < 3; i++) requireFinite(`${name}.centre[${i}]`, magnet.centre[i]!, 'm')
  requireFinite(`${name}.polarization`, magnet.polarization, 'T')
  if (!isPosed(magnet))
    refuse({
      name: `${name}.frame`,
      condition: 'three unit vectors square to each other',
      value: magnet.frame,
      code: 'conflict',
    })
}

/** @internal Refuses points that are not finite or not in threes. */
export function requirePoints(points: Float64Array): void {
  if (points.length % 3 !== 0)
    refuse({
      name: 'points',
      condition: 'a multiple of 3 long (x, y, z of each point)',
      value: points.length,
      code: 'wrong-length',
    })
  for (let i = 0; i < points.length; i++)
    if (!Number.isFinite(points[i]!)) requireFinite(`points[${i}]`, points[i]!, 'm')
}

/**
 * @internal Distance of the switch to a series as asked for, in half longest edges. The series errs by `series`
 * times the dipole's value there; `decay` is the power of the error's fall.
 */
export function switchAskedFor(accuracy: FieldAccuracy, series: number, decay: number): number {
  const { relativeError } = accuracy
  if (relativeError === undefined) return distantRatio
  requireBetween('relativeError', relativeError, [1e-15, 0.1])
  return Math.max((series / relativeError) ** (1 / decay), 2.2)
}
