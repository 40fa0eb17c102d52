/** Checks the comment block of every exported physics function, and runs its examples. */
import { describe, expect, test } from 'vitest'
import { halfLastDigit } from './check.ts'
import {
  type DocumentedFunction,
  docstringFaults,
  examplesOf,
  exampleValue,
  exportedFunctions,
  unknownUnit,
} from './docstring.ts'
import { filesUnder, isCheck, isCode, sourceKeys, textOf } from './repository.ts'

const files = filesUnder('src/physics').filter((path) => isCode(path) && !isCheck(path))
const functions = files.flatMap((path) => exportedFunctions(path, textOf(path)))
const keys = sourceKeys()

const modules = new Map<string, Record<string, unknown>>()

/** Exported names of all rooms; a file's own names win where two rooms use the same word. */
async function namesFor(path: string): Promise<Record<string, unknown>> {
  if (modules.size === 0)
    for (const file of files) modules.set(file, await import(/* @vite-ignore */ `../${file}`))
  return Object.assign({}, ...modules.values(), modules.get(path))
}

/** Rooms outside of which an `@internal` function is named after all. */
const betrayed = (one: DocumentedFunction): string[] => {
  const room = one.path.split('/').slice(0, 3).join('/')
  return filesUnder('src', 'cli', 'web')
    .filter((path) => isCode(path) && !path.startsWith(`${room}/`))
    .filter((path) =>
      new RegExp(`\\b${one.name}\\b[^;]*from '[^']*/${one.path.split('/').slice(2).join('/')}'`).test(
        textOf(path),
      ),
    )
}

describe('law: every exported physics function states what rule 6 asks', () => {
  for (const path of files)
    test(path, () => {
      const faults = functions
        .filter((one) => one.path === path)
        .flatMap((one) => docstringFaults(one, keys).map((fault) => `${one.name} ${fault}`))
      expect(faults).toEqual([])
    })
})

describe('law: what is internal to a room stays in it', () => {
  test('no other room imports it', () => {
    const faults = functions
      .filter(({ internal }) => internal)
      .flatMap((one) => betrayed(one).map((path) => `${path}: imports ${one.name}, internal to ${one.path}`))
    expect(faults).toEqual([])
  })
})

describe('law: every example gives the number it prints', () => {
  for (const path of files)
    test(path, async () => {
      const own = functions.filter((one) => one.path === path)
      if (own.length === 0) return
      const names = await namesFor(path)
      const faults: string[] = []
      for (const { name, lines } of own)
        for (const example of examplesOf(lines)) {
          if (typeof example === 'string') continue
          const { expression, printed } = example
          let value: unknown
          try {
            value = exampleValue(expression, names)
          } catch (error) {
            faults.push(`${name}: ${expression} throws ${String(error)}`)
            continue
          }
          const allowed = halfLastDigit(printed) * 1.000001
          if (!(typeof value === 'number' && Math.abs(value - Number(printed)) <= allowed))
            faults.push(`${name}: ${expression} is ${String(value)}, printed ${printed}`)
        }
      expect(faults).toEqual([])
    })
})

describe('law: the check can fail', () => {
  const good = `/** File. */
/**
 * Area of a circle.
 *
 *   A = π r²
 *
 * Holds: everywhere. Accuracy: exact; rounding only.
 *
 * @param radius  r  [m]
 * @returns       A  [m²]
 * @throws RangeError  radius not above zero
 * @source derived, from the definition
 * @example circleArea(1) // 3.1416
 */
export function circleArea(radius: number): number {
  return Math.PI * radius ** 2
}
`
  const faultsOf = (text: string) =>
    exportedFunctions('a.ts', text).flatMap((one) => docstringFaults(one, new Set(['book1999'])))
  test('a complete block passes', () => expect(faultsOf(good)).toEqual([]))
  test('a constant that holds a function is a function', () => {
    expect(faultsOf('/** File. */\nexport const twice = (x: number) => 2 * x\n')).toEqual([
      'has no comment block',
    ])
    expect(faultsOf('/** File. */\nexport const three = 3\n')).toEqual([])
  })
  const spoiled: readonly (readonly [string, string, string])[] = [
    ['  A = π r²', 'A is the area', 'has no formula on an indented line'],
    ['Holds:', 'Valid', 'does not say "Holds:"'],
    ['Accuracy:', 'Good:', 'does not say "Accuracy:"'],
    ['r  [m]', 'r', '@param radius has no [unit]'],
    ['r  [m]', 'r  [mm]', '@param radius: [mm] is not coherent SI (mm)'],
    ['@param radius', '@param diameter', 'has no @param for radius'],
    ['A  [m²]', 'A', '@returns has no [unit]'],
    ['@throws RangeError  radius not above zero', '', 'has no @throws'],
    ['derived, from the definition', 'derived', '@source derived: does not say where'],
    ['derived, from', 'nobook, from', '@source nobook: not in the bibliography'],
    ['@source derived, from the definition', '', 'has no @source'],
    ['@example circleArea(1) // 3.1416', '', 'has no @example'],
    ['// 3.1416', '', '@example circleArea(1): not "call // number"'],
  ]
  for (const [from, to, fault] of spoiled)
    test(fault, () => {
      const text = good.replace(from, to)
      expect(text).not.toBe(good)
      expect(faultsOf(text)).toContain(fault)
    })
  test('a step of a computation that only its room calls may say so and no more', () => {
    expect(
      faultsOf('/** File. */\n/** One step. @internal */\nexport const step = (x: number) => x\n'),
    ).toEqual([])
    expect(faultsOf('/** File. */\n/** @internal */\nexport const step = (x: number) => x\n')).toEqual([
      'is internal, but does not say what it is',
    ])
  })
  test('a wrong number is seen', () => {
    const [example] = examplesOf(exportedFunctions('a.ts', good)[0]!.lines)
    expect(example).toEqual({ expression: 'circleArea(1)', printed: '3.1416' })
    expect(exampleValue('a(1) + Math.max(0, b)', { a: (x: number) => 2 * x, b: 3 })).toBe(5)
  })
  test('units are read through powers and products', () => {
    for (const unit of [
      '1',
      'm',
      'm²',
      'W/(m²·K)',
      'N·m·s/rad',
      'kg/m^3',
      's⁻¹',
      'm^-1',
      'V, A',
      'rad/s',
      'W/(m2.K)',
      'Ohm.m',
      'K^4',
    ])
      expect(unknownUnit(unit), unit).toBeUndefined()
    for (const unit of ['mm', 'rpm', '°C', 'A/mm²', 'degree']) expect(unknownUnit(unit), unit).toBeDefined()
  })
})
