/** Checks of reading a document: every kind of fault, all of them told, in the one wording of the house. */
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleNames, exampleText } from '../../test/example.ts'
import { fixedDocument, fixedText } from '../../test/fixed-document.ts'
import { refusalCodes } from '../refusal/code.ts'
import { deepestDocument, longestDocument } from './document-bound.ts'
import { type Fault, faultText, pathText, receivedText } from './fault.ts'
import { parseDesign, parseDesignText } from './parse.ts'

const faultsIn = (document: unknown): readonly Fault[] => {
  const parsed = parseDesign(document)
  return parsed.ok ? [] : parsed.faults
}
const lines = (document: unknown) => faultsIn(document).map(faultText)

// biome-ignore lint/suspicious/noExplicitAny: documents are changed at will, also to what no type allows
type Raw = any
const changed = (change: (document: Raw) => void): Raw => {
  const document = fixedDocument('drum')
  change(document)
  return document
}

describe('law: the examples are designs', () => {
  for (const name of exampleNames)
    test(name, () => {
      expect(lines(exampleDocument(name))).toEqual([])
      expect(parseDesignText(exampleText(name)).ok).toBe(true)
    })
  test('defaults are filled in, what was typed is left alone', () => {
    const document = fixedDocument('disc')
    const before = structuredClone(document)
    const parsed = parseDesign(document)
    expect(document).toEqual(before)
    expect(parsed.ok && parsed.design.cable.place).toBe('after bridge')
    expect(parsed.ok && parsed.design.protection.mechanical).toBe('none')
    expect(parsed.ok && parsed.design.bench.meterLowestFrequency_Hz).toBe(45)
  })
})

describe('law: each kind of fault has its code and reads path, condition, received, code', () => {
  const cases: readonly (readonly [string, (document: Raw) => void, string])[] = [
    [
      'below-minimum',
      (d) => (d.rotor.pitchRadius_mm = -3),
      'rotor.pitchRadius_mm must be at least 2 mm; received -3 mm (below-minimum)',
    ],
    [
      'below-minimum inside a quantity',
      (d) => (d.rotor.pitchRadius_mm = { value: -3, known: 'measured' }),
      'rotor.pitchRadius_mm.value must be at least 2 mm; received -3 mm (below-minimum)',
    ],
    [
      'above-maximum',
      (d) => (d.stator.winding.phases[1].offset_deg = 400),
      'stator.winding.phases[1].offset_deg must be at most 360°; received 400° (above-maximum)',
    ],
    [
      'not-a-choice among words',
      (d) => (d.stator.connection = 'triangle'),
      'stator.connection must be one of "star", "delta", "separate", "single"; received "triangle" (not-a-choice)',
    ],
    [
      'not-a-choice among variants',
      (d) => (d.load.kind = 'flywheel'),
      'load.kind must be one of "battery", "resistor", "heater", "lamp", "capacitor", "open"; received "flywheel" (not-a-choice)',
    ],
    [
      'not-a-choice for an odd number of poles',
      (d) => (d.rotor.poleCount = 11),
      'rotor.poleCount must be a multiple of 2; received 11 (not-a-choice)',
    ],
    [
      'not-a-choice for a pole letter',
      (d) => (d.rotor.poleSequence = 'NSNSNSNSNSNX'),
      'rotor.poleSequence must be a text of the letters N and S only; received "NSNSNSNSNSNX" (not-a-choice)',
    ],
    [
      'not-a-choice for a gauge',
      (d) => (d.stator.wire.size = 'AWG 99'),
      'stator.wire.size must be a gauge such as "AWG 20" (AWG 0 to 44) or "SWG 21" (SWG 4 to 45), or a bare diameter in mm; received "AWG 99" (not-a-choice)',
    ],
    [
      'unknown-key with the nearest',
      (d) => (d.rotor.coverr_mm = 1),
      'rotor.coverr_mm must be a known key, perhaps cover_mm; received 1 (unknown-key)',
    ],
    [
      'missing-key',
      (d) => {
        delete d.cable.length_m
      },
      'cable.length_m must be a number in m, or an object with value, spread and known; received nothing (missing-key)',
    ],
    [
      'missing-key for a whole noun',
      (d) => {
        delete d.cable
      },
      'cable must be given: an object; received nothing (missing-key)',
    ],
    [
      'wrong-type for a quantity',
      (d) => (d.cable.length_m = '12 m'),
      'cable.length_m must be a number in m, or an object with value, spread and known; received "12 m" (wrong-type)',
    ],
    ['wrong-type for a text', (d) => (d.name = 5), 'name must be a text; received 5 (wrong-type)'],
    [
      'wrong-type for an object',
      (d) => (d.site = []),
      'site must be an object; received a list of 0 (wrong-type)',
    ],
    [
      'wrong-type for a whole number',
      (d) => (d.stator.winding.turns = 2.5),
      'stator.winding.turns must be a whole number; received 2.5 (wrong-type)',
    ],
    [
      'wrong-length of a list',
      (d) => (d.stator.winding.phases = []),
      'stator.winding.phases must be at least 1 entries; received a list of 0 (wrong-length)',
    ],
    [
      'wrong-length of a text',
      (d) => (d.name = 'x'.repeat(121)),
      `name must be at most 120 letters; received "${'x'.repeat(60)}…" (wrong-length)`,
    ],
    [
      'conflict of grade and polarisation',
      (d) => (d.rotor.magnet.polarization_T = 1.3),
      'rotor.magnet.polarization_T must be left out where a grade is given; received 1.3 T (conflict)',
    ],
    [
      'missing-key of both',
      (d) => {
        delete d.rotor.magnet.grade
      },
      'rotor.magnet.grade must be given, or polarization_T in its place; received nothing (missing-key)',
    ],
    [
      'not-finite',
      (d) => (d.cable.length_m = Number.POSITIVE_INFINITY),
      'cable.length_m must be a finite number; received Infinity m (not-finite)',
    ],
    [
      'not-finite inside a quantity',
      (d) => (d.cable.length_m = { value: Number.POSITIVE_INFINITY }),
      'cable.length_m.value must be a finite number; received Infinity m (not-finite)',
    ],
    [
      'wrong-type inside a quantity',
      (d) => (d.cable.length_m = { value: '12' }),
      'cable.length_m.value must be a number; received "12" (wrong-type)',
    ],
    [
      'missing-key inside a quantity',
      (d) => (d.cable.length_m = { spread: 1 }),
      'cable.length_m.value must be given: a number; received nothing (missing-key)',
    ],
    [
      'unknown-key inside a quantity',
      (d) => (d.cable.length_m = { value: 12, spred: 1 }),
      'cable.length_m.spred must be a known key, perhaps spread; received 1 (unknown-key)',
    ],
    [
      'below-minimum of a spread',
      (d) => (d.cable.length_m = { value: 12, spread: -1 }),
      'cable.length_m.spread must be at least 0 m; received -1 m (below-minimum)',
    ],
    [
      'not-a-choice of a way of knowing',
      (d) => (d.cable.length_m = { value: 12, known: 'hearsay' }),
      'cable.length_m.known must be one of "label", "measured", "guessed"; received "hearsay" (not-a-choice)',
    ],
    [
      'not-finite, no number at all',
      (d) => (d.rotor.pitchRadius_mm = Number.NaN),
      'rotor.pitchRadius_mm must be a finite number; received NaN mm (not-finite)',
    ],
    [
      'unknown-version',
      (d) => (d.gustloom = 99),
      'gustloom must be the version number 2 of this form; received 99 (unknown-version)',
    ],
    [
      'missing-key of the version',
      (d) => {
        delete d.gustloom
      },
      'gustloom must be the version number 2 of this form; received nothing (missing-key)',
    ],
  ]
  for (const [title, change, line] of cases) test(title, () => expect(lines(changed(change))).toEqual([line]))

  test('not-finite from text, where 1e999 is more than a number holds', () => {
    const text = fixedText('drum').replace('"length_m":12', '"length_m":1e999')
    const parsed = parseDesignText(text)
    expect(parsed.ok ? [] : parsed.faults.map(faultText)).toEqual([
      'cable.length_m must be a finite number; received Infinity m (not-finite)',
    ])
  })
  test('not-json', () => {
    for (const text of ['', '{', '{"gustloom": 1,}', "{'gustloom': 1}", '\u0000', 'NaN', '\ufeff'])
      expect(parseDesignText(text)).toMatchObject({ ok: false, faults: [{ code: 'not-json' }] })
  })
  test('a byte-order mark before the text is no fault', () =>
    expect(parseDesignText(`\ufeff${fixedText('drum')}`).ok).toBe(true))
  test('too-large, and the text is not parsed at all', () => {
    const parsed = parseDesignText('['.repeat(longestDocument + 1))
    expect(parsed).toMatchObject({ ok: false, faults: [{ code: 'too-large' }] })
  })
  test('too-deep', () => {
    let nested: unknown = 1
    for (let k = 0; k < deepestDocument + 1; k++) nested = { inner: nested }
    expect(parseDesign(nested)).toMatchObject({ ok: false, faults: [{ code: 'too-deep' }] })
  })
  test('wrong-type for what is no object', () => {
    for (const value of [null, 3, 'design', [], true, undefined])
      expect(parseDesign(value)).toMatchObject({ ok: false, faults: [{ code: 'wrong-type' }] })
  })
})

describe('law: all faults of a document are told, not only the first', () => {
  const document = changed((d) => {
    d.rotor.pitchRadius_mm = -1
    d.rotor.poleCount = 11
    d.rotor.magnet.widht_mm = 15
    d.rotor.magnet.width_mm = '15'
    d.stator.connection = 'triangle'
    d.stator.winding.phases[2].distance_mm = Number.NaN
    delete d.cable.area_mm2
    d.load.kind = 'kettle'
    d.extra = true
  })
  const faults = faultsIn(document)
  test('each at its own path', () =>
    expect(faults.map(({ path, code }) => `${path} ${code}`).sort()).toEqual(
      [
        'rotor.pitchRadius_mm below-minimum',
        'rotor.poleCount not-a-choice',
        'rotor.magnet.widht_mm unknown-key',
        'rotor.magnet.width_mm wrong-type',
        'stator.connection not-a-choice',
        'stator.winding.phases[2].distance_mm not-finite',
        'cable.area_mm2 missing-key',
        'load.kind not-a-choice',
        'extra unknown-key',
      ].sort(),
    ))
  test('the mistyped key is led to the one that was meant', () =>
    expect(faults.find(({ path }) => path === 'rotor.magnet.widht_mm')?.nearest).toBe('width_mm'))
  test('every code is one of the list', () => {
    for (const { code } of faults) expect(Object.keys(refusalCodes)).toContain(code)
  })
  test('an unknown key that resembles nothing is answered with all that are known', () =>
    expect(lines(changed((d) => (d.cable.xyzzy = 1)))).toEqual([
      'cable.xyzzy must be one of length_m, area_mm2, place, series_mohm; received 1 (unknown-key)',
    ]))
})

describe('law: messages are short and in one line, whatever was received', () => {
  test('long and odd values are clipped', () => {
    expect(receivedText('a\nb')).toBe('"a\\nb"')
    expect(receivedText('y'.repeat(1e6)).length).toBeLessThan(70)
    expect(receivedText({ a: 1, b: 2 })).toBe('an object with 2 keys')
    expect(receivedText(undefined)).toBe('nothing')
    expect(receivedText(null)).toBe('null')
    expect(receivedText(-0)).toBe('0')
  })
  test('paths are as JavaScript writes them', () => {
    expect(pathText(['stator', 'winding', 'phases', 1, 'offset_deg'])).toBe(
      'stator.winding.phases[1].offset_deg',
    )
    expect(pathText([])).toBe('the document')
    expect(pathText(['k'.repeat(500)]).length).toBeLessThan(70)
  })
  test('keys that every object inherits are keys like others', () => {
    for (const key of ['constructor', '__proto__', 'toString', 'hasOwnProperty']) {
      const text = fixedText('disc').replace('"gustloom":1', `"gustloom":1, ${JSON.stringify(key)}: {"x": 1}`)
      const parsed = parseDesignText(text)
      if (parsed.ok) expect(Object.hasOwn(parsed.design, key)).toBe(false)
      else expect(parsed.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([`${key} unknown-key`])
    }
    expect(({} as Record<string, unknown>).x).toBeUndefined()
  })
})
