/** Checks direct volts of an open bridge against a circuit simulator. */
import { describe, expect, test } from 'vitest'
import results from '../../../test/reference/meter/results.json' with { type: 'json' }
import { idleBridgeHeld, idleBridgeMean, smallCurrentDrop } from './idle-bridge.ts'

/** The diode of the netlists by its saturation current, as a drop at a known current. */
const thermal = (1.380649e-23 * 300.15) / 1.602176634e-19
const diodes = {
  drop: 0.7,
  knownCurrent: 7e-9 * Math.exp(0.7 / (1.8 * thermal)),
  ideality: 1.8,
  temperature: 300.15,
}
const envelopeOf = (rms: number) =>
  Float64Array.from({ length: 720 }, (_, k) => {
    const volts = [0, 1, 2].map(
      (j) => rms * Math.SQRT2 * Math.sin((2 * Math.PI * k) / 720 - (2 * Math.PI * j) / 3),
    )
    return Math.max(...volts) - Math.min(...volts)
  })

describe('agrees: circuit simulator, three-phase bridge on a meter of 10 MΩ', () => {
  test('nothing but the meter: mean within 0.02 V', () => {
    for (const [name, rms] of [
      ['bare-half', 0.5],
      ['bare-2v', 2],
      ['bare-8v', 8],
    ] as const)
      expect(
        Math.abs(idleBridgeMean({ envelope: envelopeOf(rms), input: 1e7, ...diodes }) - results[name].volts),
      ).toBeLessThan(0.02)
  })
  test('with a capacitor: mean within 0.005 V', () => {
    for (const [name, rms, f, capacitance] of [
      ['held-small', 2, 20, 1e-7],
      ['held-2v', 2, 20, 1e-6],
      ['held-8v', 8, 40, 1e-6],
    ] as const) {
      const idle = { envelope: envelopeOf(rms), summits: 6 * f, input: 1e7, capacitance, ...diodes }
      expect(Math.abs(idleBridgeHeld(idle) - results[name].volts)).toBeLessThan(0.005)
    }
  })
})

describe('law: open bridge', () => {
  test('a decade of current is n kT/q ln 10; the drop at the known current is the known one', () => {
    const at = (current: number) => smallCurrentDrop({ ...diodes, current })
    expect(at(diodes.knownCurrent)).toBeCloseTo(0.7, 12)
    expect(at(1e-4) - at(1e-5)).toBeCloseTo(1.8 * thermal * Math.LN10, 12)
    expect(at(1e-30)).toBe(0)
  })
  test('nothing in, nothing out; a capacitor never shows less than none; a huge one shows the summit less two drops', () => {
    const still = { envelope: new Float64Array(12), input: 1e7, ...diodes }
    expect(idleBridgeMean(still)).toBe(0)
    expect(idleBridgeHeld({ ...still, summits: 60, capacitance: 1e-5 })).toBe(0)
    for (const rms of [1e-3, 0.1, 3, 400])
      for (const capacitance of [1e-12, 1e-8, 1]) {
        const idle = { envelope: envelopeOf(rms), summits: 60, input: 1e6, capacitance, ...diodes }
        const held = idleBridgeHeld(idle)
        expect(held).toBeGreaterThanOrEqual(idleBridgeMean(idle))
        expect(held).toBeLessThanOrEqual(rms * Math.sqrt(6) * (1 + 1e-9))
      }
  })
})
