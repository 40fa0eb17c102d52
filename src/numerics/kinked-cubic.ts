/** A curve through points that is smooth but for kinks at some of them. */
import { monotoneCubic } from './interpolate.ts'

/**
 * Shape-keeping cubics between the kinks, which join in value and not in slope. `kinks` are values of x; those that are
 * no points, or the first or last, count for nothing.
 */
export function kinkedCubic(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  kinks: readonly number[],
): (at: number) => number {
  const xs = Array.from(x)
  const ys = Array.from(y)
  const last = xs.length - 1
  const ends = [0, ...xs.flatMap((value, k) => (k > 0 && k < last && kinks.includes(value) ? [k] : [])), last]
  const pieces = ends.slice(1).map((end, k) => ({
    to: xs[end]!,
    curve: monotoneCubic(xs.slice(ends[k]!, end + 1), ys.slice(ends[k]!, end + 1)),
  }))
  return (at) => (pieces.find(({ to }) => at <= to) ?? pieces[pieces.length - 1]!).curve(at)
}
