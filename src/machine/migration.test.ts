/** Checks of the steps that carry an older document to the present version. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { designVersion, type Migration, migrated, migrations, oldestVersion } from './migration.ts'
import { parseDesign } from './parse.ts'

/** An invented history: version 2 renamed a key, version 3 turned centimetres into millimetres. */
const invented: readonly Migration[] = [
  { from: 1, step: ({ polecount, ...rest }) => ({ ...rest, poleCount: polecount }) },
  { from: 2, step: ({ gap_cm, ...rest }) => ({ ...rest, gap_mm: 10 * (gap_cm as number) }) },
]

describe('law: steps are taken one after the other, from the document’s version to the target', () => {
  const old = { gustloom: 1, polecount: 12, gap_cm: 1.5 }
  test('all of them', () =>
    expect(migrated(old, invented, 3)).toEqual({
      document: { gustloom: 3, poleCount: 12, gap_mm: 15 },
    }))
  test('the last only', () =>
    expect(migrated({ gustloom: 2, poleCount: 12, gap_cm: 1.5 }, invented, 3)).toEqual({
      document: { gustloom: 3, poleCount: 12, gap_mm: 15 },
    }))
  test('none, and then the very same object comes back', () => {
    const current = { gustloom: 3, poleCount: 12 }
    expect(migrated(current, invented, 3)).toEqual({ document: current })
    expect((migrated(current, invented, 3) as { document: unknown }).document).toBe(current)
  })
  test('the document given is left as it was', () => {
    const frozen = Object.freeze({ ...old })
    migrated(frozen, invented, 3)
    expect(frozen).toEqual(old)
  })
  test('a step need not write the version: it is counted up for it, and it cannot skip one', () => {
    const rude: readonly Migration[] = [{ from: 1, step: () => ({ gustloom: 99, made: true }) }]
    expect(migrated({ gustloom: 1 }, rude, 2)).toEqual({ document: { gustloom: 2, made: true } })
  })
})

describe('law: a version that no step reads is named', () => {
  for (const version of [0, 4, -1, 1.5, '1', null, undefined, true, {}, Number.NaN])
    test(`version ${JSON.stringify(version) ?? 'missing'}`, () => {
      const found = migrated(version === undefined ? {} : { gustloom: version }, invented, 3)
      expect(found).toEqual({ unknownVersion: version })
    })
})

describe('law: the house’s own history has no gap', () => {
  test('one step for every version before the present', () =>
    expect(migrations.map(({ from }) => from)).toEqual(
      Array.from({ length: designVersion - oldestVersion }, (_, k) => oldestVersion + k),
    ))
})

describe('law: a document of every older version is still read', () => {
  const read = (file: string) =>
    JSON.parse(readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8')) as Record<
      string,
      unknown
    >
  test('version 1: blocks only, one reading of a field sensor', () => {
    const old = parseDesign(read('old/version-1.json'))
    const present = parseDesign(read('class-room-fan.json'))
    expect(old.ok).toBe(true)
    expect(old).toEqual(present)
  })
  test('version 1: the reading becomes the first of a list', () => {
    const { document } = migrated({
      gustloom: 1,
      rotor: { magnet: { length_mm: 40, hallReading: { distance_mm: 10, fluxDensity_mT: 99 } } },
    }) as { document: unknown }
    expect(document).toEqual({
      gustloom: 2,
      rotor: {
        magnet: {
          shape: 'block',
          length_mm: 40,
          readings: [{ kind: 'hall', distance_mm: 10, fluxDensity_mT: 99 }],
        },
      },
    })
  })
  test('what is no machine is left for the reader’s own faults', () => {
    expect(migrated({ gustloom: 1, rotor: 3 })).toEqual({ document: { gustloom: 2, rotor: 3 } })
    expect(migrated({ gustloom: 1 })).toEqual({ document: { gustloom: 2 } })
  })
})
