/** Checks of the one door between workshop units and SI. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { awgDiameter_mm } from '../data/wire.ts'
import type { Machine } from './machine.ts'
import { resolveDesign } from './resolve.ts'

// biome-ignore lint/suspicious/noExplicitAny: documents are changed at will
type Raw = any
const machineOf = (name: FixedName, change: (document: Raw) => void = () => {}): Machine => {
  const document = fixedDocument(name)
  change(document)
  return resolveDesign(designOf(document))
}
const drum = 'drum'
const discs = 'twoDiscs'

/** Everything but the document behind it. */
const numbers = ({ design: _, ...rest }: Machine) => rest

describe('source: si-brochure-9, table 5 (prefixes) and section 4 — every quantity arrives in its SI unit', () => {
  const machine = machineOf(drum)
  const rows = [
    ['1.1 m across → radius in m', machine.blades.radius, '0.55'],
    ['50 mm → m', machine.rotor.pitchRadius, '0.05'],
    ['10 °C → K', machine.site.ambient, '283.15'],
    ['8 mN·m → N·m', machine.shaft.friction, '0.008'],
    [
      '20° → rad',
      machine.stator.winding.kind === 'serpentine' ? machine.stator.winding.phases[1]!.offset : 0,
      '0.34907',
    ],
    ['20 mΩ → Ω', machine.stator.jointResistance, '0.020'],
    ['1.5 mm² → m²', machine.cable.area, '1.5e-6'],
    ['20 Ah → C', machine.load.kind === 'battery' ? machine.load.capacity! : 0, '72000'],
    ['60 mΩ → Ω', machine.load.kind === 'battery' ? machine.load.resistance : 0, '0.060'],
    ['7 m', machine.site.hubHeight, '7'],
  ] as const
  for (const [title, value, printed] of rows) check(title, value, printed)
})

describe('source: iec-60028, 1/58 Ω·mm²/m at 20 °C — resistance of one conductor of the cable', () => {
  // 12 m of 1.5 mm²: 12/(58 · 1.5)
  check('12 m of 1.5 mm²', () => machineOf(drum).cable.conductorResistance, '0.13793')
})

describe('law: a quantity with spread is the bare number to the chain', () => {
  for (const name of ['drum', 'twoDiscs', 'disc'] as const)
    test(name, () => {
      const bare = (value: Raw): Raw =>
        Array.isArray(value)
          ? value.map(bare)
          : typeof value === 'object' && value !== null
            ? 'value' in value
              ? value.value
              : Object.fromEntries(Object.entries(value).map(([key, inside]) => [key, bare(inside)]))
            : value
      const plain = resolveDesign(designOf(bare(fixedDocument(name))))
      // the one spread that enters the chain is the remanence's
      const { rotor: a, ...restA } = numbers(plain)
      const { rotor: b, ...restB } = numbers(machineOf(name))
      expect(restA).toEqual(restB)
      expect({ ...a, magnet: { ...a.magnet, remanenceSpread: 0 } }).toEqual({
        ...b,
        magnet: { ...b.magnet, remanenceSpread: 0 },
      })
    })
  test('the document is kept as it was typed', () => {
    const machine = machineOf(drum)
    expect(machine.design.site.meanWind_m_per_s).toEqual({ value: 4.2, spread: 0.8, known: 'guessed' })
  })
})

describe('law: a gauge and its diameter in millimetres are the same wire', () => {
  for (const gauge of [12, 20, 28, 36])
    test(`AWG ${gauge}`, () => {
      const named = machineOf(drum, (d) => (d.stator.wire.size = `AWG ${gauge}`))
      const measured = machineOf(drum, (d) => (d.stator.wire.size = awgDiameter_mm(gauge)))
      expect(numbers(named)).toEqual(numbers(measured))
    })
})

describe('law: a grade stands for its table row, a polarisation for itself', () => {
  for (const grade of magnetGrades)
    test(grade.name, () => {
      const { magnet } = machineOf(discs, (d) => (d.rotor.magnet.grade = grade.name)).rotor
      expect(magnet.remanence).toBe(grade.remanence_T)
      expect(magnet.remanenceSpread).toBe(grade.remanenceSpread_T)
      expect(magnet.highestTemperature).toBeCloseTo(grade.limit_degC + 273.15, 9)
      expect(magnet.temperatureCoefficient).toBeLessThan(0)
    })
  const own = (polarization_T: unknown) =>
    machineOf(discs, (d) => {
      delete d.rotor.magnet.grade
      d.rotor.magnet.polarization_T = polarization_T
    }).rotor.magnet
  test('with its own spread, and of the family that so strong a magnet must be', () => {
    expect(own({ value: 1.3, spread: 0.04, known: 'measured' })).toMatchObject({
      remanence: 1.3,
      remanenceSpread: 0.04,
      highestTemperature: undefined,
    })
    expect(own(0.38).density).toBeLessThan(own(1.3).density)
    expect(own(0.38).temperatureCoefficient).toBeLessThan(own(1.3).temperatureCoefficient)
  })
})

describe('law: what is left out follows from the rest', () => {
  test('poles alternate, north first', () => {
    const { rotor } = machineOf(drum)
    expect(rotor.sequence).toEqual([1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1])
    expect(rotor.alternating).toBe(true)
    expect(rotor.polePairs).toBe(6)
  })
  test('a sequence that begins with a south pole alternates too; a turned magnet does not', () => {
    expect(machineOf(drum, (d) => (d.rotor.poleSequence = 'SNSNSNSNSNSN')).rotor.alternating).toBe(true)
    expect(machineOf(drum, (d) => (d.rotor.poleSequence = 'NNNSNSNSNSNS')).rotor.alternating).toBe(false)
  })
  test('coils stand on the pitch circle of the magnets', () => {
    const { winding } = machineOf(discs).stator
    expect(winding.kind === 'coils' && winding.centreRadius).toBe(0.1)
  })
  test('starting friction is the running friction', () =>
    expect(machineOf(drum).shaft.startingFriction).toBe(machineOf(drum).shaft.friction))
  test('a diode’s own figures go before its kind’s', () => {
    const own = machineOf(drum, (d) => (d.bridge = { ...d.bridge, threshold_V: 0.55, slope_mohm: 12 })).diode
    expect(own.threshold).toBe(0.55)
    expect(own.slope).toBe(0.012)
    expect(machineOf(drum).diode.threshold).not.toBe(0.55)
  })
  test('iron and gap belong to the arrangement', () => {
    expect(machineOf(drum).rotor).toMatchObject({
      backIron: undefined,
      faceDistance: undefined,
      opposite: undefined,
      sleeve: undefined,
    })
    expect(machineOf(discs).rotor).toMatchObject({
      backIron: { thickness: 0.008, innerRadius: undefined },
      faceDistance: 0.017,
      opposite: undefined,
    })
    const plate = machineOf('disc', (d) => (d.rotor.opposite = { kind: 'steel', faceDistance_mm: 12 }))
    expect(plate.rotor).toMatchObject({
      backIron: undefined,
      faceDistance: 0.012,
      opposite: { thickness: 0.006 },
    })
  })
  test('a lead-acid battery of 12.6 V at rest has six cells', () => {
    const { load } = machineOf(drum)
    // 1.75 to 2.5 V a cell is what any lead-acid cell may be taken through: common practice, no source
    expect(load.kind === 'battery' && load.band[0] / 6).toBeGreaterThan(1.7)
    expect(load.kind === 'battery' && load.band[1] / 6).toBeLessThan(2.5)
  })
})
