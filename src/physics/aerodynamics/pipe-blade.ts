/** A blade cut from a round pipe: how strongly its section is arched. */
import { requireBetween, requirePositive } from '../../refusal/require.ts'

/**
 * Arch of a section cut square to the axis of a pipe, over its chord.
 *
 *   f/c = ½ tan(θ/4),   sin(θ/2) = c / (2 R)
 *
 * Holds: pipe axis along the blade, chord up to the pipe's diameter. Accuracy: exact for a thin wall.
 *
 * @param at.chord       c    > 0, at most 2 R        [m]
 * @param at.pipeRadius  R    to the middle of the wall, > 0  [m]
 * @returns              f/c  0.5 for half a pipe     [1]
 * @throws RangeError    chord or radius not above zero, chord above the diameter
 * @source derived, height of a circular segment over its chord
 * @example pipeCamber({ chord: 0.1, pipeRadius: 0.1 }) // 0.13397
 */
export function pipeCamber(at: { readonly chord: number; readonly pipeRadius: number }): number {
  requirePositive('pipeRadius', at.pipeRadius, 'm')
  requirePositive('chord', at.chord, 'm')
  requireBetween('chord', at.chord, [0, 2 * at.pipeRadius], 'm')
  return 0.5 * Math.tan(Math.asin(at.chord / (2 * at.pipeRadius)) / 2)
}

/**
 * Chord of a section of a given arch, cut square to the axis of a pipe.
 *
 *   c = 2 R sin(θ/2),   tan(θ/4) = 2 f/c
 *
 * Holds: arches up to half a pipe. Accuracy: exact for a thin wall.
 *
 * @param at.camber      f/c  > 0, at most 0.5                [1]
 * @param at.pipeRadius  R    to the middle of the wall, > 0  [m]
 * @returns              c                                    [m]
 * @throws RangeError    radius not above zero, camber outside 0…0.5
 * @source derived, inverse of pipeCamber
 * @example pipeChord({ camber: 0.06, pipeRadius: 0.08 }) // 0.037855
 */
export function pipeChord(at: { readonly camber: number; readonly pipeRadius: number }): number {
  requirePositive('pipeRadius', at.pipeRadius, 'm')
  requirePositive('camber', at.camber)
  requireBetween('camber', at.camber, [0, 0.5])
  return 2 * at.pipeRadius * Math.sin(2 * Math.atan(2 * at.camber))
}
