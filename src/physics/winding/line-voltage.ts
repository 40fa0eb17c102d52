/** From phases to lines: star and delta, and the star that stands for either. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { seriesPeak, seriesRms, seriesScaled, seriesSum } from '../../numerics/fourier.ts'
import { refuse, requireFinite, requireNotNegative } from '../../refusal/require.ts'

export interface LineVoltage {
  /** Between lines 0–1, 1–2, 2–0 [V]. */
  readonly emf: readonly [FourierSeries, FourierSeries, FourierSeries]
  readonly rms: readonly [number, number, number]
  /** Of the whole waveform, all harmonics together [V]. */
  readonly peak: readonly [number, number, number]
}

function requireThree(name: string, list: ArrayLike<unknown>): void {
  if (list.length !== 3) refuse({ name, condition: '3 long', value: list.length, code: 'wrong-length' })
}

function described(emf: readonly [FourierSeries, FourierSeries, FourierSeries]): LineVoltage {
  const [a, b, c] = emf
  return {
    emf,
    rms: [seriesRms(a), seriesRms(b), seriesRms(c)],
    peak: [seriesPeak(a), seriesPeak(b), seriesPeak(c)],
  }
}

/**
 * Open-circuit volts between the lines of a star.
 *
 *   u₀₁ = e₀ − e₁,  u₁₂ = e₁ − e₂,  u₂₀ = e₂ − e₀
 *
 * Holds: three phases joined at one end, any waveforms. Accuracy: exact; peak by fine sampling, 1e-5.
 *
 * @param emf        e  of the three phases                 [V]
 * @returns          line-to-line series, rms, peak         [V]
 * @throws RangeError  not three phases
 * @source derived, from Kirchhoff's voltage law
 * @example starLineVoltage([0, 1, 2].map((k) => ({ cos: Float64Array.of(0, Math.cos((2 * Math.PI * k) / 3)), sin: Float64Array.of(0, Math.sin((2 * Math.PI * k) / 3)) }))).peak[0] // 1.7321
 */
export function starLineVoltage(emf: readonly FourierSeries[]): LineVoltage {
  requireThree('emf', emf)
  const [a, b, c] = emf as readonly [FourierSeries, FourierSeries, FourierSeries]
  const less = (x: FourierSeries, y: FourierSeries) => seriesSum([x, seriesScaled(y, -1)])
  return described([less(a, b), less(b, c), less(c, a)])
}

/**
 * Volts between the lines of a delta: those of its phases, phase k between line k and line k + 1.
 *
 *   u₀₁ = u₀,  u₁₂ = u₁,  u₂₀ = u₂
 *
 * Holds: no load; give the terminal volts of `deltaCirculation`, or the EMFs where the circulating drop is
 * small. Accuracy: exact; peak by fine sampling, 1e-5.
 *
 * @param phaseVoltage  u  of the three phases                [V]
 * @returns             line-to-line series, rms, peak        [V]
 * @throws RangeError   not three phases
 * @source derived, from Kirchhoff's voltage law
 * @example deltaLineVoltage([0, 1, 2].map(() => ({ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }))).peak[0] // 1
 */
export function deltaLineVoltage(phaseVoltage: readonly FourierSeries[]): LineVoltage {
  requireThree('phaseVoltage', phaseVoltage)
  const [a, b, c] = phaseVoltage as readonly [FourierSeries, FourierSeries, FourierSeries]
  return described([a, b, c])
}

export interface ThreePhases {
  readonly emf: readonly FourierSeries[]
  /** Of each phase [Ω]. */
  readonly resistance: readonly number[]
  /** Phase × phase [H]. */
  readonly inductance: readonly (readonly number[])[]
}

/**
 * The star that gives the same line volts and currents as a delta.
 *
 *   e₀ = (e₀₁ − e₂₀)/3 …;  R = r₀₁ r₂₀/(r₀₁ + r₁₂ + r₂₀) …;  L = Tᵀ l T + c,  T = ⅓ (1, −1, 0; 0, 1, −1; −1, 0, 1)
 *
 * Holds: three alike phases, sums of line currents zero. The common constant c makes the mean of the rows of L
 * zero apart from a diagonal of (L − M)/3. Unlike phases: the resistances are exact at standstill, EMF and L
 * leave out the coupling to the circulating current. Accuracy: exact for alike phases.
 *
 * @param delta      e, r, l  of the phases 0–1, 1–2, 2–0              [V], [Ω], [H]
 * @returns          e, R, L  of the phases from the neutral to line 0, 1, 2 [V], [Ω], [H]
 * @throws RangeError  not three phases; negative resistance or all of them zero
 * @source derived, from the invariance of power; Kennelly's star for the resistances
 * @example starOfDelta({ emf: [0, 1, 2].map(() => ({ cos: Float64Array.of(0, 0), sin: Float64Array.of(0, 0) })), resistance: [3, 3, 3], inductance: [[3, 0, 0], [0, 3, 0], [0, 0, 3]] }).resistance[0] // 1
 */
export function starOfDelta(delta: ThreePhases): ThreePhases {
  const { emf, resistance, inductance } = delta
  requireThree('emf', emf)
  requireThree('resistance', resistance)
  requireThree('inductance', inductance)
  for (const row of inductance) {
    requireThree('inductance row', row)
    for (const value of row) requireFinite('inductance', value, 'H')
  }
  let total = 0
  for (const R of resistance) {
    requireNotNegative('resistance', R, 'Ω')
    total += R
  }
  if (total === 0)
    refuse({ name: 'resistance', condition: 'above zero', value: 0, unit: 'Ω', code: 'below-minimum' })
  const before = (k: number) => (k + 2) % 3
  const linked = (k: number, l: number) =>
    (inductance[k][l] -
      inductance[before(k)][l] -
      inductance[k][before(l)] +
      inductance[before(k)][before(l)]) /
    9
  // (1/9 of the trace of TᵀlT is what alike phases need on every entry to become a diagonal of (L − M)/3)
  const shift = (linked(0, 0) + linked(1, 1) + linked(2, 2)) / 6
  return {
    emf: [0, 1, 2].map((k) => seriesScaled(seriesSum([emf[k], seriesScaled(emf[before(k)], -1)]), 1 / 3)),
    resistance: [0, 1, 2].map((k) => (resistance[k] * resistance[before(k)]) / total),
    inductance: [0, 1, 2].map((k) => [0, 1, 2].map((l) => linked(k, l) + shift)),
  }
}
