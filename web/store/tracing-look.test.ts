/** Checks of what tells tracings apart: no two alike, and what is given back is used again. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { freeLetter, freeLook, mostLaidOver } from './tracing-look.ts'

describe('law: letters and looks of tracings', () => {
  test('a hundred letters, no two alike, the first of them A to Z', () => {
    const letters: string[] = []
    for (let k = 0; k < 100; k++) letters.push(freeLetter(letters))
    expect(new Set(letters).size).toBe(100)
    expect(letters.slice(0, 26).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ')
    expect(letters[26]).toBe('A2')
  })

  test('a letter given back is the next one given', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 59 }), (gone) => {
        const letters: string[] = []
        for (let k = 0; k < 60; k++) letters.push(freeLetter(letters))
        const back = letters[gone]!
        expect(freeLetter(letters.filter((letter) => letter !== back))).toBe(back)
      }),
    )
  })

  test('four lie over at once, each in its own dash, and no fifth', () => {
    const looks: number[] = []
    for (let k = 0; k < mostLaidOver; k++) looks.push(freeLook(looks)!)
    expect(new Set(looks).size).toBe(mostLaidOver)
    expect(freeLook(looks)).toBeUndefined()
    expect(freeLook([0, undefined, 2])).toBe(1)
  })
})
