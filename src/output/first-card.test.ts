/** Checks of the cards of first machines: their numbers are those of the chain, and the first is first for the reason told. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { spreadStudy } from '../analysis/spread.ts'
import { finished } from '../analysis/step.ts'
import { parseStock, type Stock } from '../machine/stock.ts'
import { type FirstMachine, firstMachines } from '../search/first-machine.ts'
import { cardWind, firstCard, firstReason } from './first-card.ts'

const input = JSON.parse(
  readFileSync(new URL('../../examples/stock/shed-drawer.json', import.meta.url), 'utf8'),
)

function stockOf(changes: object): Stock {
  const parsed = parseStock({ ...input, winding: 'coils', ...changes })
  if (!parsed.ok) throw new Error('the example is no stock')
  return parsed.stock
}

describe('law: a card tells what the chain says', () => {
  const stock = stockOf({})
  const { machines } = finished(firstMachines(stock, { trials: 10 }))
  const [machine] = machines as [FirstMachine]

  test('energy, power, copper and concerns are those of the machine', () => {
    const card = firstCard(machine, stock)
    const { chain } = machine
    expect(card.energy.value).toBe(chain.year.energy)
    expect(card.watts.value).toBe(chain.rowAt(card.watts.wind).watts.useful)
    expect(card.watts.wind).toBe(8)
    expect(card.copperMass).toBe(chain.wound.copperMass)
    expect(Object.values(card.concerns).reduce((sum, count) => sum + count)).toBe(chain.concerns.length)
    expect(card.blocking.length).toBe(card.concerns.blocking)
    expect(card.magnets).toBeLessThanOrEqual(stock.magnetCount)
    expect(structuredClone(card)).toEqual(card)
  })

  test('the ranges are of the same results, and hold the value', () => {
    const card = firstCard(machine, stock, finished(spreadStudy(machine.chain, { samples: 32 })))
    for (const { value, spread } of [card.energy, card.watts, card.cutIn]) {
      expect(spread?.value).toBeCloseTo(value, 6)
      expect(spread!.low).toBeLessThanOrEqual(spread!.median)
      expect(spread!.median).toBeLessThanOrEqual(spread!.high)
    }
  })

  test('all cards of a stock tell their watts in one wind', () => {
    expect(new Set(machines.map(({ chain }) => cardWind(stock, chain))).size).toBe(1)
  })
})

describe('law: the reason told is true', () => {
  const like = (blocking: number, energy: number, watts?: number) =>
    ({
      blocking: Array.from({ length: blocking }, (_, k) => `code-${k}`),
      chain: { year: { energy } },
      wish: watts === undefined ? undefined : { wind: 6, wanted: 10, watts },
    }) as unknown as FirstMachine

  test('one alone, fewer blocked, the wish, the energy', () => {
    expect(firstReason([])).toBeUndefined()
    expect(firstReason([like(1, 5)])).toEqual({ kind: 'alone' })
    expect(firstReason([like(1, 5), like(3, 9)])).toEqual({ kind: 'fewer blocked', fewer: 2 })
    expect(firstReason([like(1, 5, 11), like(1, 9, 12)])).toEqual({ kind: 'wish met' })
    expect(firstReason([like(1, 5, 4), like(1, 9, 3)])).toEqual({ kind: 'wish nearest', share: 0.4 })
    expect(firstReason([like(1, 9), like(1, 6)])).toEqual({ kind: 'energy', times: 1.5 })
  })
})
