/** Which language the page speaks: chosen once, kept in this browser, its words fetched when they are wanted. */
import { setSentences } from './engine-sentence.ts'
import { isLanguage, type Language, language, setCatalogue, speak } from './say.ts'

const place = 'gustloom.language'

type Sentences = Readonly<Record<string, string>>

type Part = () => Promise<{ readonly sentences: Sentences }>

/** Words of the languages that are not the keys themselves: what stands with the first numbers, then the others. */
const catalogues: Readonly<Partial<Record<Language, readonly Part[]>>> = {
  de: [() => import('german:first'), () => import('german:concern'), () => import('german:rest')],
}

let wanted: Language = 'en'

/** The parts that have arrived, at their places. */
const arrived = new Map<Language, Sentences[]>()

async function fetchPart(name: Language, k: number): Promise<void> {
  const part = await catalogues[name]?.[k]?.()
  if (part === undefined) return
  const parts = arrived.get(name) ?? []
  parts[k] = part.sentences
  arrived.set(name, parts)
}

/** Speaks with as many words as are there; of two wishes the later one counts. */
async function speakAs(name: Language): Promise<void> {
  if (wanted !== name) return
  const parts = arrived.get(name)
  if (parts) {
    const sentences: Sentences = Object.assign({}, ...parts)
    setCatalogue(name, sentences)
    setSentences(sentences)
  }
  await speak(name)
  document.documentElement.lang = name
}

const fetching = new Map<Language, Promise<void>>()

async function fetchAll(name: Language): Promise<void> {
  const parts = catalogues[name] ?? []
  for (const k of parts.keys()) {
    if (arrived.get(name)?.[k] !== undefined) continue
    await fetchPart(name, k)
    if (language.value === name) await speakAs(name)
  }
}

/** Resolves when every word of the language that is wanted is there. */
export function allWords(): Promise<void> {
  const name = wanted
  const begun = fetching.get(name) ?? fetchAll(name)
  fetching.set(name, begun)
  // what failed may be tried again
  begun.catch(() => fetching.delete(name))
  return begun
}

/** Changes the language as soon as all its words are there. */
export async function chooseLanguage(name: Language): Promise<void> {
  wanted = name
  await allWords()
  await speakAs(name)
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

/** Speaks it with its first words; the page starts in English where they cannot be had. */
export async function startLanguage(): Promise<void> {
  const name = firstLanguage()
  if (name === language.value) return
  wanted = name
  try {
    await fetchPart(name, 0)
    await speakAs(name)
  } catch {
    if (wanted === name) wanted = 'en'
    await speak('en')
  }
}
