/** Checks the drag of metal parts: against the plain formula of a slow sheet, and by laws. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { fourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { sheetEndShare } from '../physics/electrics/eddy-plate.ts'
import { fieldAt, levelAbove, rotorField } from './air-gap-field.ts'
import { metalPartLosses } from './metal-part-loss.ts'

function partOf(name: string, part: Record<string, unknown>) {
  const document = exampleDocument(name)
  document.stator.metalParts = [part]
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine, machine.site.ambient)
  return { machine, field, ...metalPartLosses(machine, field)[0]! }
}

const plate = { kind: 'plate', material: 'aluminium', thickness_mm: 0.5, distance_mm: 8, length_mm: 24 }
const bolt = { kind: 'bolt', material: 'brass', diameter_mm: 4, length_mm: 10, distance_mm: 12 }

describe('agrees: a thin sheet turned slowly, t v² ⟨B²⟩/ρ over its area', () => {
  test('class-room disc', () => {
    const { machine, field, loss, part } = partOf('class-room-fan', plate)
    if (part.kind === 'bolt') throw new Error('not a plate')
    const { rotor } = machine
    const length = Math.min(part.length, rotor.magnet.length)
    const speed = 0.5
    const v = speed * rotor.pitchRadius
    const z = levelAbove(machine, part.distance + part.thickness / 2)
    const N = 96
    const { nodes, weights } = gaussLegendre(5)
    // order by order, as each has its own share at the ends
    let sum = 0
    nodes.forEach((node, i) => {
      const r = rotor.pitchRadius + (node * length) / 2
      const normal = Array.from({ length: N }, (_, k) => {
        const θ = (2 * Math.PI * k) / (N * rotor.polePairs)
        return fieldAt(field, Float64Array.of(r * Math.cos(θ), r * Math.sin(θ), z))[2]!
      })
      const series = fourierSeries(normal, 15)
      for (let h = 1; h <= 15; h++)
        sum +=
          ((weights[i]! / 2) *
            harmonicAmplitude(series, h) ** 2 *
            sheetEndShare({
              waveNumber: (h * rotor.polePairs) / rotor.pitchRadius,
              length,
              overhang: (part.length - length) / 2,
            })) /
          2
    })
    const watts =
      (part.thickness * v ** 2 * sum * 2 * Math.PI * rotor.pitchRadius * length) / part.resistivity
    // the plate is thin, not infinitely so
    expect(Math.abs(loss(speed) / watts - 1)).toBeLessThan(0.01)
  })
})

describe('law: metal parts', () => {
  const discLoss = (part: Record<string, unknown>) => partOf('class-room-fan', part)
  test('slow: with the square of the speed; copper loses more than brass, brass more than stainless steel', () => {
    const aluminium = discLoss(plate)
    expect(aluminium.loss(2) / aluminium.loss(1)).toBeCloseTo(4, 2)
    const of = (material: string) => discLoss({ ...plate, material }).loss(10)
    expect(of('copper')).toBeGreaterThan(of('aluminium'))
    expect(of('aluminium')).toBeGreaterThan(of('brass'))
    expect(of('brass')).toBeGreaterThan(of('stainless steel'))
  })
  test('farther away, narrower, a sector only: less', () => {
    const all = discLoss(plate).loss(30)
    expect(discLoss({ ...plate, distance_mm: 16 }).loss(30)).toBeLessThan(0.5 * all)
    expect(discLoss({ ...plate, length_mm: 12 }).loss(30)).toBeLessThan(0.6 * all)
    expect(discLoss({ ...plate, covers_deg: 90 }).loss(30) / all).toBeCloseTo(0.25, 6)
  })
  test('torque has a peak: at the speed of most drag of the sheet, within a factor', () => {
    const { loss } = discLoss({ ...plate, material: 'copper', thickness_mm: 5 })
    const torque = (speed: number) => loss(speed) / speed
    const speeds = Array.from({ length: 60 }, (_, k) => 2 * 1.12 ** k)
    const best = speeds.reduce((a, b) => (torque(b) > torque(a) ? b : a))
    // 2 ρ/(μ0 t) over the radius: 5.5 m/s at 40 mm
    expect(best).toBeGreaterThan(0.5 * 137)
    expect(best).toBeLessThan(3 * 137)
  })
  test('bolts add up; a bolt twice as thick loses 16 times as much while it is slow; steel has the wider range', () => {
    const one = discLoss(bolt)
    expect(discLoss({ ...bolt, count: 3 }).loss(20) / one.loss(20)).toBeCloseTo(3, 6)
    expect(discLoss({ ...bolt, diameter_mm: 2 }).loss(5) / one.loss(5)).toBeCloseTo(1 / 16, 3)
    expect(discLoss({ ...bolt, material: 'mild steel' }).spread).toBeGreaterThan(one.spread)
  })
  test('finite and positive for every kind, metal and machine', () => {
    const ring = { kind: 'ring', material: 'mild steel', thickness_mm: 2, distance_mm: 14, length_mm: 40 }
    for (const [name, part] of [
      ['class-room-fan', ring],
      ['hen-house-drum', ring],
      ['hen-house-drum', { ...bolt, axis: 'along', length_mm: 80, distance_mm: 20, material: 'mild steel' }],
      ['boathouse-two-disc', { ...plate, distance_mm: 8, length_mm: 60, material: 'copper' }],
    ] as const) {
      const { loss } = partOf(name, part)
      for (const speed of [0, 1e-3, 1, 100, 1e5]) {
        expect(Number.isFinite(loss(speed))).toBe(true)
        expect(loss(speed)).toBeGreaterThanOrEqual(0)
      }
    }
  })
})
