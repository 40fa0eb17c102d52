/** Checks the concern of a template printed off its scale. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { greatestTurn, offScale, templateScale } from './template-scale.ts'

describe('agrees: the turn of a stretched sheet, searched over all lines', () => {
  for (const [across, down] of [
    [1, 1.02],
    [0.97, 1],
    [1.01, 0.99],
  ] as const)
    test(`${across} across, ${down} down`, () => {
      let most = 0
      for (let φ = 0; φ < Math.PI / 2; φ += 1e-4) {
        const turned = Math.atan2(down * Math.sin(φ), across * Math.cos(φ))
        most = Math.max(most, Math.abs(turned - φ))
      }
      expect(greatestTurn({ across, down })).toBeCloseTo(most, 7)
    })
  check('2 % one way, degrees', (180 / Math.PI) * greatestTurn({ across: 1, down: 1.02 }), '0.57')
})

describe('law: half a per cent either way', () => {
  test('limits', () => {
    expect(offScale({ across: 1, down: 1 })).toBe(false)
    expect(offScale({ across: 1.005, down: 0.995 })).toBe(false)
    expect(offScale({ across: 1.006, down: 1 })).toBe(true)
    expect(offScale({ across: 1, down: 0.96 })).toBe(true)
    expect(greatestTurn({ across: 0.96, down: 0.96 })).toBe(0)
  })
  const printed = (across_mm: number, down_mm: number, drawn_mm = 100) =>
    templateScale.judge(sampleChain({ 'bench.template': { drawn_mm, across_mm, down_mm } }))
  test('silent where true to scale or not said; fit to page is told by its millimetres', () => {
    expect(templateScale.judge(sampleChain())).toBeUndefined()
    expect(printed(100, 99.6)).toBeUndefined()
    const shrunk = printed(96, 96)
    expect(shrunk?.severity).toBe('warning')
    // the magnets end 120 + 23 mm from the shaft
    expect(shrunk?.figures).toContain('At 143 mm from the shaft a mark is 5.7 mm out of place.')
    expect(printed(100, 102)?.figures).toContain('turned by up to 0.57°, which is 3.4° electrical')
  })
  test('a short bar tells nothing', () => {
    expect(printed(20, 20, 20)?.severity).toBe('note')
    expect(printed(19, 19, 20)?.severity).toBe('warning')
  })
  test('the measure stands on the sound side where the rule is silent', () => {
    const measure = (down_mm: number) =>
      templateScale.measure?.(sampleChain({ 'bench.template': { drawn_mm: 100, across_mm: 100, down_mm } }))
    expect(measure(99.6)?.value).toBeLessThan(measure(99.6)!.limit)
    expect(measure(98)?.value).toBeGreaterThan(measure(98)!.limit)
    expect(templateScale.measure?.(sampleChain())).toBeUndefined()
  })
})
