/** Checks that the guide of the serpentine and the coils prints what is computed now, and says no more than that. */
import { describe, expect, test } from 'vitest'
import { computedPart, contestGuide, guideContest, withComputedPart } from '../scripts/contest-guide.ts'
import { textOf } from './repository.ts'

const minutes = 60_000

describe('law: the guide has not drifted', () => {
  test(
    'its computed part is the one of now; tsx scripts/contest-guide.ts writes it anew',
    () => {
      const text = textOf(contestGuide)
      expect(withComputedPart(text, computedPart())).toBe(text)
    },
    5 * minutes,
  )
})

describe('law: what the guide says in words holds of the numbers', () => {
  test(
    'layers, crowns, shape, drag',
    () => {
      const { contestants, pairs } = guideContest('equal-copper-mass', 4)
      const [flat, coils, oneLayer, narrow] = contestants
      const constant = contestants.map(({ figure }) => figure.motorConstant)
      // the coils win against all, beyond what is open
      for (const other of [0, 2, 3]) expect(pairs.motorConstant[1]![other]!.told).toBe(true)
      expect(constant[1]).toBe(Math.max(...constant))
      // the farthest layer collects least; side by side the phases are alike
      const rms = (k: number) => contestants[k]!.chain.voltage.phases.map((phase) => phase.rms)
      expect(rms(0)).toEqual([...rms(0)].sort((a, b) => b - a))
      expect(rms(0)[2]! / rms(0)[0]!).toBeLessThan(0.8)
      expect(rms(2)[2]! / rms(2)[0]!).toBeGreaterThan(0.9)
      // crowns: more of the wire lies beyond the magnets
      for (const serpentine of [flat, oneLayer, narrow])
        expect(serpentine!.figure.endTurnShare).toBeGreaterThan(2 * coils!.figure.endTurnShare)
      // a wide and flat serpentine makes up about two thirds of the gap
      const made = (constant[0]! - constant[3]!) / (constant[1]! - constant[3]!)
      expect(made).toBeGreaterThan(0.55)
      expect(made).toBeLessThan(0.8)
      // one layer gains in the runs and loses it again
      expect(constant[2]).toBeLessThan(constant[1]!)
      expect(constant[2]).toBeGreaterThan(constant[3]!)
      // less drag, and a warming that nobody can tell
      for (const serpentine of [flat, oneLayer, narrow])
        expect(serpentine!.scores.drag).toBeLessThan(coils!.scores.drag)
      for (const other of [0, 2, 3]) expect(pairs.temperatureRise[1]![other]!.told).toBe(false)
      // unlike phases let harmonics through to the lines
      for (const serpentine of [flat, oneLayer, narrow])
        expect(serpentine!.figure.lineVolts.harmonicShare).toBeGreaterThan(
          coils!.figure.lineVolts.harmonicShare,
        )
    },
    3 * minutes,
  )
})
