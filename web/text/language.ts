/** Which language the page speaks: chosen once, kept in this browser, its words fetched when they are wanted. */
import { setSentences } from './engine-sentence.ts'
import { isLanguage, type Language, language, setCatalogue, speak } from './say.ts'

const place = 'gustloom.language'

/** Words of the languages that are not the keys themselves. */
const catalogues: Readonly<Partial<Record<Language, () => Promise<Readonly<Record<string, string>>>>>> = {
  de: async () => (await import('./de/catalogue.ts')).german,
}

let wanted: Language = 'en'

/** Changes the language as soon as its words are there; of two wishes the later one counts. */
export async function chooseLanguage(name: Language): Promise<void> {
  wanted = name
  const sentences = await catalogues[name]?.()
  if (wanted !== name) return
  if (sentences) {
    setCatalogue(name, sentences)
    setSentences(sentences)
  }
  await speak(name)
  document.documentElement.lang = name
}

/** Changes it, and the next visit begins with it. */
export async function keepLanguage(name: Language): Promise<void> {
  await chooseLanguage(name)
  try {
    localStorage.setItem(place, name)
  } catch {
    // a browser that keeps nothing asks its own setting again next time
  }
}

function keptLanguage(): string | null {
  try {
    return localStorage.getItem(place)
  } catch {
    return null
  }
}

/** The language kept from the last visit, or the first one of the browser's that the page speaks. */
export function firstLanguage(): Language {
  const wishes = [keptLanguage(), ...navigator.languages.map((tag) => tag.slice(0, 2).toLowerCase())]
  return wishes.find((name): name is Language => name !== null && isLanguage(name)) ?? 'en'
}

/** The page starts in English where the words of another language cannot be had. */
export async function startLanguage(): Promise<void> {
  const name = firstLanguage()
  if (name === language.value) return
  try {
    await chooseLanguage(name)
  } catch {
    await speak('en')
  }
}
