/** Gives the page its German in parts: what stands with the first numbers, what the concerns say, and the rest. */
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

type Sentences = Readonly<Record<string, string>>

const root = fileURLToPath(new URL('..', import.meta.url))
const textOf = (path: string): string => readFileSync(join(root, path), 'utf8')

const subjects = ['result', 'refusal', 'chart', 'concern', 'field', 'hint', 'page'] as const
const germanFile = (subject: string): string => `web/text/de/${subject}.json`
const templateFile = 'web/text/engine-template.json'

/** Scripts of a first visit, with the rooms in which it may begin. */
const firstScripts = ['web/main.tsx', 'web/worker.ts', 'web/room/whole.tsx', 'web/room/begin.tsx'] as const

/** Subjects that the engine speaks of when the first numbers have long been there. */
const laterSubjects: ReadonlySet<string> = new Set(['concern', 'refusal', 'hint'])

const staticImport = /^(?:import|export)\s+(?!type\b)(?:[^'"]*?\sfrom\s+)?'(\.[^']+\.tsx?)'/gms

/** The files that must be there before the given ones run. */
export function filesBefore(paths: readonly string[]): ReadonlySet<string> {
  const met = new Set(paths)
  // what is added to a set while it is walked is walked too
  for (const path of met)
    for (const [, to] of textOf(path).matchAll(staticImport)) {
      const file = join(dirname(path), to!)
      if (existsSync(join(root, file))) met.add(file)
    }
  return met
}

/** A field is shown by its name at once; what helps with it is longer. */
const labelLength = 24

/** What nobody reads is left out. */
const codeOf = (path: string): string => textOf(path).replace(/\/\*.*?\*\//gs, '')

/** Of a sentence with open places, the longest run of letters that stands in the code as it is. */
const longestPiece = (key: string): string =>
  key.split(/\{\d+\}/).reduce((best, piece) => (piece.length > best.length ? piece : best))

export type GermanPart = 'first' | 'concern' | 'rest'

/** The catalogue, part by part: together they are the whole of it. */
export function germanParts(): Readonly<Record<GermanPart, Sentences>> {
  const parts: Record<GermanPart, Record<string, string>> = { first: {}, concern: {}, rest: {} }
  const spoken: Sentences = JSON.parse(textOf(templateFile))
  const files = filesBefore(firstScripts)
  const code = [...files].map(codeOf).join('\n')
  // a sentence that two subjects hold is said as the later one has it
  const all = new Map(
    subjects.flatMap((subject) =>
      Object.entries(JSON.parse(textOf(germanFile(subject))) as Sentences).map(
        ([key, german]) => [key, { subject, german }] as const,
      ),
    ),
  )
  for (const [key, { subject, german }] of all) {
    const isFirst =
      !laterSubjects.has(subject) &&
      (files.has(spoken[key] ?? '') ||
        (subject === 'field' && key.length <= labelLength) ||
        code.includes(longestPiece(key).trim()))
    parts[isFirst ? 'first' : subject === 'concern' ? 'concern' : 'rest'][key] = german
  }
  return parts
}

/** Keys by themselves and German by itself: either is more like itself than like the other. */
function moduleOf(sentences: Sentences): string {
  const lines = (texts: readonly string[]) => `${JSON.stringify(texts.join('\n'))}.split('\\n')`
  return `const german = ${lines(Object.values(sentences))}
export const sentences = Object.fromEntries(${lines(Object.keys(sentences))}.map((key, k) => [key, german[k]]))
`
}

const address = /^german:(first|concern|rest)$/

export function germanPlugin(): Plugin {
  let parts: ReturnType<typeof germanParts> | undefined
  return {
    name: 'german',
    buildStart() {
      parts = undefined
    },
    resolveId: (id) => (address.test(id) ? `\0${id}` : undefined),
    load(id) {
      const part = address.exec(id.slice(1))?.[1]
      if (!id.startsWith('\0') || part === undefined) return undefined
      for (const subject of subjects) this.addWatchFile(join(root, germanFile(subject)))
      parts ??= germanParts()
      return moduleOf(parts[part as GermanPart])
    },
  }
}
