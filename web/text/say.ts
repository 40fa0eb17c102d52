/** What the page says, in the language it is set to: the English sentence is the key of the others. */
import { batch, signal } from '@preact/signals'
import { inGerman } from './german-number.ts'

export type Language = 'en' | 'de'

/** Each language by the name it gives itself. */
export const languages: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' }

export const isLanguage = (name: string): name is Language => Object.hasOwn(languages, name)

/** Read wherever something is said, so that what shows words is shown anew when it changes. */
export const language = signal<Language>('en')

type Sentences = Readonly<Record<string, string>>

const catalogues = new Map<Language, Sentences>()

/** Says a sentence in the language of the page; undefined while that is the language of the keys. */
const translated = signal<((key: string, places: Sentences) => string) | undefined>(undefined)

export function setCatalogue(name: Language, sentences: Sentences): void {
  catalogues.set(name, sentences)
}

let wished: Language = 'en'

/** Of two wishes the later one counts. */
export async function speak(name: Language): Promise<void> {
  wished = name
  const sentences = catalogues.get(name)
  // whoever reads English needs nothing that translates
  const spoken = sentences && (await import('./translation.ts')).translation(name, sentences)
  if (wished !== name) return
  batch(() => {
    translated.value = spoken
    language.value = name
  })
}

/** A number with its unit as people of the language write it. */
export const shown = (value: string | number): string =>
  language.value === 'de' ? inGerman(String(value)) : String(value)

/** The key of a sentence: its places numbered in the order in which they stand. */
export const sentenceKey = (parts: readonly string[]): string =>
  parts.reduce((key, part, k) => `${key}{${k - 1}}${part}`)

/** A sentence of the page; its places keep their order in the English, and may change it in another language. */
export function say(parts: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  // read in every language, so that what shows words is shown anew when another is spoken or more words have come
  const told = translated.value
  if (language.value === 'en' || told === undefined)
    return parts.reduce((text, part, k) => text + shown(values[k - 1]!) + part)
  const places = Object.fromEntries(values.map((value, k) => [String(k), shown(value)]))
  return told(sentenceKey(parts), places)
}
