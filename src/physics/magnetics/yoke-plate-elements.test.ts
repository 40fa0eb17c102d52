/** Checks of the saturable plate against finite elements. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { idealHarmonic, type Kind, machines } from '../../../test/reference/yoke-plate/machine.ts'
import { type YokeArrangement, yokePlate, yokeThicknessRange } from './yoke-plate.ts'

interface Run {
  readonly kind: Kind
  readonly thickness_mm: number
  readonly innerRadius_mm: number
  readonly outerRadius_mm: number
  readonly plainThickness_mm?: number
  readonly fundamental_T: number
  readonly third_T: number
  readonly window_Wb: number
  readonly sectionFluxDensity_T: number
  readonly plainSectionFluxDensity_T?: number
  readonly peakFluxDensity_T: number
  readonly potential_A: number
  readonly backFlux_Wb: number
  readonly backFluxDensity_T: number
}
const file = new URL('../../../test/reference/yoke-plate/plate-sector.json', import.meta.url)
const { runs } = JSON.parse(readFileSync(file, 'utf8')) as { runs: Record<string, Run> }

/** Flux through the window of 40 × 47 mm by the whole field, each order with its gain. */
function windowFlux(fluxDensity: YokeArrangement['fluxDensity'], gains: readonly number[]): number {
  const points: number[] = []
  const radii: number[] = []
  const angles: number[] = []
  for (let i = 0; i < 20; i++)
    for (let j = 0; j < 47; j++) {
      const [x, y] = [0.071 + i * 2e-3, (j + 0.5) * 5e-4]
      points.push(x, y, 0.018)
      radii.push(Math.hypot(x, y))
      angles.push(Math.atan2(y, x))
    }
  const B = fluxDensity(Float64Array.from(points))
  let flux = 0
  for (let i = 0; i < radii.length; i++) flux += 2 * B[3 * i + 2]! * 1e-6
  // What the plates take, order by order, at its own radius
  const samples = 24
  const perRadius = 24
  const table = Array.from({ length: perRadius + 1 }, (_, k) => {
    const r = 0.07 + (0.045 * k) / perRadius
    const at = new Float64Array(3 * samples)
    for (let q = 0; q < samples; q++) {
      const θ = ((q + 0.5) * Math.PI) / (12 * samples)
      at.set([r * Math.cos(θ), r * Math.sin(θ), 0.018], 3 * q)
    }
    const field = fluxDensity(at)
    return gains.map((_, o) => {
      let sum = 0
      for (let q = 0; q < samples; q++)
        sum += field[3 * q + 2]! * Math.cos(((2 * o + 1) * (q + 0.5) * Math.PI) / (2 * samples))
      return (2 * sum) / samples
    })
  })
  radii.forEach((r, i) => {
    const k = Math.min(perRadius - 1, Math.floor(((r - 0.07) / 0.045) * perRadius))
    const t = ((r - 0.07) / 0.045) * perRadius - k
    gains.forEach((gain, o) => {
      const B = table[k]![o]! * (1 - t) + table[k + 1]![o]! * t
      flux += 2 * (gain - 1) * B * Math.cos(6 * (2 * o + 1) * angles[i]!) * 1e-6
    })
  })
  return flux
}

describe('agrees: three-dimensional non-linear finite elements (test/reference/yoke-plate/plate-sector)', () => {
  for (const [tag, run] of Object.entries(runs)) {
    if (tag.startsWith('linear')) continue
    const { arrangement, fluxDensity } = machines[run.kind]
    const state = yokePlate(
      arrangement(
        run.thickness_mm / 1000,
        [run.innerRadius_mm / 1000, run.outerRadius_mm / 1000],
        (run.plainThickness_mm ?? 4) / 1000,
      ),
    )
    const off = (value: number, wanted: number) => Math.abs(value / wanted - 1)
    describe(tag, () => {
      test('fundamental of the gap at the mean radius within 1.5 %', () => {
        expect(off(state.gain * idealHarmonic(fluxDensity, 1), run.fundamental_T)).toBeLessThan(0.015)
      })
      test('flux through a pole’s window within 1.5 %', () => {
        const gains = state.harmonics.map((h) => h.gain)
        expect(off(windowFlux(fluxDensity, gains), run.window_Wb)).toBeLessThan(0.015)
      })
      test('mean over the section between poles within 2 %', () => {
        expect(off(state.plate.sectionFluxDensity, run.sectionFluxDensity_T)).toBeLessThan(0.02)
      })
      test('largest flux density in the plate within 10 %', () => {
        expect(off(state.plate.peakFluxDensity, run.peakFluxDensity_T)).toBeLessThan(0.1)
      })
      test('potential within 16 % of it and 5 A', () => {
        const miss = Math.abs(state.plate.magnetomotiveForce - run.potential_A)
        expect(miss).toBeLessThan(0.16 * run.potential_A + 5)
      })
      test('flux out of the back within 20 % of it and 1 µWb', () => {
        expect(Math.abs(state.plate.backFlux - run.backFlux_Wb)).toBeLessThan(0.2 * run.backFlux_Wb + 1e-6)
      })
      test('flux density just behind, peaked as it is, within 40 % of it and 5 mT', () => {
        const miss = Math.abs(state.plate.backFluxDensity - run.backFluxDensity_T)
        expect(miss).toBeLessThan(0.4 * run.backFluxDensity_T + 5e-3)
      })
      if (run.plainSectionFluxDensity_T !== undefined)
        test('mean over the section of the plain plate opposite within 3 %', () => {
          expect(off(state.opposite!.sectionFluxDensity, run.plainSectionFluxDensity_T!)).toBeLessThan(0.03)
        })
    })
  }
  test('what the plates take from the fundamental: 2 mm against 8 mm within 0.5 %', () => {
    const share = (tag: string) => {
      const run = runs[tag]!
      return yokePlate(machines.two.arrangement(run.thickness_mm / 1000)).gain
    }
    const wanted = runs['two-2-coarse']!.fundamental_T / runs['two-8-coarse']!.fundamental_T
    expect(Math.abs(share('two-2-coarse') / share('two-8-coarse') / wanted - 1)).toBeLessThan(5e-3)
  })
  test('law: the range of thickness proved is the range of these runs', () => {
    const pitch = (Math.PI * 90) / 6
    const all = Object.values(runs).map((run) => run.thickness_mm / pitch)
    expect(yokeThicknessRange[0]).toBeGreaterThanOrEqual(Math.min(...all) - 0.003)
    expect(yokeThicknessRange[1]).toBeLessThanOrEqual(Math.max(...all) + 0.003)
  })
})
