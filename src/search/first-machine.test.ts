/** Checks of the first machine: it is a design like any other, keeps to the stock, and is no worse than a plain start. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chainOf } from '../analysis/compute.ts'
import { finished } from '../analysis/step.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { parseStock, type Stock } from '../machine/stock.ts'
import { type FirstMachine, firstMachines } from './first-machine.ts'
import { coilCountOf, poleCountOf } from './first-sketch.ts'

function stockOf(input: object): Stock {
  const parsed = parseStock(input)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return parsed.stock
}

const shed = stockOf({
  magnet: { shape: 'disc', diameter_mm: 20, thickness_mm: 5 },
  magnetCount: 16,
  wire: { size: 0.5, reelMass_g: 500 },
  store: { kind: 'battery', chemistry: 'lead-acid', label_V: 12, capacity_Ah: 12 },
  meanWind_m_per_s: 4,
  printerBed_mm: 220,
  steelPlates: false,
})

describe('law: first machines from a shed’s drawer', () => {
  const found = finished(firstMachines(shed, { trials: 30 }))

  test('each kind that the stock allows is there, and no steel is asked for', () => {
    expect(found.machines.map(({ kind }) => kind).sort()).toEqual([
      'disc, coils',
      'drum, coils',
      'drum, serpentine',
    ])
    expect(found.trials).toBeLessThanOrEqual(3 * 30)
  })

  test('magnets and wire suffice, nothing blocks but volts without load, and it charges', () => {
    for (const { design, chain, blocking, kind } of found.machines) {
      const { rotor } = design
      expect(rotor.poleCount * (rotor.arrangement === 'two-discs' ? 2 : 1), kind).toBeLessThanOrEqual(16)
      expect(chain.wound.fit.reelShort!, kind).toBeLessThanOrEqual(0)
      expect(
        blocking.filter((code) => code !== 'shock-band'),
        kind,
      ).toEqual([])
      expect(chain.year.energy, kind).toBeGreaterThan(0)
      expect(chain.cutInWind, kind).toBeLessThan(8)
    }
  })

  test('the chain told is that of the design told, computed from nothing', () => {
    for (const { design, chain } of found.machines) {
      const parsed = parseDesign(JSON.parse(JSON.stringify(design)))
      expect(parsed.ok).toBe(true)
      const anew = finished(chainOf(resolveDesign(design)))
      expect(anew.year.energy).toBeCloseTo(chain.year.energy, 6)
    }
  })

  test('more trials leave no more that blocks, and no less energy than cable and walls that fit cost', () => {
    const few = finished(firstMachines({ ...shed, winding: 'serpentine' }, { trials: 8 })).machines[0]!
    const many = found.machines.find(({ kind }) => kind === 'drum, serpentine')!
    expect(many.blocking.length).toBeLessThanOrEqual(few.blocking.length)
    if (many.blocking.length === few.blocking.length)
      expect(many.chain.year.energy).toBeGreaterThanOrEqual(few.chain.year.energy * 0.95)
  })
})

describe('law: a wish for power bounds the machine', () => {
  const wish = { power_W: 5, atWind_m_per_s: 6 }
  const winding = 'coils'
  const wished = finished(firstMachines({ ...shed, winding, wish }, { trials: 40 })).machines
  const most = finished(firstMachines({ ...shed, winding }, { trials: 40 })).machines

  test('it is reached in the wind that it names, and stands in the design', () => {
    for (const { chain, wish: met, design } of wished) {
      expect(met?.watts).toBe(chain.rowAt(6).watts.useful)
      expect(met?.watts).toBeGreaterThanOrEqual(5)
      expect(design.purpose).toMatchObject(wish)
    }
  })

  test('its blades are no larger than those of a machine that is to give all it can', () => {
    for (const { kind, sketch } of wished)
      expect(sketch.diameter_m, kind).toBeLessThan(most.find((one) => one.kind === kind)!.sketch.diameter_m)
  })
})

describe('law: the search tells what it finds', () => {
  test('each told is better than the one before it of its kind, and the last is the one given', () => {
    const told: FirstMachine[] = []
    const { machines } = finished(
      firstMachines({ ...shed, winding: 'serpentine' }, { trials: 20, better: (one) => told.push(one) }),
    )
    expect(told.length).toBeGreaterThan(1)
    expect(told.at(-1)!.worth).toBeLessThanOrEqual(machines[0]!.worth)
  })

  test('thick wire in the open gap drags: the walk goes to larger blades until current begins', () => {
    const { machines, without } = finished(
      firstMachines(
        stockOf({
          magnet: { shape: 'block', length_mm: 46, width_mm: 30, thickness_mm: 10 },
          magnetCount: 24,
          grade: 'N42',
          wire: { size: 1.4 },
          store: { kind: 'battery', chemistry: 'lead-acid', label_V: 48 },
          meanWind_m_per_s: 5,
          winding: 'coils',
        }),
        { trials: 24 },
      ),
    )
    expect(without).toEqual([])
    const disc = machines.find(({ kind }) => kind === 'disc, coils')!
    expect(disc.charges).toBe(true)
    expect(disc.chain.cutInWind).toBeLessThan(8)
  }, 240_000)

  test('what never charges is no machine: a reason stands in its place', () => {
    const { machines, without } = finished(
      firstMachines(
        stockOf({
          magnet: { shape: 'disc', diameter_mm: 3, thickness_mm: 0.5 },
          magnetCount: 4,
          wire: { size: 2 },
          store: { kind: 'battery', chemistry: 'lead-acid', label_V: 48 },
          meanWind_m_per_s: 1,
        }),
        { trials: 4 },
      ),
    )
    for (const { charges } of machines) expect(charges).toBe(true)
    expect(without.length).toBeGreaterThan(0)
  })
})

describe('law: whatever is in the drawer, there is a machine or a reason', () => {
  const size = (min: number, max: number) =>
    fc.double({ min, max, noNaN: true }).map((x) => Number(x.toFixed(1)))
  const stocks = fc.record({
    class: fc.constantFrom('demonstration', 'bench', 'outdoor'),
    magnet: fc.oneof(
      fc.record({
        shape: fc.constant('block'),
        length_mm: size(2, 100),
        width_mm: size(2, 60),
        thickness_mm: size(0.5, 30),
      }),
      fc.record({ shape: fc.constant('disc'), diameter_mm: size(3, 60), thickness_mm: size(0.5, 30) }),
    ),
    magnetCount: fc.integer({ min: 4, max: 40 }),
    grade: fc.constantFrom(...magnetGrades.map(({ name }) => name)),
    wire: fc.record({ size: fc.constantFrom(0.2, 0.5, 1, 2) }),
    store: fc.oneof(
      fc.record({
        kind: fc.constant('battery'),
        chemistry: fc.constantFrom('lead-acid', 'LiFePO4', 'Li-ion'),
        label_V: fc.constantFrom(12, 24, 48),
      }),
      fc.record({ kind: fc.constant('resistor'), resistance_ohm: size(1, 100) }),
    ),
    meanWind_m_per_s: size(2, 9),
    steelPlates: fc.boolean(),
  })
  test('no stock breaks it', () => {
    fc.assert(
      fc.property(stocks, (input) => {
        const { machines, without } = finished(firstMachines(stockOf(input), { trials: 3 }))
        expect(machines.length + without.length).toBeGreaterThan(0)
        for (const { reason } of without) expect(reason.length).toBeGreaterThan(10)
        for (const { chain } of machines) expect(Number.isFinite(chain.year.energy)).toBe(true)
      }),
      { seed: 4, numRuns: 12 },
    )
  })
})

describe('agrees: counts of poles and coils with common practice of three coils for four poles', () => {
  for (const [magnets, poles, coils] of [
    [16, 16, 12],
    [12, 12, 9],
    [24, 24, 18],
    [9, 8, 6],
  ] as const)
    test(`${magnets} magnets on one ring`, () => {
      expect(poleCountOf({ ...shed, magnetCount: magnets }, 'disc, coils')).toBe(poles)
      expect(coilCountOf(poles)).toBe(coils)
    })
})
