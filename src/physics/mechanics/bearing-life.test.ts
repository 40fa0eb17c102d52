/** Checks of bearing loads and lives. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  alternatingLife,
  bearingLife,
  bearingLoadRange,
  equivalentBearingLoad,
  reliabilityFactor,
  staticBearingLoad,
} from './bearing-life.ts'

describe('source: iso281, table 12 (from memory, not opened) — reliability factor', () => {
  for (const [percent, printed] of [
    [90, '1.00'],
    [95, '0.64'],
    [97, '0.47'],
    [98, '0.37'],
    [99, '0.25'],
    [99.9, '0.093'],
    [99.95, '0.077'],
  ] as const)
    check(`${percent} %`, reliabilityFactor(percent / 100), printed)
  // The law behind the table gives 0.555 here.
  check('96 %', reliabilityFactor(0.96), '0.55', { absolute: 0.0055 })
})

describe('source: jindal2010, example 18-2, page 508 — life in million turns', () => {
  const life = (load: number) => bearingLife({ dynamicRating: 5590, load, speed: 1 }).turns / 1e6
  check('inner ring turns', life(0.56 * 1250 + 1.2 * 625), '57.3')
  check('outer ring turns', life(0.56 * 1.2 * 1250 + 1.2 * 625), '43.46')
})

describe('source: shigley, two problems of combined load as worked in an open notebook, their numbers not confirmed — kN', () => {
  // The book's table by Fa / C0 is this one at f0 = 12.3; it rounds Y to 1.53 and 1.27 on the way.
  const load = (radial: number, axial: number, staticRating: number) =>
    equivalentBearingLoad({ radial, axial, staticRating, geometryFactor: 12.3 }).load
  check('65 mm bore, outer ring turns', load(1.2 * 7, 3, 34), '9.294', { relative: 2e-3 })
  check('30 mm bore', load(5, 2, 10), '5.34', { relative: 2.5e-3 })
})

describe('law: bearing load and life', () => {
  const loads = fc.record({
    radial: fc.double({ min: 0, max: 1e5, noNaN: true }),
    axial: fc.double({ min: 0, max: 1e5, noNaN: true }),
    staticRating: fc.double({ min: 1, max: 1e6, noNaN: true }),
  })
  test('never below the radial load, and no jump at the limit', () => {
    fc.assert(
      fc.property(loads, (one) => {
        const { load } = equivalentBearingLoad(one)
        expect(load).toBeGreaterThanOrEqual(one.radial)
        const { limit } = equivalentBearingLoad(one)
        const radial = one.axial / limit
        const over = equivalentBearingLoad({ ...one, radial: radial * (1 - 1e-9) }).load
        expect(over).toBeLessThanOrEqual(radial * 1.006)
      }),
    )
  })
  test('half the load lasts 8 times with balls and 10.08 times with rollers', () => {
    const turns = (load: number, rolling: 'balls' | 'rollers') =>
      bearingLife({ dynamicRating: 1e4, load, speed: 10, rolling }).turns
    expect(turns(500, 'balls') / turns(1000, 'balls')).toBeCloseTo(8, 9)
    expect(turns(500, 'rollers') / turns(1000, 'rollers')).toBeCloseTo(2 ** (10 / 3), 9)
  })
  test('loaded to its rating it makes a million turns, past the range', () => {
    const one = bearingLife({ dynamicRating: 1e4, load: 1e4, speed: 100 * (Math.PI / 30) })
    expect(one.turns).toBeCloseTo(1e6, 3)
    expect(one.time / 3600).toBeCloseTo(1e6 / 6000, 9)
    expect(one.loadRatio).toBeGreaterThan(bearingLoadRange[1])
  })
  test('a load next to nothing gives a finite life; none at all is refused', () => {
    expect(bearingLife({ dynamicRating: 1e5, load: 1e-300, speed: 1e-9 }).time).toBe(Number.MAX_VALUE)
    expect(() => bearingLife({ dynamicRating: 1e5, load: 0, speed: 1 })).toThrow('load must be above zero')
  })
})

describe('agrees: static load and lives in turn, by hand', () => {
  check('1000 N across and 2000 N along', staticBearingLoad({ radial: 1000, axial: 2000 }), '1600')
  check('never below the radial load', staticBearingLoad({ radial: 1000, axial: 100 }), '1000')
  test('a third of the time at twice the load: turns by the mean cube', () => {
    const C = 5000
    const [time, twice] = [1000, 2000].map(
      (load) => bearingLife({ dynamicRating: C, load, speed: 50 }).time,
    ) as [number, number]
    const mean = ((2 / 3) * 1000 ** 3 + (1 / 3) * 2000 ** 3) ** (1 / 3)
    const whole = bearingLife({ dynamicRating: C, load: mean, speed: 50 }).time
    const stages = [
      { share: 2 / 3, time },
      { share: 1 / 3, time: twice },
    ]
    expect(alternatingLife(stages) / whole).toBeCloseTo(1, 12)
  })
})

describe('law: static load and lives in turn', () => {
  test('more load dents more, standing still wears nothing', () => {
    expect(staticBearingLoad({ radial: 500, axial: 900 })).toBeGreaterThan(
      staticBearingLoad({ radial: 500, axial: 800 }),
    )
    expect(alternatingLife([{ share: 0.1, time: 10 }])).toBeCloseTo(100, 9)
    expect(alternatingLife([])).toBe(Number.MAX_VALUE)
    expect(() => alternatingLife([{ share: 1, time: 0 }])).toThrow(RangeError)
  })
})
