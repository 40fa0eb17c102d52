/** Checks the bound on currents between strands in hand against two strands worked by hand, and by laws. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { fourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { linkageSamples } from './flux-linkage.ts'
import { strandCirculation } from './strand-circulation.ts'
import { woundMachine } from './winding.ts'

function parts(strands: number, size: number) {
  const document = exampleDocument('class-room-fan')
  document.stator.wire = { size, strands }
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine, machine.site.ambient)
  const layout = conductorLayout(machine)
  return { machine, field, layout, wound: woundMachine(machine, layout) }
}

const bound = ({ machine, field, layout, wound }: ReturnType<typeof parts>) =>
  strandCirculation(machine, field, layout, wound)

describe('agrees: two strands over each other, e²/(4 R) round the loop of both', () => {
  test('disc of coils', () => {
    const two = parts(2, 0.4)
    const { machine, field, layout, wound } = two
    const shape = layout.shapes[0]!
    const pitch = machine.stator.wire.shape.kind === 'round' ? machine.stator.wire.shape.outerDiameter : 0
    // volts of a turn at the two levels of the bundle, orders as they come, at one radian per second
    const low = shape.filaments.filter(({ offset }) => offset[1] < 0)
    const high = shape.filaments.filter(({ offset }) => offset[1] > 0)
    const rise = high[0]!.offset[1] - low[0]!.offset[1]
    const linkage = (filaments: typeof low) =>
      linkageSamples({
        shape: { ...shape, filaments },
        copies: 1,
        sources: field.sources,
        span: (2 * Math.PI) / machine.rotor.polePairs,
        count: 16,
      }).map((value) => value / filaments.reduce((sum, { weight }) => sum + weight, 0))
    const [a, b] = [linkage(low), linkage(high)]
    const difference = fourierSeries(
      a.map((value, k) => b[k]! - value),
      7,
    )
    let square = 0
    for (let h = 1; h <= 3; h++)
      square += (h * machine.rotor.polePairs * harmonicAmplitude(difference, h)) ** 2 / 2
    // each strand has twice the coil's resistance: the loop four times
    const volts2 = square * ((shape.turns * pitch) / rise) ** 2
    const loss = layout.coils.reduce((sum, _, k) => sum + volts2 / (4 * wound.coilResistance[k]!), 0)
    const untwisted = bound(two)!.untwisted
    expect(untwisted / loss).toBeGreaterThan(0.98)
    // the other way across may be the worse one: then the bound lies higher
    expect(untwisted / loss).toBeLessThan(10)
  })
})

describe('law: strands in hand', () => {
  test('a single strand has none; a twist takes nearly all', () => {
    expect(bound(parts(1, 0.4))).toBeUndefined()
    const { untwisted, twisted } = bound(parts(3, 0.3))!
    expect(untwisted).toBeGreaterThan(0)
    expect(twisted).toBeLessThan(1e-3 * untwisted)
  })
  test('more strands lie farther apart: more', () => {
    expect(bound(parts(6, 0.25))!.untwisted).toBeGreaterThan(bound(parts(2, 0.25))!.untwisted)
  })
})
