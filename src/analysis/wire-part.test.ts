/** Checks of what a stretch of wire is called. */
import { describe, expect, test } from 'vitest'
import { wirePart } from './wire-part.ts'

const degrees = Math.PI / 180
const straight = (wave: boolean, lean: number) =>
  wirePart(wave, { straight: true, beyond: false, pieceLean: lean * degrees, lean: lean * degrees })
const bend = (wave: boolean, lean: number) =>
  wirePart(wave, { straight: false, beyond: false, pieceLean: Math.PI / 2, lean: lean * degrees })

describe('law: every lean has one name, and names change once as the lean grows', () => {
  const named = (name: (wave: boolean, lean: number) => string, wave: boolean) =>
    Array.from({ length: 91 }, (_, lean) => name(wave, lean)).filter((word, k, all) => word !== all[k - 1])
  test('straight pieces', () => {
    expect(named(straight, true)).toEqual(['run', 'slanted run', 'crown'])
    expect(named(straight, false)).toEqual(['side', 'slanted side', 'end'])
  })
  test('straight pieces past the magnets', () => {
    const past = (wave: boolean, lean: number) =>
      wirePart(wave, { straight: true, beyond: true, pieceLean: lean * degrees, lean: lean * degrees })
    expect(named(past, true)).toEqual(['run', 'crown'])
    expect(named(past, false)).toEqual(['side', 'end'])
  })
  test('bends', () => {
    expect(named(bend, true)).toEqual(['crown'])
    expect(named(bend, false)).toEqual(['rounded side', 'end'])
  })
})
