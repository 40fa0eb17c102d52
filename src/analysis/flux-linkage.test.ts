/** Checks of the rotor's linkage: independent routes, symmetry, faults in the ring. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf, exampleDocument } from '../../test/example.ts'
import { bundleFilaments } from '../geometry/bundle.ts'
import { curveQuadrature, turnedCurve } from '../geometry/curve.ts'
import { serpentineCurve, serpentineMeanTurnLength, serpentineSegment } from '../geometry/serpentine.ts'
import { resolveDesign } from '../machine/resolve.ts'
import {
  type FourierSeries,
  fourierSeries,
  harmonicAmplitude,
  seriesDerivative,
  seriesRms,
  seriesValue,
} from '../numerics/fourier.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import type { BlockMagnet } from '../physics/magnetics/block-magnet.ts'
import { magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { motionalEmf } from '../physics/winding/path-linkage.ts'
import { type RotorField, rotorField } from './air-gap-field.ts'
import { type ConductorShape, conductorLayout } from './conductor-layout.ts'
import { linkageSamples, rotorLinkage } from './flux-linkage.ts'

const caseOf = (name: string, change: (document: ReturnType<typeof exampleDocument>) => void = () => {}) => {
  const document = exampleDocument(name)
  change(document)
  const machine = resolveDesign(designOf(document))
  return { machine, field: rotorField(machine), layout: conductorLayout(machine) }
}

/** The shape with its even spread written out as filaments, so that nothing but quadrature is left. */
function spelledOut(shape: ConductorShape): ConductorShape {
  const { nodes, weights } = gaussLegendre(16)
  return {
    ...shape,
    spreadAngle: 0,
    filaments: shape.filaments.flatMap((filament) =>
      shape.spreadAngle === 0
        ? [filament]
        : Array.from(nodes, (x, k) => ({
            ...filament,
            curve: turnedCurve(filament.curve, (x * shape.spreadAngle) / 2),
            weight: (filament.weight * weights[k]!) / 2,
          })),
    ),
  }
}

/** The whole rotor's flux through one copy of the shape's filaments, sampled over half an electrical period. */
function halfWave(
  shape: ConductorShape,
  field: RotorField,
  polePairs: number,
  orders: number,
  fineness = 1,
): FourierSeries {
  const count = orders + 1
  const samples = linkageSamples({
    shape,
    copies: 1,
    sources: field.sources,
    span: Math.PI / polePairs,
    count,
    fineness,
  })
  const full = Float64Array.from({ length: 2 * count }, (_, k) =>
    k < count ? shape.repeats * samples[k]! : -shape.repeats * samples[k - count]!,
  )
  return fourierSeries(full, orders)
}

describe('agrees: per-magnet superposition and the periodic shortcut', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const { machine, field: withSteel, layout } = caseOf(name)
      // what steel of its own curve does to each harmonic is put in after either
      const field = { ...withSteel, iron: undefined }
      // one filament per depth: what is spread evenly is treated alike by both routes
      const shape = { ...layout.shapes[0]!, spreadAngle: 0 }
      // so many orders that what lies above them is far below the claim
      const orders = 61
      const superposed = rotorLinkage(machine, field, shape, orders).flux
      const shortcut = halfWave(shape, field, machine.rotor.polePairs, orders)
      const whole = harmonicAmplitude(shortcut, 1)
      for (const h of [1, 3, 5, 7, 9]) {
        // a coil meets far poles with fewer points along its wire; a wave has every pole near
        const error = shape.repeats === 1 ? 2e-5 : 1e-9
        expect(Math.abs(superposed.cos[h]! - shortcut.cos[h]!) / whole).toBeLessThan(error)
        expect(Math.abs(superposed.sin[h]! - shortcut.sin[h]!) / whole).toBeLessThan(error)
      }
    })
})

describe('agrees: superposition of unlike magnets and the flux of all of them at once', () => {
  const defects: Readonly<Record<string, readonly object[]>> = {
    'hen-house-drum': [
      { kind: 'missing magnet', position: 3 },
      { kind: 'shifted magnet', position: 7, shift_mm: 2 },
    ],
    'boathouse-two-disc': [
      { kind: 'flipped magnet', position: 2, disc: 2 },
      { kind: 'weak magnet', position: 5, disc: 1, strength: 0.7 },
    ],
    'class-room-fan': [{ kind: 'other grade', position: 4, grade: 'Y30' }],
  }
  for (const [name, list] of Object.entries(defects))
    test(name, () => {
      const { machine, field, layout } = caseOf(name, (document) => (document.defects = list))
      const shape = { ...layout.shapes[0]!, spreadAngle: 0 }
      const { flux, base } = rotorLinkage(machine, field, shape, 9)
      expect(base).toBe(1)
      // orders above those kept fold back into a plain sampling: enough samples keep them out
      const count = 64 * machine.rotor.polePairs
      const direct = fourierSeries(
        linkageSamples({
          shape,
          copies: shape.repeats,
          sources: field.sources,
          span: 2 * Math.PI,
          count,
        }),
        9 * machine.rotor.polePairs,
      )
      const whole = harmonicAmplitude(direct, machine.rotor.polePairs)
      for (let h = 1; h <= 3 * machine.rotor.polePairs; h++) {
        expect(Math.abs(flux.cos[h]! - direct.cos[h]!) / whole).toBeLessThan(2e-3)
        expect(Math.abs(flux.sin[h]! - direct.sin[h]!) / whole).toBeLessThan(2e-3)
      }
    })
})

describe('agrees: the EMF by v × B along the wire', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const { machine, field, layout } = caseOf(name)
      const shape = layout.shapes[0]!
      const { flux, base } = rotorLinkage(machine, field, shape)
      const slope = seriesDerivative(flux)
      const peak = seriesRms(slope) * base * Math.SQRT2
      for (const rotorAngle of [0.013, 0.05, 0.11]) {
        let motional = 0
        for (const { curve, weight } of spelledOut(shape).filaments) {
          const { points, steps } = curveQuadrature(curve, { longestStep: 4e-3, order: 6 })
          for (let copy = 0; copy < shape.repeats; copy++) {
            const turn = (2 * Math.PI * copy) / shape.repeats - rotorAngle
            const here = turnPointsAboutZ(points, turn)
            const along = turnPointsAboutZ(steps, turn)
            motional += weight * motionalEmf(magnetFluxDensity(field.sources, here), here, along, 1)
          }
        }
        const byLinkage = -base * seriesValue(slope, base * rotorAngle)
        expect(Math.abs(motional - byLinkage) / peak).toBeLessThan(1e-3)
      }
    })
})

describe('agrees: an independent integration of a serpentine over sixteen overlapping blocks', () => {
  // 16 blocks 50 × 12 × 4 mm, J = 1.30 T, centres at 32 mm (their inner corners overlap by 65 μm, which a real
  // ring could not and `drumMagnets` refuses), filament at 38 mm, runs 50 mm with flat crowns, 120 turns
  const polePairs = 8
  const sources = Array.from({ length: 16 }, (_, k): BlockMagnet => {
    const c = Math.cos((Math.PI * k) / 8)
    const s = Math.sin((Math.PI * k) / 8)
    return {
      centre: [0.032 * c, 0.032 * s, 0],
      frame: [
        [-s, c, 0],
        [0, 0, 1],
        [c, s, 0],
      ],
      size: [0.012, 0.05, 0.004],
      polarization: k % 2 === 0 ? 1.3 : -1.3,
    }
  })
  const serpentine = {
    surface: { kind: 'drum', radius: 0.038, z: 0 },
    polePairs,
    activeLength: 0.05,
    runSlant: 0,
    crown: { kind: 'half-ellipse', height: 1e-6 },
    angle: 0,
  } as const
  const shape: ConductorShape = {
    filaments: bundleFilaments(
      (lateral, normal) => serpentineSegment(serpentine, { lateral, normal }).segment,
      { across: [0, 0], normal: [0, 0] },
    ),
    repeats: polePairs,
    curve: serpentineCurve(serpentine),
    spreadAngle: 0,
    turns: 120,
    turnLength: serpentineMeanTurnLength(serpentine, { width: 0, thickness: 0 }),
    bundle: { width: 0, thickness: 0 },
    distance: 0.004,
    parity: 'odd',
  }
  const flux = halfWave(shape, { sources } as unknown as RotorField, polePairs, 25)
  const emf = seriesDerivative(flux)
  // volts per rpm: turns × pole pairs × radians per second in one rpm
  const perRpm = (120 * polePairs * 2 * Math.PI) / 60
  // the third harmonic is small and rests on how the crowns are drawn: one unit of its last digit
  check('rms, V per rpm', seriesRms(emf) * perRpm, '0.0541')
  check('fundamental, V per rpm', harmonicAmplitude(emf, 1) * perRpm, '0.0761')
  check('third harmonic, V per rpm', harmonicAmplitude(emf, 3) * perRpm, '0.0079', { absolute: 1e-4 })
})

describe('law: finer quadrature along the wire and across the bundle changes the linkage by less than 5e-4', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const { machine, field, layout } = caseOf(name)
      const { polePairs } = machine.rotor
      const shape = layout.shapes[0]!
      const usual = harmonicAmplitude(rotorLinkage(machine, field, shape).flux, 1)
      const alongFiner = harmonicAmplitude(halfWave(spelledOut(shape), field, polePairs, 31, 2), 1)
      expect(Math.abs(usual / alongFiner - 1)).toBeLessThan(5e-5)
      const { shapes } = conductorLayout(machine, [7, 4])
      const acrossFiner = harmonicAmplitude(rotorLinkage(machine, field, shapes[0]!).flux, 1)
      expect(Math.abs(usual / acrossFiner - 1)).toBeLessThan(5e-4)
    })
})

describe('law: parity of the linkage', () => {
  test('the mirrored half of a coil and of a serpentine is what sampling it gives', () => {
    for (const name of ['hen-house-drum', 'boathouse-two-disc']) {
      const { machine, field, layout } = caseOf(name)
      const shape = layout.shapes[0]!
      const mirrored = rotorLinkage(machine, field, shape).flux
      const sampled = rotorLinkage(machine, field, { ...shape, parity: 'none' }).flux
      for (let h = 0; h < mirrored.cos.length; h++) {
        expect(mirrored.cos[h]).toBeCloseTo(sampled.cos[h]!, 12)
        expect(mirrored.sin[h]).toBeCloseTo(sampled.sin[h]!, 12)
      }
    }
  })
})

describe('law: faults in the ring of magnets', () => {
  const fundamentalOf = (sequence: string) => {
    const { machine, field, layout } = caseOf('boathouse-two-disc', (document) => {
      document.rotor.poleSequence = sequence
    })
    const { flux, base } = rotorLinkage(machine, field, layout.shapes[0]!)
    return { amplitude: harmonicAmplitude(flux, machine.rotor.polePairs / base), base }
  }
  test('one magnet of n turned over takes 2/n of the fundamental (the load of its neighbours shifts a little) and shows once a turn', () => {
    const good = fundamentalOf('NSNSNSNSNSNS')
    const faulty = fundamentalOf('NSNSSSNSNSNS')
    expect(good.base).toBe(6)
    expect(faulty.base).toBe(1)
    expect(faulty.amplitude / good.amplitude).toBeCloseTo(1 - 2 / 12, 3)
  })
  test('the same sequence begun with S turns the sign only', () => {
    expect(fundamentalOf('SNSNSNSNSNSN').amplitude).toBeCloseTo(fundamentalOf('NSNSNSNSNSNS').amplitude, 12)
  })
})

describe('source: common-practice, hand-turned serpentine, order of magnitude only', () => {
  // 12 poles, 200 turns, blocks 65 × 10 × 3 mm of nominal grade 35, turned by hand at 2–4 turns a second: the
  // meter shows volts of the order of 9; the drum's radius is not handed down and taken as 30 mm
  const { machine, field, layout } = caseOf('hen-house-drum', (document) => {
    Object.assign(document.rotor, { pitchRadius_mm: 30, cover_mm: 0 })
    document.rotor.magnet = { shape: 'block', length_mm: 65, width_mm: 10, thickness_mm: 3, grade: 'N35' }
    Object.assign(document.stator.winding, {
      turns: 200,
      runLength_mm: 65,
      bundleWidth_mm: 6,
      bundleDepth_mm: 3,
    })
    document.stator.winding.phases = [{ offset_deg: 0, distance_mm: 2.5 }]
    document.stator.connection = 'single'
  })
  const { flux, base } = rotorLinkage(machine, field, layout.shapes[0]!)
  const rms = seriesRms(seriesDerivative(flux)) * base * 200 * 2 * Math.PI * 3
  check('three turns a second, V rms', rms, '9', { relative: 0.5 })
})
