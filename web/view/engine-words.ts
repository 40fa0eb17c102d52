/** A sentence of the engine in the language of the page, its quantities in the units that the page speaks. */
import { measured } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { shown } from '../text/say.ts'

export const engineWords = (text: string): string => shown(told(measured(text)))
