/** Station of the answers: what was measured against a concern. */
import type { Station } from './station.ts'

export const answerStation: Station = {
  noun: 'answers',
  title: 'Answers',
  lead: 'What you measured against a concern; the list of concerns asks for it where a reading helps.',
  open: false,
  // without a code it answers nothing, until somebody says what
  entries: { answers: () => ({ concern: '', note: 'Not read yet.' }) },
  entryNames: { answers: 'answer' },
}
