/** Checks the concern of metal that stands near the magnets. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { movingFieldPlateLoss } from '../../physics/electrics/eddy-plate.ts'
import type { ChainView } from './concern.ts'
import { metalPartEddy, partsTooHigh } from './metal-part-eddy.ts'

describe('agrees: t v² B²/(2 ρ) by hand, half a millimetre of aluminium at 0.3 T and 2 m/s', () => {
  check(
    'kilowatts per square metre',
    movingFieldPlateLoss({
      speed: 2,
      fluxDensity: 0.3,
      waveNumber: 100,
      thickness: 0.5e-3,
      resistivity: 2.8264e-8,
      relativePermeability: 1,
    }) / 1000,
    '3.0',
  )
})

const braked =
  (kilowattHours: number) =>
  ({ year, drag }: ChainView): Partial<ChainView> => ({
    drag: {
      ...drag,
      parts: [
        {
          part: {
            kind: 'ring',
            material: 'aluminium',
            resistivity: 2.8e-8,
            relativePermeability: 1,
            thickness: 2e-3,
            distance: 0.01,
            length: 0.04,
            covers: 2 * Math.PI,
          },
          name: 'ring of aluminium',
          loss: (speed) => 1e-3 * speed ** 2,
          spread: 0.35,
        },
      ],
    },
    year: {
      ...year,
      ledger: { ...year.ledger, parts: { ...year.ledger.parts, parts: kilowattHours * 3.6e6 } },
    },
  })

describe('law: a share of the shaft’s energy, at the upper end of the estimate', () => {
  test('rule', () => {
    expect(partsTooHigh(0.03)).toBe(false)
    expect(partsTooHigh(0.031)).toBe(true)
    expect(metalPartEddy.judge(sampleChain())).toBeUndefined()
    expect(metalPartEddy.judge(sampleChain({}, braked(1)))).toBeUndefined()
    const told = metalPartEddy.judge(sampleChain({}, braked(50)))
    expect(told?.severity).toBe('warning')
    expect(told?.path).toBe('stator.metalParts[0]')
    expect(told?.figures).toContain('ring of aluminium')
    expect(firstRemedy(told)).toMatch(/^Make the ring of plastic/)
  })
})
