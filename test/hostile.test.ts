/** Checks that no document, however odd or hostile, crashes the chain, hangs it, or makes it print what is no number. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { computeDesign } from '../src/analysis/compute.ts'
import { spreadsOf } from '../src/analysis/spread.ts'
import { finished } from '../src/analysis/step.ts'
import { longestDocument } from '../src/machine/document-bound.ts'
import { type Fault, faultText } from '../src/machine/fault.ts'
import { type Parsed, parseDesign, parseDesignText } from '../src/machine/parse.ts'
import { chainPage } from '../src/output/chain-page.ts'
import { designResult } from '../src/output/result.ts'
import { refusalCodes } from '../src/refusal/code.ts'
import { designOf, exampleDocument, exampleNames, exampleText } from './example.ts'
import { fixedText } from './fixed-document.ts'
import { setAt, variedDocument } from './varied-document.ts'

const noNumber = /NaN|Infinity|undefined|\[object/

/** Every fault has a known code and reads as one short line. */
function expectSound(faults: readonly Fault[]): void {
  expect(faults.length).toBeGreaterThan(0)
  // of tens of thousands alike, some will do
  for (const fault of faults.slice(0, 300)) {
    expect(Object.keys(refusalCodes)).toContain(fault.code)
    const line = faultText(fault)
    expect(line).toMatch(/^.+ must be .+; received .+ \([a-z-]+\)$/)
    expect(line.length).toBeLessThan(1500)
  }
}

/** Places in a JSON value that hold what JSON cannot. */
const unsound = (value: unknown, path = ''): string[] =>
  typeof value === 'number'
    ? Number.isFinite(value)
      ? []
      : [path]
    : value === undefined || typeof value === 'function'
      ? [path]
      : typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, inside]) => unsound(inside, `${path}.${key}`))
        : []

/** Parses, and computes what is a design; all that leaves the house must be sound. */
function expectSurvived(parsed: Parsed): 'faults' | 'computed' {
  if (!parsed.ok) {
    expectSound(parsed.faults)
    return 'faults'
  }
  const chain = computeDesign(parsed.design)
  // the document's own words may say anything
  const { name, note = '', purpose } = parsed.design
  const own = [name, note, purpose.goal ?? ''].some((words) => noNumber.test(words))
  const page = chainPage(chain)
    .map(({ text }) => text)
    .join('\n')
  if (!own) expect(page).not.toMatch(noNumber)
  const result = designResult(chain)
  expect(unsound(result)).toEqual([])
  expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  return 'computed'
}

/** The smallest of the examples: the chain is the same, the magnets are few. */
const quick = 'class-room-fan'
/** A guard against hanging, many times what is needed, so that a busy machine does not fail it. */
const guard = { timeout: 240_000 }

describe('law: every document that parses computes', () => {
  const runs = (most: number, numRuns: number, names: readonly string[]) => () => {
    let computed = 0
    fc.assert(
      fc.property(variedDocument(most, names), ({ document }) => {
        if (expectSurvived(parseDesign(document)) === 'computed') computed++
      }),
      { numRuns },
    )
    expect(computed).toBeGreaterThan(numRuns / 4)
  }
  test('variants of every noun with up to three fields set anew', guard, runs(3, 40, [quick]))
  test('the larger examples with a few fields set anew', guard, runs(2, 6, exampleNames))
  test('wholly random fields', guard, () => {
    fc.assert(
      fc.property(variedDocument(12, [quick]), ({ document }) => {
        expectSurvived(parseDesign(document))
      }),
      { numRuns: 16 },
    )
  })
})

describe('law: machines that are allowed, though nobody would build them, compute', () => {
  // biome-ignore lint/suspicious/noExplicitAny: documents are changed at will
  type Change = (document: any) => void
  const ideal: Change = (d) => {
    d.bridge = { diode: 'Schottky 10 A 45 V', threshold_V: 0, slope_mohm: 0 }
  }
  const cases: Readonly<Record<string, readonly [string, Change]>> = {
    'ideal diodes into a resistor': [quick, ideal],
    'ideal diodes into a battery without resistance': [
      quick,
      (d) => {
        ideal(d)
        d.load = { kind: 'battery', chemistry: 'lead-acid', voltage_V: 1, resistance_mohm: 0 }
      },
    ],
    'three waves in step, thin layers on each other': [
      'hen-house-drum',
      (d) => {
        d.stator.winding.bundleDepth_mm = 0.5
        d.stator.winding.phases = [0, 1, 2].map((k) => ({ offset_deg: 0, distance_mm: 1.2 + 0.5 * k }))
      },
    ],
    'a delta of waves all but in step': [
      'hen-house-drum',
      (d) => {
        d.stator.connection = 'delta'
        d.stator.winding.phases.forEach((phase: { offset_deg: number }, k: number) => {
          phase.offset_deg = 0.5 * k
        })
      },
    ],
    'blades that give no power': [
      quick,
      (d) => {
        const points = [0, 1, 2].map((tipSpeedRatio) => ({ tipSpeedRatio, powerCoefficient: 0 }))
        d.blades = { kind: 'table', diameter_m: 1, points }
      },
    ],
    'coils that cancel': [
      quick,
      (d) => {
        Object.assign(d.stator.winding, { coilCount: 4, phaseCount: 1, reversedCoils: [1, 3] })
        d.stator.connection = 'single'
      },
    ],
    'magnets all alike': [quick, (d) => (d.rotor.poleSequence = 'NNNNNNNN')],
    'two poles': [
      quick,
      (d) => {
        d.rotor.poleCount = 2
        d.stator.winding.coilCount = 3
      },
    ],
    'no friction at all': [quick, (d) => (d.shaft = { friction_mNm: 0, startingFriction_mNm: 0 })],
    'nothing connected': [quick, (d) => (d.load = { kind: 'open' })],
    'one magnet missing its mate': [quick, (d) => (d.rotor.poleSequence = 'NNNNSSSS')],
  }
  for (const [title, [name, change]] of Object.entries(cases))
    test(title, guard, () => {
      const document = exampleDocument(name)
      change(document)
      expect(expectSurvived(parseDesign(document))).toBe('computed')
    })
})

describe('law: a spread wider than its field may be does not lead out of it', () => {
  test('every end computes, every width is finite', guard, () => {
    const document = exampleDocument(quick)
    document.shaft = { friction_mNm: { value: 1, spread: 50, known: 'guessed' } }
    document.site.weibullShape = { value: 2, spread: 6 }
    document.stator.winding.distance_mm = { value: document.stator.winding.distance_mm, spread: 40 }
    const chain = computeDesign(designOf(document))
    for (const { value, spread } of Object.values(finished(spreadsOf(chain, { samples: 64 })))) {
      expect(Number.isNaN(value)).toBe(false)
      expect(Number.isFinite(spread)).toBe(true)
    }
  })
})

describe('law: near-valid documents are told their faults', () => {
  const odd = fc.oneof(
    fc.constantFrom<unknown>(
      Number.NaN,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      1e308,
      -1e308,
      5e-324,
      -0,
      null,
      undefined,
      '',
      '\ud800',
      '\u0000',
      [],
      {},
      [[[[]]]],
      { value: Number.NaN },
      { value: 1, spread: 1e308 },
      true,
      'constructor',
      '__proto__',
    ),
    fc.anything({ maxDepth: 3 }),
  )
  const keys = fc.array(
    fc.oneof(
      fc.constantFrom(
        ...[
          'rotor',
          'stator',
          'winding',
          'magnet',
          'blades',
          'load',
          'kind',
          'phases',
          'wire',
          'size',
          'site',
        ],
        ...['__proto__x', 'constructor', 'toString', 'valueOf', 'length', 'bench', 'readings', 'points', '0'],
      ),
      fc.nat({ max: 3 }),
      fc.string({ maxLength: 5 }).filter((key) => key !== '__proto__'),
    ),
    { minLength: 1, maxLength: 4 },
  )
  test('anything anywhere', guard, () => {
    fc.assert(
      fc.property(fc.constantFrom(...exampleNames), keys, odd, (name, path, value) => {
        const document = exampleDocument(name)
        setAt(document, path, value)
        const parsed = parseDesign(document)
        if (!parsed.ok) expectSound(parsed.faults)
      }),
      { numRuns: 1500 },
    )
  })
  test('a text with one letter changed, left out or doubled', guard, () => {
    fc.assert(
      fc.property(
        fc.nat(),
        fc.nat(),
        fc.constantFrom('', '"', '}', '[', ',', '9', 'e', '-', '\\', '\ud83d'),
        (at, cut, letter) => {
          const text = exampleText(quick)
          const k = at % text.length
          const parsed = parseDesignText(text.slice(0, k) + letter + text.slice(k + (cut % 3)))
          if (!parsed.ok) expectSound(parsed.faults)
        },
      ),
      { numRuns: 600 },
    )
  })
})

describe('law: hostile texts are refused, and at once', () => {
  const huge = (n: number, text: string) => text.repeat(n)
  const cases: Readonly<Record<string, () => string>> = {
    nothing: () => '',
    blanks: () => ' \n\t ',
    'a null': () => 'null',
    'a list': () => '[]',
    'a number beyond all bounds': () => '1e999',
    'a number beyond all bounds in a field': () =>
      fixedText('disc').replace('"pitchRadius_mm":40', '"pitchRadius_mm":1e999'),
    'a number below all bounds': () =>
      fixedText('disc').replace('"pitchRadius_mm":40', '"pitchRadius_mm":5e-324'),
    'nested lists': () => huge(1e5, '['),
    'nested lists, closed': () => `${huge(1e5, '[')}${huge(1e5, ']')}`,
    'nested objects, closed': () => `${huge(1e5, '{"a":')}1${huge(1e5, '}')}`,
    'nesting inside a field': () => fixedText('disc').replace('"star"', `${huge(4e5, '[')}${huge(4e5, ']')}`),
    'fifty megabytes': () => huge(50e6, 'x'),
    'fifty megabytes of design': () => `{"gustloom": 1, "name": "${huge(50e6, 'x')}"}`,
    'a list as long as a document may be': () =>
      fixedText('disc').replace(
        '"turns":150',
        `"turns":150, "reversedCoils":[${huge((longestDocument - 5000) / 2, '1,')}1]`,
      ),
    'fifty thousand unknown keys': () =>
      `{"gustloom": 1, ${Array.from({ length: 5e4 }, (_, k) => `"k${k}": 1`).join(',')}}`,
    'a key of a megabyte': () => `{"gustloom": 1, "${huge(9e5, 'k')}": 1}`,
    'lone surrogates': () => '{"gustloom": 1, "\\ud800": "\\udfff"}',
    'keys that objects inherit': () =>
      '{"gustloom": 1, "__proto__": {"ok": true}, "constructor": {"prototype": {"ok": true}}, "toString": 1}',
    'a version from nowhere': () => '{"gustloom": {"valueOf": 1}}',
    'the same key twice': () => '{"gustloom": 1, "gustloom": 2}',
  }
  for (const [title, text] of Object.entries(cases))
    test(title, { timeout: 20_000 }, () => {
      const parsed = parseDesignText(text())
      expect(parsed.ok).toBe(false)
      if (!parsed.ok) expectSound(parsed.faults)
      expect(({} as Record<string, unknown>).ok).toBeUndefined()
    })
})
