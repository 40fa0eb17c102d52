/** Checks the page of the electrical side. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { sampleChain } from '../../test/sample-chain.ts'
import type { Chain } from '../analysis/compute.ts'
import { concernsOf } from '../analysis/concerns.ts'
import { safetyPage, safetyResult } from './safety-page.ts'

function withConcerns(fields: Record<string, unknown>): Chain {
  const chain = sampleChain(fields)
  return { ...chain, concerns: concernsOf(chain) }
}

describe('law: the page of the electrical side', () => {
  const brake = { 'protection.electrical': 'shorting switch', 'protection.dump': undefined }
  const chains = [
    ['a dump load', withConcerns({})],
    [
      'a brake, no limiter, a wet place',
      withConcerns({ ...brake, 'protection.mechanical': 'none', wiring: { surroundings: 'wet' } }),
    ],
    ['an example', exampleChain('class-room-fan')],
  ] as const
  for (const [name, chain] of chains)
    test(`${name}: figures, order, who to ask; no line too long`, () => {
      const lines = safetyPage(chain).map(({ text }) => text)
      const text = lines.join('\n')
      for (const part of ['load lost', 'insulation of every wire', 'before touching', 'licensed electrician'])
        expect(text).toContain(part)
      expect(text).not.toMatch(/NaN|undefined|Infinity|—(?! the)/)
      expect(lines.filter((line) => [...line].length > 112)).toEqual([])
      const result = safetyResult(chain)
      expect(JSON.parse(JSON.stringify(result))).toEqual(result)
      expect(result.shorted.line_A_rms).toBeGreaterThan(0)
    })
  test('earthing is never told as a choice', () => {
    const words = safetyResult(exampleChain('class-room-fan')).whoToAsk.join(' ')
    expect(words).toContain('never left out')
    expect(words).not.toMatch(/optional|if you like|not needed/)
  })
})
