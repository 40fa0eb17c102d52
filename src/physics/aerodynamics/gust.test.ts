/** Checks of the prescribed gusts. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  coherentGust,
  operatingGust,
  operatingGustSize,
  operatingGusts,
  turbulenceScale,
  windBeforeGust,
} from './gust.ts'
import { normalTurbulenceIntensity } from './turbulence.ts'

// V 24 m/s, σ_1 = 0.14 (0.75 · 24 + 5.6), β 3.3, D 80 m, Λ_1 42 m
const size = operatingGustSize({ deviation: 0.14 * 23.6, diameter: 80, scale: 42, factor: 3.3 })

describe('source: iecwind-files, EOGO.wnd — gust speed over the steady 24 m/s, from 40 s on', () => {
  const rows = [
    [40.3, '-0.014'],
    [41.0, '-0.460'],
    [42.5, '-2.451'],
    [43.3, '-0.843'],
    [44.0, '2.548'],
    [45.2, '6.769'],
    [46.7, '1.484'],
    [48.0, '-2.451'],
    [50.0, '-0.065'],
  ] as const
  for (const [t, gust] of rows)
    check(`t = ${t} s`, operatingGust({ wind: 24, size, duration: 10.5 }, t - 40) - 24, gust)
  check(
    'greatest wind, from the head of the file',
    operatingGust({ wind: 24, size, duration: 10.5 }, 5.25),
    '30.777',
  )
})

describe('source: iecwind-files, ECD+R.wnd — gust speed over the steady 10 m/s, from 40 s on', () => {
  const rows = [
    [40.5, '0.092'],
    [42.7, '2.540'],
    [45.0, '7.500'],
    [47.7, '13.126'],
    [50.0, '15.000'],
  ] as const
  for (const [t, gust] of rows)
    check(`t = ${t} s`, coherentGust({ wind: 10, rise: 15, duration: 10 }, t - 40) - 10, gust)
})

describe('source: burton2001, figure 5.1 — the scale of gusts at a high hub', () => {
  check('turbulence scale, m', turbulenceScale(60), '21')
})

describe('law: a gust', () => {
  test('starts and ends at the steady wind without a jump, and is nowhere above its top or below calm', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: -5, max: 20, noNaN: true }),
        (wind, size, time) => {
          const v = operatingGust({ wind, size, duration: 10.5 }, time)
          expect(v).toBeGreaterThanOrEqual(0)
          expect(v).toBeLessThanOrEqual(wind + 0.74 * size + 1e-9)
          expect(operatingGust({ wind, size, duration: 10.5 }, 1e-3)).toBeCloseTo(wind, 6)
          expect(coherentGust({ wind, rise: size, duration: 10 }, time)).toBeLessThanOrEqual(
            wind + size + 1e-9,
          )
        },
      ),
    )
  })
  test('asked for a top has that top, its size by the turbulence of the wind it starts from', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 80, noNaN: true }),
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (top, diameter, height) => {
          for (const { factor, duration } of Object.values(operatingGusts)) {
            const scale = turbulenceScale(height)
            const { wind, size: needed } = windBeforeGust({ top, diameter, scale, factor })
            expect(operatingGust({ wind, size: needed, duration }, duration / 2)).toBeCloseTo(top, 9)
            if (wind > 0) {
              const deviation = normalTurbulenceIntensity(wind) * wind
              expect(operatingGustSize({ deviation, diameter, scale, factor })).toBeCloseTo(needed, 9)
            }
          }
        },
      ),
    )
  })
})
