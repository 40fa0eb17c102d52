/** Checks what a dump load does against the balance of power and the rule that judges it. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { dumpDuty } from './dump-duty.ts'

const chain = exampleChain('hen-house-drum')

describe('law: a dump load behind a full battery', () => {
  test('it takes on average what arrives, and no more than its resistance lets it', () => {
    for (const [k, row] of chain.rows.entries()) {
      const { power, takes, share, holds, working } = dumpDuty(chain, k)!
      expect(power).toBeCloseTo(row.watts.useful + row.watts.battery, 9)
      expect(share[0]).toBeLessThanOrEqual(share[1])
      expect(share[1]).toBeLessThanOrEqual(1)
      if (!holds) continue
      expect(share[0] * takes[1]).toBeCloseTo(power, 9)
      expect(working).toBe(false)
    }
  })
  test('one of too many ohms does not hold the machine', () => {
    const document = exampleDocument('hen-house-drum')
    document.protection.dump.resistance_ohm = 60
    const weak = computeDesign(designOf(document))
    const strongest = weak.rows.reduce(
      (best, row, k) => (row.watts.useful > weak.rows[best]!.watts.useful ? k : best),
      0,
    )
    const { holds, takes, share } = dumpDuty(weak, strongest)!
    expect(holds).toBe(false)
    expect(takes[1]).toBeCloseTo(14.4 ** 2 / 60, 9)
    expect(share).toEqual([1, 1])
  })
  test('none without one', () => {
    expect(dumpDuty(exampleChain('boathouse-two-disc'), 3)).toBeUndefined()
  })
})
