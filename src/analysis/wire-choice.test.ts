/** Checks the table of wire sizes: what must scale exactly does, and what must rise or fall does. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { finished } from './step.ts'
import { wireChoices } from './wire-choice.ts'

const chain = exampleChain('class-room-fan')
const byHand = finished(wireChoices(chain, { count: 2 }))
const kept = finished(wireChoices(chain, { count: 2, keepTurns: true }))

describe('agrees: volts go with the turns, whatever the wire; the design stands in the table as it is', () => {
  test('volts over turns', () => {
    const perTurn = byHand.choices.map(({ turns, outcome }) => outcome!.voltage / turns)
    for (const value of perTurn) expect(value / perTurn[0]!).toBeCloseTo(1, 9)
  })
  test('the drawn row is the chain', () => {
    const drawn = byHand.choices.find(({ asDrawn }) => asDrawn)!
    expect(drawn.name).toBe('AWG 26')
    expect(drawn.turns).toBe(150)
    expect(drawn.outcome!.resistance).toBe(
      Math.max(...chain.voltage.phases.map(({ resistance }) => resistance)),
    )
    expect(drawn.outcome!.copperMass).toBe(chain.wound.copperMass)
  })
  test('a row is the design computed with that wire from nothing', () => {
    const row = kept.choices.find(({ name }) => name === 'AWG 25')!
    const document = exampleDocument('class-room-fan')
    document.stator.wire.size = 'AWG 25'
    const alone = computeDesign(designOf(document))
    expect(row.outcome!.windingLoss / alone.rowAt(kept.wind).watts.winding).toBeCloseTo(1, 9)
    expect(row.outcome!.useful[0]! / alone.rowAt(kept.winds[0]!).watts.useful).toBeCloseTo(1, 9)
  })
})

describe('law: thicker wire', () => {
  test('same turns: ohms fall as 1/d², copper rises', () => {
    kept.choices.slice(1).forEach(({ outcome }, k) => {
      expect(outcome!.resistance).toBeLessThan(kept.choices[k]!.outcome!.resistance)
      expect(outcome!.copperMass).toBeGreaterThan(kept.choices[k]!.outcome!.copperMass)
    })
  })
  test('by hand: fewer turns of thicker wire', () => {
    const hand = byHand.choices.filter(({ asDrawn }) => !asDrawn)
    hand.slice(1).forEach(({ turns }, k) => {
      expect(turns).toBeLessThan(hand[k]!.turns)
    })
    expect(hand.map(({ step }) => step)).toEqual([-2, -1, 0, 1, 2])
  })
  test('what cannot be laid has no outcome', () => {
    const document = exampleDocument('class-room-fan')
    document.stator.winding.turns = 260
    const crowded = finished(wireChoices(computeDesign(designOf(document)), { count: 1, keepTurns: true }))
    expect(crowded.choices[2]!.outcome).toBeUndefined()
  })
  test('progress rises to one', () => {
    const steps = wireChoices(chain, { count: 1 })
    let before = 0
    for (let step = steps.next(); step.done !== true; step = steps.next()) {
      expect(step.value).toBeGreaterThanOrEqual(before - 1e-9)
      expect(step.value).toBeLessThanOrEqual(1)
      before = step.value
    }
  })
  test('strip has neighbours in thickness', () => {
    const document = exampleDocument('boathouse-two-disc')
    delete document.stator.wire.size
    document.stator.wire.strip = { width_mm: 4, thickness_mm: 0.9 }
    document.stator.winding.turns = 30
    const table = finished(wireChoices(computeDesign(designOf(document)), { count: 1 }))
    expect(table.choices.map(({ name }) => name)).toContain('4 × 1 mm')
    expect(table.choices.map(({ name }) => name)).toContain('4 × 0.8 mm')
  })
})
