/** Checks of the remedies: no effect but what the chain shows, pure changes, possible machines, the physics of each. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { nominal } from '../units/quantity.ts'
import { computeDesign } from './compute.ts'
import { generatorTarget } from './generator-target.ts'
import { loadPoint } from './load-point.ts'
import { matchMap } from './match-map.ts'
import { matchRemedies } from './match-remedies.ts'
import { type Change, withChanges } from './remedy/change.ts'
import { matchFigures } from './remedy/figures.ts'
import { finished } from './step.ts'

function stalledDocument() {
  const document = fixedDocument('twoDiscs')
  document.stator.winding.turns = 75
  // a delta asks more of cable and resin than they bear outdoors
  document.cable.area_mm2 = 25
  document.purpose.class = 'bench'
  document.protection = { mechanical: 'none' }
  document.site.stormWind_m_per_s = 11
  return document
}

describe('law: remedies of a machine in stall', () => {
  const document = stalledDocument()
  const design = designOf(document)
  const before = JSON.stringify(design)
  const report = finished(
    matchRemedies(design, { kinds: ['gap', 'connection', 'series resistance', 'star-delta switch'] }),
  )
  test('the design they are tried on is left alone', () => {
    expect(JSON.stringify(design)).toBe(before)
  })
  test('each reports just what a fresh chain of the changed document shows', () => {
    const changed = report.remedies.filter(({ design: made }) => made !== undefined)
    expect(changed.map(({ kind }) => kind).sort()).toEqual(['connection', 'gap', 'series resistance'])
    for (const { changes, after } of changed) {
      const fresh = computeDesign(designOf(withChanges(document, changes)))
      expect(matchFigures(fresh, report.wind)).toEqual(after)
    }
  })
  test('each brings energy, frees winds from stall, and the resistor stands last whatever it brings', () => {
    expect(report.before.stalledWinds).toBeGreaterThan(4)
    for (const { after } of report.remedies) {
      expect(after.energy).toBeGreaterThan(report.before.energy)
      expect(after.stalledWinds).toBeLessThan(report.before.stalledWinds)
    }
    expect(report.remedies.at(-1)!.kind).toBe('series resistance')
  })
  test('a wider gap and a resistor both change what they say: fewer volts, watts burnt', () => {
    const of = (kind: string) => report.remedies.find((each) => each.kind === kind)!
    const [gap, resistor] = [of('gap'), of('series resistance')]
    expect(gap.changes[0]!.to as number).toBeGreaterThan(gap.changes[0]!.from as number)
    expect(gap.after.runawayVolts).toBeLessThan(report.before.runawayVolts)
    expect(resistor.burnt).toBeGreaterThan(0)
    expect(resistor.burnt).toBeLessThanOrEqual(resistor.after.cablePower)
    expect(resistor.greatestBurnt).toBeGreaterThan(resistor.burnt)
  })
  test('the switch is worth no less than either of its connections alone', () => {
    const of = (kind: string) => report.remedies.find((each) => each.kind === kind)!
    expect(of('star-delta switch').after.energy).toBeGreaterThanOrEqual(
      Math.max(report.before.energy, of('connection').after.energy) * (1 - 1e-9),
    )
  })
  test('the bound lies above the machine and all remedies that keep blades and winding', () => {
    for (const { after, kind } of report.remedies)
      if (kind !== 'gap') expect(report.ideal.energy).toBeGreaterThan(after.energy)
  })
})

describe('law: the gap and the volts', () => {
  test('more gap never raises the volts', () => {
    const volts = [0, 1, 2, 4, 8].map((more) => {
      const document = exampleDocument('boathouse-two-disc')
      document.rotor.faceDistance_mm += more
      document.stator.winding.distance_mm += more / 2
      return computeDesign(designOf(document)).voltage.greatestLinePeak
    })
    for (let k = 1; k < volts.length; k++) expect(volts[k]!).toBeLessThan(volts[k - 1]!)
  })
})

describe('law: fewer or more turns in the same window', () => {
  test('volts go with N, resistance with N², copper stays, the window no fuller', () => {
    const design = designOf(exampleDocument('hen-house-drum'))
    const chain = exampleChain('hen-house-drum')
    const report = finished(matchRemedies(design, { chain, kinds: ['turns'] }))
    // whether it helps or not, the change itself must be the right one
    const [one] = report.remedies
    const changes: readonly Change[] = one?.changes ?? [
      { path: ['stator', 'winding', 'turns'], from: 30, to: 24 },
      { path: ['stator', 'wire', 'size'], from: 0.6, to: 0.67 },
    ]
    const made = computeDesign(designOf(withChanges(design, changes)))
    const ratio = (changes[0]!.to as number) / 30
    expect(made.voltage.greatestLinePeak / chain.voltage.greatestLinePeak).toBeCloseTo(ratio, 3)
    const resistance = made.voltage.phases[0]!.resistance / chain.voltage.phases[0]!.resistance
    expect(Math.abs(resistance / ratio ** 2 - 1)).toBeLessThan(0.06)
    expect(made.wound.copperMass).toBeLessThan(1.003 * chain.wound.copperMass)
    expect(made.wound.copperMass).toBeGreaterThan(0.94 * chain.wound.copperMass)
  })
})

describe('agrees: a resistor in the direct-current line and the same ohms inside the battery', () => {
  test('shaft power and amps are alike; only the ledger names them otherwise', () => {
    const chain = exampleChain('boathouse-two-disc')
    const { machine, voltage } = chain
    const { load } = machine
    if (load.kind !== 'battery') throw new Error('the example charges a battery')
    const ohms = 0.4
    const line = { ...machine, cable: { ...machine.cable, seriesResistance: ohms } }
    const inside = { ...machine, load: { ...load, resistance: load.resistance + ohms } }
    const at = { speed: 1.6 * chain.generator.cutIn, copperTemperature: 320 }
    const [a, b] = [loadPoint(line, voltage, at), loadPoint(inside, voltage, at)]
    expect(a.dcCurrent / b.dcCurrent).toBeCloseTo(1, 6)
    expect(a.power.shaft / b.power.shaft).toBeCloseTo(1, 6)
    expect(a.power.dcCable / (ohms * a.dcCurrent ** 2)).toBeGreaterThanOrEqual(1)
    expect(a.power.dcCable + a.power.batteryResistance).toBeCloseTo(b.power.batteryResistance, 6)
  })
})

describe('agrees: the wanted volts and a machine wound for them', () => {
  test('rewound in the same window, it turns at the working speed in the wind that is told', () => {
    const document = exampleDocument('boathouse-two-disc')
    const chain = exampleChain('boathouse-two-disc')
    const target = generatorTarget(chain, finished(matchMap(chain)))!
    const ratio = target.voltage.wanted! / target.voltage.present
    const turns = Math.round(document.stator.winding.turns * ratio)
    document.stator.wire.size *= Math.sqrt(document.stator.winding.turns / turns)
    document.stator.winding.turns = turns
    const made = computeDesign(designOf(document))
    expect(Math.abs(made.rowAt(target.wind).speed / target.workingSpeed - 1)).toBeLessThan(0.03)
    expect(target.wantedPower).toBe(nominal(document.purpose.power_W))
  })
})

describe('law: documents changed place by place', () => {
  test('objects and lists are made, kept and taken out; the one given stays', () => {
    const given = { a: { b: [1, { c: 2 }] }, d: 'x' }
    const made = withChanges(given, [
      { path: ['a', 'b', 1, 'c'], from: 2, to: 3 },
      { path: ['e', 'f'], from: undefined, to: true },
      { path: ['d'], from: 'x', to: undefined },
    ])
    expect(made).toEqual({ a: { b: [1, { c: 3 }] }, e: { f: true } })
    expect(given).toEqual({ a: { b: [1, { c: 2 }] }, d: 'x' })
  })
})
