/** Checks what readings on a loose magnet tell of its polarization. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { blockPlatePull } from '../physics/magnetics/plate-pull.ts'
import { workingPolarization } from '../physics/magnetics/working-point.ts'
import { type Measurement, measuredPolarization } from './magnet-measurement.ts'
import { type HallReading, type LooseMagnet, rangeEndShare, usualReadingSpread } from './magnet-reading.ts'

const block: LooseMagnet = {
  shape: 'block',
  size: [0.04, 0.02, 0.01],
  recoilPermeability: 1,
  temperatureCoefficient: -0.0012,
}
const exactSensor = { gainSpread: 0.001, depth: 0, depthSpread: 1e-6 }

/** B on the axis of a block: J/π (atan … − atan …). */
const axis = (d: number, J: number, [a, b, c]: readonly [number, number, number]) => {
  const part = (z: number) => Math.atan2(a * b, 2 * z * Math.sqrt(4 * z * z + a * a + b * b))
  return (J / Math.PI) * (part(d) - part(d + c))
}

const hall = (distance_mm: number, fluxDensity: number, more: Partial<HallReading> = {}): HallReading => ({
  kind: 'hall',
  distance: distance_mm / 1000,
  fluxDensity,
  ...more,
})

const answer = (measurement: Omit<Measurement, 'magnet'> & { readonly magnet?: LooseMagnet }) => {
  const found = measuredPolarization({ magnet: block, ...measurement })
  if (found === undefined) throw new Error('no answer')
  return found
}

describe('agrees: axial field of a block 40 × 20 × 10 mm of 1.30 T, by hand', () => {
  // 0.3667, 0.3182, 0.2445, 0.1502 and 0.0602 T from J/π (atan(ab/(2d√(4d² + a² + b²))) − …), four digits each
  const rows = [
    [0, 0.3667],
    [2, 0.3182],
    [5, 0.2445],
    [10, 0.1502],
    [20, 0.0602],
  ] as const
  for (const [d, B] of rows) {
    test(`the rows are the formula’s, ${d} mm`, () =>
      expect(Math.abs(axis(d / 1000, 1.3, [0.04, 0.02, 0.01]) - B)).toBeLessThan(5e-5))
    check(
      `${d} mm alone gives J`,
      () => answer({ readings: [hall(d, B)], sensor: exactSensor }).polarization,
      '1.30',
      // half a unit of the reading's last digit
      { absolute: 0.0013 },
    )
  }
  test('all together: J, small residuals, shares that sum to one', () => {
    const found = answer({ readings: rows.map(([d, B]) => hall(d, B)), sensor: exactSensor })
    expect(found.polarization).toBeCloseTo(1.3, 3)
    expect(found.readings.every(({ residual, disagrees }) => Math.abs(residual) < 0.1 && !disagrees)).toBe(
      true,
    )
    expect(found.readings.reduce((sum, { share }) => sum + share, found.priorShare)).toBeCloseTo(1, 12)
  })
})

describe('agrees: recoil, temperature, pull and volts', () => {
  const soft: LooseMagnet = { ...block, recoilPermeability: 1.05 }
  test('a magnet that gives way shows less: its remanence is above the J it works at', () => {
    const J = workingPolarization({
      magnets: [
        {
          centre: [0, 0, 0],
          frame: [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ],
          size: [0.04, 0.02, 0.01],
          polarization: 1,
        },
      ],
      own: 0,
      remanence: 1.3,
      recoilPermeability: 1.05,
    })
    const reading = hall(5, axis(0.005, J, [0.04, 0.02, 0.01]))
    expect(answer({ magnet: soft, readings: [reading], sensor: exactSensor }).polarization).toBeCloseTo(
      1.3,
      5,
    )
  })
  test('read warm, told for 20 °C', () => {
    const reading = hall(5, axis(0.005, 1.3 * (1 - 0.0012 * 20), [0.04, 0.02, 0.01]), { temperature: 313.15 })
    expect(answer({ readings: [reading], sensor: exactSensor }).polarization).toBeCloseTo(1.3, 6)
  })
  test('a pull goes with the square', () => {
    const force = blockPlatePull({ size: [0.04, 0.02, 0.01], polarization: 1.21, spacer: 0.002 })
    const found = answer({ readings: [{ kind: 'pull', spacer: 0.002, force }] })
    expect(found.polarization).toBeCloseTo(1.21, 6)
    expect(found.sensor).toBeUndefined()
    // a tenth of force is a twentieth of J, somewhat more for the spacer
    expect(found.spread / 1.21).toBeGreaterThan(usualReadingSpread.forceShare / 2)
    expect(found.spread / 1.21).toBeLessThan(usualReadingSpread.forceShare)
  })
  test('volts in proportion', () => {
    const volts = { kind: 'volts', voltage: 11, computedVoltage: 10, computedRemanence: 1.2 } as const
    const found = answer({ readings: [volts] })
    expect(found.polarization).toBeCloseTo(1.32, 12)
    expect(found.spread).toBeCloseTo(1.32 * usualReadingSpread.ratio, 6)
    expect(found.readings[0]!.spreadWithout).toBeUndefined()
  })
  test('a disc magnet is read as a block is', () => {
    const disc: LooseMagnet = {
      shape: 'disc',
      diameter: 0.02,
      thickness: 0.01,
      recoilPermeability: 1,
      temperatureCoefficient: 0,
    }
    // B = J/2 ((d + h)/√((d + h)² + R²) − d/√(d² + R²))
    const d = 0.004
    const B = (1.25 / 2) * (0.014 / Math.hypot(0.014, 0.01) - d / Math.hypot(d, 0.01))
    const found = answer({ magnet: disc, readings: [hall(4, B)], sensor: exactSensor })
    expect(found.polarization).toBeCloseTo(1.25, 4)
  })
})

describe('agrees: two numbers of one thing, weighted by their spreads', () => {
  test('prior and volts: mean by 1/spread², its spread, its shares', () => {
    const found = answer({
      prior: { value: 1.3, spread: 0.04 },
      readings: [
        {
          kind: 'volts',
          voltage: 9,
          computedVoltage: 10,
          computedRemanence: 1.35,
          ratioSpread: 0.02 / 0.9 / 1.35,
        },
      ],
    })
    // volts say 1.215 ± 0.02 (half-widths at 90 %)
    const [w, v] = [1 / 0.04 ** 2, 1 / 0.02 ** 2]
    expect(found.polarization).toBeCloseTo((1.3 * w + 1.215 * v) / (w + v), 10)
    expect(found.spread).toBeCloseTo(1 / Math.sqrt(w + v), 10)
    expect(found.priorShare).toBeCloseTo(w / (w + v), 10)
    expect(found.readings[0]!.spreadWithout).toBeCloseTo(0.04, 10)
    // their difference in standard deviations of a difference
    const deviations = ((1.3 - 1.215) * 1.6448536) / Math.hypot(0.04, 0.02)
    expect(found.prior!.residual).toBeCloseTo(deviations, 5)
    expect(found.readings[0]!.residual).toBeCloseTo(-deviations, 5)
  })
})

describe('law: what readings can and cannot tell', () => {
  const field = (d: number) => axis(d / 1000, 1.3, [0.04, 0.02, 0.01])
  test('a sensor that shows 3 % too much moves J by less than its gain’s spread once the prior speaks', () => {
    const readings = [2, 5, 10, 20].map((d) => hall(d + 0.5, 1.03 * field(d + 1)))
    const found = answer({ prior: { value: 1.3, spread: 0.02 }, readings })
    expect(found.polarization).toBeGreaterThan(1.3)
    expect(found.polarization).toBeLessThan(1.3 * 1.015)
    expect(found.sensor!.gain).toBeGreaterThan(0.015)
  })
  test('more readings of one sensor do not go below the gain’s own spread', () => {
    const readings = Array.from({ length: 30 }, (_, k) => hall(2 + k, field(2.5 + k)))
    const found = answer({ readings })
    expect(found.spread / 1.3).toBeGreaterThan(usualReadingSpread.sensorGain)
    expect(found.spread / 1.3).toBeLessThan(1.3 * usualReadingSpread.sensorGain)
  })
  test('readings find the depth of the sensing plate', () => {
    const readings = [0, 1, 2, 4, 8].map((d) =>
      hall(d, field(d + 0.8), { distanceSpread: 0.05e-3, fluxDensitySpread: 5e-4 }),
    )
    expect(answer({ readings }).sensor!.depth).toBeGreaterThan(0.2e-3)
    expect(answer({ readings }).sensor!.depth).toBeLessThan(0.4e-3)
  })
  test('the one that disagrees is named, the others are not', () => {
    const readings = [2, 5, 10, 20].map((d) => hall(d, field(d + 0.5)))
    readings[2] = hall(10, 0.5 * field(10.5))
    const found = answer({ prior: { value: 1.3, spread: 0.03 }, readings })
    expect(found.readings.map(({ disagrees }) => disagrees)).toEqual([false, false, true, false])
    expect(found.readings[2]!.share).toBe(0)
    expect(found.readings[2]!.residual).toBeLessThan(-3)
    expect(found.polarization).toBeCloseTo(1.3, 2)
  })
  test('a wrong label is named, and the readings are believed', () => {
    const force = blockPlatePull({ size: [0.04, 0.02, 0.01], polarization: 1.3, spacer: 0.003 })
    const found = answer({
      prior: { value: 1.45, spread: 0.02 },
      sensor: { gainSpread: 0.01 },
      readings: [...[2, 5, 10].map((d) => hall(d, field(d + 0.5))), { kind: 'pull', spacer: 0.003, force }],
    })
    expect(found.prior!.disagrees).toBe(true)
    expect(found.priorShare).toBe(0)
    expect(found.polarization).toBeCloseTo(1.3, 2)
    expect(found.readings.some(({ disagrees }) => disagrees)).toBe(false)
  })
  test('of two that contradict each other neither can be believed: both stay, both are named', () => {
    const found = answer({
      prior: { value: 1.3, spread: 0.02 },
      readings: [{ kind: 'volts', voltage: 5, computedVoltage: 10, computedRemanence: 1.3 }],
    })
    expect(found.prior!.disagrees).toBe(true)
    expect(found.readings[0]!.disagrees).toBe(true)
    expect(found.priorShare + found.readings[0]!.share).toBeCloseTo(1, 12)
  })
  test('a sensor at the end of its range is not asked, nor one that shows nothing', () => {
    const near = (1 - rangeEndShare) * 0.2
    const found = answer({
      prior: { value: 1.3, spread: 0.03 },
      readings: [
        hall(5, near + 1e-6, { sensorRange: 0.2 }),
        hall(5, -0.2, { sensorRange: 0.2 }),
        hall(20, field(20.5), { sensorRange: 0.2 }),
        hall(20, 0),
        { kind: 'pull', spacer: 0, force: -1 },
      ],
    })
    expect(found.rejected.map(({ index }) => index)).toEqual([0, 1, 3, 4])
    expect(found.rejected[0]!.reason).toContain('end of its range')
    expect(found.readings.map(({ index }) => index)).toEqual([2])
  })
  test('the south pole tells as much as the north', () => {
    const [north, south] = [answer({ readings: [hall(5, 0.2)] }), answer({ readings: [hall(5, -0.2)] })]
    expect(south.polarization).toBe(north.polarization)
  })
  test('without readings the prior stands, without both there is no answer', () => {
    const found = answer({ prior: { value: 1.3, spread: 0.03 }, readings: [] })
    expect(found.polarization).toBeCloseTo(1.3, 14)
    expect(found.spread).toBeCloseTo(0.03, 14)
    expect(found.priorShare).toBeCloseTo(1, 14)
    expect(measuredPolarization({ magnet: block, readings: [] })).toBeUndefined()
    expect(measuredPolarization({ magnet: block, readings: [hall(5, 0)] })).toBeUndefined()
  })
  test('spreads of zero and wild readings still give finite numbers', () => {
    const found = answer({
      prior: { value: 1.3, spread: 0.03 },
      sensor: { gainSpread: 0, depth: 0, depthSpread: 0 },
      readings: [
        hall(0, 5, { distanceSpread: 0, fluxDensitySpread: 0 }),
        hall(200, 1e-5),
        { kind: 'pull', spacer: 0.05, force: 1e5, forceSpread: 0 },
        { kind: 'volts', voltage: 1e3, computedVoltage: 1e-3, computedRemanence: 1.3 },
      ],
    })
    for (const { residual, predicted, share } of found.readings)
      for (const value of [residual, predicted, share]) expect(Number.isFinite(value)).toBe(true)
    expect(found.readings.some(({ disagrees }) => disagrees)).toBe(true)
  })
  test('what has no meaning is refused', () => {
    expect(() => answer({ readings: [hall(-1, 0.2)] })).toThrow(RangeError)
    expect(() => answer({ readings: [hall(1, Number.NaN)] })).toThrow(RangeError)
    expect(() => answer({ prior: { value: 0, spread: 1 }, readings: [] })).toThrow(RangeError)
  })
})
