/** Words of the trade as the page uses them, two sentences each; where a standard defines the term, its clause. */
import { circuitWord } from './circuit-word.ts'
import { moverWord } from './mover-word.ts'
import type { TermEntry } from './term-entry.ts'
import type { TermKey } from './term-key.ts'

export const glossary: Readonly<Record<TermKey, TermEntry>> = { ...moverWord, ...circuitWord }
