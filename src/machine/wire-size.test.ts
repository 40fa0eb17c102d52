/** Checks of wire gauges and of the enamel on a wire. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { gauge, neighbourSizes } from '../data/wire-gauge.ts'
import { enamelledDiameter_mm, wireSizeSchema } from './wire-size.ts'

describe('source: astm-b258, d = 0.127 mm × 92^((36 − n)/39) — bare diameters in mm', () => {
  const rows = [
    ['AWG 12', '2.0525'],
    ['AWG 14', '1.6277'],
    ['AWG 16', '1.2908'],
    ['AWG 18', '1.0237'],
    ['AWG 20', '0.8118'],
    ['AWG 36', '0.127'],
  ] as const
  for (const [name, printed] of rows) check(name, () => gauge(name)!, printed)
})

describe('source: bs-3737, table of standard wire gauge — bare diameters in mm', () => {
  const rows = [
    ['SWG 8', '4.064'],
    ['SWG 18', '1.219'],
    ['SWG 21', '0.813'],
    ['SWG 24', '0.559'],
    ['SWG 32', '0.274'],
  ] as const
  for (const [name, printed] of rows) check(name, () => gauge(name)!, printed)
})

describe('source: winding-wire-catalogue-2021, rows by size — greatest outer diameter, grades 1 and 2', () => {
  // The catalogue prints the greatest diameter a maker may deliver; a typical wire is taken half-way between the least
  // and the greatest, so it must lie above the bare wire and below the print, by no more than the enamel itself.
  const rows = [
    [0.404, 0.443, 0.463],
    [0.32, 0.354, 0.373],
    [0.28, 0.312, 0.329],
    [0.254, 0.285, 0.301],
    [0.25, 0.281, 0.297],
    [0.203, 0.229, 0.242],
    [0.2, 0.226, 0.239],
    [0.127, 0.146, 0.156],
    [0.079, 0.093, 0.1],
  ] as const
  for (const [bare, grade1, grade2] of rows)
    test(`${bare} mm`, () => {
      const typical1 = enamelledDiameter_mm(bare, 1)
      const typical2 = enamelledDiameter_mm(bare, 2)
      for (const [typical, greatest] of [
        [typical1, grade1],
        [typical2, grade2],
      ] as const) {
        expect(typical).toBeGreaterThan(bare + 0.4 * (greatest - bare))
        expect(typical).toBeLessThanOrEqual(greatest + 0.001)
      }
      expect(typical2).toBeGreaterThan(typical1)
    })
})

describe('law: a gauge is a word, a diameter is a number', () => {
  test('case and one space do not matter', () => {
    expect(gauge('awg20')).toBe(gauge('AWG 20'))
    expect(gauge(' Swg 21 ')).toBe(gauge('SWG 21'))
  })
  test('a higher gauge is a thinner wire', () => {
    for (const [kind, from, to] of [
      ['AWG', 0, 44],
      ['SWG', 4, 45],
    ] as const)
      for (let k = from + 1; k <= to; k++)
        expect(gauge(`${kind} ${k}`)!).toBeLessThan(gauge(`${kind} ${k - 1}`)!)
  })
  test('what is no gauge has no diameter', () => {
    for (const name of [
      'AWG 45',
      'AWG -1',
      'SWG 3',
      'SWG 46',
      'AWG',
      '20',
      'XWG 20',
      'AWG 2.5',
      '',
      'AWG  20',
    ])
      expect(gauge(name), name).toBeUndefined()
  })
  test('the document takes both and nothing else', () => {
    for (const size of ['AWG 20', 0.5, { value: 0.5, spread: 0.01, known: 'measured' }])
      expect(wireSizeSchema.safeParse(size).success).toBe(true)
    for (const size of ['0.5', 0, 11, null, [], { value: 'AWG 20' }, 'AWG 99'])
      expect(wireSizeSchema.safeParse(size).success).toBe(false)
  })
  test('the enamel grows with the wire and is never negative, over all sizes the document allows', () => {
    for (const grade of [1, 2] as const) {
      let before = 0
      for (let d = 0.02; d <= 10; d *= 1.07) {
        const outer = enamelledDiameter_mm(d, grade)
        expect(outer).toBeGreaterThan(d)
        expect(outer).toBeGreaterThan(before)
        before = outer
      }
    }
  })
})

describe('law: sizes next to a size', () => {
  const bare = (size: number | string) => (typeof size === 'number' ? size : gauge(size)!)
  test('in the family of the name, thinner and thicker step by step', () => {
    for (const size of ['AWG 20', 'swg 21', 0.5, 0.6, 1.03, 'AWG 0', 'AWG 44', 'SWG 4', 0.02, 10]) {
      const { thinner, thicker } = neighbourSizes(size, 4)
      let before = bare(size)
      for (const next of thinner) {
        expect(typeof next).toBe(typeof size)
        expect(bare(next)).toBeLessThan(before)
        before = bare(next)
      }
      before = bare(size)
      for (const next of thicker) {
        expect(bare(next)).toBeGreaterThan(before)
        before = bare(next)
      }
    }
  })
  test('the ends of a family have no further sizes', () => {
    expect(neighbourSizes('AWG 44', 3).thinner).toEqual([])
    expect(neighbourSizes('SWG 4', 3).thicker).toEqual([])
    expect(neighbourSizes('AWG 1', 3).thicker).toEqual(['AWG 0'])
    expect(neighbourSizes(0.01, 3).thinner).toEqual([])
  })
})

describe('source: iec-60317-0-1, nominal sizes of the R 20 and R 40 series next to 1.5 mm (from memory, not opened)', () => {
  test('1.32, 1.4, 1.5, 1.6, 1.7', () => {
    expect(neighbourSizes(1.5, 2)).toEqual({ thinner: [1.4, 1.32], thicker: [1.6, 1.7] })
  })
})
