/** Checks of the EMF of each element of the wire: it is v × B. */
import { describe, expect, test } from 'vitest'
import { woundRotor } from '../../test/sample-wound-rotor.ts'
import { curveQuadrature } from '../geometry/curve.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import { magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { motionalEmf } from '../physics/winding/path-linkage.ts'
import { type RotorField, rotorField } from './air-gap-field.ts'
import type { ConductorShape } from './conductor-layout.ts'
import { voltageAlongWire } from './voltage-along-wire.ts'
import { wireElements } from './wire-elements.ts'
import { inPhasePerMetre } from './wire-reading.ts'

describe('agrees: v × B integrated part by part, point by point, in the field of all magnets', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const rotor = woundRotor(name)
      const along = voltageAlongWire(rotor)
      const coil = along.coils[0]!
      const elements = along.shapes[coil.shape]!
      const shape = rotor.layout.shapes[coil.shape]!
      const { polePairs } = rotor.machine.rotor
      const count = 24
      // every piece of the middle filament stands for its elements; compared are straight pieces against bends
      const tone = (pieces: ConductorShape['filaments'][number]['curve']['pieces'], weight: number) => {
        let [a, b] = [0, 0]
        const { points, steps } = curveQuadrature({ closed: false, pieces }, { longestStep: 2e-3, order: 4 })
        for (let k = 0; k < count; k++) {
          const x = (2 * Math.PI * k) / count
          const turn = coil.angle - x / polePairs
          const here = turnPointsAboutZ(points, turn)
          const B = magnetFluxDensity(rotor.field.sources, here)
          const e = motionalEmf(B, here, turnPointsAboutZ(steps, turn), 1)
          a += (2 / count) * e * Math.cos(x)
          b += (2 / count) * e * Math.sin(x)
        }
        return weight * (coil.inPhase.cos * a + coil.inPhase.sin * b)
      }
      const spread = shape.spreadAngle * polePairs * 0.5
      const factor = spread === 0 ? 1 : Math.sin(spread) / spread
      const independent = { line: 0, arc: 0 }
      for (const { curve, weight } of shape.filaments)
        for (const piece of curve.pieces) independent[piece.shape.kind] += factor * tone([piece], weight)
      // the coil stands at angle 0, so its elements need no turning
      expect(coil.angle).toBe(0)
      const own = { line: 0, arc: 0 }
      inPhasePerMetre(along, coil).forEach((value, k) => {
        const bend = ['crown', 'rounded side'].includes(elements.part[k]!)
        const corner = elements.part[k] === 'end' && shape.filaments[0]!.curve.pieces.length === 1
        own[bend || corner ? 'arc' : 'line'] += value * (elements.path[k + 1]! - elements.path[k]!)
      })
      const whole = Math.abs(independent.line + independent.arc)
      expect(Math.abs(own.line + own.arc - independent.line - independent.arc)).toBeLessThan(1e-3 * whole)
      // the ends of the wedge hold bends and straight pieces both; the other two fall apart cleanly
      if (name !== 'boathouse-two-disc')
        expect(Math.abs(own.arc - independent.arc)).toBeLessThan(1e-3 * whole)
    })
})

describe('law: B l v', () => {
  // a block so large that its field is uniform where the wire is
  const size = 400
  const { machine, layout } = woundRotor('class-room-fan')
  const uniform: RotorField = {
    ...rotorField(machine),
    sources: [
      {
        centre: [0, 0, -size / 2 - 1],
        frame: [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        size: [size, size, size],
        polarization: 1.2,
      },
    ],
  }
  const B = magnetFluxDensity(uniform.sources, new Float64Array([0.04, 0, 0]))[2]!
  const still = { ...machine, rotor: { ...machine.rotor, alternating: false } }
  const line = (from: readonly [number, number], to: readonly [number, number]) => {
    const piece = {
      sheet: { kind: 'plane', origin: [0, 0, 0], xAxis: [1, 0, 0], yAxis: [0, 1, 0] },
      shape: { kind: 'line', from, to },
    } as const
    const curve = { closed: false, pieces: [piece] }
    const shape: ConductorShape = {
      ...layout.shapes[0]!,
      filaments: [{ curve, weight: 1, offset: [0, 0] }],
      curve,
    }
    return wireElements(still, uniform, shape, 1)
  }
  const middle = ({ points }: ReturnType<typeof line>, k: number) =>
    Math.hypot((points[3 * k]! + points[3 * k + 3]!) / 2, (points[3 * k + 1]! + points[3 * k + 4]!) / 2)
  test('a wire along the radius', () => {
    const run = line([0.02, 0], [0.06, 0])
    const width = run.orders + 1
    for (let k = 0; k + 1 < run.path.length; k++) {
      const perMetre = run.cos[k * width]! / (run.path[k + 1]! - run.path[k]!)
      // outward wire, rotor turning by +θ: the wire seen from the rotor moves backwards
      expect(perMetre / (-B * middle(run, k))).toBeCloseTo(1, 4)
    }
  })
  test('a wire that leans keeps the cosine of its lean', () => {
    const run = line([0.02, -0.01], [0.06, 0.02])
    const width = run.orders + 1
    for (let k = 0; k + 1 < run.path.length; k++) {
      const perMetre = Math.abs(run.cos[k * width]!) / (run.path[k + 1]! - run.path[k]!)
      expect(perMetre).toBeCloseTo(B * middle(run, k) * Math.cos(run.lean[k]!), 4)
    }
  })
  test('a wire along the circumference gives nothing', () => {
    const piece = {
      sheet: { kind: 'polar', referenceRadius: 0.04, angle: 0, height: 0 },
      shape: { kind: 'line', from: [0, 0.04], to: [0.03, 0.04] },
    } as const
    const curve = { closed: false, pieces: [piece] }
    const filaments = [{ curve, weight: 1, offset: [0, 0] as const }]
    const { cos, sin, lean } = wireElements(still, uniform, { ...layout.shapes[0]!, filaments, curve }, 1)
    for (const value of [...cos, ...sin]) expect(Math.abs(value)).toBeLessThan(1e-12)
    for (const value of lean) expect(value).toBeCloseTo(Math.PI / 2, 6)
  })
})
