/** Checks the faults of lap coils, and that every shape keeps the word it is found by. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../../test/fixed-document.ts'
import { faultText } from '../fault.ts'
import { parseDesign } from '../parse.ts'
import { resolveDesign } from '../resolve.ts'
import { coilForm, holeSchema } from './index.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will, also to what no type allows
type Raw = any

function document(change: (winding: Raw, rotor: Raw) => void): Raw {
  const raw = fixedDocument('drum') as Raw
  raw.stator.winding = {
    kind: 'coils',
    coilCount: 18,
    phaseCount: 3,
    turns: 30,
    hole: { shape: 'lap', runLength_mm: 60, endHeight_mm: 20 },
    legWidth_mm: 7,
    bundleDepth_mm: 2,
    distance_mm: 3,
  }
  change(raw.stator.winding, raw.rotor)
  return raw
}

const faults = (change: (winding: Raw, rotor: Raw) => void): string[] => {
  const parsed = parseDesign(document(change))
  return parsed.ok ? [] : parsed.faults.map(faultText)
}

describe('law: lap coils that cannot be wound are told with path, limit and code', () => {
  const rows: readonly (readonly [string, (winding: Raw, rotor: Raw) => void, string[]])[] = [
    ['sound on two levels', () => {}, []],
    ['sound on one level', (winding) => (winding.hole.legs = 'one level'), []],
    [
      'more than half a turn',
      (winding) => (winding.hole.span = 6.5),
      ['stator.winding.hole.span must be at most 6, half a turn; received 6.5 (conflict)'],
    ],
    [
      'legs wider than their span',
      (winding) => (winding.hole.span = 0.2),
      [
        // a fifth of a twelfth of the turn at 50 + 2.5 + 3 mm
        'stator.winding.legWidth_mm must be at most 5.52135 mm, as the legs lie 5.81195 mm apart where they are closest; a greater span leaves more; received 7 mm (conflict)',
      ],
    ],
    [
      'ends too short to climb',
      (winding) => {
        winding.hole.legs = 'one level'
        winding.hole.levelStep_mm = 9
      },
      [
        'stator.winding.hole.endHeight_mm must be at least 24 mm, room for the legs to climb 9 mm to the upper level; a shallower bundle, fewer coils or legs on two levels need less; received 20 mm (conflict)',
      ],
    ],
  ]
  for (const [title, change, wanted] of rows) test(title, () => expect(faults(change)).toEqual(wanted))
  test('inner ends that meet at the shaft of a disc', () => {
    const [found] = faults((winding, rotor) => {
      const discs = fixedDocument('twoDiscs') as Raw
      for (const key of Object.keys(rotor)) delete rotor[key]
      Object.assign(rotor, discs.rotor)
      Object.assign(winding.hole, { runLength_mm: 40, endHeight_mm: 75 })
    })
    expect(found).toContain('stator.winding.hole.endHeight_mm must be below')
    expect(found).toContain('or the inner ends meet at the shaft')
  })
})

describe('law: levels of lap coils', () => {
  const form = (change: (winding: Raw) => void) => {
    const parsed = parseDesign(document(change))
    if (!parsed.ok) throw new Error(parsed.faults.map(faultText).join('\n'))
    const { winding } = resolveDesign(parsed.design).stator
    if (winding.kind !== 'coils') throw new Error('no coils')
    const { hole, legWidth, bundleDepth, coilCount } = winding
    return coilForm(hole, {
      surface: { kind: 'drum', radius: 0.0555, z: 0 },
      away: 1,
      legWidth,
      bundleDepth,
      coilCount,
    })
  }
  test('left out, the step is just what lets the ends pass', () => {
    const { room, rise } = form(() => {})
    expect(room).toBeCloseTo(0, 4)
    expect(room).toBeGreaterThan(-1e-12)
    expect(rise.legs).toBe(rise.ends)
    expect(rise.ends).toBeGreaterThanOrEqual(2e-3)
  })
  test('on one level only the ends rise; coils side by side need no step at all', () => {
    const one = form((winding) => (winding.hole.legs = 'one level'))
    expect(one.rise.legs).toBe(0)
    expect(one.rise.ends).toBeGreaterThanOrEqual(2e-3)
    expect(form((winding) => (winding.coilCount = 6)).rise).toEqual({ legs: 0, ends: 0 })
  })
})

describe('law: one list of shapes', () => {
  test('the document knows each by its word', () => {
    const words = holeSchema.options.map((option) => option.shape.shape.value)
    expect(words).toEqual(['round', 'rectangular', 'wedge', 'lap'])
  })
})
