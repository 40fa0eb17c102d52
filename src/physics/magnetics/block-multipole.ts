/** Multipole constants of a cuboid seen from afar. */
import type { Frame3 } from '../../numerics/vector.ts'
import type { BlockMagnet } from './block-magnet.ts'

/**
 * Distance in half longest edges beyond which the multipole series replaces the closed form by default, for a
 * cube; times (V/l³)^(1/9) for others. There the series' cut, 12 K⁻⁶, meets the closed form's rounding, about
 * 1.5e-15 (K/2)³ l³/V, both as shares of the value.
 */
export const distantRatio = 73

/**
 * The block's constants for lengths in half longest edges, so that no size under- or overflows.
 * Multipole moments: Φ = ∫dV/R = V (1/R + P2/R⁵ + P4/R⁹ + …), see `distantCoefficients`.
 */
export interface ScaledBlock {
  readonly unit: number
  readonly a: number
  readonly b: number
  readonly c: number
  readonly rows: Frame3
}

/** @internal A block in units of half its longest edge. */
export function scaled(magnet: BlockMagnet): ScaledBlock {
  const [w, l, t] = magnet.size
  const unit = Math.max(w, l, t) / 2
  const k = 1 / unit
  const [u, v, n] = magnet.frame
  return {
    unit,
    a: w / 2 / unit,
    b: l / 2 / unit,
    c: t / 2 / unit,
    rows: [
      [u[0] * k, u[1] * k, u[2] * k],
      [v[0] * k, v[1] * k, v[2] * k],
      [n[0] * k, n[1] * k, n[2] * k],
    ],
  }
}

/**
 * @internal Coefficients of the harmonic polynomials P2 and P4 from the mean squares and fourth powers of a cuboid.
 */
export function distantCoefficients(a: number, b: number, c: number) {
  const [A, B, C] = [a * a, b * b, c * c]
  const [αx, αy, αz] = [(A * A) / 120, (B * B) / 120, (C * C) / 120]
  const [βxy, βxz, βyz] = [(A * B) / 36, (A * C) / 36, (B * C) / 36]
  const s = A + B + C
  return {
    // P2 = (gx x² + gy y² + gz z²)
    gx: (3 * A - s) / 6,
    gy: (3 * B - s) / 6,
    gz: (3 * C - s) / 6,
    αx,
    αy,
    αz,
    βxy,
    βxz,
    βyz,
    hx: 6 * αx + βxy + βxz,
    hy: 6 * αy + βxy + βyz,
    hz: 6 * αz + βxz + βyz,
    K: 3 * (αx + αy + αz) + βxy + βxz + βyz,
  }
}

/** @internal Squared distance from which the series serves, in half longest edges. */
export function distantSquare(asked: number, { a, b, c }: ScaledBlock): number {
  return Math.max(2.2, Math.min(asked, distantRatio * (a * b * c) ** (1 / 9))) ** 2
}
