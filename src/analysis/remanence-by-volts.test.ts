/** Checks what volts on the bench tell of the magnets. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { remanenceByVolts } from './remanence-by-volts.ts'

type Document = ReturnType<typeof exampleDocument>

/** A single flat coil before the magnets of the class-room disc, read at a known speed. */
function withTestCoil(readings: readonly object[], change: (document: Document) => void = () => {}) {
  const document = exampleDocument('class-room-fan')
  document.stator.winding = {
    kind: 'coils',
    coilCount: 1,
    phaseCount: 1,
    turns: 100,
    hole: { shape: 'round', holeDiameter_mm: 8 },
    legWidth_mm: 4,
    bundleDepth_mm: 4,
    distance_mm: 4,
  }
  document.stator.connection = 'single'
  document.bench = { readings }
  change(document)
  return computeDesign(designOf(document))
}

const reading = (voltage_V: number, more: object = {}) => ({
  speed_rpm: 300,
  voltage_V,
  kind: 'rms',
  place: 'phase',
  ...more,
})

/** What the chain itself computes for the coil at 300 rpm, at the site's temperature. */
const expected = withTestCoil([]).voltage.phases[0]!.rms * 10 * Math.PI

describe('law: a test coil measures the magnets', () => {
  test('the computed volts give the remanence they were computed with', () => {
    const chain = withTestCoil([reading(expected)])
    const { measured, used } = remanenceByVolts(chain)!
    expect(used).toEqual([0])
    expect(measured.polarization / chain.machine.rotor.magnet.remanence).toBeCloseTo(1, 2)
  })
  test('a remanence stated as exact is overruled in proportion to the volts', () => {
    const exact = (document: Document) => {
      const { grade: _, ...magnet } = document.rotor.magnet
      document.rotor.magnet = { ...magnet, polarization_T: 1.2 }
    }
    const alone = withTestCoil([], exact).voltage.phases[0]!.rms * 10 * Math.PI
    for (const share of [0.8, 1, 1.1]) {
      const found = remanenceByVolts(withTestCoil([reading(share * alone)], exact))!.measured
      expect(found.polarization / 1.2 / share).toBeCloseTo(1, 2)
    }
  })
  test('a finer reading narrows the grade’s spread more, and pulls the answer to itself', () => {
    const coarse = remanenceByVolts(
      withTestCoil([reading({ value: 0.9 * expected, spread: 0.1 * expected } as never)]),
    )!
    const fine = remanenceByVolts(
      withTestCoil([reading({ value: 0.9 * expected, spread: 0.01 * expected } as never)]),
    )!
    expect(fine.measured.spread).toBeLessThan(coarse.measured.spread)
    expect(fine.measured.polarization).toBeLessThan(coarse.measured.polarization)
  })
  test('readings that do not say their kind or place are no measure', () => {
    expect(remanenceByVolts(withTestCoil([reading(expected, { kind: 'unsaid' })]))).toBeUndefined()
    expect(remanenceByVolts(withTestCoil([reading(expected, { place: 'after bridge' })]))).toBeUndefined()
    expect(remanenceByVolts(withTestCoil([]))).toBeUndefined()
  })
})
