/** Checks of the thermal network, of copper that settles and of copper that keeps its heat. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { adiabaticHeatingRate, adiabaticHeatingTime } from './adiabatic-heating.ts'
import { copperEquilibrium, copperMelting } from './copper-equilibrium.ts'
import { radiationCoefficient } from './radiation.ts'
import { steadyTemperatures, type ThermalLink, temperaturesAfter } from './thermal-network.ts'

const copper = { heatCapacity: 385, density: 8890 }
const ρ20 = 1e-6 / 58

describe('agrees: adiabatic rise at constant current, stepped in small times', () => {
  test('100 K at 6 A/mm²', () => {
    const wire = { resistivity: ρ20, coefficient: 0.00393, reference: 293.15, currentDensity: 6e6, ...copper }
    const t = adiabaticHeatingTime({ ...wire, from: 293.15, to: 393.15 })
    let T = 293.15
    const n = 20000
    for (let i = 0; i < n; i++) {
      const rate = (at: number) =>
        adiabaticHeatingRate({
          resistivity: ρ20 * (1 + 0.00393 * (at - 293.15)),
          currentDensity: 6e6,
          ...copper,
        })
      T += (t / n) * rate(T + (t / n / 2) * rate(T))
    }
    expect(Math.abs(T - 393.15)).toBeLessThan(1e-6)
  })
})

describe('agrees: adiabatic rise at 20 and 80 °C, K/s, worked separately from the constants of annealed copper', () => {
  const rows = [
    [3, '0.045', '0.056'],
    [5, '0.126', '0.156'],
    [7, '0.247', '0.305'],
    [10, '0.504', '0.623'],
    [15, '1.133', '1.401'],
  ] as const
  for (const [A_per_mm2, cold, hot] of rows) {
    const at = (kelvin: number) =>
      adiabaticHeatingRate({
        resistivity: ρ20 * (1 + 0.00393 * kelvin),
        currentDensity: A_per_mm2 * 1e6,
        ...copper,
      })
    // The rows are rounded in their last digit by up to one unit.
    check(`${A_per_mm2} A/mm², 20 °C`, at(0), cold, { absolute: 0.001 })
    check(`${A_per_mm2} A/mm², 80 °C`, at(60), hot, { absolute: 0.001 })
  }
  // The rounded 0.0450, 0.180 and 0.500 K/s in circulation go with 8960 kg/m³; gate 1 %.
  check('6 A/mm²', adiabaticHeatingRate({ resistivity: ρ20, currentDensity: 6e6, ...copper }), '0.180', {
    relative: 0.01,
  })
})

describe('law: adiabatic heating', () => {
  const wire = { resistivity: ρ20, reference: 293.15, currentDensity: 6e6, ...copper, from: 300, to: 350 }
  test('without a coefficient, time is rise over rate, and small coefficients join on', () => {
    const constant = 50 / adiabaticHeatingRate(wire)
    expect(adiabaticHeatingTime({ ...wire, coefficient: 0 })).toBeCloseTo(constant, 9)
    for (const coefficient of [1e-13, 1e-10, 1e-8])
      expect(adiabaticHeatingTime({ ...wire, coefficient }) / constant).toBeCloseTo(1, 6)
  })
  test('times add up and nothing takes no time', () => {
    const time = (from: number, to: number) =>
      adiabaticHeatingTime({ ...wire, coefficient: 0.00393, from, to })
    expect(time(300, 350)).toBeCloseTo(time(300, 320) + time(320, 350), 9)
    expect(time(300, 300)).toBe(0)
    expect(() => time(350, 300)).toThrow('below-minimum')
    expect(() => adiabaticHeatingTime({ ...wire, coefficient: 0.00393, currentDensity: 0 })).toThrow(
      'below-minimum',
    )
    expect(() => adiabaticHeatingTime({ ...wire, coefficient: 0.00393, from: 10, to: 20 })).toThrow(
      'below-minimum',
    )
  })
})

describe('agrees: copper equilibrium by the network, resistance followed round by round', () => {
  for (const [loss, thermalResistance, ambient] of [
    [10, 1, 293.15],
    [100, 1, 313.15],
    [120, 1.4, 273.15],
    [150, 1.4, 250],
  ] as const)
    test(`${loss} W, ${thermalResistance} K/W, ${ambient} K`, () => {
      const closed = copperEquilibrium({ loss, thermalResistance, ambient, ceiling: 4000 })
      const net = steadyTemperatures({
        count: 2,
        fixed: [{ node: 0, temperature: ambient }],
        state: (T) => ({
          links: [{ from: 1, to: 0, conductance: 1 / thermalResistance }],
          sources: [0, loss * (1 + 0.00393 * (T[1]! - 293.15))],
        }),
      })
      expect(Math.abs(net.temperatures[1]! - closed.temperature)).toBeLessThan(1e-6)
      expect(Math.abs(net.taken[0]! - closed.loss)).toBeLessThan(1e-6)
      expect(closed.runaway || net.runaway).toBe(false)
    })
})

describe('law: copper equilibrium', () => {
  test('runs away with finite numbers at gain 1 and above', () => {
    const gone = copperEquilibrium({ loss: 300, thermalResistance: 1, ambient: 293.15 })
    expect(gone).toMatchObject({ runaway: true, temperature: copperMelting })
    expect(Number.isFinite(gone.loss)).toBe(true)
    expect(gone.gain).toBeCloseTo(1.179, 12)
    expect(copperEquilibrium({ loss: 1 / 0.00393, thermalResistance: 1, ambient: 293.15 }).runaway).toBe(true)
    expect(copperEquilibrium({ loss: 0, thermalResistance: 1, ambient: 250 })).toMatchObject({
      temperature: 250,
      runaway: false,
      loss: 0,
    })
    expect(
      copperEquilibrium({ loss: 100, thermalResistance: 1, ambient: 293.15, ceiling: 400 }),
    ).toMatchObject({ temperature: 400, runaway: true })
  })
  test('heat made equals heat given off', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 230, max: 330, noNaN: true }),
        (loss, thermalResistance, ambient) => {
          const { temperature, loss: hot, runaway } = copperEquilibrium({ loss, thermalResistance, ambient })
          expect(Number.isFinite(temperature) && Number.isFinite(hot)).toBe(true)
          if (!runaway) expect(Math.abs(temperature - ambient - thermalResistance * hot)).toBeLessThan(1e-6)
        },
      ),
    ))
  test('refuses an ambient where copper would have no resistance', () =>
    expect(() => copperEquilibrium({ loss: 1, thermalResistance: 1, ambient: 30 })).toThrow('below-minimum'))
})

const ladder = (n: number, conductance: (i: number) => number): ThermalLink[] =>
  Array.from({ length: n - 1 }, (_, i) => ({ from: i, to: i + 1, conductance: conductance(i) }))

describe('agrees: ladder of resistances, added by hand', () => {
  test('20 in series carry the same heat', () => {
    const links = ladder(21, (i) => 0.1 * (i + 1))
    const sources = new Float64Array(21)
    sources[20] = 7
    const { temperatures, flows, taken } = steadyTemperatures({
      count: 21,
      fixed: [{ node: 0, temperature: 290 }],
      state: () => ({ links, sources }),
    })
    const resistance = links.reduce((sum, { conductance }) => sum + 1 / conductance, 0)
    expect(temperatures[20]).toBeCloseTo(290 + 7 * resistance, 9)
    for (const flow of flows) expect(flow).toBeCloseTo(-7, 9)
    expect(taken[0]).toBeCloseTo(7, 9)
  })
  test('a black plate in space: radiation alone, by the fourth root', () => {
    const net = steadyTemperatures({
      count: 2,
      fixed: [{ node: 0, temperature: 300 }],
      state: (T) => ({
        links: [
          {
            from: 1,
            to: 0,
            conductance: radiationCoefficient({ surface: T[1]!, surroundings: 300, emissivity: 1 }),
          },
        ],
        sources: [0, 1000],
      }),
    })
    expect(net.temperatures[1]).toBeCloseTo((300 ** 4 + 1000 / 5.670374419e-8) ** 0.25, 6)
    expect(net.imbalance).toBeLessThan(1e-9)
  })
  test('steps of time approach the exponential, and rest at the steady state', () => {
    const state = { links: [{ from: 1, to: 0, conductance: 2 }], sources: [0, 10] }
    const fixed = [{ node: 0, temperature: 300 }]
    let past: ArrayLike<number> = [300, 300]
    for (let i = 0; i < 1000; i++)
      past = temperaturesAfter({ past, capacities: [0, 100], duration: 0.05, fixed, state })
    expect(Math.abs(past[1]! - (305 - 5 * Math.exp(-1)))).toBeLessThan(1e-3)
    past = temperaturesAfter({ past, capacities: [0, 100], duration: 1e12, fixed, state })
    expect(past[1]).toBeCloseTo(305, 6)
  })
})

describe('law: the network', () => {
  test('heat balances to 1e-9 and no node is outside its neighbours without a source', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 5, maxLength: 25 }),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (exponents, heat) => {
          const n = exponents.length + 1
          const links = ladder(n, (i) => 10 ** exponents[i]!)
          for (let i = 0; i + 3 < n; i += 2)
            links.push({ from: i, to: i + 3, conductance: 10 ** -exponents[i]! })
          const sources = new Float64Array(n)
          const run = (heated: number) => {
            sources[n - 2] = heated
            return steadyTemperatures({
              count: n,
              fixed: [
                { node: 0, temperature: 280 },
                { node: n - 1, temperature: 320 },
              ],
              state: () => ({ links, sources }),
              ceiling: 1e300,
            })
          }
          const cold = run(0)
          for (const T of cold.temperatures) {
            expect(T).toBeGreaterThan(280 - 1e-6)
            expect(T).toBeLessThan(320 + 1e-6)
          }
          const warm = run(heat)
          const largest = Math.max(Math.abs(heat), ...warm.flows.map(Math.abs))
          const sum = warm.taken[0]! + warm.taken[1]! - heat
          expect(Math.abs(sum)).toBeLessThan(1e-9 * largest + 1e-9)
        },
      ),
      { numRuns: 60 },
    ))
  test('a machine-like net: imbalance below 1e-9', () => {
    const links = [
      { from: 0, to: 1, conductance: 3.5 },
      { from: 1, to: 2, conductance: 0.8 },
      { from: 2, to: 3, conductance: 0.12 },
      { from: 1, to: 3, conductance: 0.02 },
      { from: 3, to: 4, conductance: 1.6 },
      { from: 2, to: 4, conductance: 0.4 },
    ]
    const { imbalance, rounds, temperatures, taken } = steadyTemperatures({
      count: 5,
      fixed: [{ node: 4, temperature: 293.15 }],
      state: () => ({ links, sources: [40, 0, 2, 5, 0] }),
    })
    expect(imbalance).toBeLessThan(1e-9)
    expect(taken[0]).toBeCloseTo(47, 9)
    expect(rounds).toBe(2)
    expect(temperatures[0]).toBeGreaterThan(temperatures[1]!)
  })
  test('resistance that outruns its cooling is called runaway, with finite temperatures', () => {
    const net = steadyTemperatures({
      count: 2,
      fixed: [{ node: 0, temperature: 293.15 }],
      state: (T) => ({
        links: [{ from: 1, to: 0, conductance: 1 }],
        sources: [0, 300 * (1 + 0.00393 * (T[1]! - 293.15))],
      }),
    })
    expect(net.runaway).toBe(true)
    for (const T of net.temperatures) expect(Number.isFinite(T)).toBe(true)
  })
  test('twelve decades of conductance in one net keep their digits', () => {
    const { temperatures } = steadyTemperatures({
      count: 4,
      fixed: [{ node: 0, temperature: 300 }],
      state: () => ({
        links: [
          { from: 0, to: 1, conductance: 1e-6 },
          { from: 1, to: 2, conductance: 1e6 },
          { from: 2, to: 3, conductance: 1e-6 },
        ],
        sources: [0, 0, 0, 1e-6],
      }),
    })
    expect(temperatures[1]).toBeCloseTo(301, 10)
    expect(temperatures[2]).toBeCloseTo(301, 10)
    expect(temperatures[3]).toBeCloseTo(302, 10)
  })
  test('a loop close to running away still comes to rest', () => {
    const { temperatures, rounds } = steadyTemperatures({
      count: 2,
      fixed: [{ node: 0, temperature: 293.15 }],
      state: (T) => ({
        links: [{ from: 1, to: 0, conductance: 1 }],
        sources: [0, 10 + 0.995 * (T[1]! - 293.15)],
      }),
    })
    expect(temperatures[1]).toBeCloseTo(293.15 + 2000, 4)
    expect(rounds).toBeLessThan(20)
  })
  test('a loop that would swing is damped to rest', () => {
    const net = steadyTemperatures({
      count: 2,
      fixed: [{ node: 0, temperature: 300 }],
      state: (T) => ({
        links: [{ from: 1, to: 0, conductance: 1 + ((T[1]! - 300) / 50) ** 3 }],
        sources: [0, 500],
      }),
    })
    const rise = net.temperatures[1]! - 300
    expect(rise * (1 + (rise / 50) ** 3)).toBeCloseTo(500, 5)
  })
  test('temperaturesAfter keeps the heat: stored + taken = born', () => {
    const past = [300, 310, 330]
    const capacities = [50, 80, 20]
    const state = { links: ladder(3, () => 0.7), sources: [1, 2, 3] }
    const after = temperaturesAfter({ past, capacities, duration: 60, state })
    const stored = after.reduce((sum, T, i) => sum + capacities[i]! * (T - past[i]!), 0)
    expect(stored).toBeCloseTo(6 * 60, 8)
  })
  test('refusals', () => {
    const fixed = [{ node: 0, temperature: 300 }]
    const run = (links: ThermalLink[], sources: number[] = [0, 0, 0]) =>
      steadyTemperatures({ count: 3, fixed, state: () => ({ links, sources }) })
    expect(() => run([{ from: 0, to: 1, conductance: 1 }])).toThrow('conflict')
    expect(() => run([{ from: 0, to: 5, conductance: 1 }])).toThrow('not-a-choice')
    expect(() => run([{ from: 0, to: 1, conductance: -1 }])).toThrow('below-minimum')
    expect(() =>
      run(
        ladder(3, () => 1),
        [0, Number.NaN, 0],
      ),
    ).toThrow('not-finite')
    expect(() =>
      run(
        ladder(3, () => 1),
        [0],
      ),
    ).toThrow('wrong-length')
    expect(() =>
      steadyTemperatures({ count: 1, fixed: [], state: () => ({ links: [], sources: [0] }) }),
    ).toThrow('wrong-length')
    expect(() =>
      temperaturesAfter({ past: [300], capacities: [0], duration: 1, state: { links: [], sources: [1] } }),
    ).toThrow('conflict')
  })
  test('all nodes fixed is an answer too', () => {
    const { temperatures, flows } = steadyTemperatures({
      count: 2,
      fixed: [
        { node: 0, temperature: 300 },
        { node: 1, temperature: 310 },
      ],
      state: () => ({ links: [{ from: 1, to: 0, conductance: 2 }], sources: [0, 0] }),
    })
    expect([...temperatures]).toEqual([300, 310])
    expect(flows[0]).toBe(20)
  })
})
