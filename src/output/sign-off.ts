/** Whether a design may be signed off for its class, and on whose word: counts of concerns, and answers in sentences. */
import { type Concern, isOpen, type Severity, severities } from '../analysis/concern/concern.ts'

type Judged = Pick<Concern, 'severity' | 'answer'>

export interface SignOff {
  /** Raised and not answered, by severity. */
  readonly open: Readonly<Record<Severity, number>>
  /** Raised, and a note in the document says why it is borne. */
  readonly answered: Readonly<Record<Severity, number>>
  /** not: something blocks; by note: only the word of whoever wrote the answers stands against what blocks. */
  readonly verdict: 'not' | 'by note' | 'free'
}

export function signOff(concerns: readonly Judged[]): SignOff {
  const counts = (of: (concern: Judged) => boolean) =>
    Object.fromEntries(
      severities.map((severity) => [
        severity,
        concerns.filter((concern) => concern.severity === severity && of(concern)).length,
      ]),
    ) as Record<Severity, number>
  const open = counts(isOpen)
  const answered = counts((concern) => !isOpen(concern))
  return {
    open,
    answered,
    verdict: open.blocking > 0 ? 'not' : answered.blocking > 0 ? 'by note' : 'free',
  }
}

/** "2 blocking", "1 warning", "5 notes". */
export function severityCount(severity: Severity, count: number): string {
  switch (severity) {
    case 'blocking':
      return `${count} blocking`
    case 'warning':
      return count === 1 ? `${count} warning` : `${count} warnings`
    case 'note':
      return count === 1 ? `${count} note` : `${count} notes`
  }
}

const countText = (counts: SignOff['open']): string =>
  severities
    .filter((severity) => counts[severity] > 0)
    .map((severity) => severityCount(severity, counts[severity]))
    .join(', ') || 'none'

const verdicts: Readonly<Record<SignOff['verdict'], string>> = {
  not: 'Not to be signed off for its class.',
  'by note':
    'Nothing blocks its class but what a note answers: it stands on the word of whoever read it, not on this computation.',
  free: 'Nothing here blocks its class.',
}

/** Counts and what follows from them, in sentences. */
export function signOffText(concerns: readonly Judged[]): string {
  const { open, answered, verdict } = signOff(concerns)
  const answers = severities.some((severity) => answered[severity] > 0)
    ? ` Answered by a note: ${countText(answered)}.`
    : ''
  return `Open: ${countText(open)}.${answers} ${verdicts[verdict]}`
}

/** An answer as it is shown under its concern; empty where there is none. */
export function answerTexts({ answer }: Pick<Concern, 'answer'>): string[] {
  if (answer === undefined) return []
  const { note, file, date, unfit } = answer
  const source = [date, file].filter((text) => text !== undefined).join(', ')
  const stop = /[.!?]$/.test(note) ? '' : '.'
  return [
    `Answered${source === '' ? '' : ` (${source})`}: ${note}${stop}`,
    ...(unfit === undefined ? [] : [`The answer does not hold: ${unfit}`]),
  ]
}
