/** Checks the eddy loss in the winding against the field taken point by point, and by laws. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { curveQuadrature } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import { roundSection, stripSection } from '../physics/electrics/strand-section.ts'
import { fieldAt, type RotorField, rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { strandLoss } from './strand-loss.ts'

/**
 * The loss by another way: the field at every point of every filament at many rotor angles, its rate by differences,
 * the part along the wire taken off. Round wire only.
 */
function lossPointByPoint(machine: Machine, field: RotorField): number {
  const { wire } = machine.stator
  const layout = conductorLayout(machine, [4, 4])
  const period = (2 * Math.PI) / machine.rotor.polePairs
  const N = 64
  const perShape = layout.shapes.map((shape) => {
    let sum = 0
    for (const { curve, weight } of shape.filaments) {
      const { points, steps } = curveQuadrature(curve, { longestStep: 0.012, order: 4 })
      const seen = Array.from({ length: N }, (_, k) => {
        const angle = (period * k) / N
        return turnPointsAboutZ(fieldAt(field, turnPointsAboutZ(points, -angle)), angle)
      })
      for (let i = 0; i < points.length; i += 3) {
        const [x, y, z] = [steps[i]!, steps[i + 1]!, steps[i + 2]!]
        const length = Math.hypot(x, y, z)
        for (let k = 0; k < N; k++) {
          const rate = [0, 1, 2].map((c) => {
            const at = (step: number) => seen[(k + step + N) % N]![i + c]!
            return (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * (period / N))
          })
          const along = (rate[0]! * x + rate[1]! * y + rate[2]! * z) / length
          sum += (weight * length * (rate[0]! ** 2 + rate[1]! ** 2 + rate[2]! ** 2 - along ** 2)) / N
        }
      }
    }
    return sum * shape.repeats * shape.turns
  })
  const { section, resistivity, strands } = wire
  const all = layout.coils.reduce((sum, { shape }) => sum + perShape[shape]!, 0)
  return (all * strands * section.area * section.meanSquareWidth) / resistivity
}

const parts = (name: string) => {
  const { machine, field, layout } = exampleChain(name)
  return { machine, field, layout }
}

describe('agrees: field point by point along every filament, rates by differences', () => {
  for (const [name, within] of [
    ['class-room-fan', 0.015],
    ['hen-house-drum', 0.005],
    ['boathouse-two-disc', 0.015],
  ] as const)
    test(name, () => {
      const { machine, field, layout } = parts(name)
      const ratio = strandLoss(machine, field, layout).total / lossPointByPoint(machine, field)
      expect(Math.abs(ratio - 1)).toBeLessThan(within)
    }, 60_000)
})

describe('law: strand loss', () => {
  const { machine, field, layout } = parts('hen-house-drum')
  const withWire = (wire: Partial<Machine['stator']['wire']>): Machine => ({
    ...machine,
    stator: { ...machine.stator, wire: { ...machine.stator.wire, ...wire } },
  })
  const loss = (own: Machine) => strandLoss(own, field, layout)
  test('parts under the magnets and past them make the whole', () => {
    const { total, underMagnets, ends } = loss(machine)
    expect((underMagnets + ends) / total).toBeCloseTo(1, 12)
    expect(ends).toBeGreaterThan(0)
    expect(underMagnets).toBeGreaterThan(ends)
  })
  test('goes with d⁴ at equal length, with the number of strands, and against resistivity', () => {
    const one = loss(withWire({ section: roundSection(1e-3) })).total
    expect(loss(withWire({ section: roundSection(2e-3) })).total / one).toBeCloseTo(16, 8)
    expect(loss(withWire({ section: roundSection(1e-3), strands: 3 })).total / one).toBeCloseTo(3, 8)
    expect(
      loss(withWire({ section: roundSection(1e-3), resistivity: 2 * machine.stator.wire.resistivity }))
        .total / one,
    ).toBeCloseTo(0.5, 8)
  })
  test('goes with the square of the magnets', () => {
    const warm = rotorField(machine, machine.site.ambient + 100)
    const ratio = strandLoss(machine, warm, layout).total / loss(machine).total
    const remanence = warm.remanence / field.remanence
    expect(Math.abs(ratio / remanence ** 2 - 1)).toBeLessThan(0.01)
  })
  test('a strip lies better on edge where the field goes through the winding; a round strip is a wire', () => {
    const size = { width: 2e-3, thickness: 0.8e-3 }
    const section = stripSection({ ...size, cornerRadius: 0.2e-3 })
    const shape = (edgewise: boolean) => ({
      kind: 'strip' as const,
      ...size,
      edgeRadius: 0.2e-3,
      outerWidth: size.width,
      outerThickness: size.thickness,
      edgewise,
    })
    const flat = loss(withWire({ section, shape: shape(false) })).total
    const onEdge = loss(withWire({ section, shape: shape(true) })).total
    expect(flat).toBeGreaterThan(onEdge)
    // both directions together are those of a section alike in both
    const mean = (section.meanSquareWidth + section.meanSquareThickness) / 2
    const even = loss(
      withWire({ section: { area: section.area, meanSquareWidth: mean, meanSquareThickness: mean } }),
    ).total
    expect((flat + onEdge) / 2 / even).toBeCloseTo(1, 8)
  })
  test('poles taken as unlike, the whole turn round, come to the same', () => {
    for (const name of ['hen-house-drum', 'class-room-fan']) {
      const own = parts(name)
      const unlike = { ...own.machine, rotor: { ...own.machine.rotor, alternating: false } }
      const ratio =
        strandLoss(unlike, own.field, own.layout).total / strandLoss(own.machine, own.field, own.layout).total
      expect(Math.abs(ratio - 1), name).toBeLessThan(0.02)
    }
  })
})
