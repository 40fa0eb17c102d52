/** Checks plates and bars in a moving field against finite elements, against thin limits, and by energy. */
import { describe, expect, test } from 'vitest'
import finite from '../../../test/reference/eddy/eddy.json' with { type: 'json' }
import { fourierSeries, harmonicAmplitude } from '../../numerics/fourier.ts'
import { acrossBarEddyLoss, alongBarEddyLoss } from './eddy-bar.ts'
import { strandEddyLoss, strandSkinShare } from './eddy-loss.ts'
import { movingFieldPlateLoss, sheetEndShare, sheetSpeedOfMostDrag } from './eddy-plate.ts'

const aluminium = 2.8264e-8
const pitch = 0.03

describe('agrees: finite elements, a plate past a moving row of magnets', () => {
  for (const { thickness_mm, By_T, runs } of finite.plates) {
    // half a period is given; the other half has the opposite sign
    const half = By_T.slice(0, -1)
    const field = fourierSeries([...half, ...half.map((B) => -B)], 19)
    for (const { speed_m_per_s: speed, lossPerLength_W_per_m, dragPerLength_N_per_m } of runs)
      test(`${thickness_mm} mm at ${speed} m/s`, () => {
        let loss = 0
        for (let h = 1; h <= 19; h += 2)
          loss +=
            pitch *
            movingFieldPlateLoss({
              speed,
              fluxDensity: harmonicAmplitude(field, h),
              waveNumber: (h * Math.PI) / pitch,
              thickness: thickness_mm / 1000,
              resistivity: aluminium,
              relativePermeability: 1,
            })
        expect(loss / lossPerLength_W_per_m.fine).toBeCloseTo(1, 3)
        // energy: what brakes the magnets becomes heat
        expect((dragPerLength_N_per_m * speed) / loss).toBeCloseTo(1, 3)
      })
  }
})

describe('law: plates', () => {
  const plate = {
    speed: 1,
    fluxDensity: 0.3,
    waveNumber: Math.PI / pitch,
    thickness: 1e-5,
    resistivity: aluminium,
    relativePermeability: 1,
  }
  test('thin sheet: t v² B²/(2 ρ (1 + (v/w)²)), most drag at w', () => {
    const w = sheetSpeedOfMostDrag(plate)
    const drag = (speed: number) => movingFieldPlateLoss({ ...plate, speed }) / speed
    for (const speed of [0.01 * w, w, 4 * w])
      expect(
        drag(speed) /
          ((plate.thickness * speed * plate.fluxDensity ** 2) / (2 * aluminium) / (1 + (speed / w) ** 2)),
      ).toBeCloseTo(1, 2)
    expect(drag(w)).toBeGreaterThan(drag(0.9 * w))
    expect(drag(w)).toBeGreaterThan(drag(1.1 * w))
  })
  test('slow: loss goes with v² and B², and a plate thicker than the field reaches adds no more', () => {
    const slow = { ...plate, speed: 1e-3, thickness: 2e-3 }
    const one = movingFieldPlateLoss(slow)
    expect(movingFieldPlateLoss({ ...slow, speed: 2e-3 }) / one).toBeCloseTo(4, 5)
    expect(movingFieldPlateLoss({ ...slow, fluxDensity: 0.6 }) / one).toBeCloseTo(4, 10)
    const deep = movingFieldPlateLoss({ ...slow, thickness: 1 })
    expect(movingFieldPlateLoss({ ...slow, thickness: 2 }) / deep).toBeCloseTo(1, 10)
  })
  test('finite and not negative over wide ranges', () => {
    for (const speed of [1e-6, 1, 1e4])
      for (const thickness of [1e-7, 1e-3, 10])
        for (const relativePermeability of [1, 500])
          for (const resistivity of [1e-8, 1]) {
            const loss = movingFieldPlateLoss({
              ...plate,
              speed,
              thickness,
              relativePermeability,
              resistivity,
            })
            expect(Number.isFinite(loss)).toBe(true)
            expect(loss).toBeGreaterThanOrEqual(0)
          }
    expect(() => movingFieldPlateLoss({ ...plate, speed: 0 })).toThrow('below-minimum')
  })
})

/** Loss of a sheet under B sin(kx) over |z| ≤ L/2, by differences: f'' − k² f = −k B there, current f, f = 0 at the edges. */
function endShareByDifferences(k: number, L: number, h: number): number {
  const half = L / 2 + h
  const n = 4000
  const step = half / n
  // stream function amplitude f on 0…half, even: Thomas's elimination
  const b = new Float64Array(n)
  const d = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const z = i * step
    const inside = z < L / 2 - step / 2 ? 1 : z < L / 2 + step / 2 ? 0.5 : 0
    d[i] = k * k * step * step * inside
    b[i] = 2 + k * k * step * step
  }
  const upper = (i: number) => (i === 0 ? -2 : -1)
  for (let i = 1; i < n; i++) {
    const m = -1 / b[i - 1]!
    b[i]! -= m * upper(i - 1)
    d[i]! -= m * d[i - 1]!
  }
  let next = 0
  let work = 0
  for (let i = n - 1; i >= 0; i--) {
    const f = (d[i]! - upper(i) * next) / b[i]!
    next = f
    const z = i * step
    const inside = z < L / 2 - step / 2 ? 1 : z < L / 2 + step / 2 ? 0.5 : 0
    work += f * inside * step * (i === 0 ? 0.5 : 1)
  }
  return work / (L / 2)
}

describe('agrees: the end factor against a stream function by differences', () => {
  for (const [L, h] of [
    [0.02, 0],
    [0.03, 0.005],
    [0.06, 0.03],
  ] as const)
    test(`L ${L} m, overhang ${h} m`, () => {
      const k = Math.PI / pitch
      expect(sheetEndShare({ waveNumber: k, length: L, overhang: h })).toBeCloseTo(
        endShareByDifferences(k, L, h),
        2,
      )
    })
})

describe('law: the end factor', () => {
  test('rises with the overhang and with the length, to one', () => {
    const at = (length: number, overhang: number) => sheetEndShare({ waveNumber: 100, length, overhang })
    expect(at(0.03, 0.01)).toBeGreaterThan(at(0.03, 0))
    expect(at(0.06, 0)).toBeGreaterThan(at(0.03, 0))
    expect(at(1000, 0)).toBeCloseTo(1, 4)
    expect(at(1e-9, 0)).toBeGreaterThanOrEqual(0)
  })
})

describe('agrees: a non-magnetic bar is a thick strand', () => {
  test('field across it', () => {
    for (const frequency of [10, 1000, 20000]) {
      const bar = {
        angularFrequency: 2 * Math.PI * frequency,
        fluxDensity: 0.5,
        diameter: 4e-3,
        resistivity: 1 / 58e6,
        relativePermeability: 1,
      }
      const depth = Math.sqrt((2 * bar.resistivity) / (bar.angularFrequency * 4e-7 * Math.PI))
      const strand = strandEddyLoss(bar) * strandSkinShare(bar.diameter / depth)
      expect(acrossBarEddyLoss(bar) / strand).toBeCloseTo(1, 8)
    }
  })
})

describe('agrees: finite elements, a steel bar across a uniform field', () => {
  for (const { frequency_Hz, lossPerVolume_W_per_m3 } of finite.steel)
    test(`${frequency_Hz} Hz`, () => {
      const bar = {
        angularFrequency: 2 * Math.PI * frequency_Hz,
        fluxDensity: 1,
        diameter: 2e-3,
        resistivity: 1.4e-7,
        relativePermeability: 200,
      }
      expect(acrossBarEddyLoss(bar) / lossPerVolume_W_per_m3.fine).toBeCloseTo(1, 2)
    })
})

describe('law: bars', () => {
  const bar = {
    angularFrequency: 200,
    fluxDensity: 0.5,
    diameter: 1e-3,
    resistivity: 1 / 58e6,
    relativePermeability: 1,
  }
  test('along a thin bar half of across it: ω² B² d²/(64 ρ)', () => {
    expect(alongBarEddyLoss(bar) / ((200 ** 2 * 0.25 * 1e-6 * 58e6) / 64)).toBeCloseTo(1, 5)
    expect(acrossBarEddyLoss(bar) / alongBarEddyLoss(bar)).toBeCloseTo(2, 5)
  })
  test('both finite and positive over wide ranges', () => {
    for (const angularFrequency of [1e-3, 1e3, 1e8])
      for (const relativePermeability of [1, 1000])
        for (const loss of [acrossBarEddyLoss, alongBarEddyLoss]) {
          const watts = loss({ ...bar, angularFrequency, relativePermeability })
          expect(Number.isFinite(watts)).toBe(true)
          expect(watts).toBeGreaterThanOrEqual(0)
        }
    expect(() => alongBarEddyLoss({ ...bar, relativePermeability: 0.5 })).toThrow('below-minimum')
  })
})
