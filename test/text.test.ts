/** Checks of the catalogue: every sentence has German, the engine’s sentences are recognized, and nothing in them is lost. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  allGerman,
  engineTemplates,
  germanOf,
  germanSubjects,
  missingGerman,
  pageSentences,
} from '../scripts/text.ts'
import { circuitPlan } from '../src/analysis/circuit-plan.ts'
import { coilPhasors } from '../src/analysis/coil-phasor.ts'
import { concernRules } from '../src/analysis/concerns.ts'
import { designFields } from '../src/machine/design-fields.ts'
import { faultText } from '../src/machine/fault.ts'
import { parseDesign } from '../src/machine/parse.ts'
import { circuitCaution, circuitChart } from '../src/output/chart/circuit.ts'
import { phasorChart } from '../src/output/chart/phasor.ts'
import { picture, textAt } from '../src/output/chart/picture.ts'
import { signOffText } from '../src/output/sign-off.ts'
import { said } from '../src/output/telling.ts'
import { shownConcern } from '../web/shown-concern.ts'
import { setSentences, told, unknownSentences } from '../web/text/engine-sentence.ts'
import { say, setCatalogue, speak } from '../web/text/say.ts'
import { filled, sentenceBook } from '../web/text/sentence-book.ts'
import { toldDrawing, toldTable } from '../web/text/told-picture.ts'
import { exampleChain, exampleDocument, exampleNames } from './example.ts'
import { markupFaults } from './markup.ts'

const german = allGerman()
const plainBook = sentenceBook(
  german,
  (text) => text,
  () => false,
)

const placesIn = (text: string): string[] => [...new Set(text.match(/\{\d+\}/g) ?? [])].sort()

/** What stays English of these, in German. */
async function leftEnglish(texts: Iterable<string>): Promise<string[]> {
  setCatalogue('de', german)
  setSentences(german)
  await speak('de')
  try {
    for (const text of texts) told(text)
    return [...unknownSentences().keys()]
  } finally {
    await speak('en')
  }
}

async function inGerman<Told>(tell: () => Told): Promise<Told> {
  setCatalogue('de', german)
  setSentences(german)
  await speak('de')
  try {
    return tell()
  } finally {
    await speak('en')
  }
}

describe('law: every sentence of engine and page has German', () => {
  test('none is missing', () => {
    expect(Object.keys(engineTemplates()).length).toBeGreaterThan(2000)
    expect(Object.keys(pageSentences()).length).toBeGreaterThan(300)
    expect(missingGerman()).toEqual({})
  })
  test('German has the places of its English, neither more nor fewer', () => {
    const unlike = Object.entries(german).filter(
      ([key, sentence]) => placesIn(key).join() !== placesIn(sentence).join(),
    )
    expect(unlike).toEqual([])
  })
  test('places that stand side by side in English do so in German', () => {
    const parted = Object.entries(german).filter(([key, sentence]) =>
      (key.match(/(?:\{\d+\}){2,}/g) ?? []).some((row) => !sentence.includes(row)),
    )
    expect(parted).toEqual([])
  })
  test('a chunk is sorted by its English, so that two hands can add to it', () => {
    for (const subject of germanSubjects) {
      const keys = Object.keys(germanOf(subject))
      expect(keys, subject).toEqual([...keys].sort((a, b) => compared(a, b)))
    }
  })
  test('an abrupt tone is kept out: no exclamation marks, no first name terms', () => {
    const rude = Object.values(german).filter((sentence) =>
      /!|\b(?:du|dein|deine|dich|dir)\b/i.test(sentence),
    )
    expect(rude).toEqual([])
  })
})

/** By code points, as the chunks are written. */
function compared(a: string, b: string): number {
  const [left, right] = [[...a], [...b]]
  for (let k = 0; k < Math.min(left.length, right.length); k++) {
    const step = left[k]!.codePointAt(0)! - right[k]!.codePointAt(0)!
    if (step !== 0) return step
  }
  return left.length - right.length
}

describe('law: what the engine says of the examples is recognized to the last word', () => {
  test('concerns, their measures, answers and the sign-off', async () => {
    const texts = exampleNames.flatMap((name) => {
      const chain = exampleChain(name)
      return [
        signOffText(chain.concerns),
        ...chain.concerns
          .map((concern) => shownConcern(chain, concern))
          .flatMap(({ what, why, figures, remedies, measure, answeredBy, answerTexts }) => [
            ...[what, why, figures, ...remedies, ...answerTexts],
            ...[measure, answeredBy].filter((text) => text !== undefined),
          ]),
      ]
    })
    expect(texts.length).toBeGreaterThan(100)
    expect(await leftEnglish(texts)).toEqual([])
  })
  test('titles of the rules, helps and words of the fields', async () => {
    const texts = [
      ...concernRules.map(({ title }) => title),
      ...designFields().flatMap(({ help, words }) => [help, ...words]),
    ].filter((text) => text !== '')
    expect(await leftEnglish(texts)).toEqual([])
  })
  test('faults of documents that lack a field, hold a word, a list or a number far out', async () => {
    const wrong = [undefined, 'such a word', [1], -1e9, 1e9, {}]
    const texts = exampleNames.flatMap((name) =>
      ['rotor', 'stator', 'blades', 'cable', 'site'].flatMap((noun) =>
        Object.keys(exampleDocument(name)[noun]).flatMap((key) =>
          wrong.flatMap((value) => {
            const document = exampleDocument(name)
            document[noun][key] = value
            const parsed = parseDesign(document)
            return parsed.ok ? [] : parsed.faults.map(faultText)
          }),
        ),
      ),
    )
    expect(texts.length).toBeGreaterThan(100)
    expect(await leftEnglish(texts)).toEqual([])
  })
})

/** A word of letters that no template holds, and numbers as they come. */
const value = fc.oneof(
  fc.stringMatching(/^Q[a-z]{1,8}q$/),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((number) => String(Number(number.toPrecision(4)))),
)

describe('law: recognition gives back what was put in', () => {
  const templates = Object.keys(engineTemplates()).filter((key) => placesIn(key).length > 0)
  test('filled in again, a recognized sentence is the sentence, whatever stands at its places', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...templates),
        fc.array(value, { minLength: 12, maxLength: 12 }),
        (key, words) => {
          const sentence = key.replace(/\{(\d+)\}/g, (_, place: string) => words[Number(place)]!).trim()
          const found = plainBook.recognized(sentence)
          // a template of signs alone is no sentence
          if (found === undefined) return !/\p{L}{2}/u.test(key.replace(/\{\d+\}/g, ''))
          return filled(found.key, found.values) === sentence
        },
      ),
      { numRuns: 400 },
    )
  })
  test('the values of a sentence stand in its German', async () => {
    const sentence =
      'In 7.5 m/s at 412 rpm the blades give 3 N·m and the short takes 2 N·m, at its strongest 9 N·m; it goes on turning at 88 rpm, parked would be below 55 rpm; wanted up to 15.0 m/s.'
    const text = await inGerman(() => told(sentence))
    for (const number of [
      '7,5 m/s',
      '412 U/min',
      '3 N·m',
      '2 N·m',
      '9 N·m',
      '88 U/min',
      '55 U/min',
      '15,0 m/s',
    ])
      expect(text).toContain(number)
    expect(text).not.toContain('rpm')
  })
  test('signs of patterns in a sentence are letters like others, and long nonsense comes to an end', () => {
    const signs = '$& $1 (.*)+ [a-z]{99} ^\\b | ?? {0} {17} a, b; c. d (e) and f or g '
    expect(plainBook.told(signs)).toContain('$& $1 (.*)+')
    const nonsense = signs.repeat(200)
    expect(plainBook.told(nonsense).length).toBeGreaterThan(0)
  })
  test('a name that looks like a pattern of replacement stays as it is', async () => {
    expect(await inGerman(() => told('1 of 2 hold it: “$&$1.jpg”.'))).toBe(
      '1 von 2 enthalten ihn: “$&$1.jpg”.',
    )
  })
})

describe('law: pictures and tables are told word by word', () => {
  const chain = exampleChain(exampleNames[0]!)
  const draw = () => phasorChart({ width: 700, phasors: coilPhasors(chain) })
  const textsOf = (svg: string): string[] =>
    [...svg.matchAll(/<(?:text|title|desc)[^>]*>([^<]*)</g)].map(([, text]) => text!)
  test('in English nothing changes', () => {
    expect(toldDrawing(draw)).toBe(draw())
    expect(told('Charging begins')).toBe('Charging begins')
  })
  test('every text of a picture is told, and its signs stay escaped', async () => {
    const german = await inGerman(() => toldDrawing(draw))
    expect(markupFaults(german)).toEqual([])
    const [ours, theirs] = [textsOf(draw()), textsOf(german)]
    expect(theirs[0]).toBe('Zeiger der Spulen')
    // the letters of the phases and the numbers of the coils stay
    expect(theirs.filter((text) => /^−?\w{1,2}$/.test(text))).toEqual(
      ours.filter((text) => /^−?\w{1,2}$/.test(text)),
    )
    const odd = () =>
      picture(
        { name: 'odd', title: 'Wind of the site over a year', description: 'A & B', width: 9, height: 9 },
        textAt(1, 1, 'A & B < 3.5 m/s', { className: 'tick-text' }),
      )
    expect(textsOf(await inGerman(() => toldDrawing(odd)))).toEqual([
      'Wind des Standorts übers Jahr',
      'A &amp; B',
      'A &amp; B &lt; 3,5 m/s',
    ])
  })
  test('a sentence of several lines is told whole and broken anew', async () => {
    const plan = circuitPlan(chain)
    const caution = /^Keine Anleitung/
    for (const width of [340, 900]) {
      const lines = textsOf(await inGerman(() => toldDrawing(() => circuitChart({ width, plan }))))
      const foot = lines.slice(lines.findIndex((line, k) => k > 1 && caution.test(line)))
      expect(foot.join(' ')).toBe(await inGerman(() => told(circuitCaution)))
      for (const line of foot) expect(7 * line.length).toBeLessThanOrEqual(width)
    }
  })
  test('what is drawn after a drawing that failed is ours again', async () => {
    const failing = () => {
      throw new RangeError('no picture')
    }
    await expect(inGerman(() => toldDrawing(failing))).rejects.toThrow('no picture')
    expect(said('Charging begins')).toBe('Charging begins')
  })
  test('heads, units and words of a table change, numbers stay numbers', async () => {
    const table = {
      caption: 'Every wind',
      columns: [{ head: 'wind', unit: 'm/s' }, { head: 'speed', unit: 'rpm' }, { head: 'state' }],
      rows: [[3, 120.5, 'at rest']],
    }
    expect(await inGerman(() => toldTable(table))).toEqual({
      caption: 'Jeder Wind',
      columns: [{ head: 'Wind', unit: 'm/s' }, { head: 'Drehzahl', unit: 'U/min' }, { head: 'Zustand' }],
      rows: [[3, 120.5, 'in Ruhe']],
    })
  })
})

describe('law: the page’s own sentences', () => {
  test('numbers have the comma of the language, places keep their values', async () => {
    expect(say`At least ${'3.5 mm'}.`).toBe('At least 3.5 mm.')
    expect(await inGerman(() => say`At least ${'3.5 mm'}.`)).toBe('Mindestens 3,5 mm.')
  })
})
