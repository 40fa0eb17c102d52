/** Checks windings as makers build them, from the document to their volts: layers, lifted crowns, lap coils, one coil. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { curveLength } from '../geometry/curve.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { harmonicAmplitude } from '../numerics/fourier.ts'
import { rotorField } from './air-gap-field.ts'
import { computeDesign } from './compute.ts'
import { conductorLayout } from './conductor-layout.ts'
import { rotorLinkage } from './flux-linkage.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { woundMachine } from './winding.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will, also to what no type allows
type Raw = any
type Change = (winding: Raw, document: Raw) => void

function changed(name: FixedName, change: Change): Raw {
  const document = fixedDocument(name) as Raw
  change(document.stator.winding, document)
  return document
}

function wound(document: unknown) {
  const machine = resolveDesign(designOf(document))
  const layout = conductorLayout(machine)
  const field = rotorField(machine)
  const copper = woundMachine(machine, layout)
  return { machine, layout, field, copper, voltage: openCircuitVoltage(machine, field, layout, copper) }
}

const single: Change = (winding, document) => {
  winding.phases.length = 1
  document.stator.connection = 'single'
}

describe('law: layers of a serpentine', () => {
  const one = (distance_mm: number, turns: number) =>
    wound(
      changed('drum', (winding, document) => {
        single(winding, document)
        Object.assign(winding, { turns, bundleDepth_mm: 1 })
        winding.phases[0].distance_mm = distance_mm
      }),
    )
  const stacked = wound(
    changed('drum', (winding, document) => {
      single(winding, document)
      Object.assign(winding, { turns: 32, layers: 3, layerPitch_mm: 1.2, bundleDepth_mm: 1 })
      winding.phases[0].distance_mm = 3
    }),
  )
  test('share out the turns as evenly as whole turns can be', () => {
    const turns = stacked.layout.coils.map(({ shape }) => stacked.layout.shapes[shape]!.turns)
    expect(turns.reduce((sum, value) => sum + value, 0)).toBe(32)
    expect(Math.max(...turns) - Math.min(...turns)).toBeLessThanOrEqual(1)
  })
  test('are in series: volts and ohms are the sums of single layers where they lie', () => {
    const turns = stacked.layout.shapes.map((shape) => shape.turns)
    const layers = [3, 4.2, 5.4].map((distance, k) => one(distance, turns[k]!))
    const [phase] = stacked.voltage.phases
    const sum = (of: (layer: (typeof layers)[number]) => number) =>
      layers.reduce((total, layer) => total + of(layer), 0)
    expect(phase!.fundamental).toBeCloseTo(
      sum(({ voltage }) => voltage.phases[0]!.fundamental),
      10,
    )
    expect(stacked.copper.coilResistance.reduce((a, b) => a + b, 0)).toBeCloseTo(
      sum(({ copper }) => copper.coilResistance[0]!),
      10,
    )
    // layers that share their flux have more inductance than the sum of their own, less than if they shared it all
    const own = layers.map(({ copper }) => copper.coilInductance[0]![0]!)
    const [a, b, c] = own as [number, number, number]
    expect(phase!.inductance).toBeGreaterThan(a + b + c)
    expect(phase!.inductance).toBeLessThan((Math.sqrt(a) + Math.sqrt(b) + Math.sqrt(c)) ** 2)
  })
  test('one layer as deep as all of them has the same volts, and inductance within 5 %', () => {
    const thick = wound(
      changed('drum', (winding, document) => {
        single(winding, document)
        Object.assign(winding, { turns: 32, bundleDepth_mm: 3.4 })
        winding.phases[0].distance_mm = 4.2
      }),
    )
    const [phase] = stacked.voltage.phases
    expect(thick.voltage.phases[0]!.rms / phase!.rms).toBeCloseTo(1, 2)
    // the mutual inductance of layers takes their sections for closer than they are: some 3 % high in all
    expect(Math.abs(thick.voltage.phases[0]!.inductance / phase!.inductance - 1)).toBeLessThan(0.05)
  })
})

describe('law: interleaved phases', () => {
  const lifts = [0, 2.2, 4.4]
  const interleaved = wound(
    changed('drum', (winding) => {
      winding.phases.forEach((phase: Raw, k: number) => {
        Object.assign(phase, { distance_mm: 3.2, crownLift_mm: lifts[k] })
      })
    }),
  )
  test('share one level, so that their volts are nearly alike and a third of a turn apart', () => {
    const [a, b, c] = interleaved.voltage.phases
    for (const phase of [b!, c!]) expect(Math.abs(phase.rms / a!.rms - 1)).toBeLessThan(0.04)
    expect(b!.lag).toBeCloseTo((2 * Math.PI) / 3, 6)
    expect(c!.lag).toBeCloseTo((-2 * Math.PI) / 3, 6)
  })
  test('lifted crowns need more wire, by their ramps and their greater radius', () => {
    const [a, b, c] = interleaved.layout.shapes.map(({ curve }) => curveLength(curve))
    expect(b!).toBeGreaterThan(a!)
    expect(c!).toBeGreaterThan(b!)
  })
})

describe('law: one coil alone', () => {
  const coil = (name: FixedName, more: object) =>
    wound(
      changed(name, (_, document) => {
        const drum = name === 'drum'
        document.stator.connection = 'single'
        document.stator.winding = {
          kind: 'coils',
          coilCount: 1,
          phaseCount: 1,
          turns: 100,
          hole: { shape: 'rectangular', holeWidth_mm: drum ? 14 : 8, holeLength_mm: drum ? 50 : 15 },
          legWidth_mm: 5,
          bundleDepth_mm: 4,
          distance_mm: 4,
          ...more,
        }
      }),
    )
  for (const name of ['drum', 'disc', 'twoDiscs'] as const)
    test(`${name}: placed at an angle it sees the rotor so much later`, () => {
      const at = (offset_deg: number) => coil(name, { offset_deg })
      const [here, there] = [at(0), at(17)]
      const [a, b] = [here.voltage, there.voltage]
      expect(b.phases[0]!.rms / a.phases[0]!.rms).toBeCloseTo(1, 9)
      const lag = (v: typeof a) => Math.atan2(v.phases[0]!.emf.sin[v.order]!, v.phases[0]!.emf.cos[v.order]!)
      const apart = lag(b) - lag(a) - (here.machine.rotor.polePairs * 17 * Math.PI) / 180
      expect(Math.cos(apart)).toBeCloseTo(1, 9)
      expect(there.copper.fit.neighbourRoom).toBeUndefined()
    })
  test('goes through the whole chain on a drum and on discs', () => {
    for (const name of ['drum', 'disc', 'twoDiscs'] as const) {
      const document = changed(name, (_, raw) => {
        raw.stator.connection = 'single'
        raw.stator.winding = {
          kind: 'coils',
          coilCount: 1,
          phaseCount: 1,
          turns: 100,
          hole: { shape: 'round', holeDiameter_mm: 8 },
          legWidth_mm: 5,
          bundleDepth_mm: 4,
          distance_mm: 4,
          offset_deg: -30,
        }
      })
      const chain = computeDesign(designOf(document))
      expect(chain.voltage.phases.length).toBe(1)
      expect(chain.year.energy).toBeGreaterThanOrEqual(0)
    }
  })
})

describe('law: lap coils', () => {
  const lapped = (name: FixedName, legs: string, coilCount = 18) =>
    changed(name, (_, document) => {
      const drum = name === 'drum'
      document.stator.connection = 'star'
      document.stator.winding = {
        kind: 'coils',
        coilCount,
        phaseCount: 3,
        turns: 30,
        hole: { shape: 'lap', runLength_mm: drum ? 60 : 40, endHeight_mm: drum ? 20 : 25, legs },
        legWidth_mm: drum ? 7 : 10,
        bundleDepth_mm: 2.5,
        distance_mm: 3.5,
      }
    })
  for (const name of ['drum', 'twoDiscs'] as const)
    for (const legs of ['two levels', 'one level'])
      test(`${name}, ${legs}: three alike phases a third apart, and room all round`, () => {
        const { voltage, copper, layout } = wound(lapped(name, legs))
        const [a, b, c] = voltage.phases
        expect(b!.rms / a!.rms).toBeCloseTo(1, 9)
        expect(b!.lag).toBeCloseTo((2 * Math.PI) / 3, 6)
        expect(c!.lag).toBeCloseTo((-2 * Math.PI) / 3, 6)
        expect(a!.inStep).toBeCloseTo(1, 6)
        expect(copper.fit.neighbourRoom!).toBeGreaterThan(-1e-9)
        expect(layout.shapes.length).toBe(1)
        // turns at full pitch with the ends left out: a leg for every pole and turn
        expect(harmonicAmplitude(a!.emf, 1)).toBeGreaterThan(0)
      })
  test('legs on one level have no room where coils stand half a span apart', () => {
    const { copper } = wound(lapped('drum', 'one level', 24))
    expect(copper.fit.neighbourRoom!).toBeLessThan(0)
    expect(wound(lapped('drum', 'two levels', 24)).copper.fit.neighbourRoom!).toBeGreaterThan(-1e-9)
  })
  test('upper legs must clear what stands opposite', () => {
    const parsed = parseDesign(
      changed('twoDiscs', (_, document) => {
        document.stator.winding = lapped('twoDiscs', 'two levels').stator.winding
        document.stator.winding.hole.levelStep_mm = 12
      }),
    )
    expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual(['stator.winding.distance_mm'])
  })
})

describe('law: filaments enough for wide and deep bundles', () => {
  test('linkages within 5e-4 of far finer ones', () => {
    const cases: readonly (readonly [FixedName, Change])[] = [
      ['twoDiscs', (winding) => Object.assign(winding, { legWidth_mm: 26, bundleDepth_mm: 12 })],
      ['disc', (winding) => Object.assign(winding, { legWidth_mm: 16, bundleDepth_mm: 6 })],
      ['disc', (winding) => Object.assign(winding, { legWidth_mm: 10, bundleDepth_mm: 18, distance_mm: 11 })],
      [
        'drum',
        (winding, document) => {
          single(winding, document)
          winding.bundleDepth_mm = 12
          winding.phases[0].distance_mm = 8
        },
      ],
      [
        'drum',
        (winding, document) => {
          single(winding, document)
          winding.bundleDepth_mm = 20
          winding.phases[0].distance_mm = 12
        },
      ],
    ]
    for (const [name, change] of cases) {
      const machine = resolveDesign(designOf(changed(name, change)))
      const field = rotorField(machine)
      const linkage = (orders?: readonly [number, number]) =>
        rotorLinkage(machine, field, conductorLayout(machine, orders).shapes[0]!, 9).flux
      const [usual, fine] = [linkage(), linkage([9, 6])]
      const amplitude = harmonicAmplitude(fine, 1)
      for (let h = 1; h <= 5; h++) {
        const off = Math.hypot(usual.cos[h]! - fine.cos[h]!, usual.sin[h]! - fine.sin[h]!)
        expect(off / amplitude).toBeLessThan(5e-4)
      }
    }
  })
})

describe('law: whatever can be built is computed', () => {
  test('random serpentines and coils of every shape: finite volts, ohms and henries, or faults', () => {
    const serpentine = fc.record({
      kind: fc.constant('serpentine'),
      turns: fc.integer({ min: 1, max: 60 }),
      layers: fc.integer({ min: 1, max: 3 }),
      runLength_mm: fc.double({ min: 5, max: 80, noNaN: true }),
      crownHeight_mm: fc.double({ min: 0.5, max: 30, noNaN: true }),
      crown: fc.constantFrom('half-ellipse', 'rounded corners'),
      slant_deg: fc.constantFrom(0, 10, 30),
      bundleWidth_mm: fc.double({ min: 0.5, max: 12, noNaN: true }),
      bundleDepth_mm: fc.double({ min: 0.5, max: 4, noNaN: true }),
      phases: fc.array(
        fc.record({
          offset_deg: fc.constantFrom(0, 10, 20, 40),
          distance_mm: fc.double({ min: 1, max: 12, noNaN: true }),
          crownLift_mm: fc.constantFrom(0, 0, 3, 6),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    })
    const coils = fc.record({
      kind: fc.constant('coils'),
      coilCount: fc.integer({ min: 1, max: 36 }),
      phaseCount: fc.integer({ min: 1, max: 3 }),
      turns: fc.integer({ min: 1, max: 60 }),
      legWidth_mm: fc.double({ min: 0.5, max: 12, noNaN: true }),
      bundleDepth_mm: fc.double({ min: 0.5, max: 6, noNaN: true }),
      distance_mm: fc.double({ min: 1, max: 12, noNaN: true }),
      offset_deg: fc.double({ min: -360, max: 360, noNaN: true }),
      hole: fc.oneof(
        fc.record({
          shape: fc.constant('round'),
          holeDiameter_mm: fc.double({ min: 1, max: 40, noNaN: true }),
        }),
        fc.record({
          shape: fc.constant('lap'),
          span: fc.double({ min: 0.1, max: 8, noNaN: true }),
          runLength_mm: fc.double({ min: 1, max: 80, noNaN: true }),
          endHeight_mm: fc.double({ min: 0.5, max: 60, noNaN: true }),
          legs: fc.constantFrom('two levels', 'one level'),
        }),
      ),
    })
    let built = 0
    fc.assert(
      fc.property(
        fc.constantFrom<FixedName>('drum', 'disc', 'twoDiscs'),
        fc.oneof(serpentine, coils),
        fc.boolean(),
        (name, winding, inside) => {
          const document = changed(name, (_, raw) => {
            raw.stator.winding = winding
            const phases = 'phases' in winding ? winding.phases.length : winding.phaseCount
            raw.stator.connection = phases === 1 ? 'single' : 'separate'
            if (name === 'drum' && inside) raw.rotor.windingSide = 'inside'
          })
          const parsed = parseDesign(document)
          if (!parsed.ok) {
            for (const { condition } of parsed.faults) expect(condition).not.toMatch(/NaN|Infinity/)
            return
          }
          built++
          const machine = resolveDesign(parsed.design)
          const layout = conductorLayout(machine)
          const copper = woundMachine(machine, layout)
          const { voltage } = wound(document)
          for (const { rms, resistance, inductance } of voltage.phases)
            for (const value of [rms, resistance, inductance]) expect(Number.isFinite(value)).toBe(true)
          for (const { turnLength, curve } of layout.shapes)
            expect(Math.abs(turnLength / curveLength(curve) - 1)).toBeLessThan(0.5)
          expect(Number.isFinite(copper.wireLength)).toBe(true)
        },
      ),
      { numRuns: 40 },
    )
    expect(built).toBeGreaterThan(3)
  }, 60_000)
})
