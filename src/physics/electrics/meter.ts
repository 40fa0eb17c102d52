/** What a meter makes of a periodic waveform: its coupling and bandwidth, then true rms, rectified mean, mean or peak. */
import { type FourierSeries, seriesPeak, seriesRms, zeroSeries } from '../../numerics/fourier.ts'
import { seriesAbsoluteMean } from '../../numerics/fourier-absolute-mean.ts'
import { requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** A rectified mean is sine-calibrated; a peak is the largest of either sign. */
export type MeterResponse = 'true rms' | 'rectified mean' | 'mean' | 'peak'

/**
 * A waveform behind a meter's input: a coupling capacitor, and the end of its bandwidth, each of first order.
 *
 *   H(f) = (j f/fc) / (1 + j f/fc) · 1 / (1 + j f/fb)
 *
 * Holds: linear input; corners of higher order fall faster. Accuracy: exact for the first order.
 *
 * @param input.series     waveform by orders                                                   [V]
 * @param input.frequency  of order 1, > 0                                                      [Hz]
 * @param input.corner     fc  where the coupling has lost 3 dB; without one direct volts pass  [Hz]
 * @param input.bandwidth  fb  where the top has lost 3 dB; without one there is no top         [Hz]
 * @returns                the waveform that is left, by orders                                 [V]
 * @throws RangeError      a frequency not above zero
 * @source horowitz2015, section 1.7.1, high-pass and low-pass RC filters (from memory, not opened)
 * @example throughMeterInput({ series: { cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }, frequency: 30, corner: 30 }).cos[1] // 0.500
 */
export function throughMeterInput(input: {
  readonly series: FourierSeries
  readonly frequency: number
  readonly corner?: number | undefined
  readonly bandwidth?: number | undefined
}): FourierSeries {
  const { series, frequency: f, corner: fc, bandwidth: fb } = input
  requirePositive('frequency', f, 'Hz')
  if (fc !== undefined) requirePositive('corner', fc, 'Hz')
  if (fb !== undefined) requirePositive('bandwidth', fb, 'Hz')
  const left = zeroSeries(series.cos.length - 1)
  for (let h = 0; h < series.cos.length; h++) {
    const x = fc === undefined ? undefined : (h * f) / fc
    const y = fb === undefined ? 0 : (h * f) / fb
    // (x² + j x)/(1 + x²), written so that no x is too large
    const highRe = x === undefined ? 1 : x / (x + 1 / x || Number.POSITIVE_INFINITY)
    const highIm = x === undefined ? 0 : 1 / (x + 1 / x || Number.POSITIVE_INFINITY)
    const lowRe = 1 / (1 + y * y)
    const lowIm = -y / (1 + y * y)
    const re = highRe * lowRe - highIm * lowIm
    const im = highRe * lowIm + highIm * lowRe
    const a = series.cos[h]!
    const b = series.sin[h]!
    left.cos[h] = re * a + im * b
    left.sin[h] = h === 0 ? 0 : re * b - im * a
  }
  return left
}

/**
 * Corner of a coupling of first order that takes a given share of the reading at a given frequency.
 *
 *   fc = f √(1/(1 − p)² − 1)
 *
 * Holds: first order. Accuracy: exact; it turns "accurate to p down to f" into the lowest corner that may be behind it.
 *
 * @param band.lowest  f   frequency down to which the accuracy holds, > 0  [Hz]
 * @param band.loss    p   share lost there, above 0 and below 1            [1]
 * @returns            fc  where 3 dB are lost                              [Hz]
 * @throws RangeError  frequency not above zero, share outside 0…1
 * @source derived, 1/√(1 + (fc/f)²) = 1 − p
 * @example couplingCorner({ lowest: 45, loss: 0.01 }) // 6.412
 */
export function couplingCorner(band: { readonly lowest: number; readonly loss: number }): number {
  requirePositive('lowest', band.lowest, 'Hz')
  requireBetween('loss', band.loss, [1e-9, 1 - 1e-9])
  const kept = 1 - band.loss
  return (band.lowest * Math.sqrt(1 - kept * kept)) / kept
}

/**
 * What a meter with that response makes of the waveform that reaches it.
 *
 *   true rms: √(mean of u²);  rectified mean: π/(2√2) = 1.11 times the mean of |u|;  mean: ū;  peak: max |u|
 *
 * Holds: any periodic waveform within the meter's crest factor. Accuracy: exact; rounding only. A rectified mean is
 * right for a sine only: −3.8 % for a triangle, +11 % for a square wave.
 *
 * @param meter.response  how the meter responds                            [1]
 * @param meter.series    waveform behind the meter's input, by orders      [V]
 * @returns               what it makes of it, before counts and accuracy   [V]
 * @throws RangeError     never; a series of zeros gives zero
 * @source meter-waveform-table-a, readings of an average-responding meter
 * @example meterResponse({ response: 'rectified mean', series: { cos: Float64Array.of(0, 3), sin: Float64Array.of(0, 0) } }) // 2.1213
 */
export function meterResponse(meter: {
  readonly response: MeterResponse
  readonly series: FourierSeries
}): number {
  const { response, series } = meter
  switch (response) {
    case 'true rms':
      return seriesRms(series)
    case 'rectified mean':
      return (Math.PI / (2 * Math.SQRT2)) * seriesAbsoluteMean(series)
    case 'mean':
      return series.cos[0]!
    case 'peak':
      return seriesPeak(series)
  }
}

/**
 * Half of the swing with which a meter that averages over a window follows a slow waveform.
 *
 *   Δ = max |Σ u_h sin(π h f T)/(π h f T)|,  h ≥ 1
 *
 * Holds: equal weight over the window. Accuracy: exact; rounding only. A whole number of periods in the window gives 0.
 *
 * @param slow.series     waveform by orders                   [V]
 * @param slow.frequency  f  of order 1, > 0                   [Hz]
 * @param slow.window     T  that one figure averages, ≥ 0     [s]
 * @returns               Δ  either way from the mean          [V]
 * @throws RangeError     frequency not above zero; negative window
 * @source derived, moving average of a harmonic
 * @example meterFlutter({ series: { cos: Float64Array.of(2, 1), sin: Float64Array.of(0, 0) }, frequency: 1, window: 0.5 }) // 0.63662
 */
export function meterFlutter(slow: {
  readonly series: FourierSeries
  readonly frequency: number
  readonly window: number
}): number {
  const { series, frequency: f, window: T } = slow
  requirePositive('frequency', f, 'Hz')
  requireNotNegative('window', T, 's')
  const sinc = (h: number) => {
    const x = Math.PI * h * f * T
    return x === 0 ? 1 : Math.sin(x) / x
  }
  return seriesPeak({
    cos: series.cos.map((a, h) => (h === 0 ? 0 : a * sinc(h))),
    sin: series.sin.map((b, h) => (h === 0 ? 0 : b * sinc(h))),
  })
}

/**
 * Share of a source's volts that its meter leaves: the meter's own resistance draws on the source's.
 *
 *   U / U0 = R / (R + Rs)
 *
 * Holds: resistances, at the low frequencies of a generator. Accuracy: exact.
 *
 * @param pair.input   R   of the meter, > 0                         [Ω]
 * @param pair.source  Rs  of what it reads, probes included, ≥ 0    [Ω]
 * @returns            U / U0                                        [1]
 * @throws RangeError  input not above zero; negative source
 * @source bench-meter-guide, loading errors (AC volts), equation for low frequencies
 * @example meterLoading({ input: 1e6, source: 1e4 }) // 0.9901
 */
export function meterLoading(pair: { readonly input: number; readonly source: number }): number {
  requirePositive('input', pair.input, 'Ω')
  requireNotNegative('source', pair.source, 'Ω')
  return 1 / (1 + pair.source / pair.input)
}
