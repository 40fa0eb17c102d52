/** Checks what the diodes carry, lose and bear against the ledger of the same wind and the law of currents. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { bridgeDuty } from './bridge-duty.ts'
import { type Chain, computeDesign } from './compute.ts'
import { safetyRatings } from './safety-rating.ts'

const chargingRows = ({ rows }: Chain) =>
  rows.flatMap((row, k) => (row.dcCurrent > 0 && row.state === 'charging' ? [k] : []))

const delta = (): Chain => {
  const document = exampleDocument('hen-house-drum')
  document.stator.connection = 'delta'
  return computeDesign(designOf(document))
}

const chains = [
  ['loose diodes, a battery', exampleChain('hen-house-drum')],
  ['a block of diodes', exampleChain('boathouse-two-disc')],
  ['a resistor', exampleChain('class-room-fan')],
  ['the same in delta', delta()],
] as const

/** Of a table of speeds and temperatures against the circuit solved in just that state, from a tenth of the most amps on. */
const tableError = 0.02

describe('agrees: the heat of the diodes, by each diode and by the ledger of the table of winds', () => {
  test.each(chains)('%s', (_, chain) => {
    const rows = chargingRows(chain)
    const most = Math.max(...chain.rows.map(({ dcCurrent }) => dcCurrent))
    expect(rows.length).toBeGreaterThan(2)
    for (const k of rows) {
      const row = chain.rows[k]!
      const duty = bridgeDuty(chain, k)!
      // where the first amps flow they change more from node to node of the table than it can tell
      if (row.dcCurrent < 0.1 * most) continue
      expect(Math.abs(duty.wholeLoss / row.watts.diodes - 1)).toBeLessThan(tableError)
      expect(Math.abs(duty.output / row.dcCurrent - 1)).toBeLessThan(tableError)
    }
  })
})

describe('law: what one diode carries', () => {
  test.each(chains)(
    '%s: half the legs’ diodes together carry the direct current; mean ≤ rms ≤ peak',
    (_, chain) => {
      for (const k of chargingRows(chain)) {
        const { mean, rms, peak, output, diodes, loss, wholeLoss, reverse } = bridgeDuty(chain, k)!
        // an unlike machine loads its legs unlike: the one that carries most has no less than its share
        expect(mean).toBeGreaterThanOrEqual((output / (diodes / 2)) * 0.9999)
        expect(mean).toBeLessThanOrEqual(output)
        expect(rms).toBeGreaterThanOrEqual(mean)
        expect(peak).toBeGreaterThanOrEqual(rms)
        expect(loss * diodes).toBeGreaterThanOrEqual(wholeLoss * 0.9999)
        expect(reverse).toBeGreaterThan(0)
      }
    },
  )
  test('nothing where no current flows', () => {
    expect(bridgeDuty(exampleChain('hen-house-drum'), 0)).toBeUndefined()
  })
  test('a stated threshold without a spread has none; the kind’s scatter goes with the amps', () => {
    const document = exampleDocument('hen-house-drum')
    document.bridge.threshold_V = 0.7
    const chain = computeDesign(designOf(document))
    const k = chargingRows(chain).at(-1)!
    expect(bridgeDuty(chain, k)!.lossSpread).toBe(0)
    const usual = exampleChain('hen-house-drum')
    const [slow, fast] = [chargingRows(usual)[1]!, chargingRows(usual).at(-1)!].map(
      (at) => bridgeDuty(usual, at)!,
    )
    // every diode of a sound bridge carries its share of twice the direct current
    expect(slow!.lossSpread / slow!.output).toBeCloseTo(2 * 0.15, 6)
    expect(fast!.lossSpread / fast!.output).toBeCloseTo(2 * 0.15, 6)
  })
})

describe('agrees: the volts wanted of the diodes are those of the labels', () => {
  test.each(chains)('%s', (_, chain) => {
    const wanted = bridgeDuty(chain, chargingRows(chain)[0]!)!.reverseWanted
    expect(safetyRatings(chain)[0]!.bounds[0]!.value).toBe(wanted)
  })
})
