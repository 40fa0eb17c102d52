/** Checks the list of concerns as a whole: silence where all is well, order, words, robustness, speed. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../test/sample-chain.ts'
import { parseDesign } from '../machine/parse.ts'
import { computeDesign } from './compute.ts'
import {
  type ChainView,
  type Concern,
  concernReference,
  concernRules,
  concernsOf,
  remedyWords,
  severities,
} from './concerns.ts'

const codesOf = (concerns: readonly Concern[]) => concerns.map(({ code }) => code)

const document = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'))

function chainOfDocument(input: unknown) {
  const parsed = parseDesign(input)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}

const saidBy = (concern: Concern) =>
  [concern.what, concern.why, concern.figures, concern.path, ...concern.remedies.map(remedyWords)].join(' ')

function expectSound(concerns: readonly Concern[]): void {
  for (const concern of concerns) {
    expect(saidBy(concern)).not.toMatch(/NaN|Infinity|undefined|null|\[object|—/)
    expect(concern.figures).toMatch(/\d/)
    expect(concern.what).toMatch(/^\S.*[.?]$/)
    expect(concern.why).toMatch(/\.$/)
    expect(concern.remedies.length).toBeGreaterThan(0)
    for (const remedy of concern.remedies) expect(remedyWords(remedy)).toMatch(/\.$/)
  }
}

describe('law: the list', () => {
  test('a machine without faults raises nothing', () => {
    expect(concernsOf(sampleChain())).toEqual([])
  })
  test('every rule has its own code, a title and a basis', () => {
    const reference = concernReference()
    expect(reference).toHaveLength(concernRules.length)
    expect(new Set(reference.map(({ code }) => code)).size).toBe(reference.length)
    for (const { code, title, basis } of reference) {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/)
      expect(title).toMatch(/^[A-Z].*[^.]$/)
      expect(basis).toMatch(/^[A-Z].*\.$/)
    }
  })
})

describe('law: real chains', () => {
  const faulty = chainOfDocument(document('many-faults'))
  const drum = chainOfDocument(document('hen-house-drum'))
  test('the deliberately faulty design raises at least twelve, the gravest first', () => {
    const codes = codesOf(faulty.concerns)
    expect(codes.length).toBeGreaterThanOrEqual(12)
    for (const code of [
      'load-loss',
      'magnet-retention',
      'stator-heat',
      'shock-band',
      'pole-map',
      'coil-pole-balance',
      'reversed-element',
      'diode-rating',
      'energy-balance',
      'volts-not-power',
      'volts-kind',
      'battery-disconnect',
      'battery-fuse',
      'switch-rating',
      'earthing',
      'cable-drop',
      'delta-circulation',
      'field-number',
      'meter-limit',
      'wind-guess',
    ])
      expect(codes).toContain(code)
    const order = faulty.concerns.map(({ severity }) => severities.indexOf(severity))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expectSound(faulty.concerns)
  })
  test('what is said of the drum is sound', () => {
    expectSound(drum.concerns)
    expect(codesOf(drum.concerns)).not.toContain('phase-offset')
    expect(codesOf(drum.concerns)).not.toContain('pole-map')
  })
  test('the outdoor class blocks what the bench only warns of', () => {
    const bench = { ...faulty, machine: { ...faulty.machine, safetyClass: 'bench' as const } }
    const blocked = concernsOf(bench).filter(({ severity }) => severity === 'blocking')
    expect(blocked).toEqual([])
  })
  test('all rules together take well under ten milliseconds', () => {
    for (let k = 0; k < 100; k++) concernsOf(faulty)
    let best = Number.POSITIVE_INFINITY
    for (let k = 0; k < 100; k++) {
      const start = performance.now()
      concernsOf(faulty)
      best = Math.min(best, performance.now() - start)
    }
    // a bound for a crowded machine; alone it is under one
    expect(best).toBeLessThan(10)
  })
  test.each([
    ['nothing connected', { load: { kind: 'open' } }],
    ['a heater', { load: { kind: 'resistor', resistance_ohm: 3 } }],
    ['a battery that is never reached', { load: { kind: 'battery', chemistry: 'Li-ion', voltage_V: 480 } }],
    ['stiff bearings', { shaft: { friction_mNm: 90_000 } }],
    ['a frozen calm', { site: { meanWind_m_per_s: 0.2, ambient_degC: -50, stormWind_m_per_s: 5 } }],
    [
      'a hundred metres of hair',
      {
        cable: { length_m: 2000, area_mm2: 0.05, place: 'before bridge' },
        protection: { electrical: 'shorting switch' },
      },
    ],
  ])('mutated drum: %s', (_, change) => {
    const chain = chainOfDocument({ ...document('hen-house-drum'), ...change })
    expectSound(chain.concerns)
  })
})

describe('law: strange results neither throw nor print nonsense', () => {
  const rest = (chain: ChainView): Partial<ChainView> => ({
    startWind: Number.POSITIVE_INFINITY,
    cutInWind: Number.POSITIVE_INFINITY,
    generator: { ...chain.generator, cutIn: Number.POSITIVE_INFINITY },
    rows: chain.rows.map((row) => ({
      ...row,
      state: 'at rest' as const,
      speed: 0,
      dcCurrent: 0,
      loadVoltage: 0,
      phaseCurrent: 0,
      watts: Object.fromEntries(Object.keys(row.watts).map((key) => [key, 0])) as unknown as typeof row.watts,
    })),
    runaway: { ...chain.runaway, speed: 0, tipSpeed: 0, magnetForce: 0, lineVoltage: 0, directVoltage: 0 },
  })
  const cases: readonly (readonly [
    string,
    Record<string, unknown>,
    (chain: ChainView) => Partial<ChainView>,
  ])[] = [
    ['never turns', {}, rest],
    ['no rows', {}, () => ({ rows: [] })],
    [
      'no rows and no limiter',
      { 'protection.mechanical': 'none', 'protection.electrical': 'none', 'stator.connection': 'delta' },
      () => ({ rows: [] }),
    ],
    [
      'no volts',
      { 'protection.electrical': 'shorting switch', 'stator.connection': 'delta' },
      ({ voltage }) => ({
        voltage: {
          ...voltage,
          greatestLinePeak: 0,
          phases: voltage.phases.map((phase) => ({
            ...phase,
            rms: 0,
            peak: 0,
            fundamental: 0,
            emf: { cos: new Float64Array(4), sin: new Float64Array(4) },
          })),
        },
      }),
    ],
    ['shorting a rotor at rest', { 'protection.electrical': 'shorting switch' }, rest],
    ['delta at rest', { 'stator.connection': 'delta' }, rest],
    [
      'a glowing winding',
      { 'protection.electrical': 'shorting switch', 'protection.mechanical': 'none' },
      ({ rows }) => ({ rows: rows.map((row) => ({ ...row, copperTemperature: 623.15, overheated: true })) }),
    ],
    [
      'zero everywhere on the bench',
      {
        'purpose.power_W': 1,
        'bench.claims': [
          { power_W: 0, from: 'open-circuit volts' },
          { power_W: 5, from: 'volts and amps into a load', speed_rpm: 1, shaftTorque_Nm: 0 },
        ],
        'bench.readings': [{ speed_rpm: 0.1, voltage_V: 0 }],
        'bench.meterLowestFrequency_Hz': 0,
      },
      rest,
    ],
  ]
  for (const safetyClass of ['demonstration', 'bench', 'outdoor'])
    test.each(cases)(`${safetyClass}: %s`, (_, fields, change) => {
      const chain = sampleChain({ 'purpose.class': safetyClass, ...fields }, change)
      expectSound(concernsOf(chain))
    })
})

describe('law: any chain', () => {
  const factor = fc.constantFrom(0, 1e-9, 0.1, 1, 30, 1e9)
  test('whatever the sizes, every word is sound', () => {
    fc.assert(
      fc.property(
        fc.record({
          safetyClass: fc.constantFrom('demonstration', 'bench', 'outdoor'),
          connection: fc.constantFrom('star', 'delta', 'separate'),
          mechanical: fc.constantFrom('none', 'furling tail'),
          electrical: fc.constantFrom('none', 'shorting switch', 'dump load'),
          retention: fc.constantFrom('glue', 'pocket', 'band'),
          load: fc.constantFrom(
            { kind: 'open' },
            { kind: 'resistor', resistance_ohm: 5 },
            { kind: 'battery', chemistry: 'Li-ion', voltage_V: 3.7 },
          ),
          power: factor,
          speed: factor,
          volts: factor,
          never: fc.boolean(),
        }),
        (drawn) => {
          const chain = sampleChain(
            {
              'purpose.class': drawn.safetyClass,
              'purpose.power_W': 700,
              'stator.connection': drawn.connection,
              'protection.mechanical': drawn.mechanical,
              'protection.electrical': drawn.electrical,
              'rotor.retention': { kind: drawn.retention },
              load: drawn.load,
              'site.meanWind_m_per_s': 6,
              'bench.readings': [{ speed_rpm: 100, voltage_V: 9 }],
              'bench.claims': [{ power_W: 9, from: 'open-circuit volts', speed_rpm: 9 }],
            },
            (base) => ({
              cutInWind: drawn.never ? Number.POSITIVE_INFINITY : base.cutInWind,
              startWind: drawn.never ? Number.POSITIVE_INFINITY : base.startWind,
              generator: {
                ...base.generator,
                cutIn: drawn.never ? Number.POSITIVE_INFINITY : 20 * drawn.speed,
              },
              steel: base.steel.map((one) => ({ ...one, fluxDensity: 2 * drawn.power })),
              rows: base.rows.map((row) => ({
                ...row,
                speed: row.speed * drawn.speed,
                dcCurrent: row.dcCurrent * drawn.power,
                currentDensity: row.currentDensity * drawn.power,
                loadVoltage: row.loadVoltage * drawn.volts,
                copperTemperature: Math.min(623.15, 285 + 10 * drawn.power),
                overheated: drawn.power > 30,
                watts: { ...row.watts, useful: row.watts.useful * drawn.power, cable: 9 * drawn.volts },
              })),
              voltage: {
                ...base.voltage,
                openCorner: drawn.volts,
                greatestLinePeak: base.voltage.greatestLinePeak * drawn.volts,
                phases: base.voltage.phases.map((phase) => ({
                  ...phase,
                  rms: phase.rms * drawn.volts,
                  peak: phase.peak * drawn.volts,
                  emf: {
                    cos: phase.emf.cos.map((a) => a * drawn.volts),
                    sin: phase.emf.sin.map((a) => a * drawn.volts),
                  },
                })),
              },
              runaway: {
                ...base.runaway,
                speed: base.runaway.speed * drawn.speed,
                magnetForce: base.runaway.magnetForce * drawn.speed,
                directVoltage: base.runaway.directVoltage * drawn.volts,
                lineVoltage: base.runaway.lineVoltage * drawn.volts,
              },
            }),
          )
          expectSound(concernsOf(chain))
        },
      ),
      { numRuns: 150, seed: 7 },
    )
  })
})
