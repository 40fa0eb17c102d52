/** Sentences under and beside a picture, broken into lines. */
import { said } from '../telling.ts'
import { wrapped } from '../text-table.ts'
import { type TextStyle, textAt } from './picture.ts'

/** As said to the reader, no line longer than so many letters; lines after the first are set in by `indent`. */
export const linesOfParagraph = (sentence: string, columns: number, indent?: string): string[] =>
  wrapped(said(sentence), columns, indent)

/** A line of a paragraph, which is no sentence by itself. */
export const lineAt = (x: number, y: number, text: string, style: TextStyle): string =>
  textAt(x, y, text, { ...style, told: true })
