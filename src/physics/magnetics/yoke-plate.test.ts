/** Checks of the saturable plate: closed forms, balances, limits. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { idealHarmonic, machines, ring, steel } from '../../../test/reference/yoke-plate/machine.ts'
import { bhCurve } from './bh-curve.ts'
import { blockFluxDensity } from './block-magnet.ts'
import { discMagnets } from './magnet-ring.ts'
import { type YokeArrangement, yokePlate } from './yoke-plate.ts'
import { blockFootprint } from './yoke-plate-source.ts'

const μ0 = 4e-7 * Math.PI

/** Straight B–H of relative permeability `μr`. */
const straight = (μr: number) =>
  bhCurve({ fluxDensity: [0, 500, 1000], fieldStrength: [0, 500 / (μr * μ0), 1000 / (μr * μ0)] })

/** A smooth ring of many poles: nearly a plane wave of wave number m/r. */
const smooth = (polePairs: number, amplitude: number, width: number) => (points: Float64Array) =>
  points.map((_, i) => {
    if (i % 3 !== 2) return 0
    const [x, y] = [points[i - 2]!, points[i - 1]!]
    return (
      amplitude *
      Math.exp(-(((Math.hypot(x, y) - 0.1) / width) ** 2)) *
      Math.cos(polePairs * Math.atan2(y, x))
    )
  })
const bare = {
  innerRadius: 0.06,
  outerRadius: 0.14,
  thickness: 0.002,
  polarization: 0,
  recoilPermeability: 1,
  angles: () => [0, 0] as const,
}

describe('agrees: closed form of a plane wave over an unbounded plate of constant permeability', () => {
  const p = 60
  const k = p / 0.1
  const D = 0.004
  const [t, μr] = [0.0005, 40]
  const B0 = 0.3
  const winding = { height: 0.001, innerRadius: 0.0995, outerRadius: 0.1005 }
  const plate = { thickness: t, innerRadius: 0.05, outerRadius: 0.16 }
  const stiff = t * μr * μ0 * k * k
  const ways = [
    ['none', μ0 * k, Math.exp(-k * 0.001)],
    [
      'mirrored',
      μ0 * k * (Math.cosh((k * D) / 2) / Math.sinh((k * D) / 2)),
      Math.cosh(k * 0.001) / Math.sinh((k * D) / 2),
    ],
  ] as const
  test.each(ways)('%s', (opposite, gap, reaching) => {
    const state = yokePlate({
      polePairs: p,
      steel: straight(μr),
      plate,
      opposite,
      planeDistance: D,
      fluxDensity: smooth(p, B0, 0.02),
      magnets: { ...bare, innerRadius: 0.09, outerRadius: 0.11 },
      winding,
    })
    const φ = B0 / (stiff + μ0 * k + gap)
    // Radial width and rings of a tenth of a pole pitch: 3 % of the change
    expect(Math.abs((1 - state.gain) / ((μ0 * k * φ * reaching) / B0) - 1)).toBeLessThan(0.03)
    expect(Math.abs(state.plate.magnetomotiveForce / φ - 1)).toBeLessThan(0.03)
  })
  test('two plates of their own potentials, equal and opposite sources: as one mirrored', () => {
    const source = smooth(p, B0, 0.02)
    const common = {
      polePairs: p,
      steel: straight(μr),
      plate,
      planeDistance: D,
      magnets: { ...bare, innerRadius: 0.09, outerRadius: 0.11 },
      winding,
    }
    // The same axial field enters the one plate and leaves the other
    const pair = yokePlate({ ...common, opposite: plate, fluxDensity: source })
    const one = yokePlate({ ...common, opposite: 'mirrored', fluxDensity: source })
    expect(Math.abs(pair.gain - one.gain)).toBeLessThan(1e-4)
    expect(Math.abs(pair.opposite!.sectionFluxDensity / one.plate.sectionFluxDensity - 1)).toBeLessThan(1e-3)
    expect(Math.abs(pair.plate.sectionFluxDensity / one.plate.sectionFluxDensity - 1)).toBeLessThan(1e-3)
  })
})

describe('law: flux is neither made nor lost', () => {
  test('easy steel carries the half pole’s whole flux: ∫B dA between pole middle and pole end', () => {
    const p = 6
    const state = yokePlate({
      polePairs: p,
      steel: straight(1e6),
      plate: { thickness: 0.01, innerRadius: 0.03, outerRadius: 0.3 },
      opposite: 'none',
      planeDistance: 0,
      fluxDensity: smooth(p, 0.2, 0.015),
      magnets: bare,
      winding: { height: 0.01, innerRadius: 0.08, outerRadius: 0.12 },
    })
    // ∫ exp(−((r − 0.1)/w)²) r dr = 0.1 w √π, and ∫ cos pθ dθ = 1/p
    const flux = (0.2 * 0.1 * 0.015 * Math.sqrt(Math.PI)) / p
    expect(Math.abs((state.plate.sectionFluxDensity * 0.01 * 0.27) / flux - 1)).toBeLessThan(3e-3)
  })
  test('the balance and the steel’s own B along θ say the same, saturated too', () => {
    for (const thickness of [0.002, 0.003, 0.008]) {
      const { plate } = yokePlate(machines.two.arrangement(thickness))
      const { radius, fluxDensity } = plate.map
      const between = fluxDensity[fluxDensity.length - 1]!
      // Rings lie at the middles of equal steps of ln r between the rims, near enough
      let sum = 0
      let width = 0
      radius.forEach((r, j) => {
        sum += between[j]! * r
        width += r
      })
      // Five orders of cosines at their steepest end: 6 %
      expect(Math.abs(sum / width / plate.sectionFluxDensity - 1)).toBeLessThan(0.06)
    }
  })
})

describe('law: limits', () => {
  test('a thick and wide plate is ideal but for its permeability: gain 1 within 0.2 %, nothing behind', () => {
    for (const kind of ['two', 'plain', 'single'] as const) {
      const state = yokePlate(machines[kind].arrangement(0.02, [0.02, 0.3], 0.02))
      expect(Math.abs(state.gain - 1)).toBeLessThan(2e-3)
      expect(state.plate.backFluxDensity).toBeLessThan(2e-3)
      expect(state.plate.pastKnee).toBe(false)
    }
  })
  test('a thinner plate never raises the field and lets more out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('two', 'plain', 'single'),
        fc.double({ min: 5e-4, max: 0.012, noNaN: true }),
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        (kind, thickness, share) => {
          const thick = yokePlate(machines[kind].arrangement(thickness))
          const thin = yokePlate(machines[kind].arrangement(thickness * share))
          expect(thin.gain).toBeLessThanOrEqual(thick.gain + 1e-6)
          expect(thin.plate.magnetomotiveForce).toBeGreaterThanOrEqual(thick.plate.magnetomotiveForce * 0.999)
        },
      ),
      { numRuns: 25 },
    )
  })
  test('almost no plate: the field of the magnets in free air', () => {
    const { arrangement } = machines.single
    const state = yokePlate(arrangement(1e-7, [0.05, 0.14]))
    const { polarization } = arrangement(1).magnets
    const free = discMagnets({ ...ring, height: 0.005, polarization })
    const field = (points: Float64Array) => blockFluxDensity(free, points)
    const wanted = idealHarmonic(field, 1)
    const got = idealHarmonic(machines.single.fluxDensity, 1) * state.gain
    // The gain is that of the winding's whole width; recoil and rings: 3 %
    expect(Math.abs(got / wanted - 1)).toBeLessThan(0.03)
  })
  test('gains tell the orders apart and stand still where nothing is asked of them', () => {
    const { harmonics, gain } = yokePlate(machines.two.arrangement(0.002))
    expect(harmonics.map((h) => h.order)).toEqual([1, 3, 5, 7, 9])
    expect(gain).toBe(harmonics[0]!.gain)
    const still = yokePlate({
      ...machines.two.arrangement(0.002),
      fluxDensity: (points) => new Float64Array(points.length),
      magnets: { ...machines.two.arrangement(0.002).magnets, polarization: 0 },
    })
    expect(still.harmonics.every((h) => h.gain === 1)).toBe(true)
    expect(still.plate).toMatchObject({
      sectionFluxDensity: 0,
      peakFluxDensity: 0,
      backFlux: 0,
      pastKnee: false,
    })
  })
})

describe('law: odd shapes still give numbers', () => {
  const finite = (value: unknown): boolean =>
    typeof value === 'number'
      ? Number.isFinite(value)
      : value instanceof Float64Array
        ? value.every(Number.isFinite)
        : typeof value === 'object' && value !== null
          ? Object.values(value).every(finite)
          : true
  const block = { radius: 0.1, radialLength: 0.03, width: 0.01, thickness: 0.005, recoilPermeability: 1.05 }
  test('from foil to block, from disc to thread, from two poles to many, solid or beside the magnets', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: -7, max: 0, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: -4, max: 0.5, noNaN: true }),
        fc.constantFrom('none', 'mirrored', 'plate'),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (polePairs, thickness, innerRadius, width, opposite, amplitude) => {
          const plate = { thickness: 10 ** thickness, innerRadius, outerRadius: innerRadius + 10 ** width }
          const state = yokePlate({
            polePairs,
            steel,
            plate,
            opposite: opposite === 'plate' ? { ...plate, thickness: 0.001 } : opposite,
            planeDistance: 0.02,
            fluxDensity: smooth(polePairs, amplitude, 0.015),
            magnets: blockFootprint({ ...block, polarization: amplitude }),
            winding: { height: 0.012, innerRadius: 0.085, outerRadius: 0.115 },
          })
          expect(finite(state)).toBe(true)
          expect(state.gain).toBeLessThan(1.5)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('refusals', () => {
  const good = machines.two.arrangement(0.004)
  test.each([
    ['pole pairs not whole', { ...good, polePairs: 1.5 }],
    ['no thickness', { ...good, plate: { ...good.plate, thickness: 0 } }],
    ['rims exchanged', { ...good, plate: { ...good.plate, outerRadius: 0.01 } }],
    ['winding out of the gap', { ...good, winding: { ...good.winding, height: 0.05 } }],
    ['no gap', { ...good, planeDistance: 0 }],
    ['recoil below one', { ...good, magnets: { ...good.magnets, recoilPermeability: 0.9 } }],
    ['thickness not a number', { ...good, plate: { ...good.plate, thickness: Number.NaN } }],
    ['opposite plate without thickness', { ...good, opposite: { ...good.plate, thickness: -1 } }],
  ] as [string, YokeArrangement][])('law: %s', (_, arrangement) => {
    expect(() => yokePlate(arrangement)).toThrow(RangeError)
  })
  test('law: a block across the axis has no footprint', () => {
    expect(() => blockFootprint({ ...ring, radius: 0.01, polarization: 1, recoilPermeability: 1 })).toThrow(
      RangeError,
    )
  })
})

describe('law: the footprint is the rectangle', () => {
  test('its area', () => {
    const { angles, innerRadius, outerRadius } = blockFootprint({
      ...ring,
      polarization: 1,
      recoilPermeability: 1,
    })
    const n = 20_000
    let area = 0
    for (let i = 0; i < n; i++) {
      const r = innerRadius + ((i + 0.5) * (outerRadius - innerRadius)) / n
      const [from, to] = angles(r)
      area += (2 * (to - from) * r * (outerRadius - innerRadius)) / n
    }
    expect(Math.abs(area / 8e-4 - 1)).toBeLessThan(1e-5)
  })
})
