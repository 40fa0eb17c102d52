/** Checks the conduction within whole windings, at rest and on the way, against finite elements in the plane and round. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import finite from '../../test/reference/heat/heat.json' with { type: 'json' }
import { conductionNet, sliceOf, type WindingName, winding } from '../../test/reference/heat/slice.ts'
import { copperNode } from './copper-node.ts'
import { solvedNet } from './heat-net.ts'

const still = { speed: 0, wind: 0 }

function solved(run: (typeof finite.runs)[number]) {
  const wound = winding(run.name as WindingName)
  const { body, driven, at, inWhole } = conductionNet(wound, run)
  const { heat, copper } = wound
  const net = solvedNet(body)
  const rises = new Float64Array(body.nodes.length)
  const sources = driven.map((watts, node) => (node === copperNode ? watts + copper : watts))
  net.settle({ ...still, sources }, rises)
  const of = (key: string) => rises[at(key)]!
  const given = (which: 'near' | 'far') => {
    const { film, air, shine, metal } = run[which]
    const cover = of(`${which}Cover`)
    return (heat.pack.area * (film * (cover - air) + shine * (cover - metal))) / copper
  }
  const read = heat.read(inWhole(rises), copper)
  return { wound, body, net, of, given, hotSpot: read.hotSpot - body.ambient }
}

// One node for the copper, taken for a slab and a strip at once: their parabolas add, where the true warmth is a
// little more even. A ring is taken for a slab of its middle radius; its far face is 6 % larger, its near one smaller.
// The casting is taken to be as thick as the pack alone and to get its heat by the bundle's edges only, while in truth
// some reaches its outer layers through the covers: no part is judged by its mean where it is cooler than the faces.
const allowed = {
  'coils between two discs': { copper: 0.01, hotSpot: 0.005, face: 0.005, casting: 0.04, share: 0.002 },
  'coils before one disc': { copper: 0.01, hotSpot: 0.04, face: 0.015, casting: 0.11, share: 0.008 },
  'drum in the open': { copper: 0.015, hotSpot: 0.01, face: 0.035, casting: 0, share: 0.03 },
} as const satisfies Record<WindingName, unknown>

for (const run of finite.runs) {
  const { wound, body, net, of, given, hotSpot } = solved(run)
  const { copper, hotSpot: spot, face, casting, share } = allowed[run.name as WindingName]
  const elements = run.rest_K.fine

  describe(`agrees: finite elements, ${run.name}, warmth at rest`, () => {
    test('both routes are given the same pack', () => {
      for (const [key, value] of Object.entries(sliceOf(wound)))
        expect(value, `${key}; made anew by test/reference/heat/run.sh`).toBeCloseTo(
          run.slice[key as keyof typeof run.slice],
          -Math.log10(Math.abs(value) * 1e-6 + 1e-12),
        )
    })
    test('the elements are fine enough: coarse ones differ by under a thousandth', () => {
      for (const key of ['pack', 'hotSpot', 'nearPack', 'farPack'] as const)
        expect(Math.abs(run.rest_K.coarse[key] / elements[key] - 1)).toBeLessThan(1e-3)
    })
    check('mean of the copper', of('copper'), `${elements.pack}`, { relative: copper })
    check('hottest spot', hotSpot, `${elements.hotSpot}`, { relative: spot })
    for (const key of ['nearPack', 'farPack', 'nearCover', 'farCover'] as const)
      check(key, of(key), `${elements[key]}`, { relative: face })
    for (const which of ['near', 'far'] as const)
      check(
        `share of the heat by the ${which} face of the pack`,
        given(which),
        `${elements.share[`${which}Pack`]}`,
        {
          absolute: share,
        },
      )
    if ('casting' in elements) {
      check('mean of the casting', of('support'), `${elements.casting}`, { relative: casting })
      test('casting that lies two to one beside the bundles: copper and hottest spot 1.5 % more at most', () => {
        const { uneven } = run.rest_K
        expect(uneven!.pack / of('copper') - 1).toBeLessThan(0.016)
        expect(uneven!.hotSpot / hotSpot - 1).toBeLessThan(0.016)
      })
    }
  })

  describe(`agrees: finite elements, ${run.name}, after a step of heat`, () => {
    const state = {
      ...still,
      sources: Float64Array.from(body.nodes, (_, node) => (node === copperNode ? wound.copper : 0)),
    }
    const rises = new Float64Array(body.nodes.length)
    const wire = body.nodes.filter(({ key }) => key === 'copper' || key === 'matrix')
    const capacity = wire.reduce((sum, node) => sum + node.capacity, 0)
    let time = 0
    const found = run.step.map(({ time_s, pack_K }) => {
      // so short that halving it moves nothing here
      for (; time < time_s - 1e-9; time += 0.5) net.advance(state, rises, 0.5)
      const pack = wire.reduce(
        (sum, node) => sum + (node.capacity * rises[body.nodes.indexOf(node)]!) / capacity,
        0,
      )
      return { time, off: pack / pack_K - 1 }
    })
    // while the slab takes its shape, heat enters covers and casting faster than a whole slab's resistance lets it
    const shape = wound.heat.pack.shapeTime
    test('never cooler by more than 1 %, warmer by under 14 % while the slab takes its shape', () => {
      for (const { off } of found) {
        expect(off).toBeGreaterThan(-0.01)
        expect(off).toBeLessThan(0.14)
      }
    })
    test('within 6 % after four times the shape time, within 2 % after seven', () => {
      const late = found.filter((each) => each.time > 3.5 * shape)
      expect(late.length).toBeGreaterThan(1)
      for (const { off } of late) expect(Math.abs(off)).toBeLessThan(0.06)
      for (const each of late.filter(({ time: t }) => t > 7 * shape))
        expect(Math.abs(each.off)).toBeLessThan(0.02)
    })
  })
}
