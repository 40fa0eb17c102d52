/** The example designs that come with the page: one to open with, the others once its numbers stand. */
import { signal } from '@preact/signals'
import first from '../../examples/hen-house-drum.json'
import type { RawObject } from './raw-document.ts'

export interface Example {
  /** File name without its ending. */
  readonly key: string
  readonly name: string
  readonly document: RawObject
}

export const openingExample: Example = { key: 'hen-house-drum', name: first.name, document: first }

export const examples = signal<readonly Example[]>([openingExample])

/** Asks for the others; where they do not arrive, the one is left. */
export async function fetchExamples(): Promise<void> {
  examples.value = (await import('./example-list.ts')).exampleList
}
