/** Eddy loss and drag of a standing metal plate that a row of alternating magnets passes. */
import { refuse, requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

const μ0 = 4e-7 * Math.PI

/**
 * Speed at which a thin sheet brakes most: below it the resistance of the sheet limits the current, above it the
 * sheet's own field keeps the magnets' out.
 *
 *   w = 2 ρ / (μ0 t)
 *
 * Holds: sheet thin against skin depth and pole pitch, no iron near. Accuracy: exact there.
 *
 * @param sheet.resistivity  ρ  [Ω·m]
 * @param sheet.thickness    t  [m]
 * @returns                  w  [m/s]
 * @throws RangeError        a value not above zero
 * @source reitz1970, characteristic velocity of a conducting sheet (from memory, not opened)
 * @example sheetSpeedOfMostDrag({ resistivity: 2.8264e-8, thickness: 3e-3 }) // 14.99
 */
export function sheetSpeedOfMostDrag(sheet: {
  readonly resistivity: number
  readonly thickness: number
}): number {
  requirePositive('resistivity', sheet.resistivity, 'Ω·m')
  requirePositive('thickness', sheet.thickness, 'm')
  return (2 * sheet.resistivity) / (μ0 * sheet.thickness)
}

type Complex = readonly [re: number, im: number]
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c]
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const size = c * c + d * d
  return [(a * c + b * d) / size, (b * c - a * d) / size]
}
function root([a, b]: Complex): Complex {
  const size = Math.hypot(a, b)
  const re = Math.sqrt((size + a) / 2)
  return [re, b / (2 * re)]
}
function tanh([a, b]: Complex): Complex {
  if (a > 20) return [1, 0]
  const size = Math.cosh(2 * a) + Math.cos(2 * b)
  return [Math.sinh(2 * a) / size, Math.sin(2 * b) / size]
}

/**
 * Eddy loss per area of a plate under a field that travels along it as a sine.
 *
 *   P/A = (2 v/μ0) B² Im Y/|1 + Y|²,  Y = β (1 + β T)/(β + T),  T = tanh(γ t),
 *   γ² = k² + j k v μ0 μr/ρ,  β = γ/(μr k)
 *
 * Holds: wide flat plate in air, source on one side of it, steel not saturated. Accuracy: exact there, all thicknesses and
 * speeds; for a thin sheet it is t v² B²/(2 ρ (1 + (v/w)²)). Iron behind the magnets or beyond the plate strengthens the
 * plate's own field: at high speed up to half as much again or less by half.
 *
 * @param plate.speed                v  of the wave along the plate, > 0                            [m/s]
 * @param plate.fluxDensity          B  peak, normal to the plate, on the face towards the source    [T]
 * @param plate.waveNumber           k  π over the pole pitch for the fundamental, > 0               [1/m]
 * @param plate.thickness            t  > 0                                                          [m]
 * @param plate.resistivity          ρ  > 0                                                          [Ω·m]
 * @param plate.relativePermeability μr at least 1                                                   [1]
 * @returns                          P/A; the drag per area is this over v                           [W/m²]
 * @throws RangeError                a value not above zero; a permeability below 1; a negative field
 * @source derived, diffusion equation in a slab between two half spaces; its thin limit is that of reitz1970 (from memory, not opened)
 * @example movingFieldPlateLoss({ speed: 15, fluxDensity: 0.25, waveNumber: Math.PI / 0.03, thickness: 1e-3, resistivity: 2.8264e-8, relativePermeability: 1 }) // 203366
 */
export function movingFieldPlateLoss(plate: {
  readonly speed: number
  readonly fluxDensity: number
  readonly waveNumber: number
  readonly thickness: number
  readonly resistivity: number
  readonly relativePermeability: number
}): number {
  const { speed: v, fluxDensity: B, waveNumber: k, thickness: t, resistivity: ρ } = plate
  const { relativePermeability: μr } = plate
  requirePositive('speed', v, 'm/s')
  requireNotNegative('fluxDensity', B, 'T')
  requirePositive('waveNumber', k, '1/m')
  requirePositive('thickness', t, 'm')
  requirePositive('resistivity', ρ, 'Ω·m')
  requireBetween('relativePermeability', μr, [1, 1e6])
  // everything over k: γ/k = √(1 + j μ0 μr v/(ρ k))
  const γ = root([1, (μ0 * μr * v) / (ρ * k)])
  const β: Complex = [γ[0] / μr, γ[1] / μr]
  const T = tanh([γ[0] * k * t, γ[1] * k * t])
  const βT = times(β, T)
  const Y = times(β, over([1 + βT[0], βT[1]], [β[0] + T[0], β[1] + T[1]]))
  return ((2 * v) / μ0) * B * B * (Y[1] / ((1 + Y[0]) ** 2 + Y[1] ** 2))
}

/**
 * Share of the loss that is left of it where the current must turn round within the plate.
 *
 *   K = 1 − tanh(a)/(a (1 + tanh(a) tanh(k h))),  a = k L/2
 *
 * Holds: thin sheet, resistance-limited, field uniform over L and none beyond. Accuracy: exact there; with a field that
 * fades out beyond the magnets within some tenths of the part lost.
 *
 * @param sheet.waveNumber  k  > 0                                            [1/m]
 * @param sheet.length      L  over which there is a field, across the way, > 0 [m]
 * @param sheet.overhang    h  of the sheet past it, at either end, ≥ 0       [m]
 * @returns                 K  0 to 1                                         [1]
 * @throws RangeError       a value out of its sign
 * @source russell-norsworthy1958, end factor of a sheet with and without overhang (from memory, as quoted by others, not opened)
 * @example sheetEndShare({ waveNumber: Math.PI / 0.03, length: 0.03, overhang: 0 }) // 0.4161
 */
export function sheetEndShare(sheet: {
  readonly waveNumber: number
  readonly length: number
  readonly overhang: number
}): number {
  const { waveNumber: k, length: L, overhang: h } = sheet
  requirePositive('waveNumber', k, '1/m')
  requirePositive('length', L, 'm')
  requireNotNegative('overhang', h, 'm')
  const a = (k * L) / 2
  const share = 1 - Math.tanh(a) / (a * (1 + Math.tanh(a) * Math.tanh(k * h)))
  if (!(share >= -1e-9))
    refuse({
      name: 'k L',
      condition: 'large enough to tell from nothing',
      value: k * L,
      code: 'below-minimum',
    })
  // a²/3 for a short field without overhang, where the difference above loses its digits
  return Math.max(share, 0)
}
