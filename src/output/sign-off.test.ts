/** Checks of the sign-off: what counts as open, what as answered, and what follows. */
import { describe, expect, test } from 'vitest'
import type { Concern } from '../analysis/concern/concern.ts'
import { answerTexts, signOff, signOffText } from './sign-off.ts'

type Judged = Pick<Concern, 'severity' | 'answer'>
const answer = { note: 'read twice', file: undefined, date: '2026-05-02', unfit: undefined }
const one = (severity: Concern['severity'], given?: Judged['answer']): Judged =>
  given === undefined ? { severity } : { severity, answer: given }

describe('law: sign-off', () => {
  test('an open concern that blocks forbids it; one that is answered leaves it to the note', () => {
    expect(signOff([one('blocking'), one('warning')]).verdict).toBe('not')
    expect(signOff([one('blocking', answer), one('warning')]).verdict).toBe('by note')
    expect(signOff([one('warning'), one('note', answer)]).verdict).toBe('free')
    expect(signOff([one('blocking'), one('blocking', answer)]).verdict).toBe('not')
  })

  test('every concern is counted once', () => {
    const { open, answered } = signOff([one('blocking'), one('warning'), one('warning', answer), one('note')])
    expect(open).toEqual({ blocking: 1, warning: 1, note: 1 })
    expect(answered).toEqual({ blocking: 0, warning: 1, note: 0 })
  })

  test('an answer that does not hold leaves its concern open', () => {
    const stale = { ...answer, unfit: 'Answered for 96 °C, now 131 °C: answer again.' }
    expect(signOff([one('blocking', stale)]).verdict).toBe('not')
    expect(answerTexts({ answer: stale })).toEqual([
      'Answered (2026-05-02): read twice.',
      'The answer does not hold: Answered for 96 °C, now 131 °C: answer again.',
    ])
  })

  test('the words say on whose word it stands', () => {
    expect(signOffText([one('blocking', answer)])).toContain('the word of whoever read it')
    expect(signOffText([one('blocking')])).toBe('Open: 1 blocking. Not to be signed off for its class.')
    expect(signOffText([])).toBe('Open: none. Nothing here blocks its class.')
  })
})
