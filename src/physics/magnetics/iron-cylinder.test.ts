/** Checks of a drum between iron tubes: closed-form open field, long machine, 3-D finite elements, limits. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mildSteel } from '../../data/steel.ts'
import { monotoneCubic } from '../../numerics/interpolate.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { blockFluxDensity } from './block-magnet.ts'
import { cuboidDemagnetizingFactor } from './demagnetizing-factor.ts'
import { type IronCylinder, type IronDrum, ironCylinderField } from './iron-cylinder.ts'
import { alternatingSequence, drumMagnets } from './magnet-ring.ts'
import { magnetLoadFactor } from './working-point.ts'

const magnets = {
  count: 12,
  radius: 0.05,
  width: 0.015,
  axialLength: 0.06,
  thickness: 0.005,
  polarization: 1.3,
}
const ring6: IronCylinder = { radius: 0.0473, thickness: 0.006 }
const ring2: IronCylinder = { radius: 0.0473, thickness: 0.002 }
const sleeve: IronCylinder = { radius: 0.062, thickness: 0.003 }
const around: IronCylinder = { radius: 0.0532, thickness: 0.006 }
const short = (iron: IronCylinder): IronCylinder => ({ ...iron, length: 0.06 })
const long = (iron: IronCylinder): IronCylinder => ({ ...iron, length: 0.1 })
const winding = { radius: 0.0575, length: 0.06 }
const middle = { radius: 0.0575, length: 0 }
const orders = [6, 18, 30, 42, 54, 66, 78, 90]

const table = monotoneCubic(mildSteel.fluxDensity_T, mildSteel.fieldStrength_A_per_m)
const steel = (B: number) => (B > 2.2 ? 41976 + (B - 2.2) / (4e-7 * Math.PI) : B < 0.1 ? 1910 * B : table(B))

const blocks = drumMagnets({ ...magnets, sequence: alternatingSequence(12) })
const openLoad = magnetLoadFactor({ magnets: blocks, own: 0 })

describe('agrees: the open field is that of the blocks in closed form', () => {
  const count = 96
  for (const [radius, length] of [
    [0.0575, 0],
    [0.056, 0.06],
    [0.042, 0],
  ] as const)
    test(`${radius} m, run ${length} m`, () => {
      const { nodes, weights } = length === 0 ? { nodes: [0], weights: [1] } : gaussLegendreOn(12, -0.5, 0.5)
      const points = new Float64Array(3 * count * nodes.length)
      for (let j = 0; j < nodes.length; j++)
        for (let i = 0; i < count; i++) {
          const θ = (i * Math.PI) / 3 / count
          points.set([radius * Math.cos(θ), radius * Math.sin(θ), length * nodes[j]!], 3 * (count * j + i))
        }
      const B = blockFluxDensity(blocks, points)
      for (const order of [6, 18, 30]) {
        let [normal, tangential] = [0, 0]
        for (let j = 0; j < nodes.length; j++)
          for (let i = 0; i < count; i++) {
            const [x, y] = [points[3 * (count * j + i)]! / radius, points[3 * (count * j + i) + 1]! / radius]
            const [bx, by] = [B[3 * (count * j + i)]!, B[3 * (count * j + i) + 1]!]
            const θ = (i * Math.PI) / 3 / count
            normal += ((2 * weights[j]!) / count) * (bx * x + by * y) * Math.cos(order * θ)
            tangential += ((2 * weights[j]!) / count) * (by * x - bx * y) * Math.sin(order * θ)
          }
        const found = ironCylinderField({ magnets }).fluxDensity(order, { radius, length })
        expect(Math.abs(found.normal - normal)).toBeLessThan(2e-5)
        expect(Math.abs(found.tangential - tangential)).toBeLessThan(2e-5)
      }
    })
})

describe('agrees: a long drum is a layered plane field, charges on the flat faces summed in two dimensions', () => {
  const [a, b] = [ring6.radius, sleeve.radius]
  for (const order of [6, 18, 30])
    test(`order ${order}`, () => {
      const S = (r: number) => (r / a) ** order - (a / r) ** order
      let charge = 0
      for (const side of [1, -1]) {
        const x = 0.05 + side * 0.0025
        const { nodes, weights } = gaussLegendreOn(24, -0.0075, 0.0075)
        for (let i = 0; i < 24; i++)
          charge +=
            side * weights[i]! * S(Math.hypot(x, nodes[i]!)) * Math.cos(order * Math.atan2(nodes[i]!, x))
      }
      const r = winding.radius
      const share = (12 * 1.3 * charge) / (2 * Math.PI * r * ((b / a) ** order - (a / b) ** order))
      const field = ironCylinderField({
        magnets: { ...magnets, axialLength: 1 },
        inner: ring6,
        outer: sleeve,
      }).fluxDensity(order, { ...winding, length: 0.5 })
      expect(Math.abs(field.normal / (share * ((b / r) ** order + (r / b) ** order)) - 1)).toBeLessThan(1e-3)
      expect(Math.abs(field.tangential / (share * ((b / r) ** order - (r / b) ** order)) - 1)).toBeLessThan(
        1e-3,
      )
    })
})

interface Run {
  readonly orders: Readonly<
    Record<string, { normal_T: number; tangential_T: number; normalOverRun_T: number }>
  >
  readonly fluxOverRun_Wb: number
  readonly meanMu0H_T: number
  readonly wallMiddle_T: number
  readonly wallMean_T: number
  readonly farNormal_T: number
}
const fe = JSON.parse(
  readFileSync(new URL('../../../test/reference/iron-cylinder/drum-sector.json', import.meta.url), 'utf8'),
) as { readonly runs: Readonly<Record<string, Run>> }

/** J by the finite elements' own mean H, where they have a recoil permeability of 1.05. */
const atWork = (run: Run) => ({ ...magnets, polarization: 1.3 + 0.05 * run.meanMu0H_T })

describe('agrees: 3-D finite elements (gmsh, getdp), see test/reference/iron-cylinder', () => {
  const runOf = (name: string): Run => fe.runs[name]!
  const cases: readonly (readonly [
    name: string,
    drum: (run: Run) => IronDrum,
    wall: 'inner' | 'outer',
    of: number,
  ])[] = [
    ['ring6-ideal', () => ({ magnets, inner: short(ring6) }), 'inner', 0.02],
    ['ring6-recoil', (run) => ({ magnets: atWork(run), inner: short(ring6) }), 'inner', 0.02],
    ['ring6-long-ideal', () => ({ magnets, inner: long(ring6) }), 'inner', 0.01],
    [
      'ring2-curve',
      (run) => ({ magnets: atWork(run), inner: { ...short(ring2), permeability: steel } }),
      'inner',
      0.04,
    ],
    ['ring2-long-thirty', () => ({ magnets, inner: { ...long(ring2), permeability: 30 } }), 'inner', 0.03],
    ['both-ideal', () => ({ magnets, inner: short(ring6), outer: short(sleeve) }), 'inner', 0.01],
    ['both-sleeve', () => ({ magnets, inner: short(ring6), outer: short(sleeve) }), 'outer', 0.03],
    ['both-long-ideal', () => ({ magnets, inner: long(ring6), outer: long(sleeve) }), 'inner', 0.02],
    [
      'both2-curve',
      (run) => ({
        magnets: atWork(run),
        inner: { ...short(ring2), permeability: steel },
        outer: { ...short(sleeve), permeability: steel },
      }),
      'inner',
      0.03,
    ],
    ['sleeve-ideal', () => ({ magnets, outer: short(sleeve) }), 'outer', 0.03],
    [
      'inward-ideal',
      () => ({ magnets: { ...magnets, polarization: -1.3 }, outer: short(around) }),
      'outer',
      0.03,
    ],
  ]
  for (const [name, drum, wall, wallError] of cases) {
    const run = runOf(name)
    const field = ironCylinderField(drum(run))
    const r = name.startsWith('inward') ? 0.0425 : 0.0575
    // one permeability for the whole tube is coarser than the curve point by point
    const share = name.endsWith('curve') ? 6e-3 : 4e-3
    test(`${name}: fundamental in the middle and over the run within ${100 * share} %`, () => {
      const { normal_T, tangential_T, normalOverRun_T } = run.orders['6']!
      const here = field.fluxDensity(6, { radius: r, length: 0 })
      expect(Math.abs(here.normal / normal_T - 1)).toBeLessThan(share)
      expect(Math.abs(here.tangential / tangential_T - 1)).toBeLessThan(share)
      expect(
        Math.abs(field.fluxDensity(6, { radius: r, length: 0.06 }).normal / normalOverRun_T - 1),
      ).toBeLessThan(share)
    })
    test(`${name}: flux through a full pitch 60 mm long within 0.5 %`, () => {
      let flux = 0
      for (const order of orders)
        flux +=
          ((2 * r * 0.06) / order) *
          Math.sin((order * Math.PI) / 12) *
          field.fluxDensity(order, { radius: r, length: 0.06 }).normal
      expect(Math.abs(flux / run.fluxOverRun_Wb - 1)).toBeLessThan(5e-3)
    })
    test(`${name}: flux density in the wall within ${100 * wallError} %`, () => {
      const { fluxDensity } = field[wall]!
      expect(Math.abs(fluxDensity.middle / run.wallMiddle_T - 1)).toBeLessThan(wallError)
      expect(Math.abs(fluxDensity.mean / run.wallMean_T - 1)).toBeLessThan(wallError)
    })
    test(`${name}: load factor within 0.01`, () => {
      const h = run.meanMu0H_T / drum(run).magnets.polarization
      expect(Math.abs(openLoad + field.loadFactor - h)).toBeLessThan(0.01)
    })
  }
  test('the open field of the same mesh is within 0.3 % of the closed form', () => {
    const open = ironCylinderField({ magnets }).fluxDensity(6, middle)
    expect(Math.abs(open.normal / runOf('open').orders['6']!.normal_T - 1)).toBeLessThan(3e-3)
  })
})

describe('law: ideal iron', () => {
  test('the field stands square on its surface', () => {
    const field = ironCylinderField({ magnets, inner: ring6, outer: sleeve })
    for (const order of [6, 18])
      for (const radius of [sleeve.radius, ring6.radius]) {
        const { normal, tangential } = field.fluxDensity(order, { radius, length: 0 })
        expect(Math.abs(tangential)).toBeLessThan(1e-9 + 1e-6 * Math.abs(normal))
      }
  })
  test('all flux that enters a short tube goes round in its wall', () => {
    const { inner, outer } = ironCylinderField({ magnets, inner: short(ring6), outer: short(sleeve) })
    expect(inner!.fluxDensity.mean * 2 * 0.06 * 0.006).toBeCloseTo(inner!.poleFlux, 8)
    expect(outer!.fluxDensity.mean * 2 * 0.06 * 0.003).toBeCloseTo(outer!.poleFlux, 8)
    expect(inner!.leakage).toBe(0)
  })
  test('a tube long enough is one without end', () => {
    const gain = (length: number | undefined) =>
      ironCylinderField({
        magnets,
        inner: length === undefined ? ring6 : { ...ring6, length },
        outer: length === undefined ? sleeve : { ...sleeve, length },
      }).gain(6, winding).normal
    expect(gain(0.1) / gain(undefined)).toBeCloseTo(1, 3)
    expect(gain(0.2)).toBe(gain(undefined))
  })
  test('a tube that is very short does nothing', () => {
    const field = ironCylinderField({ magnets, outer: { ...sleeve, length: 1e-5 } })
    expect(field.gain(6, winding).normal).toBeCloseTo(1, 2)
  })
  test('a block on nearly flat iron is the block of twice the thickness', () => {
    // few poles on a large drum: a lone block, its demagnetising field that of the merged block
    const alone = { count: 2, radius: 2, width: 0.02, axialLength: 0.03, thickness: 0.01, polarization: 1.2 }
    const { loadFactor } = ironCylinderField({ magnets: alone, inner: { radius: 1.9949, thickness: 0.5 } })
    const wanted =
      cuboidDemagnetizingFactor([0.02, 0.03, 0.01]) - cuboidDemagnetizingFactor([0.02, 0.03, 0.02])
    // eight orders of one pole pair resolve nothing of a block this narrow: only its sign and bound are seen
    expect(loadFactor).toBeGreaterThan(0)
    expect(loadFactor).toBeLessThan(wanted)
  })
})

describe('law: real iron', () => {
  const at = (permeability: number, thickness = 0.002) =>
    ironCylinderField({ magnets, inner: { ...ring2, thickness, permeability } })
  test('gain grows with permeability from none to that of ideal iron', () => {
    expect(at(1).gain(6, winding).normal).toBeCloseTo(1, 4)
    let before = 1
    for (const permeability of [3, 10, 100, 1000]) {
      const now = at(permeability).gain(6, winding).normal
      expect(now).toBeGreaterThan(before)
      before = now
    }
    expect(at(1e8).gain(6, winding).normal).toBeCloseTo(
      ironCylinderField({ magnets, inner: ring2 }).gain(6, winding).normal,
      5,
    )
  })
  test('what leaks through falls with the wall', () => {
    expect(at(30).inner!.leakage).toBeGreaterThan(at(30, 0.006).inner!.leakage)
    expect(at(30, 0.1).inner!.leakage).toBe(0)
    expect(at(1).inner!.leakage).toBeGreaterThan(0.75)
  })
  test('a straight curve is a permeability', () => {
    const straight = ironCylinderField({
      magnets,
      inner: { ...short(ring2), permeability: (B) => B / (4e-7 * Math.PI * 80) },
    })
    expect(straight.inner!.permeability).toBeCloseTo(80, 3)
    expect(straight.gain(6, winding).normal).toBeCloseTo(
      ironCylinderField({ magnets, inner: { ...short(ring2), permeability: 80 } }).gain(6, winding).normal,
      6,
    )
  })
  test('thin steel saturates, thick steel is all but ideal', () => {
    const thin = ironCylinderField({ magnets, inner: { ...ring2, thickness: 0.0005, permeability: steel } })
    expect(thin.inner!.fluxDensity.middle).toBeGreaterThan(1.75)
    expect(thin.inner!.permeability).toBeLessThan(60)
    const thick = ironCylinderField({ magnets, inner: { ...ring6, permeability: steel } })
    const ideal = ironCylinderField({ magnets, inner: ring6 })
    expect(thick.gain(6, winding).normal / ideal.gain(6, winding).normal).toBeGreaterThan(0.99)
  })
})

describe('law: gains', () => {
  const drum: IronDrum = { magnets, inner: short(ring6), outer: short(sleeve) }
  test('are smooth in the order, bounded where the open field has no such order', () => {
    const field = ironCylinderField(drum)
    let before = field.gain(1, winding)
    for (let order = 2; order <= 100; order++) {
      const now = field.gain(order, winding)
      if (order > 6) expect(Math.abs(now.normal - before.normal)).toBeLessThan(0.25)
      expect(now.normal).toBeGreaterThan(0.5)
      before = now
    }
    expect(before.normal).toBeCloseTo(1, 3)
  })
  test('do not know J, fields are proportional to it', () => {
    const weak = ironCylinderField({ ...drum, magnets: { ...magnets, polarization: -0.1 } })
    const strong = ironCylinderField(drum)
    expect(weak.gain(6, winding)).toEqual(strong.gain(6, winding))
    expect(weak.fluxDensity(6, middle).normal).toBeCloseTo(strong.fluxDensity(6, middle).normal / -13, 10)
    expect(weak.fluxDensity(7, middle)).toEqual({ normal: 0, tangential: 0 })
  })
  test('any drum gives numbers', () => {
    const share = (min: number, max: number) =>
      fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }).map(Math.exp)
    const tube = fc.record({
      near: share(1, 2),
      wall: share(1e-3, 2),
      length: fc.option(share(0.3, 4)),
      permeability: fc.oneof(fc.constant(undefined), share(1, 1e5), fc.constant(steel)),
    })
    fc.assert(
      fc.property(
        share(1, 50).map((p) => 2 * Math.round(p)),
        share(0.003, 1.5),
        share(0.02, 1),
        share(0.1, 10),
        share(0.1, 1),
        fc.option(tube),
        fc.option(tube),
        (count, radius, flat, slender, wide, inside, outside) => {
          const thickness = radius * flat
          const least = radius - thickness / 2
          const axialLength = radius * slender
          const width = 2 * least * Math.min(Math.tan(Math.PI / Math.max(count, 3)), 1) * wide
          const corner = Math.hypot(radius + thickness / 2, width / 2)
          const iron = (one: NonNullable<typeof inside>, at: number): IronCylinder => ({
            radius: at,
            thickness: radius * one.wall,
            ...(one.length === null ? {} : { length: axialLength * one.length }),
            ...(one.permeability === undefined ? {} : { permeability: one.permeability }),
          })
          const field = ironCylinderField({
            magnets: { count, radius, width, axialLength, thickness, polarization: 1.3 },
            ...(inside === null ? {} : { inner: iron(inside, least / inside.near) }),
            ...(outside === null ? {} : { outer: iron(outside, corner * outside.near) }),
          })
          const place = {
            radius: corner * (outside === null ? 1.1 : (1 + outside.near) / 2),
            length: axialLength,
          }
          const numbers = [count / 2, (15 * count) / 2, 1].flatMap((order) => [
            ...Object.values(field.gain(order, place)),
            ...Object.values(field.fluxDensity(order, place)),
          ])
          for (const state of [field.inner, field.outer])
            if (state)
              numbers.push(state.fluxDensity.middle, state.fluxDensity.mean, state.poleFlux, state.leakage)
          expect([...numbers, field.loadFactor].filter((x) => !Number.isFinite(x))).toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })
  test('meaningless input is refused', () => {
    const code = (drum: IronDrum) => {
      try {
        ironCylinderField(drum)
      } catch (error) {
        return (error as { code?: string }).code
      }
      return 'none'
    }
    expect(code({ magnets: { ...magnets, count: 5 } })).toBe('not-a-choice')
    expect(code({ magnets: { ...magnets, thickness: 0.2 } })).toBe('conflict')
    expect(code({ magnets, inner: { ...ring6, radius: 0.048 } })).toBe('conflict')
    expect(code({ magnets, outer: { ...sleeve, radius: 0.053 } })).toBe('conflict')
    expect(code({ magnets, outer: { ...sleeve, permeability: 0.9 } })).toBe('below-minimum')
    expect(code({ magnets, outer: { ...sleeve, thickness: 0 } })).toBe('below-minimum')
    expect(code({ magnets, outer: { ...sleeve, permeability: () => Number.NaN } })).toBe('not-finite')
    expect(() => ironCylinderField({ magnets }).gain(0, winding)).toThrow('whole number')
    expect(() => ironCylinderField({ magnets }).gain(6, { radius: 0, length: 1 })).toThrow('above zero')
  })
})
