/** Checks of the spread: laws of independent errors on designs whose answer is known. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { spreadsOf } from './spread.ts'
import { finished } from './step.ts'

const spreadsFor = (change: (document: ReturnType<typeof exampleDocument>) => void) => {
  const document = exampleDocument('class-room-fan')
  // no spread of the document's own, a polarisation without spread, a measured thermal resistance
  document.site.meanWind_m_per_s = 4.5
  document.shaft = { friction_mNm: 1 }
  document.rotor.magnet = {
    shape: 'block',
    length_mm: 20,
    width_mm: 10,
    thickness_mm: 5,
    polarization_T: 1.2,
  }
  document.stator.thermalResistance_K_per_W = 5
  change(document)
  const chain = computeDesign(designOf(document))
  return finished(spreadsOf(chain))
}

describe('law: spread of the results', () => {
  test('a design without guesses has none, but for the runaway, which the sections of computed blades leave open', () => {
    const { runawaySpeed, ...others } = spreadsFor(() => {})
    for (const { spread, causes } of Object.values(others)) {
      expect(spread).toBe(0)
      expect(causes).toEqual([])
    }
    expect(runawaySpeed.causes).toEqual([{ path: 'drag of the blade sections', share: 1 }])
    expect(runawaySpeed.spread / runawaySpeed.value).toBeGreaterThan(0.02)
    expect(runawaySpeed.spread / runawaySpeed.value).toBeLessThan(0.4)
  })
  test('a table of measured powers leaves nothing open', () => {
    const { runawaySpeed } = spreadsFor((document) => {
      document.blades = {
        kind: 'table',
        diameter_m: 0.36,
        points: [0, 0.2, 0.3, 0.2, 0].map((powerCoefficient, k) => ({
          tipSpeedRatio: 1.5 * k,
          powerCoefficient,
        })),
      }
    })
    expect(runawaySpeed.spread).toBe(0)
  })
  test('open-circuit volts follow the polarisation one to one', () => {
    const { phaseVoltage } = spreadsFor((document) => {
      document.rotor.magnet.polarization_T = { value: 1.2, spread: 0.06, known: 'guessed' }
      document.rotor.magnet.recoilPermeability = 1
    })
    expect(phaseVoltage.spread / phaseVoltage.value).toBeCloseTo(0.05, 9)
    expect(phaseVoltage.causes).toEqual([{ path: 'rotor.magnet.polarization_T', share: 1 }])
  })
  test('two guesses add as the root of squares, the larger one first', () => {
    const one = spreadsFor((document) => {
      document.rotor.magnet.polarization_T = { value: 1.2, spread: 0.06 }
    })
    const other = spreadsFor((document) => {
      document.stator.winding.distance_mm = { value: 5, spread: 0.1 }
    })
    const both = spreadsFor((document) => {
      document.rotor.magnet.polarization_T = { value: 1.2, spread: 0.06 }
      document.stator.winding.distance_mm = { value: 5, spread: 0.1 }
    })
    expect(both.phaseVoltage.spread).toBeCloseTo(
      Math.hypot(one.phaseVoltage.spread, other.phaseVoltage.spread),
      9,
    )
    expect(both.phaseVoltage.causes[0]!.share).toBeGreaterThan(both.phaseVoltage.causes[1]!.share)
  })
  test('a measured heat run takes the guess out of the copper temperature', () => {
    const guessed = spreadsFor((document) => {
      delete document.stator.thermalResistance_K_per_W
    })
    expect(guessed.copperTemperature.spread).toBeGreaterThan(0)
    expect(guessed.copperTemperature.causes[0]!.path).toBe('estimated thermal resistance')
  })
})
