/** Checks of the arch of a pipe's section. */
import { describe, expect, test } from 'vitest'
import { pipeCamber, pipeChord } from './pipe-blade.ts'

describe('agrees: height of the segment R − √(R² − c²/4)', () => {
  for (const c of [0.01, 0.05, 0.1, 0.19])
    test(`chord ${c} m of a 200 mm pipe`, () => {
      const height = 0.1 - Math.sqrt(0.01 - c ** 2 / 4)
      expect(pipeCamber({ chord: c, pipeRadius: 0.1 })).toBeCloseTo(height / c, 12)
    })
})

describe('law: inverse and limits', () => {
  test('chord of a camber of a chord; half a pipe is arched by half its chord', () => {
    for (const c of [0.001, 0.08, 0.2])
      expect(pipeChord({ camber: pipeCamber({ chord: c, pipeRadius: 0.1 }), pipeRadius: 0.1 })).toBeCloseTo(
        c,
        12,
      )
    expect(pipeCamber({ chord: 0.2, pipeRadius: 0.1 })).toBeCloseTo(0.5, 12)
    expect(() => pipeCamber({ chord: 0.21, pipeRadius: 0.1 })).toThrow(/above-maximum/)
    expect(() => pipeChord({ camber: 0.6, pipeRadius: 0.1 })).toThrow(/above-maximum/)
  })
})
