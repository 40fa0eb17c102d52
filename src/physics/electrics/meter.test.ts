/** Checks what meters make of waveforms against tables printed for meters, closed forms and laws. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { type FourierSeries, seriesRms, seriesScaled, seriesValue } from '../../numerics/fourier.ts'
import { couplingCorner, meterFlutter, meterLoading, meterResponse, throughMeterInput } from './meter.ts'

/** Orders of a wave from its amplitudes by order: cosines, as every wave here can be put even. */
const even = (amplitude: (h: number) => number, orders: number): FourierSeries => ({
  cos: Float64Array.from({ length: orders + 1 }, (_, h) => amplitude(h)),
  sin: new Float64Array(orders + 1),
})
const sign = (h: number) => (h % 4 === 1 ? 1 : -1)
/** Of 1 V peak. */
const sine = even((h) => (h === 1 ? 1 : 0), 1)
const square = even((h) => (h % 2 === 1 ? (sign(h) * 4) / (Math.PI * h) : 0), 1200)
const triangle = even((h) => (h % 2 === 1 ? 8 / (Math.PI * h) ** 2 : 0), 99)
const fullWave = even(
  (h) => (h === 0 ? 2 / Math.PI : h % 2 === 0 ? ((h % 4 === 0 ? -1 : 1) * 4) / Math.PI / (h * h - 1) : 0),
  200,
)
const halfWave = even((h) => (h === 1 ? 0.5 : 0.5 * fullWave.cos[h]!), 200)
/** 1 V for a share D of the time. */
const pulses = (D: number) =>
  even((h) => (h === 0 ? D : (2 * Math.sin(Math.PI * h * D)) / (Math.PI * h)), 1200)

const averaging = (series: FourierSeries) => meterResponse({ response: 'rectified mean', series })
const rms = (series: FourierSeries) => meterResponse({ response: 'true rms', series })
const error = (series: FourierSeries) => 100 * (averaging(series) / rms(series) - 1)
/** What a coupling far below the wave lets pass: all but the mean. */
const coupled = (series: FourierSeries) => throughMeterInput({ series, frequency: 1, corner: 1e-6 })

describe('source: meter-waveform-table-a, page 28 — waveforms of 1 V peak on an average-responding, sine-calibrated meter', () => {
  check('sine, rms', rms(sine), '0.707')
  check('sine, shown', averaging(sine), '0.707')
  check('square, shown', averaging(square), '1.11')
  check('square, error %', error(square), '11.0', { absolute: 0.1 }) // the series ends at order 1200
  check('triangle, rms', rms(triangle), '0.577')
  check('triangle, shown', averaging(triangle), '0.555')
  check('triangle, error %', error(triangle), '-3.8')
  check('pulses of crest factor 2, shown', averaging(pulses(1 / 4)), '0.278')
  check('pulses of crest factor 2, error %', error(pulses(1 / 4)), '-44')
  check('pulses of crest factor 10, shown', averaging(pulses(1 / 100)), '0.011')
  check('pulses of crest factor 10, error %', error(pulses(1 / 100)), '-89')
})

describe('source: meter-waveform-table-b, page 19 — waveforms of 1 V rms, alternating part only', () => {
  const toOne = (series: FourierSeries) => seriesScaled(series, 1 / rms(series))
  const full = toOne(fullWave)
  const half = toOne(halfWave)
  check('full wave, peak', meterResponse({ response: 'peak', series: full }), '1.414')
  check('full wave, true rms of the alternating part', rms(coupled(full)), '0.435')
  check('full wave, average-responding', averaging(coupled(full)), '0.421')
  check('full wave, mean', meterResponse({ response: 'mean', series: full }), '0.900')
  check('half wave, peak', meterResponse({ response: 'peak', series: half }), '2.000')
  check('half wave, true rms of the alternating part', rms(coupled(half)), '0.771')
  // the 0.764 printed for an average-responding meter on a half wave does not follow from the wave: 0.779 by hand
  check('half wave, mean', meterResponse({ response: 'mean', series: half }), '0.636', { absolute: 0.001 }) // 2/π, cut off
})

describe('agrees: a square wave through a coupling, by exponentials in time', () => {
  // between edges u = ±A e^(−t/τ), A = 2/(1 + e^(−T/2τ))
  test('rms at the corner and far below', () => {
    for (const [f, tolerance] of [
      [0.3, 4e-3],
      [1, 1e-3],
      [10, 1e-3],
    ] as const) {
      const τ = 1 / (2 * Math.PI)
      const x = 1 / (2 * f * τ)
      const A = 2 / (1 + Math.exp(-x))
      const exact = A * Math.sqrt((1 - Math.exp(-2 * x)) / (2 * x))
      const got = rms(throughMeterInput({ series: square, frequency: f, corner: 1 }))
      expect(Math.abs(got / exact - 1)).toBeLessThan(tolerance)
    }
  })
})

describe('agrees: half wave by hand', () => {
  test('mean distance from its mean', () => {
    const m = 2 / Math.PI
    const θ = Math.asin(m / 2)
    const exact = m + (2 / Math.PI) * (m * θ - 2 * (1 - Math.cos(θ)))
    const half = seriesScaled(halfWave, 1 / rms(halfWave))
    expect(averaging(coupled(half))).toBeCloseTo((Math.PI / (2 * Math.SQRT2)) * exact, 4)
  })
})

describe('law: input and response', () => {
  test('3 dB at the corner of the coupling and of the bandwidth; phase leads below, lags above', () => {
    const low = throughMeterInput({ series: sine, frequency: 7, corner: 7 })
    expect(seriesRms(low)).toBeCloseTo(0.5, 12)
    expect(low.sin[1]).toBeCloseTo(-0.5, 12)
    const high = throughMeterInput({ series: sine, frequency: 7, bandwidth: 7 })
    expect(seriesRms(high)).toBeCloseTo(0.5, 12)
    expect(high.sin[1]).toBeCloseTo(0.5, 12)
  })
  test('the corner found for a loss gives that loss', () => {
    for (const loss of [1e-4, 0.01, 0.3]) {
      const corner = couplingCorner({ lowest: 45, loss })
      expect(seriesRms(throughMeterInput({ series: sine, frequency: 45, corner }))).toBeCloseTo(
        (1 - loss) / Math.SQRT2,
        12,
      )
    }
  })
  test('any wave: finite at any frequency, rms below what came, mean ≤ rms ≤ peak', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 2, maxLength: 9 }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (list, exponent) => {
          const series = even((h) => list[h]!, list.length - 1)
          const left = throughMeterInput({ series, frequency: 10 ** exponent, corner: 5, bandwidth: 1e4 })
          // squares of less than 1e-160 are nothing in double precision
          expect(left.cos[0]).toBe(0)
          expect(seriesRms(left)).toBeLessThanOrEqual(seriesRms(series) * (1 + 1e-12) + 1e-150)
          const of = (response: Parameters<typeof meterResponse>[0]['response']) =>
            meterResponse({ response, series })
          expect(Math.abs(of('mean'))).toBeLessThanOrEqual(of('true rms') * (1 + 1e-12) + 1e-150)
          expect(of('rectified mean')).toBeLessThanOrEqual(1.1108 * of('true rms') + 1e-12)
          expect(of('true rms')).toBeLessThanOrEqual(of('peak') * (1 + 1e-9) + 1e-150)
        },
      ),
      { numRuns: 60 },
    )
  })
  test('flutter: all of the swing in no window, none in a whole period; against a moving average in time', () => {
    const flutter = (window: number) => meterFlutter({ series: triangle, frequency: 2, window })
    expect(flutter(0)).toBeCloseTo(1, 2)
    expect(flutter(0.5)).toBeLessThan(1e-12)
    const steps = 500
    let most = 0
    for (let start = 0; start < 200; start++) {
      let mean = 0
      for (let k = 0; k < steps; k++)
        mean += seriesValue(triangle, 2 * Math.PI * 2 * (start / 400 + (0.15 * (k + 0.5)) / steps)) / steps
      most = Math.max(most, Math.abs(mean))
    }
    expect(flutter(0.15)).toBeCloseTo(most, 3)
  })
  test('loading: half at equal resistances, nothing lost without a source’s own', () => {
    expect(meterLoading({ input: 1e6, source: 1e6 })).toBe(0.5)
    expect(meterLoading({ input: 1e-3, source: 0 })).toBe(1)
  })
})

describe('source: bench-meter-guide, loading errors — −Rs/(Rs + 1 MΩ)', () => {
  check('10 kΩ, per cent', 100 * (meterLoading({ input: 1e6, source: 1e4 }) - 1), '-0.990')
})
