/** Checks of colours as browsers compute them, written in hexadecimal digits. */
import { describe, expect, test } from 'vitest'
import { plainColour } from './plain-colour.ts'

describe('law: the same colour in other words', () => {
  for (const [computed, colour, opacity] of [
    ['rgb(31, 99, 131)', '#1f6383', 1],
    ['rgb(0 0 0)', '#000000', 1],
    ['rgba(31, 99, 131, 0.5)', '#1f6383', 0.5],
    ['rgb(31 99 131 / 25%)', '#1f6383', 0.25],
    ['color(srgb 1 0.5 0)', '#ff8000', 1],
    ['rgba(0, 0, 0, 0)', 'none', 1],
    ['transparent', 'none', 1],
    ['none', 'none', 1],
  ] as const)
    test(computed, () => expect(plainColour(computed)).toEqual({ colour, opacity }))
  test('what is no colour is left alone', () => {
    for (const computed of ['url("#zone")', 'currentcolor', 'context-fill', 'color(display-p3 1 0 0)'])
      expect(plainColour(computed)).toBeUndefined()
  })
})
