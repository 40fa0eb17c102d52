/** Checks that imports run down the stairs of the house and never up or sideways. */
import { describe, expect, test } from 'vitest'
import { floorFaults, placeOf } from './floor.ts'
import { filesUnder, isCode, textOf } from './repository.ts'

describe('law: imports go down the stairs', () => {
  const files = filesUnder('src', 'cli', 'web').filter(isCode)
  test('there are files to look at', () => expect(files.length).toBeGreaterThan(5))
  test('no file breaks the rule', () => {
    expect(files.flatMap((path) => floorFaults(path, textOf(path)))).toEqual([])
  })
})

describe('law: the check can fail', () => {
  const planted: readonly (readonly [string, string, string])[] = [
    ['src/numerics/a.ts', '../physics/winding/b.ts', 'up the stairs'],
    ['src/refusal/a.ts', '../numerics/b.ts', 'sideways'],
    ['src/numerics/a.ts', '../units/b.ts', 'sideways'],
    ['src/physics/winding/a.ts', '../magnetics/b.ts', 'sideways'],
    ['src/physics/winding/a.ts', '../../geometry/b.ts', 'sideways'],
    ['src/physics/winding/a.ts', '../../data/wire.ts', 'sideways'],
    ['src/machine/a.ts', '../analysis/b.ts', 'up the stairs'],
    ['src/analysis/a.ts', '../search/b.ts', 'up the stairs'],
    ['src/analysis/a.ts', '../index.ts', 'up the stairs'],
    ['cli/a.ts', '../web/b.ts', 'sideways'],
    ['web/a.tsx', '../cli/b.ts', 'sideways'],
    ['src/machine/a.ts', './a.test.ts', 'a check is not a part of the engine'],
    ['src/machine/a.ts', '../../test/check.ts', 'outside the house'],
    ['src/physics/winding/a.ts', 'zod', 'only src/machine may name it'],
    ['src/analysis/a.ts', 'node:fs', 'only cli may use the runtime'],
    ['cli/a.ts', 'preact/hooks', 'only web may name it'],
    ['web/a.ts', 'commander', 'only cli may name it'],
    ['src/units/a.ts', 'left-pad', 'a package no room of the house may name'],
    ['src/physics/winding/a.test.ts', '../../analysis/b.ts', 'a check may not look up the stairs'],
  ]
  for (const [path, specifier, fault] of planted)
    test(`${path} → ${specifier}`, () => {
      for (const text of [`import { x } from '${specifier}'`, `export { x } from '${specifier}'`])
        expect(floorFaults(path, text)).toEqual([`${path}: imports ${specifier}: ${fault}`])
    })
  test('a dynamic import is an import', () => {
    expect(floorFaults('src/units/a.ts', "export const x = () => import('../index.ts')")).toHaveLength(1)
  })
  test('a type-only import is an import', () => {
    expect(floorFaults('src/units/a.ts', "import type { X } from '../index.ts'")).toHaveLength(1)
  })
  test('physics without a room, or a file without a floor', () => {
    expect(floorFaults('src/physics/a.ts', '')).toHaveLength(1)
    expect(floorFaults('src/attic/a.ts', '')).toHaveLength(1)
  })
})

describe('law: what is allowed passes', () => {
  const allowed: readonly (readonly [string, string])[] = [
    ['src/numerics/a.ts', '../refusal/require.ts'],
    ['src/units/a.ts', '../refusal/require.ts'],
    ['src/physics/winding/a.ts', '../../numerics/root.ts'],
    ['src/physics/winding/a.ts', './b.ts'],
    ['src/physics/winding/a.test.ts', '../../../test/check.ts'],
    ['src/physics/winding/a.test.ts', '../magnetics/b.ts'],
    ['src/physics/winding/a.test.ts', 'fast-check'],
    ['src/machine/a.ts', 'zod'],
    ['src/analysis/concern/a.ts', '../match.ts'],
    ['web/a.ts', '../src/index.ts'],
    ['web/a.ts', './worker.ts?worker'],
    ['web/a.ts', 'three/examples/jsm/controls/OrbitControls.js'],
    ['cli/a.ts', 'node:fs'],
    ['cli/a.ts', '../package.json'],
    ['web/a.ts', '../examples/a.json'],
  ]
  for (const [path, specifier] of allowed)
    test(`${path} → ${specifier}`, () => {
      expect(floorFaults(path, `import { x } from '${specifier}'`)).toEqual([])
    })
  test('rooms of physics are rooms of their own', () => {
    expect(placeOf('src/physics/winding/a.ts')?.room).toBe('src/physics/winding')
  })
})
