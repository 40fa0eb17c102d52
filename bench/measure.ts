/** Medians of repeated runs, and how a time grows with a size. */

/** Median time of `work` over `count` runs, two more before them to warm up [ms]. */
export function medianTime(work: () => unknown, count: number): number {
  work()
  work()
  const times = Array.from({ length: count }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  }).sort((a, b) => a - b)
  return times[Math.floor(count / 2)]!
}

/** Ten million multiplications, additions and square roots in a chain: plain work that no design changes. */
export function referenceLoop(): number {
  let x = 1.5
  for (let k = 0; k < 10_000_000; k++) x = Math.sqrt(x * 1.25 + 0.5)
  return x
}

/** Slope of log time over log size, by least squares. */
export function growthExponent(points: readonly { readonly size: number; readonly time: number }[]): number {
  const x = points.map(({ size }) => Math.log(size))
  const y = points.map(({ time }) => Math.log(time))
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const [mx, my] = [mean(x), mean(y)]
  const above = x.reduce((sum, value, k) => sum + (value - mx) * (y[k]! - my), 0)
  return above / x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
}
