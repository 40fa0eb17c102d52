/** Checks of the light theme's colours read off style sheets. */
import { describe, expect, test } from 'vitest'
import { lightPalette, type PaletteRule } from './light-palette.ts'

const rule = (selector: string, ink: string, condition = ''): PaletteRule => ({
  selector,
  condition,
  properties: [['--ink', ink]],
})

const ink = (...rules: readonly PaletteRule[]) => lightPalette(rules).get('--ink')

describe('law: the light theme stands over what holds everywhere, wherever it is written', () => {
  test('the last of what holds everywhere', () => {
    expect(ink(rule(':root', 'a'), rule('html, body', 'b'))).toBe('b')
  })
  test('dark, sunlit and printed rules are passed over', () => {
    expect(
      ink(
        rule(':root', 'a'),
        rule(':root', 'b', '(prefers-color-scheme: dark)'),
        rule(':root[data-theme="dark"]', 'c'),
        rule('[data-theme="sun"]', 'd'),
        rule(':root', 'e', 'print'),
      ),
    ).toBe('a')
  })
  test('the light one’s own win over a later rule for all', () => {
    expect(ink(rule(':root[data-theme="light"]', 'a'), rule(':root', 'b'))).toBe('a')
    expect(ink(rule(':root', 'a'), rule(':root', 'b', '(prefers-color-scheme: light)'))).toBe('b')
  })
  test('rules for parts of the page are none of it', () => {
    expect(ink(rule('.card', 'a'))).toBeUndefined()
  })
})
