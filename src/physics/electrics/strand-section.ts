/** Section of a wire's metal, round or strip: its area, and how far the metal lies from its middle. */
import { refuse, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Area of metal and mean squares of the distance from the middle, along two directions at right angles. */
export interface StrandSection {
  /** [m²] */
  readonly area: number
  /** Mean of x² over the section, x along the width [m²]. */
  readonly meanSquareWidth: number
  /** The same along the thickness [m²]. */
  readonly meanSquareThickness: number
}

/**
 * Section of round wire.
 *
 *   A = π d²/4,  ⟨x²⟩ = d²/16
 *
 * Holds: any diameter. Accuracy: exact.
 *
 * @param diameter  d  bare, > 0                        [m]
 * @returns         area and mean squares               [m²]
 * @throws RangeError  diameter not above zero
 * @source derived, second moment of a circle over its area
 * @example 1e6 * roundSection(2e-3).meanSquareWidth // 0.2500
 */
export function roundSection(diameter: number): StrandSection {
  requirePositive('diameter', diameter, 'm')
  const meanSquare = diameter ** 2 / 16
  return {
    area: (Math.PI * diameter ** 2) / 4,
    meanSquareWidth: meanSquare,
    meanSquareThickness: meanSquare,
  }
}

/**
 * Section of a strip with rounded corners.
 *
 *   A = w t − (4 − π) r²,  ⟨x²⟩ = (w³ t/12 − 4 ∫ x² over what a corner lacks)/A
 *
 * Holds: r from 0 to half the thinner side. Accuracy: exact.
 *
 * @param strip.width         w  > 0                          [m]
 * @param strip.thickness     t  > 0                          [m]
 * @param strip.cornerRadius  r  0 to half the thinner side   [m]
 * @returns                   area and mean squares           [m²]
 * @throws RangeError         a side not above zero; a radius below zero or above half the thinner side
 * @source derived, second moments of a rectangle less those of its four corners
 * @example 1e6 * stripSection({ width: 4e-3, thickness: 1.5e-3, cornerRadius: 0.5e-3 }).area // 5.7854
 */
export function stripSection(strip: {
  readonly width: number
  readonly thickness: number
  readonly cornerRadius: number
}): StrandSection {
  const { width: w, thickness: t, cornerRadius: r } = strip
  requirePositive('width', w, 'm')
  requirePositive('thickness', t, 'm')
  requireNotNegative('cornerRadius', r, 'm')
  const most = Math.min(w, t) / 2
  if (r > most * (1 + 1e-9))
    refuse({
      name: 'cornerRadius',
      condition: `at most half the thinner side, ${most} m`,
      value: r,
      unit: 'm',
      code: 'above-maximum',
    })
  const area = w * t - (4 - Math.PI) * r ** 2
  // a corner lacks the square of side r less a quarter of a circle about its inner point, which lies a from the middle
  const lack = (a: number) =>
    ((a + r) ** 3 - a ** 3) * (r / 3) -
    ((Math.PI * r ** 2 * a ** 2) / 4 + (2 * a * r ** 3) / 3 + (Math.PI * r ** 4) / 16)
  return {
    area,
    meanSquareWidth: ((w ** 3 * t) / 12 - 4 * lack(w / 2 - r)) / area,
    meanSquareThickness: ((t ** 3 * w) / 12 - 4 * lack(t / 2 - r)) / area,
  }
}
