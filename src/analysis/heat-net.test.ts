/** Checks of the quick net: against the careful one, against slabs cut into slices, and its energy. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { heatedSlabRise } from '../physics/heat/conduction.ts'
import { steadyTemperatures, type ThermalLink } from '../physics/heat/thermal-network.ts'
import { type HeatBody, type HeatLink, openAir, solvedNet } from './heat-net.ts'

const nodes = (count: number, capacity = 10) =>
  Array.from({ length: count }, (_, k) => ({ key: `${k}`, name: `${k}`, capacity }))
const solid = (from: number, to: number, conductance: number): HeatLink => ({
  kind: 'solid',
  from,
  to,
  conductance,
})
const still = { speed: 0, wind: 0 }
const rest = (body: HeatBody, sources: readonly number[]) => {
  const rises = new Float64Array(body.nodes.length)
  solvedNet(body).settle({ ...still, sources }, rises)
  return rises
}

/** A chain with cross links, all reaching the air. */
const anyNet = fc.integer({ min: 2, max: 9 }).chain((count) =>
  fc.record({
    count: fc.constant(count),
    along: fc.array(fc.double({ min: 0.05, max: 50, noNaN: true }), { minLength: count, maxLength: count }),
    across: fc.array(fc.double({ min: 0.05, max: 50, noNaN: true }), { minLength: count, maxLength: count }),
    sources: fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: count, maxLength: count }),
  }),
)
const bodyOf = ({
  count,
  along,
  across,
}: {
  count: number
  along: number[]
  across: number[]
}): HeatBody => ({
  ambient: 290,
  nodes: nodes(count),
  links: [
    ...along.map((G, k) => solid(k, k + 1 < count ? k + 1 : openAir, G)),
    ...across.slice(2).map((G, k) => solid(k, k + 2, G)),
  ],
})

describe('agrees: any net of solids and the net solver of the physics', () => {
  test('the same temperatures', () => {
    fc.assert(
      fc.property(anyNet, (net) => {
        const body = bodyOf(net)
        const air = net.count
        const links = body.links.map(
          (link): ThermalLink => ({
            from: link.from,
            to: link.to === openAir ? air : link.to,
            conductance: link.kind === 'solid' ? link.conductance : 0,
          }),
        )
        const careful = steadyTemperatures({
          count: net.count + 1,
          fixed: [{ node: air, temperature: 290 }],
          state: () => ({ links, sources: [...net.sources, 0] }),
        })
        const rises = rest(body, net.sources)
        rises.forEach((rise, k) => {
          const other = careful.temperatures[k]! - 290
          expect(Math.abs(rise - Math.min(other, 1000))).toBeLessThan(1e-6 * (1 + other))
        })
      }),
      { numRuns: 60 },
    )
  })
})

describe('agrees: one node of three links and a slab cut into two hundred slices', () => {
  // k A / d = 4 W/K, 60 W born evenly, films of different strength on the two faces
  const slab = 4
  const heat = 60
  const count = 200
  const sliced: HeatBody = {
    ambient: 300,
    nodes: nodes(count + 2),
    links: [
      solid(0, count, 2 * count * slab),
      ...Array.from({ length: count - 1 }, (_, k) => solid(k, k + 1, count * slab)),
      solid(count - 1, count + 1, 2 * count * slab),
      solid(count, openAir, 3),
      solid(count + 1, openAir, 0.5),
    ],
  }
  const whole: HeatBody = {
    ambient: 300,
    nodes: nodes(3),
    links: [
      solid(0, 1, 6 * slab),
      solid(0, 2, 6 * slab),
      solid(1, 2, -2 * slab),
      solid(1, openAir, 3),
      solid(2, openAir, 0.5),
    ],
  }
  const fine = rest(sliced, [...Array.from({ length: count }, () => heat / count), 0, 0])
  const coarse = rest(whole, [heat, 0, 0])
  const mean = fine.slice(0, count).reduce((sum, rise) => sum + rise / count, 0)
  test('mean and both faces', () => {
    expect(coarse[0]).toBeCloseTo(mean, 2)
    expect(coarse[1]).toBeCloseTo(fine[count]!, 6)
    expect(coarse[2]).toBeCloseTo(fine[count + 1]!, 6)
  })
  test('faces alike: the closed form', () => {
    const alike = rest(
      { ...whole, links: [...whole.links.slice(0, 3), solid(1, openAir, 2), solid(2, openAir, 2)] },
      [heat, 0, 0],
    )
    const { mean: closed } = heatedSlabRise({ heatDensity: heat, thickness: 1, conductivity: slab })
    expect(alike[0]! - alike[1]!).toBeCloseTo(closed, 6)
    expect(alike[1]).toBeCloseTo(alike[2]!, 9)
  })
})

describe('law: energy', () => {
  test('at rest all heat reaches the air; on the way what is not given off is kept', () => {
    fc.assert(
      fc.property(anyNet, fc.double({ min: 0.01, max: 1000, noNaN: true }), (net, duration) => {
        const body = bodyOf(net)
        const total = net.sources.reduce((sum, each) => sum + each, 0)
        fc.pre(total > 1)
        const solved = solvedNet(body)
        const state = { ...still, sources: net.sources }
        const rises = new Float64Array(net.count)
        solved.settle(state, rises)
        fc.pre(rises.every((rise) => rise < 999))
        const flows = solved.flows(state, rises)
        const out = body.links.reduce((sum, { to }, l) => (to === openAir ? sum + flows[l]! : sum), 0)
        expect(Math.abs(out / total - 1)).toBeLessThan(1e-6)
        const warming = new Float64Array(net.count)
        let given = 0
        for (let k = 0; k < 5; k++) given += solved.advance(state, warming, duration)
        const kept = warming.reduce((sum, rise) => sum + 10 * rise, 0)
        expect(Math.abs((given + kept) / (5 * duration * total) - 1)).toBeLessThan(1e-6)
      }),
      { numRuns: 60 },
    )
  })
  test('a measured resistance holds its node to it, the others in proportion', () => {
    const body = bodyOf({ count: 4, along: [1, 2, 3, 4], across: [1, 1, 1, 1] })
    const state = { ...still, sources: [20, 0, 0, 0] }
    const free = new Float64Array(4)
    solvedNet(body).settle(state, free)
    const held = new Float64Array(4)
    solvedNet(body, { factor: 1, measured: { node: 0, resistance: 2.5 } }).settle(state, held)
    expect(held[0]).toBeCloseTo(50, 9)
    held.forEach((rise, k) => {
      expect(rise / held[0]!).toBeCloseTo(free[k]! / free[0]!, 9)
    })
  })
})
