/** Checks readings of a machine turned by hand against sines by hand, the whole chain, and laws. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { meterNames, meterOf, meterOfClass } from '../machine/meter.ts'
import { type FourierSeries, seriesScaled, seriesSum } from '../numerics/fourier.ts'
import { bridgeMeanVoltage } from '../physics/electrics/dc-voltage.ts'
import { benchReading } from './bench-reading.ts'
import { computeDesign } from './compute.ts'
import { compareVolts } from './kind-of-volts.ts'
import { loadedReading } from './loaded-reading.ts'
import { meterReading, probedWave } from './meter-reading.ts'
import { ohmReadings } from './ohm-reading.ts'
import { probePoints } from './probe-point.ts'
import { deliveredAt, type TurnSource, turnSource } from './turn-source.ts'
import { turnVerdict } from './turn-verdict.ts'

/** A star of three sines, 0.1 V rms at 1 rad/s, six pole pairs, 0.25 Ω. */
const third = (2 * Math.PI) / 3
const sine = (lag: number): FourierSeries => ({
  cos: Float64Array.of(0, 0.1 * Math.SQRT2 * Math.cos(lag)),
  sin: Float64Array.of(0, 0.1 * Math.SQRT2 * Math.sin(lag)),
})
const emf = [0, third, 2 * third].map(sine)
const star: TurnSource = {
  name: 'three sines',
  connection: 'star',
  joined: 'star',
  polePairs: 6,
  base: 6,
  order: 1,
  phases: emf.map((series) => ({ emf: series, resistance: 0.25 })),
  lines: emf.map((series, k) => seriesSum([series, seriesScaled(emf[(k + 1) % 3]!, -1)])),
  coilsInSeries: 4,
  diode: { drop: 0, knownCurrent: 0.02, ideality: 1.8 },
  temperature: 293.15,
  loadKind: 'battery',
  cutIn: 200,
  delivered: { speed: new Float64Array(0), power: new Float64Array(0), current: new Float64Array(0) },
}
const scope = meterOfClass('oscilloscope, probe ×10')
const hand = meterOfClass('true-rms hand meter')
const cheap = meterOfClass('averaging hand meter')
const point = (source: TurnSource, id: string) => probePoints(source).find((each) => each.id === id)!
const at = (id: string, speed: number, meter = hand) =>
  meterReading(star, { speed, meter, probe: point(star, id) })

const chain = computeDesign(designOf(fixedDocument('twoDiscs')))
const discs = turnSource(chain)
const deltaDocument = fixedDocument('drum')
deltaDocument.stator.connection = 'delta'
const delta = turnSource(computeDesign(designOf(deltaDocument)))

describe('agrees: a star of sines by hand, 100 rad/s, 95.5 Hz', () => {
  check('phase, rms', at('phase-1', 100).rms, '10.000')
  check('line, rms', at('line-1-2', 100).rms, '17.3205')
  check('line, shown with its two decimals', at('line-1-2', 100).shown, '17.32', { absolute: 0.03 }) // the coupling takes up to 0.1 %
  check('line, peak', at('line-1-2', 100).peak, '24.4949')
  check('bridge without drops, mean 1.35 of the line', at('bridge', 100, scope).mean, '23.39')
  check('frequency, Hz', at('line-1-2', 100).frequency, '95.493')
  test('the mean of the bridge is the closed form; with a capacitor its summit', () => {
    expect(Math.abs(at('bridge', 100, scope).mean / bridgeMeanVoltage(10 * Math.sqrt(3)) - 1)).toBeLessThan(
      1e-3,
    )
    expect(Math.abs(at('capacitor', 100, hand).shown / (10 * Math.sqrt(6)) - 1)).toBeLessThan(0.01)
  })
  test('most that resistors draw: V²/4R of each phase, found by trying', () => {
    const tried = Array.from({ length: 400 }, (_, k) => 0.0025 * (k + 1)).map(
      (R) => (3 * 10 ** 2 * R) / (R + 0.25) ** 2,
    )
    const verdict = turnVerdict(star, { speed: 100, meter: hand, probe: point(star, 'line-1-2') })
    expect(verdict.ceiling).toBeCloseTo(Math.max(...tried), 6)
    expect(verdict.pairCeiling).toBeCloseTo((10 * Math.sqrt(3)) ** 2 / (4 * 0.5), 9)
    expect(verdict.delivered).toBe(0)
    expect((verdict.bandSpeed * 60) / (2 * Math.PI)).toBeCloseTo(450, 9)
  })
})

describe('agrees: the whole chain', () => {
  test('phases and lines of the bench at 60 rpm are the true rms of the probes there', () => {
    const speed = 2 * Math.PI
    const bench = benchReading(chain, speed, 6)
    for (const probe of probePoints(discs)) {
      const { rms } = meterReading(discs, { speed, meter: scope, probe })
      const wanted = probe.kind === 'phase' ? bench.phases : probe.kind === 'line' ? bench.lines : []
      if (wanted.length > 0) expect(rms / wanted[probe.index]!).toBeCloseTo(1, 9)
    }
    expect(meterReading(delta, { speed, meter: scope, probe: point(delta, 'corner') }).rms).toBeGreaterThan(0)
  })
  test('with load: volts times amps is the power; the table of what is delivered lies within 1 % of it', () => {
    const speed = 1.6 * discs.cutIn
    const loaded = loadedReading(chain, { speed, meter: meterOfClass('clamp meter') })
    const [, , volts, amps] = loaded.figures
    expect(volts!.true * amps!.true).toBeCloseTo(loaded.power, 0)
    expect(loaded.burden).toBe(1)
    expect(Math.abs(deliveredAt(discs, speed).current / amps!.true - 1)).toBeLessThan(0.01)
    const shunted = loadedReading(chain, { speed, meter: cheap })
    expect(shunted.burden).toBeLessThan(1)
    expect(shunted.burden).toBeGreaterThan(0.8)
  })
})

describe('agrees: ohms by arithmetic', () => {
  test('two wires add their leads and round to their last digit; four do not', () => {
    const [first] = ohmReadings(star, hand)
    expect(first!.resistance).toBeCloseTo(0.5, 12)
    expect(first!.twoWire).toBeCloseTo(0.7, 12)
    expect(first!.volts).toBeCloseTo(0.5, 12)
    // 0.5 % and 2 digits of 0.1 mV beside 1.5 % and 3 digits of 1 mA, each over √3, times 1.645
    const u = Math.hypot((0.0025 + 0.0002) / 0.5, 0.015 + 0.003) / Math.sqrt(3)
    expect(first!.spread).toBeCloseTo(1.6448536 * 0.5 * u, 4)
    expect(ohmReadings(star, scope)[0]!.twoWire).toBeUndefined()
  })
})

describe('law: readings', () => {
  test('shown lies within its bounds, at any speed, on any machine, with any meter', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 3, noNaN: true }),
        fc.constantFrom(...meterNames),
        fc.constantFrom(star, discs, delta),
        fc.nat(20),
        (exponent, name, source, which) => {
          const points = probePoints(source)
          const probe = points[which % points.length]!
          const turned = { speed: 10 ** exponent, meter: meterOfClass(name), probe }
          const reading = meterReading(source, turned)
          for (const value of Object.values(reading))
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
          expect(reading.shown).toBeGreaterThanOrEqual(reading.least - reading.step)
          expect(reading.shown).toBeLessThanOrEqual(reading.most + reading.step)
          expect(reading.rms).toBeLessThanOrEqual(reading.peak * (1 + 1e-9))
          const wave = probedWave(source, turned, 49)
          expect(Math.max(...wave.map(Math.abs))).toBeLessThanOrEqual(reading.peak * 1.01 + 1e-12)
        },
      ),
      { numRuns: 120 },
    )
  })
  test('below its band a hand meter reads too little, a scope does not', () => {
    const slow = at('line-1-2', 3)
    expect(slow.flags).toContain('below its band')
    expect(slow.shown).toBeLessThan(slow.rms)
    expect(at('line-1-2', 3, scope).flags).not.toContain('below its band')
    expect(at('line-1-2', 100).flags).toEqual([])
  })
  test('an averaging meter says so only where the wave is no sine', () => {
    expect(at('phase-1', 100, cheap).flags).not.toContain('not a sine')
    const square = {
      ...star,
      phases: [{ emf: { cos: Float64Array.of(0, 1, 0, -1 / 3), sin: new Float64Array(4) }, resistance: 0.2 }],
    }
    expect(meterReading(square, { speed: 100, meter: cheap, probe: point(star, 'phase-1') }).flags).toContain(
      'not a sine',
    )
  })
  test('a standing shaft is refused', () => expect(() => at('phase-1', 0)).toThrow('below-minimum'))
})

describe('law: what a ratio suggests', () => {
  const compared = (read: number, id = 'line-1-2') =>
    compareVolts(star, { read, speed: 100, meter: hand, probe: point(star, id) })
  test('as computed: nothing is wrong', () => {
    expect(compared(17.32).within).toBe(true)
    expect(compared(17.32).explanations).toEqual([])
  })
  test('the usual factors find their names', () => {
    for (const [read, id, words] of [
      [24.49, 'line-1-2', 'peak'],
      [10, 'line-1-2', 'star point'],
      [17.32, 'phase-1', 'terminals 1 and 2'],
      [15.6, 'line-1-2', 'without the 1.11'],
      [14.14, 'phase-1', 'peak'],
      [8.66, 'line-1-2', 'half'],
    ] as const)
      expect(
        compared(read, id)
          .explanations.map((each) => each.words)
          .join('; '),
        String(read),
      ).toContain(words)
  })
})

describe('law: the meter of the document', () => {
  const benchOf = (bench: object) => designOf({ ...fixedDocument('drum'), bench }).bench
  test('its lowest frequency, else the general one; a scope begins at direct current; its own ohms', () => {
    expect(meterOf(benchOf({})).lowest).toBe(45)
    expect(meterOf(benchOf({ meterLowestFrequency_Hz: 20 })).lowest).toBe(20)
    const own = benchOf({
      meterLowestFrequency_Hz: 20,
      meter: { kind: 'true-rms hand meter', lowestFrequency_Hz: 5, lead_mohm: 120, inputResistance_ohm: 2e6 },
    })
    expect(meterOf(own)).toMatchObject({ lowest: 5, leads: 0.12, input: 2e6, response: 'true rms' })
    expect(meterOfClass('clamp meter', own)).toMatchObject({ lowest: 20, leads: 0.2 })
    expect(meterOf(benchOf({ meter: { kind: 'oscilloscope, probe ×10' } })).lowest).toBe(0)
  })
})
