/** Checks the inductances of a machine's coils with its iron. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { sampleMachine } from '../../test/sample-chain.ts'
import type { Machine } from '../machine/machine.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { coilInductances, ironPlanes } from './coil-inductance.ts'
import { conductorLayout } from './conductor-layout.ts'

const machine = sampleMachine()
const layout = conductorLayout(machine)
const plate = { thickness: 0.006, steel: 'mild steel', innerRadius: undefined, outerRadius: undefined }
const withoutIron = (of: Machine): Machine => ({ ...of, rotor: { ...of.rotor, backIron: undefined } })
const iron = coilInductances(machine, layout)
const air = coilInductances(withoutIron(machine), layout)

describe('law: plates stand where the discs have them', () => {
  test('two discs, one disc, a disc with steel opposite, a drum', () => {
    expect(ironPlanes(machine)).toEqual({ lower: 0, upper: machine.rotor.faceDistance! + 0.02 })
    expect(ironPlanes(withoutIron(machine))).toEqual({ lower: undefined, upper: undefined })
    const disc = { ...machine, rotor: { ...machine.rotor, arrangement: 'disc' as const } }
    expect(ironPlanes(disc)).toEqual({ lower: 0, upper: undefined })
    const steel = { ...disc, rotor: { ...disc.rotor, opposite: plate } }
    expect(ironPlanes(steel)).toEqual({ lower: 0, upper: machine.rotor.faceDistance! + 0.01 })
    const drum = { ...machine, rotor: { ...machine.rotor, arrangement: 'drum' as const } }
    expect(ironPlanes(drum)).toEqual({ lower: undefined, upper: undefined })
  })
})

describe('law: iron raises what links a coil with itself', () => {
  test('by a third to a half here, and never less with two plates than with one', () => {
    const one = coilInductances({ ...machine, rotor: { ...machine.rotor, arrangement: 'disc' } }, layout)
    expect(iron[0]![0]! / air[0]![0]!).toBeGreaterThan(1.3)
    expect(iron[0]![0]! / air[0]![0]!).toBeLessThan(1.6)
    expect(one[0]![0]!).toBeGreaterThan(air[0]![0]!)
    expect(one[0]![0]!).toBeLessThan(iron[0]![0]!)
  })
  test('plates far away leave it as it is', () => {
    const wide = { ...machine, rotor: { ...machine.rotor, backIron: undefined } }
    const far = {
      ...machine,
      rotor: {
        ...machine.rotor,
        arrangement: 'disc' as const,
        backIron: undefined,
        opposite: plate,
        faceDistance: 2,
      },
    }
    const L = coilInductances(far, layout)
    expect(L[0]![0]! / coilInductances(wide, layout)[0]![0]!).toBeCloseTo(1, 5)
  })
})

describe('law: a matrix of inductances', () => {
  for (const [name, L] of [
    ['with iron', iron],
    ['without', air],
  ] as const)
    test(`${name} is symmetric and stores energy in every pattern of currents`, () => {
      const n = L.length
      // Cholesky's pivots are above zero for positive definite matrices only
      const C = L.map((row) => [...row])
      for (let k = 0; k < n; k++) {
        for (let i = 0; i < n; i++) expect(L[i]![k]).toBe(L[k]![i])
        expect(C[k]![k]!).toBeGreaterThan(0)
        for (let i = k + 1; i < n; i++)
          for (let j = k + 1; j < n; j++) C[i]![j]! -= (C[i]![k]! * C[k]![j]!) / C[k]![k]!
      }
    })
  test('serpentine layers on a disc with plates too', () => {
    const wave = sampleMachine({
      'stator.winding': {
        kind: 'serpentine',
        turns: 20,
        runLength_mm: 46,
        crownHeight_mm: 15,
        bundleWidth_mm: 9,
        bundleDepth_mm: 3,
        phases: [
          { offset_deg: 0, distance_mm: 6 },
          { offset_deg: 20, distance_mm: 9 },
          { offset_deg: 40, distance_mm: 12 },
        ],
      },
    })
    const paths = conductorLayout(wave)
    const L = coilInductances(wave, paths)
    const free = coilInductances(withoutIron(wave), paths)
    for (let k = 0; k < 3; k++)
      for (let l = 0; l < k; l++) {
        // the turn round the shaft links both alike and drops out of the difference
        const apart = (of: number[][]) => of[k]![k]! + of[l]![l]! - 2 * of[k]![l]!
        expect(apart(L)).toBeGreaterThan(apart(free))
        expect(apart(L)).toBeLessThan(2 * apart(free))
      }
  })
})

describe('law: steel round a drum', () => {
  const matrixOf = (change: (rotor: Record<string, unknown>) => void) => {
    const document = exampleDocument('hen-house-drum')
    change(document.rotor)
    const drum = resolveDesign(designOf(document))
    return coilInductances(drum, conductorLayout(drum))
  }
  const open = matrixOf(() => {})
  const both = matrixOf((rotor) => {
    rotor.backIron = { kind: 'steel', thickness_mm: 4 }
    rotor.sleeve = { distance_mm: 14, thickness_mm: 3, motion: 'turns' }
  })
  test('raises every phase’s own inductance, the one nearest to the sleeve most', () => {
    const gain = open.map((row, k) => both[k]![k]! / row[k]!)
    for (const ratio of gain) expect(ratio).toBeGreaterThan(1.05)
    expect(gain[2]!).toBeGreaterThan(gain[1]!)
  })
  test('a sleeve far off changes nothing', () => {
    const far = matrixOf((rotor) => {
      rotor.sleeve = { distance_mm: 250, thickness_mm: 3, motion: 'turns' }
    })
    far.forEach((row, k) => {
      expect(row[k]! / open[k]![k]!).toBeCloseTo(1, 4)
    })
  })
  test('no pattern of currents stores negative energy', () => {
    for (const pattern of [
      [1, 1, 1],
      [1, -1, 0],
      [1, 1, -2],
      [1, 0, 1],
    ]) {
      const energy = both.reduce(
        (sum, row, i) => sum + row.reduce((part, L, k) => part + pattern[i]! * pattern[k]! * L, 0),
        0,
      )
      expect(energy).toBeGreaterThan(0)
    }
  })
})
