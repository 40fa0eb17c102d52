/** What the engine says, in the language of the page. */

import { signal } from '@preact/signals'
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
