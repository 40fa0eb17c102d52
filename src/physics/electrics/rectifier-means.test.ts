/** Checks the means of a bridge by Gauss's rule against those by even samples, also of waves read from a grid. */
import { describe, expect, test } from 'vitest'
import { machine, phases } from '../../../test/sample-rectifier.ts'
import { type FourierSeries, seriesScaled, zeroSeries } from '../../numerics/fourier.ts'
import { type RectifierInput, rectifierMeans, rectifierPoint } from './bridge-rectifier.ts'

const off = (actual: number, wanted: number) => Math.abs(actual / wanted - 1)

function alike(input: RectifierInput, share: number) {
  const means = rectifierMeans(input)
  const point = rectifierPoint(input)
  expect(off(means.dcCurrent, point.dcCurrent), 'dc').toBeLessThan(share)
  expect(off(means.dcCurrentRms, point.dcCurrentRms), 'dc rms').toBeLessThan(share)
  expect(off(means.power.shaft, point.power.shaft), 'shaft').toBeLessThan(share)
  expect(off(means.power.winding, point.power.winding), 'winding').toBeLessThan(share)
  expect(means.residual, 'energy').toBeLessThan(1e-7)
}

describe('agrees: means between switching instants and means of even samples', () => {
  test('three alike phases', () => alike(machine({}), 1e-6))
  test('with a third and a fifth', () => alike(machine({ emf: phases(3, [12, 0, 3, 0, 1]) }), 1e-6))

  // of a ring with unlike magnets: a period of a whole turn, whose orders pass to the table of waves
  const turn = (series: FourierSeries): FourierSeries => {
    const whole = zeroSeries(60)
    series.cos.forEach((value, h) => {
      whole.cos[7 * h] = value
      whole.sin[7 * h] = series.sin[h]!
    })
    whole.sin[5] = 0.2
    whole.cos[58] = 0.01
    return whole
  }
  const many = (factor: number) =>
    machine({ emf: phases(3, [12, 0, 3]).map((each) => seriesScaled(turn(each), factor)), frequency: 50 / 7 })
  test('sixty orders', () => alike(many(1), 1e-6))
  test('of sixty orders the same, whatever was asked before', () => {
    const first = rectifierMeans(many(1))
    rectifierMeans(many(1.7))
    rectifierMeans(machine({ emf: many(1).emf.map((each) => ({ ...each, cos: each.sin, sin: each.cos })) }))
    expect(rectifierMeans(many(1))).toEqual(first)
  })
})

describe('law: a bridge of ideal diodes on a resistor', () => {
  const single = (peak: number) =>
    machine({
      connection: 'single',
      emf: phases(1, [peak]),
      resistance: [1],
      inductance: [[0]],
      lineResistance: 0,
      dcResistance: 0,
      diode: { threshold: 0, slope: 0 },
      load: { kind: 'resistor', resistance: 1 },
    })
  test('one phase brings 2/π of its peak, and half its peak squared', () => {
    const { dcCurrent, dcCurrentRms, power, residual } = rectifierMeans(single(10))
    expect(off(dcCurrent, (2 / Math.PI) * 5)).toBeLessThan(1e-6)
    expect(off(dcCurrentRms, 5 / Math.SQRT2)).toBeLessThan(1e-6)
    expect(off(power.shaft, 25)).toBeLessThan(1e-6)
    expect(residual).toBeLessThan(1e-6)
  })
  test('three times the volts bring three times the amps and nine times the watts', () => {
    const [one, three] = [rectifierMeans(single(10)), rectifierMeans(single(30))]
    expect(off(three.dcCurrent, 3 * one.dcCurrent)).toBeLessThan(1e-9)
    expect(off(three.power.shaft, 9 * one.power.shaft)).toBeLessThan(1e-9)
  })
})
