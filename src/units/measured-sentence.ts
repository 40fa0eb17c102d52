/** A sentence of the engine with its quantities in the units that somebody has chosen. */
import { formatNumber } from './format.ts'
import { inUnit } from './spoken-unit.ts'
import { type Unit, units } from './unit.ts'

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')

const symbols = new Map(
  [...units.values()]
    .filter(({ symbol }) => symbol !== '')
    .map((unit) => [unit.symbol.trim(), unit] as const),
)

const number = '[-−]?\\d{1,20}(?:\\.\\d{1,20})?(?:e[+−-]?\\d{1,3})?'
const bound = '(?:to|±|–|×|and|or|,|;|/)'

/** One or several numbers before one unit: `12 mm`, `12.3 ± 0.4 mm`, `40 × 10 × 5 mm`. */
const quantity = new RegExp(
  `(?<![\\p{L}\\d.,_])((?:${number} ?${bound} ?){0,3})(${number})( ?)(${[...symbols.keys()]
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|')})(?![\\p{L}\\p{N}²³·/⁻])`,
  'gu',
)

/** Between these, the unit belongs to every number; a list may count things instead. */
const shared = /^(?:to|±|–|×)$/

const printedValue = (text: string): number => Number(text.replaceAll('−', '-'))

/** Digits of a printed number, of which leading zeros are none. */
const digitsOf = (text: string): number =>
  text.replace(/e.*$/, '').replace(/\D/g, '').replace(/^0+/, '').length

/** Three digits, or as many as were there. */
const digitsFor = (text: string): number => Math.max(3, digitsOf(text))

/** How far a degree or a metre is off, or by how much it grows: no point of a scale. */
const isDifference = (before: string): boolean => /(?:\bby|±)\s*$/u.test(before)

/**
 * Numbers with a unit, as the engine writes them, in the unit that `said` gives for it. Where it is not sure what a unit
 * belongs to, the sentence keeps its own: never wrong, at worst metric.
 */
export function measuredSentence(sentence: string, said: (suffix: string) => Unit): string {
  return sentence.replace(
    quantity,
    (whole: string, before: string, last: string, _space: string, symbol: string, at: number) => {
      const kept = symbols.get(symbol)!
      const target = said(kept.suffix)
      if (target.suffix === kept.suffix) return whole
      const parts = before.trim().split(new RegExp(`(${bound})`, 'u'))
      const joins = parts.filter((_, k) => k % 2 === 1)
      if (!joins.every((join) => shared.test(join))) return whole
      const start = isDifference(sentence.slice(0, at))
      if (start && kept.offset !== target.offset && joins.length > 0) return whole
      const texts = [...parts.filter((_, k) => k % 2 === 0), last].map((text) => text.trim()).filter(Boolean)
      const turned = texts.map((text, k) => {
        const spread = k > 0 && joins[k - 1] === '±'
        const next = inUnit(printedValue(text), kept, target, spread || start)
        return formatNumber(next, spread ? Math.max(2, digitsOf(text)) : digitsFor(text))
      })
      const joined = turned.reduce(
        (text, each, k) => `${text}${joins[k - 1] === '–' ? '–' : ` ${joins[k - 1]} `}${each}`,
      )
      return joined + target.symbol
    },
  )
}
