/** Checks of the heat of whole machines: by hand, by symmetry, and by what more or less of something must do. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { sampleMachine } from '../../test/sample-chain.ts'
import type { Machine } from '../machine/machine.ts'
import { conductorLayout } from './conductor-layout.ts'
import { leastGap } from './heat-film.ts'
import { openAir } from './heat-net.ts'
import { hotSpotRise, machineHeat } from './machine-heat.ts'
import { statorCooling } from './stator-cooling.ts'
import { woundMachine } from './winding.ts'

const working = { speed: 40, wind: 8 }
const heatOf = (machine: Machine, factor = 1) => {
  const layout = conductorLayout(machine)
  return machineHeat(machine, { layout, wound: woundMachine(machine, layout), working, factor })
}
type Heat = ReturnType<typeof heatOf>
const settled = (heat: Heat, copper: number, motion = working, metal = 0) => {
  const rises = new Float64Array(heat.body.nodes.length)
  const state = { ...motion, sources: heat.sources({ copper, metal }) }
  heat.net.settle(state, rises)
  const of = (key: string) => rises[heat.body.nodes.findIndex((node) => node.key === key)]!
  return { rises, state, of }
}

const drumFields = {
  'rotor.arrangement': 'drum',
  'rotor.windingSide': 'outside',
  'rotor.pitchRadius_mm': 50,
  'rotor.magnet.length_mm': 60,
  'rotor.magnet.width_mm': 15,
  'rotor.magnet.thickness_mm': 5,
  'rotor.faceDistance_mm': undefined,
  'rotor.backIron': undefined,
  'rotor.cover_mm': 0.6,
  'site.ambient_degC': 20,
  'stator.support': 'epoxy',
  'stator.winding': {
    kind: 'serpentine',
    turns: 30,
    runLength_mm: 60,
    crownHeight_mm: 12,
    bundleWidth_mm: 8,
    bundleDepth_mm: 2.2,
    phases: [
      { offset_deg: 0, distance_mm: 3.6 },
      { offset_deg: 20, distance_mm: 5.9 },
      { offset_deg: 40, distance_mm: 8.2 },
    ],
  },
}
const machines: Readonly<Record<string, Machine>> = {
  'two discs': sampleMachine(),
  'two discs without steel': sampleMachine({ 'rotor.backIron': { kind: 'none' } }),
  disc: sampleMachine({ 'rotor.arrangement': 'disc', 'rotor.faceDistance_mm': undefined }),
  'disc with steel opposite': sampleMachine({
    'rotor.arrangement': 'disc',
    'rotor.faceDistance_mm': undefined,
    'rotor.opposite': { kind: 'steel', faceDistance_mm: 18, thickness_mm: 6 },
  }),
  drum: sampleMachine(drumFields),
  'drum wound inside': sampleMachine({ ...drumFields, 'rotor.windingSide': 'inside' }),
  'drum in a sleeve that stands': sampleMachine({
    ...drumFields,
    'rotor.sleeve': { distance_mm: 11, thickness_mm: 3, motion: 'stands' },
  }),
  'drum in a sleeve that turns': sampleMachine({
    ...drumFields,
    'rotor.sleeve': { distance_mm: 11, thickness_mm: 3, motion: 'turns' },
  }),
  'disc with an aluminium ring': sampleMachine({
    'rotor.arrangement': 'disc',
    'rotor.faceDistance_mm': undefined,
    'stator.metalParts': [
      { kind: 'ring', material: 'aluminium', thickness_mm: 3, distance_mm: 18, length_mm: 46 },
    ],
  }),
}

describe('agrees: the outer face of a still drum by hand, air of 40 °C as printed (k 0.0266, ν 1.70e-5, α 2.35e-5, cengel2015 table A-15)', () => {
  const heat = heatOf(machines.drum!)
  const motion = { speed: 0, wind: 0 }
  const { rises, state, of } = settled(heat, 30, motion)
  const flows = heat.net.flows(state, rises)
  const link = heat.body.links.findIndex(
    ({ from, to }) => heat.body.nodes[from]!.key === 'farCover' && to === openAir,
  )
  const ΔT = of('farCover')
  const Ra = ((9.81 * ΔT) / 313) * (0.1236 ** 3 / (1.7e-5 * 2.35e-5))
  const Nu = (0.6 + (0.387 * Ra ** (1 / 6)) / (1 + (0.559 / 0.726) ** (9 / 16)) ** (8 / 27)) ** 2
  const shine = (0.9 * 5.67e-8 * ((293.15 + ΔT) ** 4 - 293.15 ** 4)) / ΔT
  const watts = ((Nu * 0.0266) / 0.1236 + shine) * heat.pack.area * ΔT
  check('watts that leave it', flows[link]!, watts.toFixed(2), { relative: 0.02 })
})

describe('law: every arrangement', () => {
  for (const [name, machine] of Object.entries(machines)) {
    const heat = heatOf(machine)
    test(`${name}: heat out is heat in, at rest and at speed`, () => {
      for (const motion of [working, { speed: 0, wind: 0 }, { speed: 300, wind: 25 }]) {
        const { rises, state } = settled(
          heat,
          40,
          motion,
          heat.body.nodes.some(({ key }) => key === 'metal') ? 3 : 0,
        )
        const flows = heat.net.flows(state, rises)
        const out = heat.body.links.reduce((sum, { to }, l) => (to === openAir ? sum + flows[l]! : sum), 0)
        const born = state.sources.reduce((sum, each) => sum + each, 0)
        expect(Math.abs(out / born - 1)).toBeLessThan(1e-3)
      }
    })
    test(`${name}: no loss, all as warm as the air; more loss, no part cooler; the copper above its faces`, () => {
      expect(settled(heat, 0).rises.every((rise) => Math.abs(rise) < 1e-9)).toBe(true)
      const [less, more] = [settled(heat, 20), settled(heat, 40)]
      more.rises.forEach((rise, k) => {
        expect(rise).toBeGreaterThan(less.rises[k]!)
      })
      const spot = heat.read(more.rises, 40).hotSpot - machine.site.ambient
      expect(spot).toBeGreaterThan(Math.max(more.of('copper'), more.of('nearPack'), more.of('farPack')))
      expect(more.of('nearPack')).toBeGreaterThan(more.of('nearAir'))
      expect(more.of('nearAir')).toBeGreaterThan(more.of('magnets'))
    })
    test(`${name}: faster or windier never warmer; the magnets take a share between none and all`, () => {
      let last = Number.POSITIVE_INFINITY
      for (const step of [0, 1, 2, 4, 8, 16]) {
        const now = settled(heat, 40, { speed: 10 * step, wind: 2 * step }).of('copper')
        expect(now).toBeLessThanOrEqual(last + 1e-9)
        last = now
      }
      expect(heat.magnetShare).toBeGreaterThan(0)
      expect(heat.magnetShare).toBeLessThan(1)
    })
    test(`${name}: a factor on the estimate is one on every rise of the linear net`, () => {
      const { rises } = settled(heat, 20)
      const twice = settled(heatOf(machine, 2), 20)
      // films help hotter faces
      expect(twice.rises[0]).toBeGreaterThan(1.6 * rises[0]!)
      expect(twice.rises[0]).toBeLessThan(2 * rises[0]! + 1e-9)
      expect(heatOf(machine, 1.5).magnetShare).toBeCloseTo(heat.magnetShare, 9)
    })
  }
  test('a symmetric machine is warm symmetrically', () => {
    const { of } = settled(heatOf(machines['two discs']!), 60)
    for (const [near, far] of [
      ['nearPack', 'farPack'],
      ['nearCover', 'farCover'],
      ['nearAir', 'farAir'],
      ['magnets', 'farMagnets'],
      ['backIron', 'farBackIron'],
    ] as const)
      expect(of(near)).toBeCloseTo(of(far), 9)
  })
  test('steel opposite shuts the far face in, a second stirring disc opens it', () => {
    const copper = (name: string, motion = working) =>
      settled(heatOf(machines[name]!), 40, motion).of('copper')
    const calm = { speed: 0, wind: 0 }
    expect(copper('disc with steel opposite', calm)).toBeGreaterThan(copper('disc', calm))
    expect(copper('two discs')).toBeLessThan(copper('disc with steel opposite'))
  })
  test('a resin that conducts less, and dry wire, are never cooler', () => {
    const with_ = (support: Partial<Machine['stator']['support']>) => {
      const machine = machines['two discs']!
      return settled(
        heatOf({
          ...machine,
          stator: { ...machine.stator, support: { ...machine.stator.support, ...support } },
        }),
        60,
      ).of('copper')
    }
    expect(with_({ conductivity: 0.1 })).toBeGreaterThan(with_({}))
    expect(with_({ conductivity: 1 })).toBeLessThan(with_({}))
    expect(with_({ cast: false })).toBeGreaterThan(with_({}))
  })
  test('huge, tiny and shut machines stay finite', () => {
    const drum = machines.drum!
    for (const rotor of [
      { ...drum.rotor, cover: 0.02 },
      { ...drum.rotor, pitchRadius: 5 },
      { ...drum.rotor, pitchRadius: 0.004 },
    ])
      for (const speed of [0, 100, 1e5]) {
        const { rises } = settled(heatOf({ ...drum, rotor }), 20, { speed, wind: 10 })
        expect(rises.every((rise) => Number.isFinite(rise) && rise >= 0)).toBe(true)
      }
    expect(leastGap).toBeGreaterThan(0)
  })
  test('a measured resistance stands at every speed, and its spread is none', () => {
    const machine = machines.drum!
    const measured = heatOf({ ...machine, stator: { ...machine.stator, thermalResistance: 0.8 } })
    expect(measured.spread).toBe(0)
    for (const speed of [0, 30, 200]) {
      expect(settled(measured, 25, { speed, wind: 5 }).of('copper')).toBeCloseTo(20, 6)
      expect(statorCooling(measured, () => 5).resistance(speed)).toBeCloseTo(0.8, 9)
    }
    expect(measured.magnetShare).toBeCloseTo(heatOf(machine).magnetShare, 9)
  })
  test('the narrow view meets the net within a tenth from 15 to 80 K', () => {
    const heat = heatOf(machines['two discs']!)
    const R = statorCooling(heat, () => working.wind).resistance(working.speed)
    for (const copper of [25, 60, 130]) {
      const rise = settled(heat, copper).of('copper')
      expect(Math.abs(rise / (R * copper) - 1)).toBeLessThan(0.1)
    }
  })
})

describe('law: the hottest spot', () => {
  test('lies above mean and faces, and is the parabola’s where both faces are alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (near, far, full) => {
          const mean = (near + far) / 2 + full / 6
          const spot = hotSpotRise({ mean, near, far }, full)
          expect(spot).toBeGreaterThanOrEqual(Math.max(mean, near, far) - 1e-9)
          expect(hotSpotRise({ mean: near + full / 6, near, far: near }, full)).toBeCloseTo(
            near + full / 4,
            9,
          )
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('law: every row of every example', () => {
  for (const name of exampleNames)
    test(name, () => {
      const { rows, machine, heat } = exampleChain(name)
      for (const { copperTemperature, temperatures, overheated, nodeRises } of rows) {
        expect(temperatures.hotSpot).toBeGreaterThanOrEqual(copperTemperature - 0.2)
        expect(temperatures.magnets).toBeGreaterThanOrEqual(machine.site.ambient - 1e-9)
        expect(temperatures.magnets).toBeLessThanOrEqual(temperatures.hotSpot + 1e-9)
        if (!overheated) expect(machine.site.ambient + nodeRises[0]!).toBeCloseTo(copperTemperature, 0)
      }
      expect(heat.body.nodes[0]!.key).toBe('copper')
    })
})
