/** Leaves out of the built page what writes JSON Schema: the page only reads documents, and the reader is light without it. */
import type { Plugin } from 'vite'

const writers = /[\\/]zod[\\/]v4[\\/]core[\\/](?:to-json-schema|json-schema-processors)\.js$/

/** Every name that a module gives away. */
const givenNames = (code: string): string[] => [
  ...new Set(
    [
      ...[...code.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name!),
      ...[...code.matchAll(/^export \{([^}]*)\}/gm)].flatMap(([, list]) =>
        list!.split(',').map(
          (part) =>
            part
              .trim()
              .split(/\s+as\s+/)
              .at(-1)!,
        ),
      ),
    ].filter((name) => name !== ''),
  ),
]

export const schemaWriterPlugin = (): Plugin => ({
  name: 'schema-writer',
  apply: 'build',
  transform: {
    filter: { id: writers },
    handler: (code) => ({
      code: [
        "const absent = () => { throw new Error('the page writes no schema') }",
        ...givenNames(code).map((name, k) => `const absent${k} = absent; export { absent${k} as ${name} }`),
      ].join('\n'),
      map: null,
    }),
  },
})
