/** Checks that a chain which takes over what an edit left alone is the chain of the edited design. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseDesignText } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type Chain, chainOf } from './compute.ts'
import { finished } from './step.ts'

interface Typed {
  [key: string]: Typed | number
}

/** The example with the number at a path changed. */
function machineWith(example: string, path = '', change: (value: number) => number = (value) => value) {
  const document = JSON.parse(
    readFileSync(new URL(`../../examples/${example}.json`, import.meta.url), 'utf8'),
  ) as Typed
  const keys = path.split('.')
  const last = keys.pop()!
  const place = keys.reduce((at, key) => at[key] as Typed, document)
  if (path !== '') {
    const held = place[last]!
    if (typeof held === 'number') place[last] = change(held)
    else held['value'] = change(held['value'] as number)
  }
  const parsed = parseDesignText(JSON.stringify(document))
  if (!parsed.ok) throw new Error(`${example} with another ${path} is no design`)
  return resolveDesign(parsed.design)
}

const told = ({
  rows,
  fallingRows,
  year,
  runaway,
  gap,
  wound,
  voltage,
  drag,
  cutInWind,
  concerns,
}: Chain) => ({
  rows,
  fallingRows,
  year,
  runaway,
  gap,
  wound,
  voltage,
  strands: drag.strands,
  between: drag.between,
  cutInWind,
  concerns,
})

const edits: readonly (readonly [path: string, change: (value: number) => number])[] = [
  ['stator.winding.turns', (turns) => turns + 2],
  ['stator.wire.size', (size) => 0.95 * size],
  ['stator.winding.distance_mm', (distance) => distance + 0.1],
  ['rotor.magnet.thickness_mm', (thickness) => 0.98 * thickness],
  ['rotor.faceDistance_mm', (distance) => distance + 0.3],
  ['site.ambient_degC', (ambient) => ambient + 5],
  ['site.meanWind_m_per_s', (wind) => wind + 0.5],
  ['blades.diameter_m', (diameter) => 1.02 * diameter],
  ['load.voltage_V', (voltage) => voltage + 0.5],
  ['cable.length_m', (length) => length + 3],
  ['shaft.friction_mNm', (friction) => 1.2 * friction],
]

describe('law: a chain that takes over parts of an earlier one is the chain computed from nothing', () => {
  const example = 'boathouse-two-disc'
  const previous = finished(chainOf(machineWith(example)))
  for (const [path, change] of edits)
    test(path, () => {
      const machine = machineWith(example, path, change)
      expect(told(finished(chainOf(machine, { previous })))).toEqual(told(finished(chainOf(machine))))
    })
})

describe('law: what an edit leaves alone is the same object', () => {
  const previous = finished(chainOf(machineWith('boathouse-two-disc')))
  const edited = (path: string, change: (value: number) => number) =>
    finished(chainOf(machineWith('boathouse-two-disc', path, change), { previous }))

  test('more turns leave the field, a longer cable all but the circuit', () => {
    const turns = edited('stator.winding.turns', (value) => value + 1)
    expect(turns.field).toBe(previous.field)
    expect(turns.voltage.linkages[0]).toBe(previous.voltage.linkages[0])
    const cable = edited('cable.length_m', (value) => value + 1)
    expect(cable.voltage).toBe(previous.voltage)
    expect(cable.drag.strands).toBe(previous.drag.strands)
    expect(cable.generator).not.toBe(previous.generator)
  })

  test('thinner wire leaves the way of the wire and what bears on the magnets', () => {
    const wire = edited('stator.wire.size', (value) => 0.9 * value)
    expect(wire.layout).toBe(previous.layout)
    expect(wire.magnetLoad).toBe(previous.magnetLoad)
    expect(wire.wound).not.toBe(previous.wound)
  })

  test('other magnets leave nothing of the field', () => {
    const magnets = edited('rotor.magnet.thickness_mm', (value) => 0.9 * value)
    expect(magnets.field).not.toBe(previous.field)
    expect(magnets.voltage.linkages[0]).not.toBe(previous.voltage.linkages[0])
    expect(magnets.magnetLoad).not.toBe(previous.magnetLoad)
  })
})
