/** Checks the concern of wire that does not fit. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { conductorResistance } from '../../physics/electrics/resistance.ts'
import type { ChainView } from './concern.ts'
import { fitFaults, wireFit } from './wire-fit.ts'

describe('agrees: ρ/(π d²/4) by hand', () => {
  check(
    'ohms of a metre of 0.8 mm',
    conductorResistance({ length: 1, area: (Math.PI * 0.8e-3 ** 2) / 4, resistivity: 1.724e-8 }),
    '0.0343',
  )
})

const changed =
  (fit: Partial<ChainView['wound']['fit']>) =>
  ({ wound }: ChainView) => ({ wound: { ...wound, fit: { ...wound.fit, ...fit } } })

describe('law: room, reel, density', () => {
  const fit = { turns: 60, handTurns: 80, hexagonalTurns: 100, room: 1e-3, reelShort: -5, density: 4e6 }
  test('faults', () => {
    expect(fitFaults(fit)).toEqual([])
    expect(fitFaults({ ...fit, turns: 90 })).toEqual(['tight'])
    expect(fitFaults({ ...fit, turns: 101, room: -1e-3, reelShort: 3, density: 7e6 })).toEqual([
      'cannot fit',
      'overlap',
      'reel too short',
      'dense current',
    ])
    expect(fitFaults({ ...fit, room: undefined, reelShort: undefined })).toEqual([])
  })
  test('silent with room, a warning without', () => {
    expect(wireFit.judge(sampleChain())).toBeUndefined()
    const tight = wireFit.judge(sampleChain({}, changed({ handTurns: 50 })))
    expect(tight?.severity).toBe('warning')
    expect(firstRemedy(tight)).toContain('over its enamel')
    expect(wireFit.judge(sampleChain({}, changed({ reelShort: 12 })))?.figures).toContain('12.0 m short')
    expect(wireFit.judge(sampleChain({}, changed({ neighbourRoom: -1e-3 })))?.what).toContain(
      'in each other’s way',
    )
  })
})
