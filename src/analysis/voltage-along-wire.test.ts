/** Checks of the volts along the wire: their sum is the EMF of the flux linkage, whatever the machine. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleNames } from '../../test/example.ts'
import { type Change, woundRotor } from '../../test/sample-wound-rotor.ts'
import { parseDesign } from '../machine/parse.ts'
import { fourierSeries, harmonicAmplitude, seriesDerivative, seriesValue } from '../numerics/fourier.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { linkageSamples } from './flux-linkage.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { voltageAlongWire, type WoundRotor } from './voltage-along-wire.ts'
import { inPhasePerMetre, instantPerMetre, peakAngle, type VoltageAlongWire } from './wire-reading.ts'

/** Examples whose poles simply alternate. */
const sound = exampleNames.filter((name) => {
  const document = exampleDocument(name)
  return parseDesign(document).ok && document.rotor.poleSequence === undefined && !document.defects
})

const sum = (values: Iterable<number>): number => {
  let total = 0
  for (const value of values) total += value
  return total
}

/** Volts over the speed of a whole coil, from what its elements give per metre. */
function wholeCoil(along: VoltageAlongWire, shape: number, perMetre: Float64Array): number {
  const { path, turns } = along.shapes[shape]!
  return turns * sum(perMetre.map((value, k) => value * (path[k + 1]! - path[k]!)))
}

/** Both routes cut their series where a wire in the middle of the bundle meets 1e-3; a nearer one meets more. */
const anyShape = { moment: 3e-3, fundamental: 1e-3 }
const usual = { moment: 1e-3, fundamental: 1e-3 }

/** dψ/dx of each shape, from the linkage that the EMF is made of. */
const usualSlopes = ({ voltage }: WoundRotor) => voltage.linkages.map(({ flux }) => seriesDerivative(flux))

/** The same from the vector potential of all magnets together, sampled round the whole turn. */
const directSlopes = ({ layout, field, voltage }: WoundRotor) =>
  layout.shapes.map((shape, k) => {
    const orders = voltage.linkages[k]!.flux.cos.length - 1
    const span = 2 * Math.PI
    const samples = linkageSamples({
      shape,
      copies: shape.repeats,
      sources: field.sources,
      span,
      count: 2 * (orders + 1),
    })
    return seriesDerivative(fourierSeries(samples, orders))
  })

/** One wave with four times the usual points along the wire: a run that leaves the magnets needs them. */
function withFineLinkage(rotor: WoundRotor): WoundRotor {
  const { layout, field, machine, wound } = rotor
  const { polePairs } = machine.rotor
  const linkages = layout.shapes.map((shape, k) => {
    const orders = rotor.voltage.linkages[k]!.flux.cos.length - 1
    const samples = linkageSamples({
      shape,
      copies: 1,
      sources: field.sources,
      span: (2 * Math.PI) / polePairs,
      count: 2 * (orders + 1),
      fineness: 4,
    })
    const { cos, sin } = fourierSeries(samples, orders)
    const factor = (h: number) => {
      const x = (h * polePairs * shape.spreadAngle) / 2
      return shape.repeats * (x === 0 ? 1 : Math.sin(x) / x)
    }
    return {
      base: polePairs,
      flux: { cos: cos.map((value, h) => value * factor(h)), sin: sin.map((value, h) => value * factor(h)) },
    }
  })
  const usualVoltage = openCircuitVoltage(machine, field, layout, wound)
  const phases = usualVoltage.phases.map((phase, k) => ({
    ...phase,
    fundamental:
      layout.shapes[k]!.turns * harmonicAmplitude(seriesDerivative(linkages[k]!.flux), 1) * polePairs,
  }))
  const coils = usualVoltage.coils.map((coil, k) => ({ ...coil, fundamental: phases[k]!.fundamental }))
  return { ...rotor, voltage: { ...usualVoltage, linkages, phases, coils } }
}

function expectEmf(rotor: WoundRotor, allowed = anyShape, slopes = usualSlopes(rotor)): void {
  const along = voltageAlongWire(rotor)
  const { voltage, layout } = rotor
  for (const coil of along.coils) {
    const { repeats, turns } = along.shapes[coil.shape]!
    const slope = slopes[coil.shape]!
    const { fundamental } = voltage.coils[coil.number - 1]!
    const inStep = repeats * wholeCoil(along, coil.shape, inPhasePerMetre(along, coil))
    expect(Math.abs(inStep)).toBeLessThanOrEqual(fundamental * (1 + allowed.fundamental))
    const peak = Math.max(
      ...Array.from({ length: 32 }, (_, k) => Math.abs(turns * voltage.base * seriesValue(slope, k / 5))),
    )
    for (const rotorAngle of [0, 0.013, 0.21, 1.7]) {
      const emf = Array.from({ length: repeats }, (_, copy) =>
        wholeCoil(along, coil.shape, instantPerMetre(along, coil, rotorAngle, copy)),
      )
      const byLinkage =
        -coil.sense *
        layout.shapes[coil.shape]!.turns *
        voltage.base *
        seriesValue(slope, voltage.base * (rotorAngle - coil.angle))
      expect(Math.abs(sum(emf) - byLinkage)).toBeLessThan(allowed.moment * peak)
    }
  }
  along.phases.forEach(({ fundamental, parts }, phase) => {
    const expected = voltage.phases[phase]!.fundamental
    // coils that nearly cancel leave a small rest of large parts
    const raised = Math.max(...voltage.coils.map((coil) => coil.fundamental))
    expect(Math.abs(fundamental - expected)).toBeLessThan(allowed.fundamental * Math.max(expected, raised))
    expect(sum(parts.map(({ volts }) => volts))).toBeCloseTo(fundamental, 12)
    expect(sum(parts.map(({ share }) => share))).toBeCloseTo(1, 12)
    expect(sum(parts.map(({ copperShare }) => copperShare))).toBeCloseTo(1, 12)
  })
}

describe('law: the elements sum to the EMF of the flux linkage, at every moment and in the fundamental', () => {
  for (const name of sound) test(name, () => expectEmf(woundRotor(name), usual))
  test('a run that leans', () =>
    expectEmf(
      woundRotor('hen-house-drum', ({ stator }) => {
        stator.winding.slant_deg = 9
      }),
    ))
  const kinds: readonly (readonly [string, string, Change])[] = [
    [
      'steel ring and sleeve',
      'hen-house-drum',
      ({ rotor }) => {
        rotor.backIron = { kind: 'steel', thickness_mm: 5 }
        rotor.sleeve = { distance_mm: 11, motion: 'stands' }
      },
    ],
    [
      'magnets turned round and beside their place',
      'hen-house-drum',
      (document) => {
        document.defects = [
          { kind: 'flipped magnet', position: 3 },
          { kind: 'shifted magnet', position: 5, shift_mm: 1 },
        ]
      },
    ],
    [
      'arcs',
      'hen-house-drum',
      ({ rotor }) => {
        const { grade } = rotor.magnet
        rotor.magnet = { shape: 'arc', length_mm: 60, thickness_mm: 5, span_deg: 22, grade }
      },
    ],
    [
      'round magnets',
      'class-room-fan',
      ({ rotor }) => {
        const { grade } = rotor.magnet
        rotor.magnet = { shape: 'disc', diameter_mm: 18, thickness_mm: 5, grade }
      },
    ],
    [
      'magnets end to end',
      'hen-house-drum',
      ({ rotor }) => {
        rotor.piecesPerPole = 2
        rotor.magnet.width_mm = 11
      },
    ],
    [
      'layers with lifted crowns',
      'hen-house-drum',
      ({ stator }) => {
        stator.winding.layers = 2
        stator.winding.bundleDepth_mm = 1
        for (const phase of stator.winding.phases) phase.crownLift_mm = 3
      },
    ],
    [
      'overlapped coils, legs on two levels',
      'boathouse-two-disc',
      ({ rotor, stator }) => {
        rotor.faceDistance_mm = 30
        stator.winding.coilCount = 18
        stator.winding.legWidth_mm = 6
        stator.winding.bundleDepth_mm = 6
        stator.winding.hole = { shape: 'lap', runLength_mm: 40, endHeight_mm: 15 }
      },
    ],
    [
      'a wave on a disc',
      'class-room-fan',
      ({ stator }) => {
        stator.connection = 'single'
        stator.winding = {
          kind: 'serpentine',
          turns: 20,
          runLength_mm: 20,
          crownHeight_mm: 6,
          bundleWidth_mm: 4,
          bundleDepth_mm: 2,
          phases: [{ offset_deg: 0, distance_mm: 3 }],
        }
      },
    ],
  ]
  for (const [name, example, change] of kinds)
    test(name, () => {
      const rotor = woundRotor(example, change)
      expectEmf(rotor)
      const along = voltageAlongWire(rotor)
      const raised = Math.max(...rotor.voltage.coils.map(({ fundamental }) => fundamental))
      along.phases.forEach(({ fundamental }, phase) => {
        expect(Math.abs(fundamental - rotor.voltage.phases[phase]!.fundamental)).toBeLessThan(3e-4 * raised)
      })
    })
  test('shorted turns give no volts, an askew stator gives each coil its own', () => {
    for (const defect of [
      { kind: 'shorted turns', coil: 1, turns: 20 },
      { kind: 'unequal gap', difference_mm: 2 },
    ]) {
      const rotor = woundRotor('boathouse-two-disc', (document) => {
        document.defects = [defect]
      })
      const { phases } = voltageAlongWire(rotor)
      phases.forEach(({ fundamental }, phase) => {
        expect(fundamental / rotor.voltage.phases[phase]!.fundamental).toBeCloseTo(1, 3)
      })
    }
  })
  test('poles that do not alternate', () => {
    const rotor = woundRotor('class-room-fan', (document) => {
      document.rotor.poleSequence = 'NSNNNSNS'
    })
    expectEmf(rotor, usual, directSlopes(rotor))
  })
  test('coils in two groups', () =>
    expectEmf(
      woundRotor('boathouse-two-disc', ({ stator }) => {
        stator.winding.coilCount = 12
        stator.winding.phaseCount = 1
        stator.connection = 'single'
        stator.winding.hole = { shape: 'round', holeDiameter_mm: 12 }
        stator.winding.legWidth_mm = 12
        stator.winding.parallelGroups = 2
      }),
    ))
  test('drums of any proportions', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 12 }),
        fc.double({ min: 4, max: 12, noNaN: true }),
        fc.double({ min: 5, max: 90, noNaN: true }),
        fc.double({ min: 3, max: 25, noNaN: true }),
        (pairs, distance, run, crown) =>
          expectEmf(
            withFineLinkage(
              woundRotor('hen-house-drum', ({ rotor, stator }) => {
                rotor.poleCount = 2 * pairs
                rotor.magnet.width_mm = 90 / pairs
                rotor.magnet.length_mm = 40
                stator.winding.runLength_mm = run
                stator.winding.crownHeight_mm = crown
                stator.winding.bundleWidth_mm = 20 / pairs
                stator.winding.bundleDepth_mm = 1
                stator.winding.phases = [{ offset_deg: 7, distance_mm: distance }]
                stator.connection = 'single'
              }),
            ),
          ),
      ),
      { numRuns: 5 },
    ))
  test('flat coils of any proportions', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.double({ min: 4, max: 9, noNaN: true }),
        fc.double({ min: 5, max: 14, noNaN: true }),
        fc.double({ min: 8, max: 40, noNaN: true }),
        (count, distance, width, length) =>
          expectEmf(
            woundRotor('class-room-fan', ({ stator }) => {
              stator.winding.coilCount = count
              stator.winding.phaseCount = 1
              stator.winding.hole = { shape: 'rectangular', holeWidth_mm: width, holeLength_mm: length }
              stator.winding.legWidth_mm = 5
              stator.winding.distance_mm = distance
              stator.connection = 'single'
            }),
          ),
      ),
      { numRuns: 5 },
    ))
})

describe('law: sense and place', () => {
  const turned = (which: number) => (layout: ConductorLayout) => ({
    ...layout,
    coils: layout.coils.map((coil) =>
      coil.number === which ? { ...coil, sense: -coil.sense as 1 | -1 } : coil,
    ),
  })
  test('a coil the wrong way round works against its phase', () => {
    const right = voltageAlongWire(woundRotor('boathouse-two-disc'))
    const wrong = voltageAlongWire(woundRotor('boathouse-two-disc', () => {}, turned(1)))
    const [before, after] = [right, wrong].map((along) => inPhasePerMetre(along, along.coils[0]!))
    after!.forEach((value, k) => {
      expect(value).toBeCloseTo(-before![k]!, 9)
    })
    // two coils against one
    expect(wrong.phases[0]!.fundamental / right.phases[0]!.fundamental).toBeCloseTo(1 / 3, 6)
    expect(sum(wrong.phases[0]!.parts.map(({ share }) => share))).toBeCloseTo(1, 12)
  })
  test('a phase the wrong way round is in step with itself', () => {
    const [right, wrong] = [1, -1].map((sign) =>
      voltageAlongWire(
        woundRotor(
          'hen-house-drum',
          () => {},
          (layout) => ({
            ...layout,
            coils: layout.coils.map((coil) => ({ ...coil, sense: (sign * coil.sense) as 1 | -1 })),
          }),
        ),
      ),
    )
    expect(wrong!.phases).toEqual(right!.phases)
    const at = peakAngle(right!, right!.coils[1]!)
    const moment = (along: VoltageAlongWire) => instantPerMetre(along, along.coils[1]!, at)
    moment(wrong!).forEach((value, k) => {
      expect(value).toBeCloseTo(-moment(right!)[k]!, 12)
    })
  })
  test('at the peak of the phase the fundamental is what is in step', () => {
    const along = voltageAlongWire(woundRotor('hen-house-drum'))
    for (const coil of along.coils) {
      const at = peakAngle(along, coil)
      const { orders } = along.shapes[coil.shape]!
      const onlyFundamental = {
        ...along,
        shapes: along.shapes.map((shape) => ({
          ...shape,
          cos: shape.cos.map((value, k) => (k % (orders + 1) === along.order ? value : 0)),
          sin: shape.sin.map((value, k) => (k % (orders + 1) === along.order ? value : 0)),
        })),
      }
      const atPeak = instantPerMetre(onlyFundamental, coil, at)
      inPhasePerMetre(along, coil).forEach((value, k) => {
        expect(value).toBeCloseTo(atPeak[k]!, 12)
      })
    }
  })
})

describe('law: crowns', () => {
  const shareOf = (rotor: WoundRotor, name: string) =>
    voltageAlongWire(rotor).phases[0]!.parts.find(({ part }) => part === name)!
  test('of a drum’s wave lie in the fringe: much wire, few volts', () => {
    const crown = shareOf(woundRotor('hen-house-drum'), 'crown')
    expect(crown.copperShare).toBeGreaterThan(0.35)
    expect(Math.abs(crown.share)).toBeLessThan(0.05)
    expect(crown.underShare).toBe(0)
  })
  test('that the magnets cover give their part', () => {
    const covered = shareOf(
      woundRotor('hen-house-drum', ({ stator }) => {
        stator.winding.runLength_mm = 30
      }),
      'crown',
    )
    expect(covered.share).toBeGreaterThan(0.15)
    expect(covered.underShare).toBeGreaterThan(0.9 * covered.share)
  })
})
