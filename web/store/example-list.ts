/** Every example design, by name: fetched when the first numbers stand. */
import type { Example } from './example.ts'
import { isRawObject } from './raw-document.ts'

const files = import.meta.glob('../../examples/*.json', { eager: true, import: 'default' })

export const exampleList: readonly Example[] = Object.entries(files)
  .flatMap(([path, document]) =>
    isRawObject(document)
      ? [
          {
            key: path.slice(path.lastIndexOf('/') + 1).replace(/\.json$/, ''),
            name: String(document['name'] ?? path),
            document,
          },
        ]
      : [],
  )
  .sort((a, b) => a.name.localeCompare(b.name))
