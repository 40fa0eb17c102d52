/** What the engine says, in the language of the page: sentences, the words of pictures, the heads of tables. */

import { signal } from '@preact/signals'
import type { ChartTable } from '../../src/output/chart/chart-table.ts'
import { toldBy } from '../../src/output/telling.ts'
import { language, shown } from './say.ts'
import { type SentenceBook, type Sentences, sentenceBook } from './sentence-book.ts'
import { isUnit } from './unit-word.ts'

const book = signal<SentenceBook | undefined>(undefined)

let known: Sentences | undefined

export function setSentences(sentences: Sentences): void {
  known = sentences
  book.value = sentenceBook(sentences, shown, isUnit)
}

/** The sentences that the page speaks now, for an engine that sets a whole page by itself; none in English. */
export const presentSentences = (): Sentences | undefined => (language.value === 'en' ? undefined : known)

const otherBook = (): SentenceBook | undefined => (language.value === 'en' ? undefined : book.value)

/** A sentence, a label or a word of the engine in the language of the page; English stays as it is. */
export const told = (sentence: string): string => otherBook()?.told(sentence) ?? sentence

/** Sentences that no template fitted, as often as they were met. */
export const unknownSentences = (): ReadonlyMap<string, number> => book.value?.unknown ?? new Map()

/** What is drawn, its words, title and description said in the language of the page. */
export const toldDrawing = (draw: () => string): string =>
  otherBook() === undefined ? draw() : toldBy(told, draw)

/** A table of numbers whose caption, heads, units and words are said in the language of the page. */
export function toldTable(table: ChartTable): ChartTable {
  if (otherBook() === undefined) return table
  return {
    caption: told(table.caption),
    columns: table.columns.map((column) => ({
      ...column,
      head: told(column.head),
      ...(column.unit === undefined ? {} : { unit: told(column.unit) }),
    })),
    rows: table.rows.map((row) => row.map((cell) => (typeof cell === 'string' ? told(cell) : cell))),
  }
}
