/** The pages of methods: one for each science, every function with its formula, range, symbols and source. */
import sources from '../src/data/sources.json' with { type: 'json' }
import type { Method } from './method.ts'

interface Publication {
  readonly id: string
  readonly title: string
  readonly author?: readonly {
    readonly family?: string
    readonly given?: string
    readonly literal?: string
  }[]
  readonly publisher?: string
  readonly number?: string
  readonly 'container-title'?: string
  readonly issued?: { readonly 'date-parts'?: readonly (readonly number[])[] }
}

const bibliography = new Map((sources as readonly Publication[]).map((one) => [one.id, one]))

/** Authors, title, where it appeared, number, year. */
export function citation(key: string): string {
  const one = bibliography.get(key)
  if (one === undefined) return key
  const authors = (one.author ?? []).map(({ family, literal }) => family ?? literal ?? '').join(', ')
  const year = one.issued?.['date-parts']?.[0]?.[0]
  return [authors, one.title, one['container-title'], one.publisher, one.number, year]
    .filter((part) => part !== undefined && part !== '')
    .join(', ')
}

const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ').trim()

const words: Readonly<Record<string, string>> = {
  aerodynamics: 'Blades and wind',
  electrics: 'Circuits, wire and meters',
  heat: 'Heat',
  magnetics: 'Magnets, fields and inductance',
  mechanics: 'Mechanics',
  winding: 'Windings',
}

function methodText(method: Method): string[] {
  const { name, path, sentence, formula, prose, symbols, result, sources: from, examples } = method
  return [
    `## ${name}`,
    '',
    sentence,
    '',
    ...(formula.length === 0 ? [] : ['```text', ...formula, '```', '']),
    ...prose.flatMap((paragraph) => [paragraph, '']),
    '| input | what | unit |',
    '| --- | --- | --- |',
    ...symbols.map((symbol) => `| \`${cell(symbol.name)}\` | ${cell(symbol.words)} | ${cell(symbol.unit)} |`),
    `| *result* | ${cell(result.words)} | ${cell(result.unit)} |`,
    '',
    ...from.flatMap(({ key, where }) => [
      key === 'derived' ? `Derived: ${where}.` : `Source: ${citation(key)}; ${where}.`,
      '',
    ]),
    ...(examples.length === 0 ? [] : ['```ts', ...examples, '```', '']),
    `[\`${path}\`](../../${path})`,
    '',
  ]
}

export const roomsOf = (all: readonly Method[]): readonly string[] => [
  ...new Set(all.map(({ room }) => room)),
]

/** One page for one science. */
export function methodPage(room: string, all: readonly Method[]): string {
  const own = all.filter((method) => method.room === room)
  return [
    `# ${words[room] ?? room}: methods`,
    '',
    `Generated from the comments in \`src/physics/${room}/\` by \`npm run generate\`; do not edit.`,
    '',
    'Every formula that the engine uses in this science, with its range, its accuracy, its symbols in SI units and where it',
    'comes from. Each has checks against printed digits or a second route; what they reached stands in',
    '[accuracy](../accuracy.md).',
    '',
    ...own.map(({ name, sentence }) => `- [${name}](#${name.toLowerCase()}): ${sentence}`),
    '',
    ...own.flatMap(methodText),
  ].join('\n')
}
