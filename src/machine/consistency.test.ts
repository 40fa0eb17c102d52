/** Checks of values that are allowed one by one but cannot stand together. */
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleNames } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { drumMagnets } from '../physics/magnetics/magnet-ring.ts'
import { consistencyFaults } from './consistency.ts'
import { designSchema } from './design.ts'
import { faultText } from './fault.ts'
import { parseDesign } from './parse.ts'

// biome-ignore lint/suspicious/noExplicitAny: documents are changed at will
type Raw = any
type Change = (document: Raw) => void

function changed(change: Change, name: FixedName): Raw {
  const document = fixedDocument(name)
  change(document)
  return document
}

/** What the parser says; the schema alone must have been content, or the rule was not the one that spoke. */
function lines(change: Change, name: FixedName): string[] {
  const document = changed(change, name)
  expect(designSchema.safeParse(document).success).toBe(true)
  const parsed = parseDesign(document)
  return parsed.ok ? [] : parsed.faults.map(faultText)
}

const drum = 'drum'
const discs = 'twoDiscs'
const disc = 'disc'

describe('law: a machine that could be built has no such fault', () => {
  for (const name of exampleNames)
    test(name, () => {
      const parsed = parseDesign(exampleDocument(name))
      expect(parsed.ok && consistencyFaults(parsed.design)).toEqual([])
    })
})

describe('law: what cannot stand together is told with path, limit, received value and code', () => {
  const cases: readonly (readonly [string, FixedName, Change, readonly string[]])[] = [
    [
      'a sequence of another length than the ring',
      drum,
      (d) => (d.rotor.poleSequence = 'NSNS'),
      ['rotor.poleSequence must be 12 letters long, one for each pole; received "NSNS" (conflict)'],
    ],
    [
      'magnets that overlap',
      drum,
      (d) => (d.rotor.magnet.width_mm = 30),
      [
        'rotor.magnet.width_mm must be at most 25.4552 mm, or the corners of neighbouring magnets collide at a pitch radius of 50 mm; received 30 mm (conflict)',
      ],
    ],
    [
      'magnets that cross the shaft',
      discs,
      (d) => (d.rotor.magnet.length_mm = 210),
      [
        'rotor.pitchRadius_mm must be at least 105 mm, half of rotor.magnet.length_mm, so that no magnet crosses the shaft; received 100 mm (conflict)',
      ],
    ],
    [
      'a winding in the magnets',
      drum,
      (d) => (d.stator.winding.phases[0].distance_mm = 1.5),
      [
        'stator.winding.phases[0].distance_mm must be at least 1.7 mm, half the bundle and the cover of the magnets, or the winding touches them; received 1.5 mm (conflict)',
      ],
    ],
    [
      'a winding in the magnets of the other disc',
      discs,
      (d) => (d.stator.winding.distance_mm = 11),
      [
        'stator.winding.distance_mm must be at most 10.5 mm, or the winding touches the magnets opposite; received 11 mm (conflict)',
      ],
    ],
    [
      'a winding in the plate opposite',
      disc,
      (d) => (d.rotor.opposite = { kind: 'steel', faceDistance_mm: 7 }),
      [
        'stator.winding.distance_mm must be at most 4 mm, or the winding touches the plate opposite; received 5 mm (conflict)',
      ],
    ],
    [
      'an inner winding in the shaft',
      drum,
      (d) => {
        d.rotor.windingSide = 'inside'
        d.stator.winding.phases[2].distance_mm = 47
      },
      [
        'stator.winding.phases[2].distance_mm must be below 46.4 mm, where the winding meets the shaft; received 47 mm (conflict)',
      ],
    ],
    [
      'a slant beyond the pole pitch',
      drum,
      (d) => (d.stator.winding.slant_deg = 31),
      ['stator.winding.slant_deg must be at most 30°, the pole pitch; received 31° (above-maximum)'],
    ],
    [
      'a slant below zero',
      drum,
      (d) => (d.stator.winding.slant_deg = -5),
      ['stator.winding.slant_deg must be at least 0°; received -5° (below-minimum)'],
    ],
    [
      'two waves in one place',
      drum,
      (d) => {
        d.stator.winding.phases[1].distance_mm = 3.5
        d.stator.winding.phases[1].offset_deg = 33
      },
      [
        'stator.winding.phases[1].distance_mm must be 2.2 mm or more from that of phases[0], 3.2 mm, as their runs lie on each other; received 3.5 mm (conflict)',
      ],
    ],
    [
      'inner crowns beyond the shaft',
      disc,
      (d) => {
        d.stator.connection = 'single'
        d.stator.winding = {
          kind: 'serpentine',
          turns: 20,
          runLength_mm: 30,
          crownHeight_mm: 26,
          bundleWidth_mm: 4,
          bundleDepth_mm: 2,
          phases: [{ offset_deg: 0, distance_mm: 3 }],
        }
      },
      [
        'stator.winding.crownHeight_mm must be below 25 mm, the way from the inner ends of the runs to the shaft; received 26 mm (conflict)',
      ],
    ],
    [
      'coils over the shaft',
      disc,
      (d) => (d.stator.winding.centreRadius_mm = 15),
      [
        'stator.winding.centreRadius_mm must be at least 16 mm, half the hole and a leg, or the coils reach over the shaft; received 15 mm (conflict)',
      ],
    ],
    [
      'corners rounder than the hole',
      discs,
      (d) => (d.stator.winding.hole.cornerRadius_mm = 12),
      [
        'stator.winding.hole.cornerRadius_mm must be at most 8.53863 mm, or the corners do not fit into the hole; received 12 mm (conflict)',
      ],
    ],
    [
      'groups that do not divide the coils of a phase',
      discs,
      (d) => (d.stator.winding.parallelGroups = 2),
      [
        'stator.winding.parallelGroups must be a number that divides the 3 coils of phase 1; received 2 (conflict)',
      ],
    ],
    [
      'fewer coils than phases',
      discs,
      (d) => (d.stator.winding.coilCount = 2),
      ['stator.winding.coilCount must be at least 3, a coil for each phase; received 2 (conflict)'],
    ],
    [
      'a star of two phases',
      drum,
      (d) => d.stator.winding.phases.pop(),
      ['stator.connection must be "separate" for 2 phases; received "star" (conflict)'],
    ],
    [
      'a delta of one phase',
      drum,
      (d) => {
        d.stator.winding.phases.length = 1
        d.stator.connection = 'delta'
      },
      ['stator.connection must be "single" or "separate" for 1 phase; received "delta" (conflict)'],
    ],
    [
      'three phases as one',
      discs,
      (d) => (d.stator.connection = 'single'),
      [
        'stator.connection must be "star" or "delta" or "separate" for 3 phases; received "single" (conflict)',
      ],
    ],
    [
      'a swapped coil that is not there, and one named twice',
      discs,
      (d) => (d.stator.winding.reversedCoils = [2, 10, 2]),
      [
        'stator.winding.reversedCoils[1] must be at most 9, as there are no more coils; received 10 (above-maximum)',
        'stator.winding.reversedCoils[2] must be another number than those before it; received 2 (conflict)',
      ],
    ],
    [
      'a swapped phase that is not there',
      disc,
      (d) => {
        d.stator.winding.phaseCount = 1
        d.stator.winding.reversedPhases = [2]
        d.stator.connection = 'single'
      },
      [
        'stator.winding.reversedPhases[0] must be at most 1, as there are no more phases; received 2 (above-maximum)',
      ],
    ],
    [
      'a hub as wide as the blades',
      drum,
      (d) => (d.blades.hubDiameter_mm = 1100),
      [
        'blades.hubDiameter_mm must be at most 1045 mm, 0.95 of the diameter, to leave room for blades; received 1100 mm (conflict)',
      ],
    ],
    [
      'a hub too wide for a straight taper',
      discs,
      (d) => (d.blades.hubDiameter_mm = 800),
      [
        'blades.hubDiameter_mm must be at most 760 mm, 0.4 of the diameter for blades of straight taper, to leave room for blades; received 800 mm (conflict)',
      ],
    ],
    [
      'stations that do not rise, and one beyond the tips',
      drum,
      (d) => {
        const { diameter_m, bladeCount, section } = d.blades
        d.blades = {
          kind: 'stations',
          diameter_m,
          bladeCount,
          section,
          stations: [100, 300, 300, 600].map((radius_mm) => ({ radius_mm, chord_mm: 80, twist_deg: 5 })),
        }
      },
      [
        'blades.stations[2].radius_mm must be at least 0.001 mm above the one before, 300 mm; received 300 mm (not-increasing)',
        'blades.stations[3].radius_mm must be at most 550 mm, the radius of the blade tips; received 600 mm (conflict)',
      ],
    ],
    [
      'a table that neither begins at rest nor rises nor ends at runaway',
      drum,
      (d) => {
        d.blades = {
          kind: 'table',
          diameter_m: 1,
          points: [
            [1, 0.1],
            [5, 0.4],
            [4, 0.2],
          ].map(([tipSpeedRatio, powerCoefficient]) => ({ tipSpeedRatio, powerCoefficient })),
        }
      },
      [
        'blades.points[0].tipSpeedRatio must be 0, as the table begins at rest; received 1 (conflict)',
        'blades.points[0].powerCoefficient must be 0, as a rotor at rest gives no power; received 0.1 (conflict)',
        'blades.points[2].tipSpeedRatio must be at least 0.001 above the one before, 5; received 4 (not-increasing)',
        'blades.points[2].powerCoefficient must be 0, as the table ends at runaway, where the blades give no power; received 0.2 (conflict)',
      ],
    ],
  ]
  for (const [title, name, change, wanted] of cases)
    test(title, () => expect(lines(change, name)).toEqual(wanted))

  test('all of them at once, each at its own path', () => {
    const found = lines((d) => {
      d.rotor.poleSequence = 'NS'
      d.rotor.magnet.width_mm = 40
      d.stator.connection = 'single'
      d.stator.winding.slant_deg = 40
      d.blades.hubDiameter_mm = 1090
    }, drum)
    expect(found.map((line) => line.split(' ')[0])).toEqual([
      'blades.hubDiameter_mm',
      'rotor.poleSequence',
      'rotor.magnet.width_mm',
      'stator.winding.slant_deg',
      'stator.connection',
    ])
  })
})

describe('law: the limit itself is allowed', () => {
  const cases: readonly (readonly [string, FixedName, Change])[] = [
    [
      'a winding on the cover of the magnets',
      drum,
      (d) => (d.stator.winding.phases[0].distance_mm = 0.6 + 1.1),
    ],
    [
      'a winding that just fits between the discs',
      discs,
      (d) => (d.stator.winding.distance_mm = 17 - 0.5 - 6),
    ],
    ['a zigzag', drum, (d) => (d.stator.winding.slant_deg = 30)],
    ['layers that touch', drum, (d) => (d.stator.winding.phases[1].distance_mm = 3.2 + 2.2)],
    [
      'waves side by side in one layer, their crowns over each other',
      drum,
      (d) => {
        d.stator.winding.phases.forEach((phase: Raw, k: number) => {
          phase.distance_mm = 3.2
          phase.crownLift_mm = 2.2 * k
        })
      },
    ],
    [
      'coils wider than their room: a concern, not a fault',
      discs,
      (d) => (d.stator.winding.legWidth_mm = 40),
    ],
    ['the sequence written out', drum, (d) => (d.rotor.poleSequence = 'NSNSNSNSNSNS')],
    ['a magnet turned over', drum, (d) => (d.rotor.poleSequence = 'NSNSNNNSNSNS')],
    ['counts that give no belts: a concern, not a fault', discs, (d) => (d.stator.winding.coilCount = 12)],
    ['groups that divide the coils', discs, (d) => (d.stator.winding.parallelGroups = 3)],
  ]
  for (const [title, name, change] of cases) test(title, () => expect(lines(change, name)).toEqual([]))

  test('the pole pitch is allowed as a slant for every number of poles, though it may round up', () => {
    for (let poleCount = 2; poleCount <= 120; poleCount += 2) {
      const change: Change = (d) => {
        d.rotor.poleCount = poleCount
        d.rotor.pitchRadius_mm = 600
        d.stator.winding.slant_deg = Math.min(60, 360 / poleCount)
        d.stator.winding.phases.forEach((phase: Raw, k: number) => {
          phase.offset_deg = (240 * k) / poleCount
        })
      }
      expect(lines(change, drum), `${poleCount} poles`).toEqual([])
    }
  })
})

describe('agrees: the ring of magnets itself refuses the width that the document refuses', () => {
  for (const width of [25.45, 25.46])
    test(`${width} mm`, () => {
      const refused = lines((d) => (d.rotor.magnet.width_mm = width), drum).length > 0
      const ring = () =>
        drumMagnets({
          count: 12,
          radius: 0.05,
          axialLength: 0.06,
          width: width / 1000,
          thickness: 0.005,
          polarization: 1,
          sequence: [1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1],
        })
      if (refused) expect(ring).toThrow(RangeError)
      else expect(ring).not.toThrow()
      expect(refused).toBe(width > 25.4552)
    })
})
