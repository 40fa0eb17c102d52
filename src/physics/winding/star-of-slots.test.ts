/** Checks of coil layouts: factors, balance, neighbours, phase offsets. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  leastPitchFactor,
  nearestGoodCounts,
  phaseBelts,
  phaseOffset,
  phasesBalance,
  starFactor,
  starOfSlots,
} from './star-of-slots.ts'

const degree = Math.PI / 180

describe('source: pyrhonen2014, section 2.9 — fundamental winding factors of concentrated windings (textbook values, from memory, not opened)', () => {
  //       coils poles  k_w
  const rows = [
    [9, 12, '0.866'],
    [6, 8, '0.866'],
    [12, 16, '0.866'],
    [9, 6, '0.866'],
    [12, 8, '0.866'],
    [9, 8, '0.945'],
    [9, 10, '0.945'],
    [12, 10, '0.933'],
    [12, 14, '0.933'],
  ] as const
  for (const [coils, poles, printed] of rows)
    check(
      `${coils} coils, ${poles} poles`,
      starOfSlots({ coils, polePairs: poles / 2 }).windingFactor,
      printed,
    )
})

describe('law: balance', () => {
  test('8/8, 12/12, 10/12 and 16/12 cannot make three equal phases', () => {
    for (const [coils, poles] of [
      [8, 8],
      [12, 12],
      [10, 12],
      [16, 12],
    ])
      expect(starOfSlots({ coils, polePairs: poles / 2 }).balanced).toBe(false)
  })
  test('a coil that spans a whole pole pair links nothing: 9 coils on 18 poles', () => {
    const star = starOfSlots({ coils: 9, polePairs: 9 })
    expect(star.pitchFactor).toBe(0)
    expect(star.windingFactor).toBe(0)
  })
  test('balanced counts: equal numbers, equal factors, phasors 120° apart in the order of rotation', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 40 }), (coils, polePairs) => {
        const star = starOfSlots({ coils, polePairs })
        if (!star.balanced) return
        const axis = [0, 1, 2].map((phase) => {
          const own = star.coils.filter((coil) => coil.phase === phase)
          expect(own.length).toBe(coils / 3)
          const re = own.reduce((sum, c) => sum + c.sense * Math.cos(c.electricalAngle), 0)
          const im = own.reduce((sum, c) => sum + c.sense * Math.sin(c.electricalAngle), 0)
          return Math.atan2(im, re)
        })
        for (let k = 0; k < 3; k++) {
          expect(star.phaseFactor[k]).toBeCloseTo(star.phaseFactor[0], 12)
          const step = axis[(k + 1) % 3] - axis[k]
          expect(Math.cos(step - (2 * Math.PI) / 3)).toBeCloseTo(1, 12)
        }
      }),
    )
  })
  test('no exchange of a coil between phases or senses does better than the 60° belts', () => {
    // all sign choices of every coil of phase 0
    for (const [coils, polePairs] of [
      [9, 4],
      [12, 5],
      [15, 7],
    ]) {
      const star = starOfSlots({ coils, polePairs })
      const own = star.coils.filter((coil) => coil.phase === 0)
      for (let mask = 0; mask < 1 << own.length; mask++) {
        const tried = own.map((coil, k) => ({
          ...coil,
          sense: (mask >> k) & 1 ? (1 as const) : (-1 as const),
        }))
        const factor = starFactor(tried, { phase: 0, span: (2 * Math.PI * polePairs) / coils, harmonic: 1 })
        expect(factor).toBeLessThan(star.windingFactor + 1e-12)
      }
    }
  })
})

describe('law: belts of other phase counts', () => {
  test('one phase: coils equal to poles alternate in sense and all add', () => {
    const belts = phaseBelts({ coilCount: 8, polePairs: 4, phaseCount: 1 })
    expect(belts.map((belt) => belt.sense)).toEqual([1, -1, 1, -1, 1, -1, 1, -1])
    expect(starFactor(belts, { phase: 0, span: Math.PI, harmonic: 1 })).toBeCloseTo(1, 14)
  })
  test('two phases stand 90° apart', () => {
    const belts = phaseBelts({ coilCount: 4, polePairs: 1, phaseCount: 2 })
    expect(belts.map((belt) => belt.phase)).toEqual([0, 1, 0, 1])
    expect(belts.map((belt) => belt.sense)).toEqual([1, 1, -1, -1])
  })
  test('three coils over four poles: 0°, 240°, 480° = 120°', () => {
    const belts = phaseBelts({ coilCount: 3, polePairs: 2, phaseCount: 3 })
    expect(belts.map((belt) => Math.round(belt.electricalAngle / degree))).toEqual([0, 240, 120])
    expect(belts.map((belt) => belt.phase)).toEqual([0, 2, 1])
    expect(belts.every((belt) => belt.sense === 1)).toBe(true)
  })
})

describe('law: nearest good counts', () => {
  test('12 coils on 12 poles: nine coils or sixteen poles are among the neighbours', () => {
    const { samePoles, sameCoils } = nearestGoodCounts({ coils: 12, polePairs: 6 })
    expect(samePoles.map((count) => count.coils)).toContain(9)
    expect(sameCoils.map((count) => count.polePairs)).toContain(5)
    for (const { coils, polePairs, windingFactor } of [...samePoles, ...sameCoils]) {
      expect(starOfSlots({ coils, polePairs }).balanced).toBe(true)
      expect(windingFactor).toBeGreaterThan(0.45)
      expect(starOfSlots({ coils, polePairs }).pitchFactor).toBeGreaterThanOrEqual(leastPitchFactor - 1e-12)
    }
  })
  test('a good pair comes first itself', () => {
    expect(nearestGoodCounts({ coils: 9, polePairs: 6 }).samePoles[0].coils).toBe(9)
  })
})

describe('law: phase offsets of six magnets (three pole pairs)', () => {
  const of = (offset: number, polePairs = 3) => phaseOffset({ mechanicalOffset: offset * degree, polePairs })
  test('20° is 60° electrical and needs the middle phase reversed, 40° is 120°', () => {
    expect(of(20).electricalOffset / degree).toBeCloseTo(60, 12)
    expect(of(20).verdict).toBe('sixth')
    expect(of(40).electricalOffset / degree).toBeCloseTo(120, 12)
    expect(of(40).verdict).toBe('third')
    expect(of(80).verdict).toBe('third')
    expect(of(-20).verdict).toBe('sixth')
    expect(of(120).verdict).toBe('in-step')
    expect(of(30).verdict).toBe('wrong')
  })
  test('3° electrical are let pass, 4° are not; the error is signed', () => {
    expect(of(41).verdict).toBe('third')
    expect(of(41).error / degree).toBeCloseTo(3, 10)
    expect(of(40 - 4 / 3).verdict).toBe('wrong')
    expect(of(40 - 4 / 3).error / degree).toBeCloseTo(-4, 10)
  })
  test('1 mm at 120 mm with six pole pairs is 2.86° electrical', () => {
    expect(
      (phaseOffset({ mechanicalOffset: 1 / 120, polePairs: 6 }).electricalOffset / degree).toFixed(2),
    ).toBe('2.86')
  })
  test('broken counts are refused', () => {
    expect(() => of(20, 0)).toThrow(/not-a-choice/)
    expect(() => of(Number.NaN)).toThrow(/not-finite/)
    expect(() => starOfSlots({ coils: 2.5, polePairs: 2 })).toThrow(/not-a-choice/)
  })
})

describe('source: pyrhonen2014, section 2.9 — symmetry: Q/t divisible by 3 for three phases, by 4 for two (from memory, not opened)', () => {
  test('counts that balance and counts that do not', () => {
    const rows = [
      [9, 6, 3, true],
      [12, 5, 3, true],
      [12, 6, 3, false],
      [8, 3, 2, true],
      [6, 6, 2, false],
      [5, 2, 1, true],
    ] as const
    for (const [coilCount, polePairs, phaseCount, balances] of rows)
      expect(phasesBalance({ coilCount, polePairs, phaseCount })).toBe(balances)
  })
  // two phases a quarter turn apart in eight coils on ten poles: sin 112.5° · cos 22.5°, by hand
  const [two] = nearestGoodCounts({ coils: 8, polePairs: 5, phaseCount: 2 }).samePoles
  check('eight coils on ten poles, two phases', two!.windingFactor, '0.854')
  // full-pitch coils, two to each pole and phase: cos 15°
  const [lap] = nearestGoodCounts({ coils: 24, polePairs: 2, span: 1 }).samePoles
  check('24 overlapped coils of full pitch on four poles', lap!.windingFactor, '0.966')
})

describe('law: balance is what the star shows', () => {
  test('phases have as many coils each, and factors alike, just where the counts balance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: 1, max: 30 }),
        fc.constantFrom(2, 3),
        (coilCount, polePairs, phaseCount) => {
          if (!phasesBalance({ coilCount, polePairs, phaseCount })) return
          const coils = phaseBelts({ coilCount, polePairs, phaseCount })
          const span = (2 * Math.PI * polePairs) / coilCount
          const factors = Array.from({ length: phaseCount }, (_, phase) =>
            starFactor(coils, { phase, span, harmonic: 1 }),
          )
          for (const factor of factors) expect(factor).toBeCloseTo(factors[0]!, 10)
          for (let phase = 0; phase < phaseCount; phase++)
            expect(coils.filter((coil) => coil.phase === phase).length).toBe(coilCount / phaseCount)
        },
      ),
    )
  })
  test('counts offered do balance, with the pitch asked for', () => {
    for (const phaseCount of [2, 3])
      for (const span of [undefined, 1])
        for (const { coils, polePairs, windingFactor } of nearestGoodCounts({
          coils: 10,
          polePairs: 6,
          phaseCount,
          ...(span === undefined ? {} : { span }),
        }).samePoles) {
          expect(phasesBalance({ coilCount: coils, polePairs, phaseCount })).toBe(true)
          expect(windingFactor).toBeGreaterThanOrEqual(0.3)
        }
  })
})
