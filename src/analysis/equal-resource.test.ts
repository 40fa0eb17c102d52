/** Checks that a design brought to a resource uses just that much, and is refused where it cannot. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { awgDiameter_mm } from '../data/wire.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { Refusal } from '../refusal/require.ts'
import { nominal } from '../units/quantity.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { contestRules } from './contest-rule.ts'
import { fittedDesign, nearestSoldSize, type Resource, resourceAmount } from './equal-resource.ts'
import { cutInSpeed } from './load-point.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { finished } from './step.ts'
import { woundMachine } from './winding.ts'

type Document = ReturnType<typeof fixedDocument>
const rules = contestRules.filter((rule) => rule !== 'as-they-are')
const torque = 0.4

function designFrom(name: 'drum' | 'disc' | 'twoDiscs', change: (document: Document) => void = () => {}) {
  const document = fixedDocument(name)
  document.stator.wire.price_per_kg = 20
  change(document)
  return designOf(document)
}

function woundOf(machine: Parameters<typeof conductorLayout>[0]) {
  const layout = conductorLayout(machine)
  const wound = woundMachine(machine, layout)
  const field = rotorField(machine, machine.site.ambient)
  return { machine, layout, wound, voltage: openCircuitVoltage(machine, field, layout, wound) }
}

const brought = (design: ReturnType<typeof designOf>, resource: Resource, cutIn?: number) =>
  finished(fittedDesign(design, { resource, cutIn }))

const amountOf = (design: ReturnType<typeof designOf>, rule: Resource['rule']): number =>
  resourceAmount({ rule, torque }, woundOf(resolveDesign(design)))

const refusalOf = (act: () => unknown): Refusal => {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

describe('law: a fitted design uses just the amount', () => {
  for (const name of ['drum', 'disc'] as const)
    for (const rule of rules)
      for (const share of [0.8, 1.1])
        test(`${rule}, ${name}, ${share} of its own`, () => {
          const design = designFrom(name)
          const amount = share * amountOf(design, rule)
          const fitted = brought(design, { rule, amount, torque })
          expect(amountOf(fitted.design, rule) / amount).toBeCloseTo(1, 6)
          // less loss takes more copper; of all else more is more
          const wider = rule === 'equal-loss' ? share < 1 : share > 1
          expect(fitted.widthRatio > 1).toBe(wider)
          expect(fitted.turns).toEqual({ from: design.stator.winding.turns, to: design.stator.winding.turns })
          // packed as before: bare wire over the section stays
          expect(fitted.wire.to / fitted.wire.from).toBeCloseTo(Math.sqrt(fitted.widthRatio), 9)
        })
  test('its own amount leaves it the very document it was', () => {
    for (const rule of rules) {
      const design = designFrom('drum')
      const fitted = brought(design, { rule, amount: amountOf(design, rule), torque })
      expect(fitted.design).toBe(design)
      expect(fitted.widthRatio).toBe(1)
    }
  })
  test('the loss at a torque is that of k_m: half the loss, twice k_m²', () => {
    const design = designFrom('disc')
    const amount = amountOf(design, 'equal-loss')
    const twice = amountOf(design, 'equal-loss')
    expect(
      resourceAmount({ rule: 'equal-loss', torque: 2 * torque }, woundOf(resolveDesign(design))),
    ).toBeCloseTo(4 * twice, 9)
    expect(amount).toBeGreaterThan(0)
  })
})

describe('law: turns follow the speed at which current begins', () => {
  test('to the nearest whole turn, at the same amount', () => {
    const design = designFrom('drum')
    const now = woundOf(resolveDesign(design))
    const before = cutInSpeed(now.machine, now.voltage)
    for (const share of [0.5, 0.8, 1.5]) {
      const amount = amountOf(design, 'equal-copper-mass')
      const fitted = brought(design, { rule: 'equal-copper-mass', amount, torque }, share * before)
      const after = cutInSpeed(fitted.machine, woundOf(fitted.machine).voltage)
      expect(Math.abs(after / (share * before) - 1)).toBeLessThan(0.5 / fitted.turns.to + 1e-3)
      expect(amountOf(fitted.design, 'equal-copper-mass') / amount).toBeCloseTo(1, 6)
      // thinner wire for more turns: k_m stays but for leads and joints
      expect(amountOf(fitted.design, 'equal-loss') / amountOf(design, 'equal-loss')).toBeCloseTo(1, 1)
    }
  })
  test('no battery, no such speed', () => {
    const design = designFrom('disc')
    expect(design.load.kind).not.toBe('battery')
    const amount = amountOf(design, 'equal-copper-mass')
    expect(brought(design, { rule: 'equal-copper-mass', amount, torque }, 5).design).toBe(design)
  })
})

describe('law: the document is kept but for width, wire and turns', () => {
  test('a spread stays, a gauge becomes a diameter, the place stays', () => {
    const design = designFrom('disc', ({ stator }) => {
      stator.wire.size = 'AWG 26'
      stator.winding.legWidth_mm = { value: 10, spread: 0.5, known: 'guessed' }
    })
    const amount = 0.8 * amountOf(design, 'equal-copper-mass')
    const { design: fitted, widthRatio } = brought(design, { rule: 'equal-copper-mass', amount, torque })
    const { winding, wire } = fitted.stator
    if (winding.kind !== 'coils' || design.stator.winding.kind !== 'coils') throw new Error('coils expected')
    expect(winding.legWidth_mm).toEqual({ value: 10 * widthRatio, spread: 0.5, known: 'guessed' })
    expect(nominal(wire.size as number)).toBeCloseTo(awgDiameter_mm(26) * Math.sqrt(widthRatio), 9)
    expect({ ...fitted.stator, winding: 0, wire: 0 }).toEqual({ ...design.stator, winding: 0, wire: 0 })
    expect({ ...winding, legWidth_mm: 0 }).toEqual({ ...design.stator.winding, legWidth_mm: 0 })
    expect({ ...fitted, stator: 0 }).toEqual({ ...design, stator: 0 })
  })
  test('a strip keeps its form', () => {
    const design = designFrom('disc', ({ stator }) => {
      delete stator.wire.size
      stator.wire.strip = { width_mm: 1, thickness_mm: 0.4 }
      stator.winding.turns = 20
    })
    const amount = 0.7 * amountOf(design, 'equal-copper-mass')
    const fitted = brought(design, { rule: 'equal-copper-mass', amount, torque })
    const strip = fitted.design.stator.wire.strip!
    expect(nominal(strip.width_mm) / nominal(strip.thickness_mm)).toBeCloseTo(2.5, 9)
    // a standard gives the edges by the thickness, in steps: the copper is met all the same
    expect(amountOf(fitted.design, 'equal-copper-mass') / amount).toBeCloseTo(1, 2)
  })
})

describe('law: what no longer fits its place is refused, with a field and a way out', () => {
  test('coils that would meet their neighbours', () => {
    const design = designFrom('twoDiscs')
    const amount = 3 * amountOf(design, 'equal-copper-mass')
    const { message, code } = refusalOf(() => brought(design, { rule: 'equal-copper-mass', amount, torque }))
    expect(code).toBe('conflict')
    expect(message).toMatch(/^stator\.winding\.legWidth_mm must be .*make its bundle deeper/)
  })
  test('runs that would meet each other', () => {
    const design = designFrom('drum')
    const amount = 8 * amountOf(design, 'equal-winding-volume')
    const { message } = refusalOf(() => brought(design, { rule: 'equal-winding-volume', amount, torque }))
    expect(message).toMatch(/^stator\.winding\.bundleWidth_mm must be .*come to equal winding volume/)
  })
  test('a k_m that no copper gives', () => {
    const design = designFrom('drum')
    const amount = 0.05 * amountOf(design, 'equal-loss')
    const { message } = refusalOf(() => brought(design, { rule: 'equal-loss', amount, torque }))
    expect(message).toContain('stator.winding.bundleWidth_mm')
  })
  test('a price that is not there', () => {
    const design = designFrom('drum', ({ stator }) => {
      delete stator.wire.price_per_kg
    })
    const { message, code } = refusalOf(() => brought(design, { rule: 'equal-cost', amount: 3, torque }))
    expect(code).toBe('missing-key')
    expect(message).toMatch(/^stator\.wire\.price_per_kg must be above zero in every design/)
  })
  test('amounts without meaning', () => {
    for (const amount of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => brought(designFrom('drum'), { rule: 'equal-copper-mass', amount, torque })).toThrow(
        Refusal,
      )
    expect(() => brought(designFrom('drum'), { rule: 'equal-loss', amount: 1, torque: 0 })).toThrow(Refusal)
  })
})

describe('law: the nearest size that shops sell', () => {
  test('a size is its own, others go to the nearest by ratio', () => {
    expect(nearestSoldSize(0.5e-3)).toBe(0.5e-3)
    expect(nearestSoldSize(0.672e-3)).toBe(0.67e-3)
    expect(nearestSoldSize(0.685e-3)).toBeCloseTo(0.67e-3, 12)
    expect(nearestSoldSize(5e-3)).toBeUndefined()
    expect(nearestSoldSize(0.03e-3)).toBeUndefined()
  })
})
