/** Checks of the magnets that stand for every shape and arrangement. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { magnetVolume } from '../physics/magnetics/magnet.ts'
import { gapProfile, type RotorField, rotorField } from './air-gap-field.ts'

type Change = (document: ReturnType<typeof exampleDocument>) => void

const fieldOf = (name: string, change: Change = () => {}) => {
  const document = exampleDocument(name)
  change(document)
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine)
  return { machine, field, gap: gapProfile(machine, field, 0.005).fundamental }
}

const examples = ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'] as const
const grade = (document: { rotor: { magnet: { grade: string } } }) => ({ grade: document.rotor.magnet.grade })
const volume = ({ magnets }: RotorField) => magnets.reduce((sum, magnet) => sum + magnetVolume(magnet), 0)

describe('law: a shape that says the same as a block is the block', () => {
  for (const name of examples)
    test(`${name}: a wedge of equal widths`, () => {
      const block = fieldOf(name)
      const wedge = fieldOf(name, (document) => {
        const { length_mm, width_mm, thickness_mm } = document.rotor.magnet
        const edges = { length_mm, innerWidth_mm: width_mm, outerWidth_mm: width_mm, thickness_mm }
        document.rotor.magnet = { shape: 'wedge', ...edges, ...grade(document) }
      })
      expect(wedge.gap / block.gap).toBeCloseTo(1, 4)
      expect(wedge.field.workingPoint.polarization / block.field.workingPoint.polarization).toBeCloseTo(1, 5)
    })
  test('class-room-fan: a narrow ring sector is nearly the block as wide as its middle', () => {
    const block = fieldOf('class-room-fan')
    const arc = fieldOf('class-room-fan', (document) => {
      const { length_mm, width_mm, thickness_mm } = document.rotor.magnet
      const span_deg = ((width_mm / document.rotor.pitchRadius_mm) * 180) / Math.PI
      document.rotor.magnet = { shape: 'arc', length_mm, thickness_mm, span_deg, ...grade(document) }
    })
    expect(Math.abs(arc.gap / block.gap - 1)).toBeLessThan(0.02)
    expect(volume(arc.field) / volume(block.field)).toBeCloseTo(1, 9)
  })
})

describe('law: steel meets every shape alike', () => {
  test('boathouse-two-disc: a sector, a round magnet of the same area as a square one', () => {
    const strength = (magnet?: object) =>
      fieldOf('boathouse-two-disc', (document) => {
        document.rotor.backIron = {
          kind: 'steel',
          thickness_mm: 2.5,
          innerRadius_mm: 75,
          outerRadius_mm: 125,
        }
        if (magnet !== undefined) document.rotor.magnet = { ...magnet, thickness_mm: 10, grade: 'N42' }
      }).field.iron!.strength
    const span_deg = ((20 / exampleDocument('boathouse-two-disc').rotor.pitchRadius_mm) * 180) / Math.PI
    const block = strength({ shape: 'block', length_mm: 40, width_mm: 20 })
    expect(Math.abs(strength({ shape: 'arc', length_mm: 40, span_deg }) - block)).toBeLessThan(0.003)
    const square = strength({ shape: 'block', length_mm: 22.156, width_mm: 22.156 })
    expect(Math.abs(strength({ shape: 'disc', diameter_mm: 25 }) - square)).toBeLessThan(0.01)
  })
})

describe('law: every magnet is there once, with the volume that the design says', () => {
  const shapes: Readonly<Record<string, Change>> = {
    block: () => {},
    disc: (document) => {
      const { width_mm: diameter_mm, thickness_mm } = document.rotor.magnet
      document.rotor.magnet = { shape: 'disc', diameter_mm, thickness_mm, ...grade(document) }
    },
    arc: (document) => {
      const { length_mm, thickness_mm } = document.rotor.magnet
      document.rotor.magnet = { shape: 'arc', length_mm, thickness_mm, span_deg: 14, ...grade(document) }
    },
    wedge: (document) => {
      const { length_mm, width_mm, thickness_mm } = document.rotor.magnet
      const edges = { length_mm, innerWidth_mm: 0.8 * width_mm, outerWidth_mm: width_mm, thickness_mm }
      document.rotor.magnet = { shape: 'wedge', ...edges, ...grade(document) }
    },
  }
  for (const name of examples)
    for (const [shape, change] of Object.entries(shapes))
      test(`${name}, ${shape}`, () => {
        const { machine, field } = fieldOf(name, change)
        const { magnet, poleCount, rings } = machine.rotor
        expect(volume(field) / (magnet.volume * poleCount * rings.length)).toBeCloseTo(1, 9)
      })
})

describe('law: pieces set end to end', () => {
  const pieces =
    (piecesPerPole: number, windingSide = 'outside'): Change =>
    (document) => {
      // square bars with room between them
      Object.assign(document.rotor, { piecesPerPole, windingSide })
      Object.assign(document.rotor.magnet, { width_mm: 5, thickness_mm: 5 })
    }
  test('strong towards the winding, whichever side that is, and weak away from it', () => {
    for (const side of ['outside', 'inside']) {
      const { machine, field } = fieldOf('class-room-fan', (document) => {
        document.rotor = {
          ...exampleDocument('hen-house-drum').rotor,
          pitchRadius_mm: 40,
        }
        document.stator = exampleDocument('hen-house-drum').stator
        document.stator.winding.phases = [{ offset_deg: 0, distance_mm: 4 }]
        document.stator.connection = 'single'
        pieces(2, side)(document)
      })
      const towards = gapProfile(machine, field, 0.004).fundamental
      const turned = {
        ...machine,
        rotor: { ...machine.rotor, windingSide: side === 'inside' ? 'outside' : 'inside' } as const,
      }
      const away = gapProfile(turned, field, 0.004).fundamental
      expect(towards / away, side).toBeGreaterThan(2)
    }
  })
  test('more pieces of the same bars give more field, and the sense of their poles stays', () => {
    const fields = [1, 2, 3, 4].map((n) => fieldOf('hen-house-drum', pieces(n)))
    for (let n = 1; n < 4; n++) expect(fields[n]!.gap).toBeGreaterThan(fields[n - 1]!.gap)
    const centres = fields.map(({ machine, field }) => gapProfile(machine, field, 0.005).poleCentre)
    expect(new Set(centres.map(Math.sign))).toEqual(new Set([1]))
  })
  test('a leaning piece as two components works where a whole one would: alike pieces by symmetry', () => {
    // three pieces: the second and the third are each other's mirror image
    const { field } = fieldOf('hen-house-drum', pieces(3))
    const strength = [1, 2].map((j) => {
      const own = field.poles[0]!.magnets.filter((magnet) => {
        const angle = Math.atan2(magnet.centre[1], magnet.centre[0])
        return Math.abs(angle - (j * Math.PI) / 18) < 1e-6
      })
      return Math.hypot(...own.map(({ polarization }) => polarization))
    })
    expect(strength[0]! / strength[1]!).toBeCloseTo(1, 9)
    expect(strength[0]!).toBeGreaterThan(1.2)
    expect(strength[0]!).toBeLessThan(field.remanence)
  })
})

describe('law: unlike magnets', () => {
  test('one as strong as the rest is no defect at all', () => {
    const sound = fieldOf('boathouse-two-disc')
    const same = fieldOf('boathouse-two-disc', (document) => {
      document.defects = [{ kind: 'weak magnet', position: 3, strength: 1 - 1e-12 }]
    })
    expect(same.gap / sound.gap).toBeCloseTo(1, 9)
    for (const { factor } of same.field.poles[0]!.places) expect(Math.abs(factor)).toBeCloseTo(1, 9)
  })
  test('a missing one unloads or loads its neighbours a little and is not there itself', () => {
    const { field } = fieldOf('hen-house-drum', (document) => {
      document.defects = [{ kind: 'missing magnet', position: 3 }]
    })
    const factors = field.poles[0]!.places.map(({ factor }) => factor)
    expect(factors[2]).toBe(0)
    for (const k of [1, 3]) {
      expect(Math.abs(factors[k]!)).not.toBeCloseTo(1, 5)
      expect(Math.abs(factors[k]!)).toBeCloseTo(1, 2)
    }
  })
  test('ferrite among neodymium: about a third as strong', () => {
    const { field } = fieldOf('boathouse-two-disc', (document) => {
      document.defects = [{ kind: 'other grade', position: 1, grade: 'Y30' }]
    })
    const share = field.poles[0]!.places[0]!.factor
    expect(share).toBeGreaterThan(0.25)
    expect(share).toBeLessThan(0.36)
  })
})
