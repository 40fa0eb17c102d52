/** Checks of the spread of a difference: laws of shared and of own guesses, and the sum of two that share nothing. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { pairedSpread } from './paired-spread.ts'
import { spreadOutputNames } from './spread-output.ts'
import { finished } from './step.ts'

const name = 'class-room-fan'
const samples = 64

const changed = (change: (document: ReturnType<typeof exampleDocument>) => void) => {
  const document = exampleDocument(name)
  change(document)
  return computeDesign(designOf(document))
}

const base = exampleChain(name)
const moreTurns = changed((document) => {
  document.stator.winding.turns = 165
})

/** A machine in which nothing is guessed but the polarisation read off its magnets, so far off at 90 %. */
const magnets = (value: number, spread: number) =>
  changed((document) => {
    const { shape, length_mm, width_mm, thickness_mm } = document.rotor.magnet
    document.rotor.magnet = {
      shape,
      length_mm,
      width_mm,
      thickness_mm,
      polarization_T: { value, spread, known: 'measured' },
      recoilPermeability: 1,
    }
    document.site.meanWind_m_per_s = 4.5
    document.shaft = { friction_mNm: 1 }
    document.stator.thermalResistance_K_per_W = 5
    document.blades = {
      kind: 'table',
      diameter_m: 0.36,
      points: [0, 0.2, 0.3, 0.2, 0].map((powerCoefficient, k) => ({
        tipSpeedRatio: 1.5 * k,
        powerCoefficient,
      })),
    }
  })

describe('law: how sure a difference is', () => {
  test('a machine against itself: nothing differs in any draw, and every guess is shared', () => {
    const { results, shared, own } = finished(pairedSpread(base, base, { samples }))
    for (const output of spreadOutputNames) {
      const { difference, low, high, spread, verdict } = results[output]
      expect([difference, low, high, spread, verdict]).toEqual([0, 0, 0, 0, 'none'])
    }
    expect(own).toEqual([])
    expect(shared).toContain('rotor.magnet.grade')
  })

  test('swapped machines mirror every interval', () => {
    const there = finished(pairedSpread(base, moreTurns, { samples })).results
    const back = finished(pairedSpread(moreTurns, base, { samples })).results
    for (const output of ['phaseVoltage', 'cutInSpeed', 'runawayVoltage', 'startWind'] as const) {
      const [a, b] = [there[output], back[output]]
      expect(b.difference).toBeCloseTo(-a.difference, 9)
      expect(b.low).toBeCloseTo(-a.high, 9)
      expect(b.high).toBeCloseTo(-a.low, 9)
      expect(b.verdict).toBe(a.verdict)
    }
  })

  test('a tenth more turns: the volts gained are as sure as a tenth of the volts, for the magnets are the same', () => {
    const { phaseVoltage } = finished(pairedSpread(base, moreTurns, { samples })).results
    expect(phaseVoltage.difference / base.voltage.phases[0]!.rms).toBeCloseTo(0.1, 9)
    expect(phaseVoltage.spread / phaseVoltage.alone[0]).toBeCloseTo(0.1, 6)
    expect(phaseVoltage.alone[1] / phaseVoltage.alone[0]).toBeCloseTo(1.1, 6)
    expect(phaseVoltage.verdict).toBe('told')
  })

  test('a reading of other magnets is a guess of its own: the volts are not told apart within it', () => {
    const { results, own } = finished(pairedSpread(magnets(1.2, 0.06), magnets(1.21, 0.06), { samples }))
    expect(own).toContain('rotor.magnet.polarization_T')
    expect(results.phaseVoltage.verdict).toBe('open')
  })
})

describe('agrees: two guesses that share nothing', () => {
  test('the spread of the difference is the root of the sum of both squared, over eight seeds', () => {
    const [from, to] = [magnets(1.2, 0.06), magnets(1.3, 0.09)]
    const seeds = Array.from({ length: 8 }, (_, k) => k + 1)
    const ratios = seeds.map((seed) => {
      const { phaseVoltage } = finished(pairedSpread(from, to, { samples, seed })).results
      return phaseVoltage.spread / Math.hypot(...phaseVoltage.alone)
    })
    const mean = ratios.reduce((sum, ratio) => sum + ratio / ratios.length, 0)
    // the ends of so few draws scatter by a tenth, the mean of eight seeds by a third of that
    expect(Math.abs(mean - 1)).toBeLessThan(0.08)
  })
})
