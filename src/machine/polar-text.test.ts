/** Checks of polars read from pasted text. */
import { describe, expect, test } from 'vitest'
import { exampleDocument } from '../../test/example.ts'
import { parseDesign } from './parse.ts'
import { parsePolarText } from './polar-text.ts'

const good = (text: string, told?: number) => {
  const result = parsePolarText(text, told)
  if (!result.ok) throw new Error(JSON.stringify(result.faults))
  return result
}
const bad = (text: string, told?: number) => {
  const result = parsePolarText(text, told)
  return result.ok ? [] : result.faults
}
const row = (angle_deg: number, lift: number, drag: number) => ({ angle_deg, lift, drag })

describe('law: one polar, written in many ways, reads the same', () => {
  const wanted = [{ reynolds: 100000, rows: [row(-1.5, -0.1, 0.02), row(0, 0.2, 0.015), row(5, 0.8, 0.02)] }]
  const ways: Record<string, string> = {
    spaces: 'Re = 100000\n -1.5 -0.1 0.02\n 0 0.2 0.015\n 5 0.8 0.02',
    'commas and a header': 'alpha,CL,CD\nRe = 1e5\n-1.5,-0.1,0.02\n0,0.2,0.015\n5,0.8,0.02\n',
    'decimal commas and semicolons': 'Reynolds: 100.000,0\r\n-1,5;-0,1;0,02\r\n0;0,2;0,015\r\n5;0,8;0,02',
    'decimal commas and tabs': 'Reynolds number 100000\n-1,5\t-0,1\t0,02\n0\t0,2\t0,015\n5\t0,8\t0,02',
    'columns in another order': '# Re = 0.100 e 6\ndrag angle lift\n0.02 -1.5 -0.1\n0.015 0 0.2\n0.02 5 0.8',
    'Reynolds as a column': '-1.5 -0.1 0.02 100000\n0 0.2 0.015 100000\n5 0.8 0.02 100000',
    'true minus, exponents': 'Re 100 000\n−1.5 −1e-1 2e-2\n0 .2 1.5E-2\n5 8.0d-1 0.02',
    'falling angles': 'Re = 100k\n5 0.8 0.02\n0 0.2 0.015\n-1.5 -0.1 0.02',
  }
  for (const [name, text] of Object.entries(ways))
    test(name, () => {
      if (name === 'decimal commas and semicolons') {
        // grouped and decimal at once cannot be told apart from a list: it must not pass as another number
        expect(bad(text.replace('100.000,0', 'x'))[0]?.what).toContain('before any Reynolds number')
        expect(good(text.replace('100.000,0', '100000')).polars).toEqual(wanted)
      } else expect(good(text).polars).toEqual(wanted)
    })
  test('the Reynolds number may be told beside the text', () => {
    expect(good('-1.5 -0.1 0.02\n0 0.2 0.015\n5 0.8 0.02', 100000).polars).toEqual(wanted)
  })
})

describe('source: selig1995, form of a wind-tunnel data file: two Reynolds numbers, spanwise columns', () => {
  const text = `Airfoil: Goe 417a
Builder: M. Fox

Number of Reynolds #'s:
 2

Average Reynolds #:
 59300
Number of angles of attack:
 2
 alpha /   Cl   /  Cd   /  Spanwise Cd's >>>
 -2.25  -0.230   0.0773   0.0807   0.0843
  5.62   0.984   0.0285   0.0297   0.0283
Tabulated from data in file one

Average Reynolds #:
 99500
 -2.20  -0.220   0.0608
  5.54   0.943   0.0191
`
  test('both polars, and a note for every line and column left out', () => {
    const { polars, notes } = good(text)
    expect(polars).toEqual([
      { reynolds: 59300, rows: [row(-2.25, -0.23, 0.0773), row(5.62, 0.984, 0.0285)] },
      { reynolds: 99500, rows: [row(-2.2, -0.22, 0.0608), row(5.54, 0.943, 0.0191)] },
    ])
    const noted = notes.map(({ line }) => line)
    for (const line of [1, 2, 4, 5, 9, 10, 11, 14]) expect(noted, `line ${line}`).toContain(line)
  })
})

describe('law: every fault names its line and a remedy', () => {
  const cases: readonly (readonly [text: string, line: number, what: RegExp])[] = [
    ['Re = 1e5\n0 0.2 0.02\n5 0.8', 3, /2 numbers/],
    ['Re = 1e5\n0 0.2 0.02\n5 0.8 x', 3, /“x” is not a number/],
    ['0 0.2 0.02\n5 0.8 0.02', 1, /before any Reynolds/],
    ['Re = 60\n0 0.2 0.02\n5 0.8 0.02', 1, /Reynolds number 60/],
    ['Re = 1e5\n0 0.2 0.02\n0 0.3 0.02', 3, /comes again, first in line 2/],
    ['Re = 1e5\n0 0.2 0.02\n5 0.8 -0.02', 3, /drag -0.02/],
    ['Re = 1e5\n0 0.2 0.02 0.1 7\n5 0.8 0.02 0.1 7', 2, /5 numbers/],
    ['Re = 1e5\n0,1,0,2,0,02\n5,1,0,8,0,02', 2, /6 numbers/],
    ['Re = 1e5\n0 0.2 0.02', 2, /1 row/],
    ['', 0, /no row/],
    ['only words', 0, /no row/],
  ]
  for (const [text, line, what] of cases)
    test(what.source, () => {
      const [first] = bad(text)
      expect(first?.line).toBe(line)
      expect(first?.what).toMatch(what)
      expect(first?.remedy.length).toBeGreaterThan(10)
    })
})

describe('law: the document takes what was read', () => {
  const document = (blades: object) => {
    const base = exampleDocument('boathouse-two-disc')
    return { ...base, blades: { ...base.blades, ...blades } }
  }
  const { polars } = good('Re = 1e5\n-2 -0.1 0.02\n0 0.2 0.015\n8 1 0.02\n12 1.1 0.06')
  const faultsOf = (blades: object) => {
    const parsed = parseDesign(document(blades))
    return parsed.ok ? [] : parsed.faults.map(({ path }) => path)
  }
  test('section and polar belong together; angles and Reynolds numbers rise', () => {
    expect(faultsOf({ section: 'own polar', polar: polars })).toEqual([])
    expect(faultsOf({ section: 'own polar' })).toEqual(['blades.polar'])
    expect(faultsOf({ section: 'SD2030', polar: polars })).toEqual(['blades.section'])
    expect(faultsOf({ section: 'own polar', polar: [...polars, ...polars] })).toEqual([
      'blades.polar[1].reynolds',
    ])
    const short = [{ reynolds: 1e5, rows: [row(1, 0.3, 0.02), row(3, 0.5, 0.02)] }]
    expect(faultsOf({ section: 'own polar', polar: short })).toEqual([
      'blades.polar[0].rows[0].angle_deg',
      'blades.polar[0].rows[1].angle_deg',
    ])
  })
})
