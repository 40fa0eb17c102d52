/** Checks of the pull: printed value, charges in the field, attraction to iron, distance. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { identityFrame, type Vector3 } from '../../numerics/vector.ts'
import { type BlockMagnet, blockFluxDensity } from './block-magnet.ts'
import { imageMagnets } from './image-plane.ts'
import { alternatingSequence, discMagnets } from './magnet-ring.ts'
import { magneticPull, pullAcrossPlane } from './magnetic-pull.ts'

const μ0 = 4e-7 * Math.PI
const block = (centre: Vector3, polarization = 1.3): BlockMagnet => ({
  centre,
  frame: identityFrame,
  size: [0.02, 0.02, 0.01],
  polarization,
})
/** Force along z on a block's pole charges ±J/μ0 in the field of the others. */
function chargeForce(on: BlockMagnet, others: readonly BlockMagnet[]): number {
  const order = 24
  const [w, l, t] = on.size
  const X = gaussLegendreOn(order, -w / 2, w / 2)
  const Y = gaussLegendreOn(order, -l / 2, l / 2)
  let force = 0
  for (const side of [1, -1])
    for (let i = 0; i < order; i++)
      for (let j = 0; j < order; j++) {
        const p = [on.centre[0] + X.nodes[i]!, on.centre[1] + Y.nodes[j]!, on.centre[2] + (side * t) / 2]
        const b = blockFluxDensity(others, new Float64Array(p))
        force += (side * on.polarization * X.weights[i]! * Y.weights[j]! * b[2]!) / μ0
      }
  return force
}

describe('agrees: hand calculation B²A/2μ0', () => {
  check('0.6 T over twelve times 8 cm²', () => magneticPull({ fluxDensity: 0.6, area: 12 * 8e-4 }), '1375')
  check('1 T over 1 cm²', () => magneticPull({ fluxDensity: 1, area: 1e-4 }), '39.79')
})

describe('law: pull grows with the square of the field and with the area', () => {
  test('doubling', () => {
    const one = magneticPull({ fluxDensity: 0.3, area: 2e-3 })
    expect(magneticPull({ fluxDensity: -0.6, area: 2e-3 })).toBeCloseTo(4 * one, 10)
    expect(magneticPull({ fluxDensity: 0.3, area: 4e-3 })).toBeCloseTo(2 * one, 10)
    expect(magneticPull({ fluxDensity: 0.3, area: 0 })).toBe(0)
  })
})

describe('agrees: stress over a plane against the force on pole charges', () => {
  test('two blocks attracting and repelling', () => {
    for (const sign of [1, -1]) {
      const [low, high] = [block([0, 0, -0.01]), block([0, 0, 0.012], sign * 1.3)]
      const plane = pullAcrossPlane({
        magnets: [low, high],
        height: 0.001,
        outerRadius: 0.3,
        radialOrder: 40,
        angularOrder: 64,
      })
      expect(plane / -chargeForce(high, [low])).toBeCloseTo(1, 4)
      expect(Math.sign(plane)).toBe(sign)
    }
  })
  test('a block pulled by iron: its image does it', () => {
    const magnet = block([0, 0, 0.008])
    const magnets = imageMagnets({ magnets: [magnet], lowerPlane: 0 })
    const plane = pullAcrossPlane({ magnets, height: 0, outerRadius: 0.3, radialOrder: 40, angularOrder: 64 })
    expect(plane / -chargeForce(magnet, [magnets[1]!])).toBeCloseTo(1, 4)
  })
})

describe('law: two discs of twelve', () => {
  const ring = (height: number) =>
    discMagnets({
      count: 12,
      radius: 0.09,
      height,
      radialLength: 0.04,
      width: 0.02,
      thickness: 0.01,
      polarization: 1.26,
      sequence: alternatingSequence(12),
    })
  const discs = (gap: number) =>
    imageMagnets({
      magnets: [...ring(-gap / 2 - 0.005), ...ring(gap / 2 + 0.005)],
      lowerPlane: -gap / 2 - 0.01,
      upperPlane: gap / 2 + 0.01,
      reflections: 3,
    })
  test('default points are within 1e-3 of many points, and the period is used rightly', () => {
    const magnets = discs(0.016)
    const plain = { magnets, height: 0, outerRadius: 0.2 }
    const coarse = pullAcrossPlane({ ...plain, period: 12 })
    const fine = pullAcrossPlane({ ...plain, period: 6, radialOrder: 24, angularOrder: 96 })
    expect(coarse / fine).toBeCloseTo(1, 3)
    // 12 × 8 cm² at the field over the pole, 0.54 T, is an upper bound: 1114 N
    expect(fine).toBeLessThan(magneticPull({ fluxDensity: 0.545, area: 12 * 8e-4 }))
    expect(fine).toBeGreaterThan(0.5 * magneticPull({ fluxDensity: 0.545, area: 12 * 8e-4 }))
  })
  test('any plane of the gap carries the same pull; a wider gap carries less', () => {
    const magnets = discs(0.016)
    const pull = (height: number) =>
      pullAcrossPlane({ magnets, height, outerRadius: 0.2, period: 12, radialOrder: 20, angularOrder: 48 })
    expect(pull(0.003) / pull(0)).toBeCloseTo(1, 3)
    expect(pullAcrossPlane({ magnets: discs(0.02), height: 0, outerRadius: 0.2, period: 12 })).toBeLessThan(
      pull(0),
    )
  })
})

describe('refusals', () => {
  test.each([
    ['area below zero', () => magneticPull({ fluxDensity: 1, area: -1 })],
    ['field not finite', () => magneticPull({ fluxDensity: Number.NaN, area: 1 })],
    ['radius zero', () => pullAcrossPlane({ magnets: [], height: 0, outerRadius: 0 })],
    ['half a period', () => pullAcrossPlane({ magnets: [], height: 0, outerRadius: 1, period: 0.5 })],
  ])('law: %s', (_, f) => {
    expect(f).toThrow(RangeError)
  })
})
