/** Mean and standard deviation of a sample. */
import { refuse, requireFinite } from '../refusal/require.ts'

/**
 * Mean and deviation with M − 1 below the sum of squares (JCGM 101:2008, equations 16 and 17). Two passes, scaled:
 * rounding only, at any size of number.
 */
export function sampleMoments(sample: ArrayLike<number>): {
  readonly mean: number
  readonly deviation: number
} {
  const M = sample.length
  if (M < 2) refuse({ name: 'sample', condition: 'at least 2 long', value: M, code: 'wrong-length' })
  let mean = 0
  for (let i = 0; i < M; i++) {
    requireFinite(`sample[${i}]`, sample[i]!)
    mean += sample[i]! / M
  }
  let most = 0
  for (let i = 0; i < M; i++) most = Math.max(most, Math.abs(sample[i]! - mean))
  requireFinite('spread of the sample', most)
  if (most === 0) return { mean, deviation: 0 }
  let squares = 0
  for (let i = 0; i < M; i++) squares += ((sample[i]! - mean) / most) ** 2
  return { mean, deviation: most * Math.sqrt(squares / (M - 1)) }
}
