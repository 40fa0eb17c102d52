/** The words in which something is drawn or set: ours, or what a reader’s language makes of them. */
import { whileDrawing } from './while-drawing.ts'

/** A sentence, a label or a word of ours as the reader is to see it. */
export type Telling = (sentence: string) => string

const telling = whileDrawing<Telling>((sentence) => sentence)

/** Whatever is drawn within `toldBy` is said by its telling. */
export const toldBy = telling.by

/** To be asked before room is measured or lines are broken: words of another language are longer and break elsewhere. */
export const said: Telling = (sentence) => telling.now()(sentence)
