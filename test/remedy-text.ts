/** The remedies of a concern as words, for checks of rules. */
import { type Concern, remedyWords } from '../src/analysis/concern/concern.ts'

export const remedyTexts = (concern: Concern | undefined): string[] =>
  concern?.remedies.map(remedyWords) ?? []

export const firstRemedy = (concern: Concern | undefined): string | undefined => remedyTexts(concern)[0]
