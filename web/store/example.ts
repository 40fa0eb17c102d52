/** The example designs that come with the page. */
import { isRawObject, type RawObject } from './raw-document.ts'

const files = import.meta.glob('../../examples/*.json', { eager: true, import: 'default' })

export interface Example {
  /** File name without its ending. */
  readonly key: string
  readonly name: string
  readonly document: RawObject
}

export const examples: readonly Example[] = Object.entries(files)
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

const firstShown = 'hen-house-drum'

export const openingExample = (): Example => examples.find(({ key }) => key === firstShown) ?? examples[0]!
