/** Checks of the section and the front view: the stack adds up to what the document says, the poles stand in their ring. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames, exampleText } from '../../test/example.ts'
import { computeDesign } from './compute.ts'
import { machineFace } from './machine-face.ts'
import { machineSection } from './machine-section.ts'
import { drawnGap } from './mechanics/drawn-gap.ts'

describe('law: the stack adds up', () => {
  for (const name of exampleNames)
    test(name, () => {
      const { bodies, stack } = machineSection(exampleChain(name))
      const foot = Math.min(...bodies.map((body) => body.foot))
      const top = Math.max(...bodies.filter(({ aside }) => !aside).map((body) => body.top))
      const sum = stack.reduce((total, { thickness }) => total + thickness, 0)
      expect(sum).toBeCloseTo(top - foot, 9)
    })
  test('between the faces of two discs lies what the document says', () => {
    const { stack } = machineSection(exampleChain('boathouse-two-disc'))
    const faces = stack.filter(({ at }) => at > 0 && at < 17e-3)
    expect(faces.reduce((sum, { thickness }) => sum + thickness, 0)).toBeCloseTo(17e-3, 9)
  })
})

describe('agrees: air in the section and air by the rule for the gap', () => {
  for (const name of ['boathouse-two-disc', 'class-room-fan', 'garden-vertical'])
    test(name, () => {
      const chain = exampleChain(name)
      const air = machineSection(chain).stack.filter(({ kind }) => kind === 'air')
      const { inner, outer } = drawnGap(chain.machine)
      expect(air[0]!.thickness).toBeCloseTo(inner, 9)
      if (outer !== undefined) expect(air[1]!.thickness).toBeCloseTo(outer, 9)
    })
})

describe('law: phases in one level are one layer', () => {
  test('three waves side by side', () => {
    const document = JSON.parse(exampleText('contest/serpentine-in-one-layer'))
    const { stack } = machineSection(computeDesign(designOf(document)))
    const wound = stack.filter(({ kind }) => kind === 'winding')
    expect(wound.map(({ label }) => label)).toEqual(['phase A, phase B, phase C'])
    expect(wound[0]!.thickness).toBeCloseTo(document.stator.winding.bundleDepth_mm / 1000, 9)
  })
})

describe('law: the ring of magnets', () => {
  for (const name of ['boathouse-two-disc', 'class-room-fan', 'hen-house-drum'])
    test(`${name}: poles alternate on the pitch circle`, () => {
      const chain = exampleChain(name)
      const { magnets } = machineFace(chain)
      expect(magnets.map(({ pole }) => pole)).toEqual(
        Array.from({ length: chain.machine.rotor.poleCount }, (_, k) => (k % 2 === 0 ? 'N' : 'S')),
      )
      for (const { middle } of magnets)
        expect(Math.hypot(...middle)).toBeCloseTo(chain.machine.rotor.pitchRadius, 9)
    })
  test('the outline of a block is its own rectangle', () => {
    const [first] = machineFace(exampleChain('boathouse-two-disc')).magnets
    const xs = first!.outline.filter((_, k) => k % 2 === 0)
    const ys = first!.outline.filter((_, k) => k % 2 === 1)
    expect(xs).toHaveLength(4)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(40e-3, 9)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(25e-3, 9)
  })
  test('on a drum wound inside the poles face the axis', () => {
    const document = exampleDocument('hen-house-drum')
    document.rotor.windingSide = 'inside'
    document.stator.winding.bundleWidth_mm = 5
    const chain = computeDesign(designOf(document))
    const { magnets } = machineFace(chain)
    expect(magnets[0]!.pole).toBe(chain.machine.rotor.sequence[0] === 1 ? 'N' : 'S')
  })
})
