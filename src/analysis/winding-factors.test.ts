/** Checks the winding factors: textbook against integrated, and what tells them apart. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { idealRun, levelField } from './leg-voltage.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { woundMachine } from './winding.ts'
import { factorCauses, windingFactors } from './winding-factors.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will, also to what no type allows
type Raw = any

function chainOf(name: FixedName, change: (document: Raw) => void = () => {}) {
  const document = fixedDocument(name) as Raw
  change(document)
  const machine = resolveDesign(designOf(document))
  const layout = conductorLayout(machine)
  const field = rotorField(machine)
  const wound = woundMachine(machine, layout)
  return { machine, layout, field, voltage: openCircuitVoltage(machine, field, layout, wound) }
}

/** Lap coils of thin legs, as long as the magnets, on two levels or as they need them. */
const lap = (coilCount: number, span: number, length_mm: number, more: object = {}) => ({
  kind: 'coils',
  coilCount,
  phaseCount: 3,
  turns: 10,
  hole: { shape: 'lap', span, runLength_mm: length_mm, endHeight_mm: 18, ...more },
  legWidth_mm: 0.4,
  bundleDepth_mm: 0.3,
  distance_mm: 4,
})

describe('source: pyrhonen2014, section 2.9 — fundamental winding factors of coils as wide as their share of the circle (textbook values, from memory, not opened)', () => {
  const rows = [
    [12, 14, '0.933'],
    [12, 10, '0.933'],
    [9, 12, '0.866'],
    [9, 8, '0.945'],
    [9, 10, '0.945'],
    // two coils to each pole and phase at full pitch: cos 15°
    [24, 4, '0.966'],
  ] as const
  for (const [coils, poles, printed] of rows) {
    const fullPitch = coils / poles > 3
    const chain = chainOf('drum', (document) => {
      document.rotor.poleCount = poles
      document.stator.winding = lap(coils, fullPitch ? 1 : poles / coils, 60)
      document.stator.connection = 'star'
    })
    const { rows: found, shares } = windingFactors(chain)
    const { pitch, distribution, textbook } = found[0]!
    check(`${coils} coils on ${poles} poles: pitch × distribution`, pitch * distribution, printed)
    test(`${coils} coils on ${poles} poles: what the legs under the magnets raise is the textbook's factor`, () => {
      expect(Math.abs(shares.legs - 1)).toBeLessThan(1e-4)
      expect(textbook / (pitch * distribution)).toBeGreaterThan(0.998)
    })
  }
})

describe('agrees: N p Ω B (R² − r²)/2 by hand — a serpentine of ten turns and sixteen poles in 0.5 T from 100 to 140 mm at 300 r/min', () => {
  const { nodes, weights } = gaussLegendre(16)
  const run = idealRun(
    {
      level: 0,
      along: nodes.map((x) => 0.02 * x),
      lever: weights.map((weight, k) => 0.02 * weight * (0.12 + 0.02 * nodes[k]!)),
      series: Array.from(nodes, () => ({ cos: Float64Array.of(0, 0.5), sin: Float64Array.of(0, 0) })),
    },
    1,
  )
  check('peak of the phase, V', 10 * 16 * 10 * Math.PI * run, '12.06')
})

describe('law: a serpentine of p pole pairs is p full-pitch coils', () => {
  test('EMF of its legs: N p Ω ∮ B₁ r dr, the same as of p lap coils in series', () => {
    for (const name of ['drum', 'disc'] as const) {
      const length = name === 'drum' ? 60 : 20
      const thin = { bundleWidth_mm: 0.4, bundleDepth_mm: 0.3 }
      const wave = chainOf(name, (document) => {
        document.rotor.magnet.length_mm = length
        document.stator.connection = 'single'
        document.stator.winding = {
          kind: 'serpentine',
          turns: 10,
          runLength_mm: length,
          crownHeight_mm: 8,
          ...thin,
          phases: [{ offset_deg: 0, distance_mm: 4 }],
        }
      })
      const { polePairs } = wave.machine.rotor
      const coils = chainOf(name, (document) => {
        document.rotor.magnet.length_mm = length
        document.stator.connection = 'single'
        document.stator.winding = {
          ...lap(polePairs, 1, length, { endHeight_mm: 8 }),
          phaseCount: 1,
        }
      })
      const first = windingFactors(wave)
      const second = windingFactors(coils)
      expect(first.shares.legs).toBeCloseTo(1, 6)
      expect(second.shares.legs).toBeCloseTo(1, 4)
      expect(first.rows[0]!.pitch).toBeCloseTo(1, 12)
      expect(second.rows[0]!.pitch).toBeCloseTo(1, 12)
      // their ends differ in form alone
      const emf = (chain: typeof wave) => chain.voltage.phases[0]!.fundamental
      expect(emf(coils) / emf(wave)).toBeCloseTo(1, 1)
      expect(emf(coils) / second.shares.ends / (emf(wave) / first.shares.ends)).toBeCloseTo(1, 3)
      // the sum written out on the circles of the Gauss points
      const seen = { machine: wave.machine, field: wave.field, base: wave.voltage.base, order: 1 }
      const { lever, series } = levelField(seen, 4e-3)
      const run = series.reduce((sum, { cos }, k) => sum + lever[k]! * cos[1]!, 0)
      const legs = 10 * 2 * polePairs * Math.abs(run)
      expect(emf(wave) / first.shares.ends / first.shares.depth / first.shares.spread / legs).toBeCloseTo(
        1,
        3,
      )
    }
  })
})

describe('law: the shares multiply up to what sets the integrated factor apart', () => {
  const machines = {
    'serpentine on a drum': chainOf('drum'),
    'coils between discs': chainOf('twoDiscs'),
    'coils on a disc': chainOf('disc'),
    'a slanted serpentine': chainOf('drum', (document) => (document.stator.winding.slant_deg = 15)),
    'a weak magnet': chainOf('drum', (document) => (document.rotor.poleSequence = 'NSNSNNNSNSNS')),
  }
  for (const [title, chain] of Object.entries(machines))
    test(title, () => {
      const { rows, shares, dominant, sentence } = windingFactors(chain)
      const [first] = rows
      const product = factorCauses.reduce((value, cause) => value * shares[cause], 1)
      expect(first!.integrated! / (first!.pitch * first!.distribution)).toBeCloseTo(product, 3)
      for (const cause of factorCauses) {
        const change = (of: number) => Math.abs(Math.log(of))
        expect(change(shares[dominant!])).toBeGreaterThanOrEqual(change(shares[cause]))
      }
      expect(sentence).not.toContain('NaN')
      for (const row of rows) for (const value of Object.values(row)) expect(value).not.toBeNaN()
    })
  test('a slant of half a pole pitch is named, as the skew factor of the textbook', () => {
    const { rows, dominant, sentence } = windingFactors(machines['a slanted serpentine'])
    expect(rows[0]!.skew).toBeCloseTo(Math.sin(Math.PI / 4) / (Math.PI / 4), 12)
    expect(dominant).toBe('skew')
    expect(sentence).toContain('the slant of its runs')
  })
  test('legs that end well inside the magnets are named', () => {
    const short = chainOf('twoDiscs', (document) => {
      document.stator.winding.hole = {
        shape: 'rectangular',
        holeWidth_mm: 24,
        holeLength_mm: 12,
        cornerRadius_mm: 2,
      }
      document.stator.winding.legWidth_mm = 5
    })
    const { shares, dominant } = windingFactors(short)
    expect(shares.legs).toBeLessThan(0.6)
    expect(dominant).toBe('legs')
  })
})
