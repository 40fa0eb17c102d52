/** Checks the concerns of bending discs, assembly, creep, bearings, shaft and whirling. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { parseDesign } from '../../machine/parse.ts'
import { resolveDesign } from '../../machine/resolve.ts'
import { rotorField } from '../air-gap-field.ts'
import { thickerCarrier } from '../ladder/carrier.ts'
import { thickerWall } from '../ladder/wall.ts'
import { withChanges } from '../remedy/change.ts'
import { assemblyPull } from './assembly-pull.ts'
import { bearingLifeRule } from './bearing-life.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { creep } from './creep.ts'
import { discBendingRule } from './disc-bending.ts'
import { magnetRetention } from './magnet-retention.ts'
import { shaftStrength } from './shaft-strength.ts'
import { whirling } from './whirling.ts'

const chain = (fields: Readonly<Record<string, unknown>> = {}) =>
  sampleChain(fields, ({ machine }) => ({ field: rotorField(machine, 293.15) }))
const printed = (thickness_mm: number, material = 'PC', more: object = {}) =>
  chain({
    'rotor.backIron': { kind: 'none' },
    'rotor.carrier': { material, thickness_mm },
    ...more,
  })
const shaft = (diameter_mm: number, more: object = {}, bearings: object = {}) =>
  chain({
    'shaft.diameter_mm': diameter_mm,
    'shaft.bearings': {
      spacing_mm: 100,
      bladeOverhang_mm: 120,
      magnetOverhang_mm: 40,
      dynamicRating_N: 30_000,
      staticRating_N: 20_000,
      ...bearings,
    },
    ...more,
  })

/** The measure is on the wrong side of its limit just where the rule objects. */
function agree(rule: ConcernRule, own: ChainView): boolean {
  const { value, limit, sound } = rule.measure!(own)!
  return (sound === 'below' ? value > limit : value < limit) === (rule.judge(own) !== undefined)
}

describe('law: disc-bending', () => {
  test('silent for stout steel, a warning for thin steel, blocking for a print that snaps', () => {
    expect(discBendingRule.judge(chain())).toBeUndefined()
    const thin = chain({ 'rotor.backIron': { kind: 'steel', thickness_mm: 2 } })
    expect(discBendingRule.judge(thin)?.severity).toBe('warning')
    expect(discBendingRule.judge(printed(4))?.severity).toBe('blocking')
    expect(discBendingRule.judge(printed(4, 'PC', { 'purpose.class': 'bench' }))?.severity).toBe('warning')
    for (const own of [chain(), thin, printed(4)]) expect(agree(discBendingRule, own)).toBe(true)
  })
  test('not asked where nothing pulls', () => expect(discBendingRule.measure!(sampleChain())).toBeUndefined())
})

describe('law: assembly-pull', () => {
  test('a note above what hands hold', () => {
    expect(assemblyPull.judge(chain())?.severity).toBe('note')
    expect(assemblyPull.judge(chain())?.remedies[0]).toContain('jacking screws')
    expect(assemblyPull.judge(chain({ 'rotor.faceDistance_mm': 200 }))).toBeUndefined()
    expect(assemblyPull.judge(sampleChain())).toBeUndefined()
    expect(agree(assemblyPull, chain())).toBe(true)
  })
})

describe('law: creep', () => {
  test('silent for a thick disc of polycarbonate, blocking for a thin one and for one that softens in the sun', () => {
    expect(creep.judge(printed(30))).toBeUndefined()
    expect(creep.judge(printed(4))?.severity).toBe('blocking')
    expect(creep.judge(printed(30, 'PLA', { 'site.ambient_degC': 25 }))?.figures).toContain('softens at')
    expect(creep.judge(chain())).toBeUndefined()
    expect(agree(creep, printed(30))).toBe(true)
    expect(agree(creep, printed(4))).toBe(true)
  })
})

describe('law: bearing-life', () => {
  test('silent for stout bearings and where none are described, a warning for small ones', () => {
    expect(bearingLifeRule.judge(shaft(30))).toBeUndefined()
    expect(bearingLifeRule.judge(chain())).toBeUndefined()
    const small = shaft(30, {}, { dynamicRating_N: 600, staticRating_N: 300 })
    expect(bearingLifeRule.judge(small)?.severity).toBe('warning')
    const dented = shaft(30, {}, { staticRating_N: 600 })
    expect(bearingLifeRule.judge(dented)?.what).toContain('dent')
  })
})

describe('law: shaft-strength', () => {
  test('silent for a thick shaft, blocking outdoors for a thin one or a poor key', () => {
    expect(shaftStrength.judge(shaft(60))).toBeUndefined()
    expect(shaftStrength.judge(shaft(14))?.severity).toBe('blocking')
    expect(shaftStrength.judge(shaft(14, { 'purpose.class': 'bench' }))?.severity).toBe('warning')
    const keyed = shaft(60, { 'shaft.key': { width_mm: 3, height_mm: 2, length_mm: 2 } })
    expect(shaftStrength.judge(keyed)?.figures).toContain('key')
    for (const own of [shaft(60), shaft(14), keyed]) expect(agree(shaftStrength, own)).toBe(true)
  })
})

describe('law: whirling', () => {
  test('silent for a stiff shaft, a warning where runaway comes near', () => {
    expect(whirling.judge(shaft(60))).toBeUndefined()
    const long = shaft(14, {}, { spacing_mm: 400, bladeOverhang_mm: 300 })
    expect(whirling.judge(long)).toBeDefined()
    for (const own of [shaft(60), long]) expect(agree(whirling, own)).toBe(true)
  })
})

describe('law: ladders of walls and carriers', () => {
  test('each step is a document that can be built, thicker than the one before', () => {
    const { design } = chain({
      'rotor.retention': { kind: 'pocket', wall_mm: 2, material: 'PC' },
      'rotor.carrier': { material: 'PC', thickness_mm: 8 },
    }).machine
    for (const [ladder, of] of [
      [thickerWall(design), (m: ReturnType<typeof resolveDesign>) => m.rotor.retention.wall],
      [thickerCarrier(design), (m: ReturnType<typeof resolveDesign>) => m.rotor.carrier!.thickness],
    ] as const) {
      let before = 0
      for (const changes of ladder) {
        const parsed = parseDesign(withChanges(design, changes))
        expect(parsed.ok).toBe(true)
        if (!parsed.ok) continue
        const now = of(resolveDesign(parsed.design))
        expect(now).toBeGreaterThan(before)
        before = now
      }
      expect(ladder.length).toBeGreaterThan(2)
    }
    expect(thickerWall(chain().machine.design)).toEqual([])
    expect(thickerCarrier(chain().machine.design)).toEqual([])
  })
  test('a weak wall asks for a thicker one, and the measure agrees', () => {
    const weak = sampleChain(
      { 'rotor.retention': { kind: 'pocket', wall_mm: 2, material: 'PC' } },
      ({ runaway }) => ({ runaway: { ...runaway, magnetHold: 100 } }),
    )
    expect(magnetRetention.judge(weak)?.remedies[0]).toHaveProperty('ladder')
    expect(agree(magnetRetention, weak)).toBe(true)
  })
})
