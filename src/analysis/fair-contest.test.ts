/** Checks of the contest: ties, order, what cancels, what is refused. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { Refusal } from '../refusal/require.ts'
import { type ContestRule, contestRules } from './contest-rule.ts'
import {
  type Contest,
  type ContestOptions,
  fairContest,
  type scoreKinds,
  scoreNames,
} from './fair-contest.ts'
import { finished } from './step.ts'

type Document = ReturnType<typeof fixedDocument>

/** No guesses, so that a contest takes few chains. */
function designFrom(change: (document: Document) => void = () => {}) {
  const document = fixedDocument('drum')
  document.site.meanWind_m_per_s = 4.5
  document.site.shearExponent = 0.2
  document.shaft = { friction_mNm: 8 }
  delete document.rotor.magnet.grade
  document.rotor.magnet.polarization_T = 1.3
  document.stator.thermalResistance_K_per_W = 2
  document.stator.wire.price_per_kg = 18
  change(document)
  return designOf(document)
}

const serpentine = () => designFrom()
const coils = (change: (document: Document) => void = () => {}) =>
  designFrom((document) => {
    document.name = 'Coils'
    document.stator.winding = {
      kind: 'coils',
      coilCount: 9,
      phaseCount: 3,
      turns: 70,
      hole: { shape: 'rectangular', holeWidth_mm: 12, holeLength_mm: 46 },
      legWidth_mm: 10,
      bundleDepth_mm: 4,
      distance_mm: 4.4,
    }
    document.stator.wire.size = 0.6
    change(document)
  })

const held = (designs: ReturnType<typeof designOf>[], options: ContestOptions): Contest =>
  finished(fairContest(designs, options))

describe('law: a design against itself is an exact tie', () => {
  for (const rule of contestRules)
    test(rule, () => {
      const { pairs, contestants } = held([serpentine(), serpentine()], { rule })
      for (const name of scoreNames) {
        expect(contestants[0]!.scores[name]).toBe(contestants[1]!.scores[name])
        expect(pairs[name][0]![1]).toEqual({ ratio: 1, spread: 0, told: false, cause: undefined })
      }
    })
})

describe('law: the order of the others does not matter', () => {
  const third = coils((document) => {
    document.name = 'Narrow coils'
    document.stator.winding.hole.holeWidth_mm = 8
  })
  const one = held([serpentine(), coils(), third], { rule: 'equal-copper-mass' })
  const other = held([serpentine(), third, coils()], { rule: 'equal-copper-mass' })
  test('scores and pairs are those of the designs', () => {
    for (const name of scoreNames) {
      expect(other.contestants[2]!.scores[name]).toBe(one.contestants[1]!.scores[name])
      expect(other.pairs[name][2]![1]).toEqual(one.pairs[name][1]![2])
    }
  })
  test('a pair the other way round has the inverse ratio and the same spread', () => {
    for (const name of scoreNames) {
      const forth = one.pairs[name][0]![1]!
      const back = one.pairs[name][1]![0]!
      expect(forth.ratio * back.ratio).toBeCloseTo(1, 12)
      expect(back.spread).toBeCloseTo(forth.spread, 12)
      expect(back.told).toBe(forth.told)
    }
  })
  test('nor the order of all, where amount, common point and turns are stated', () => {
    const point = { speed: 60, torque: 0.4, copperWatts: 8, wind: 6 }
    const options = { rule: 'equal-copper-mass', amount: 0.25, keepTurns: true, point } as const
    const forth = held([serpentine(), coils()], options)
    const back = held([coils(), serpentine()], options)
    for (const name of scoreNames)
      expect(back.pairs[name][1]![0]!.ratio).toBeCloseTo(forth.pairs[name][0]![1]!.ratio, 9)
  })
})

/** Bearings and magnets as they are bought. */
function doubt(document: Document) {
  document.shaft = { friction_mNm: { value: 8, spread: 2 } }
  delete document.rotor.magnet.polarization_T
  document.rotor.magnet.grade = 'N42'
}

describe('law: what both designs share cancels as far as it acts alike', () => {
  const { pairs, shared, own } = held([designFrom(doubt), coils(doubt)], { rule: 'equal-copper-mass' })
  test('the magnets’ grade moves both, and hardly tells them apart in k_m', () => {
    expect(shared).toEqual(['shaft.friction_mNm', 'rotor.magnet.grade', 'drag of the blade sections'])
    expect(own).toEqual([])
    expect(pairs.motorConstant[0]![1]!.spread).toBeLessThan(1e-3)
    expect(pairs.drag[0]![1]!.spread).toBeGreaterThan(1e-3)
    expect(pairs.drag[0]![1]!.cause).toBe('shaft.friction_mNm')
  })
  test('a guess about one winding alone stays', () => {
    const guessed = held(
      [
        serpentine(),
        coils((document) => {
          document.stator.winding.distance_mm = { value: 4.4, spread: 0.2, known: 'guessed' }
          delete document.stator.thermalResistance_K_per_W
        }),
      ],
      { rule: 'equal-copper-mass' },
    )
    expect(guessed.own).toEqual(['stator.winding.distance_mm', 'estimated thermal resistance'])
    const pair = guessed.pairs.motorConstant[0]![1]!
    expect(pair.cause).toBe('stator.winding.distance_mm')
    expect(pair.spread).toBeGreaterThan(0.01)
  })
})

describe('law: the rule is kept', () => {
  const mean = ({ contestants }: Contest, pick: (k: number) => number) => contestants.map((_, k) => pick(k))
  const equal: readonly (readonly [ContestRule, keyof typeof scoreKinds])[] = [
    ['equal-copper-mass', 'copperMass'],
    ['equal-loss', 'copperLoss'],
    ['equal-loss', 'motorConstant'],
  ]
  for (const [rule, name] of equal)
    test(`${rule}: ${name}`, () => {
      const contest = held([serpentine(), coils()], { rule })
      const [a, b] = mean(contest, (k) => contest.contestants[k]!.scores[name])
      expect(b! / a!).toBeCloseTo(1, 5)
      expect(contest.contestants[0]!.fitted.widthRatio).toBe(1)
    })
  test('turns follow the first design’s speed of cut-in, unless they are kept', () => {
    const [first, second] = held([serpentine(), coils()], { rule: 'equal-copper-mass' }).contestants
    const ratio = second!.chain.generator.cutIn / first!.chain.generator.cutIn
    expect(Math.abs(ratio - 1)).toBeLessThan(0.5 / second!.fitted.turns.to + 2e-3)
    const kept = held([serpentine(), coils()], { rule: 'equal-copper-mass', keepTurns: true })
    expect(kept.contestants[1]!.fitted.turns).toEqual({ from: 70, to: 70 })
  })
  test('parts that differ are named', () => {
    const { unlike, alike } = held(
      [
        serpentine(),
        coils((document) => {
          document.load.voltage_V = 12.4
        }),
      ],
      { rule: 'as-they-are' },
    )
    expect(unlike).toEqual(['load'])
    expect(alike).toContain('rotor')
  })
})

describe('law: what cannot be compared is refused', () => {
  const refused = (act: () => unknown) => {
    try {
      act()
    } catch (error) {
      if (error instanceof Refusal) return error.message
      throw error
    }
    return ''
  }
  test('one design, or none, or a crowd', () => {
    for (const count of [0, 1, 9])
      expect(refused(() => held(Array.from({ length: count }, serpentine), { rule: 'as-they-are' }))).toMatch(
        /^designs must be 2 to 8 of them; received \d/,
      )
  })
  test('a first design that gives nothing has no common point', () => {
    const idle = designFrom((document) => {
      document.load = { kind: 'open' }
    })
    expect(refused(() => held([idle, coils()], { rule: 'as-they-are' }))).toContain('the common')
    const point = { speed: 60, torque: 0.4, copperWatts: 8, wind: 6 }
    const { pairs } = held([idle, coils()], { rule: 'as-they-are', point })
    expect(pairs.energy[0]![1]).toBeUndefined()
    expect(pairs.motorConstant[0]![1]!.ratio).toBeGreaterThan(0)
  })
})
