/** Checks of warming from cold: it ends where the table of winds stands, and nothing falls on the way. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { warmUp } from './warm-up.ts'

const names = ['hen-house-drum', 'class-room-fan'] as const

describe('agrees: stepped through its heat net or solved for rest, the machine ends as warm', () => {
  for (const name of names)
    test(name, () => {
      const chain = exampleChain(name)
      for (const [k, row] of chain.rows.entries()) {
        if (k % 6 !== 3 || row.state === 'held') continue
        const found = warmUp(chain, k)
        if (found === undefined) {
          expect(row.speed).toBe(0)
          continue
        }
        // the steps end where nothing moves by more than 0.2 mK a second: some tenths of a kelvin short of rest
        const [, copper] = found.lines
        expect(Math.abs(copper!.values.at(-1)! - row.copperTemperature)).toBeLessThan(
          0.5 + 0.01 * (row.copperTemperature - chain.machine.site.ambient),
        )
      }
    })
})

describe('law: warming', () => {
  for (const name of names)
    test(`${name}: it begins as cold as the air and never cools`, () => {
      const chain = exampleChain(name)
      const turning = chain.rows.findIndex(({ watts }) => watts.winding > 0)
      const { time, lines, settledAt } = warmUp(chain, turning)!
      const { ambient } = chain.machine.site
      expect(time[0]).toBe(0)
      for (const { values } of lines) {
        expect(values).toHaveLength(time.length)
        for (let k = 1; k < values.length; k++) expect(values[k]).toBeGreaterThan(values[k - 1]! - 0.02)
      }
      expect(lines[1]!.values[0]).toBeCloseTo(ambient, 9)
      expect(settledAt).toBeGreaterThan(0)
      expect(settledAt).toBeLessThanOrEqual(time.at(-1)!)
    })
  test('a rotor at rest warms by nothing', () => {
    const chain = exampleChain('hen-house-drum')
    const resting = chain.rows.findIndex(({ speed }) => speed === 0)
    if (resting >= 0) expect(warmUp(chain, resting)).toBeUndefined()
    expect(warmUp({ ...chain, rows: chain.rows.map((row) => ({ ...row, speed: 0 })) }, 3)).toBeUndefined()
  })
})
