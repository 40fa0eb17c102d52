/** Checks the faults of serpentines: runs, layers and crowns that would lie where others lie. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { faultText } from './fault.ts'
import { parseDesign } from './parse.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will, also to what no type allows
type Raw = any

/** Three phases side by side on one level of a drum of twelve poles, bundles of 8 × 2.2 mm, crowns of 12 mm. */
function faults(change: (winding: Raw, rotor: Raw) => void): string[] {
  const document = fixedDocument('drum') as Raw
  const { winding } = document.stator
  winding.phases.forEach((phase: Raw, k: number) => {
    Object.assign(phase, { distance_mm: 3.2, crownLift_mm: 2.2 * k })
  })
  change(winding, document.rotor)
  const parsed = parseDesign(document)
  return parsed.ok ? [] : parsed.faults.map(faultText)
}

describe('law: interleaved phases must clear each other', () => {
  const rows: readonly (readonly [title: string, change: Parameters<typeof faults>[0], wanted: string[]])[] =
    [
      ['each crown one bundle above the next', () => {}, []],
      [
        'crowns all on one level',
        (winding) => {
          for (const phase of winding.phases) phase.crownLift_mm = 0
        },
        [
          'stator.winding.phases[1].crownLift_mm must be at least 2.2 mm, for its crowns to pass over those of phases[0], or distance_mm 2.2 mm or more from that one’s; received 0 mm (conflict)',
          'stator.winding.phases[2].crownLift_mm must be at least 2.2 mm, for its crowns to pass over those of phases[0], or distance_mm 2.2 mm or more from that one’s; received 0 mm (conflict)',
        ],
      ],
      [
        'bundles wider than the way to the next phase’s run',
        (winding) => (winding.bundleWidth_mm = 10),
        [1, 2].map(
          (k) =>
            `stator.winding.phases[${k}].distance_mm must be 2.2 mm or more from that of phases[0], 3.2 mm, as their runs lie on each other or on the ramps to lifted crowns; received 3.2 mm (conflict)`,
        ),
      ],
      [
        'crowns too low to climb that far',
        (winding) => (winding.phases[2].crownLift_mm = 6),
        [
          'stator.winding.crownHeight_mm must be at least 16 mm, room for crowns to climb 6 mm; lower lifts need less; received 12 mm (conflict)',
        ],
      ],
      [
        'a zigzag has no crowns to lift',
        (winding) => {
          winding.slant_deg = 30
          winding.phases = [{ offset_deg: 0, distance_mm: 3.2, crownLift_mm: 1 }]
        },
        [
          'stator.winding.phases[0].crownLift_mm must be 0 mm, as runs that lean from pole to pole have no crowns; received 1 mm (conflict)',
          'stator.connection must be "single" or "separate" for 1 phase; received "star" (conflict)',
        ],
      ],
      [
        'layers of one phase in those of the next',
        (winding) => {
          winding.layers = 2
          winding.phases.forEach((phase: Raw, k: number) => {
            Object.assign(phase, { distance_mm: 3.2 + 2.3 * k, crownLift_mm: 0, offset_deg: 33 * k })
          })
        },
        [1, 2].map(
          (k) =>
            `stator.winding.phases[${k}].distance_mm must be 4.4 mm or more from that of phases[${k - 1}], ${k === 1 ? 3.2 : 5.5} mm, as their runs lie on each other; received ${k === 1 ? 5.5 : 7.8} mm (conflict)`,
        ),
      ],
    ]
  for (const [title, change, wanted] of rows)
    test(title, () => {
      const found = faults(change)
      expect(found).toEqual(wanted)
    })
})

describe('law: a phase must clear itself', () => {
  test('bundles no wider than the way from run to run', () => {
    // radius 50 + 2.5 + 3.2 mm, a twelfth of its circumference
    const [found] = faults((winding) => {
      winding.bundleWidth_mm = 29.2
      winding.phases.length = 1
    })
    expect(found).toContain('stator.winding.bundleWidth_mm must be at most 29.1645 mm')
    expect((2 * Math.PI * 55.7) / 12).toBeCloseTo(29.1645, 4)
  })
  test('layers no closer than they are deep, and a turn for each', () => {
    const found = faults((winding) => {
      Object.assign(winding, { layers: 3, layerPitch_mm: 2, turns: 2 })
      winding.phases.length = 1
    })
    expect(found[0]).toContain('stator.winding.layers must be at most 2, a turn for each layer')
    expect(found[1]).toContain('stator.winding.layerPitch_mm must be at least 2.2 mm, the depth of a layer')
  })
  test('corners that fit into the crown', () => {
    // beside the ramp of 2 · 4.4 mm a crown of 12 mm keeps 3.2 mm
    const [found] = faults((winding) =>
      Object.assign(winding, { crown: 'rounded corners', cornerRadius_mm: 4 }),
    )
    expect(found).toContain('stator.winding.cornerRadius_mm must be at most 3.2 mm')
    expect(faults((winding) => Object.assign(winding, { crown: 'rounded corners' }))).toEqual([])
  })
})
