/** Concern: an answer in the document answers nothing, or answers what has changed since. */
import type { Answer } from '../../machine/answer.ts'
import { formatSi } from '../../units/format.ts'
import { fromSi, toSi, unit } from '../../units/unit.ts'
import type { ChainView, Concern, ConcernAnswer, ConcernMeasure, ConcernRule } from './concern.ts'

/** Share by which a figure may move after its answer: common practice, no source. */
export const answerTolerance = 0.1

/** The figure that an answer given now would answer, as the document keeps it. */
export function answerFigure(measure: ConcernMeasure): NonNullable<Answer['figure']> {
  const { value, unit: suffix } = measure
  return { value: Number(fromSi(value, unit(suffix)).toPrecision(6)), unit: suffix }
}

/** Moved by more than the tolerance, of the larger of old figure and limit: a figure near zero has no share of its own. */
export function hasMoved(figure: NonNullable<Answer['figure']>, measure: ConcernMeasure): boolean {
  if (figure.unit !== measure.unit) return true
  const in_ = (value: number) => fromSi(value, unit(measure.unit))
  const whole = Math.max(Math.abs(figure.value), Math.abs(in_(measure.limit)))
  // a figure is kept to six digits
  return Math.abs(in_(measure.value) - figure.value) > answerTolerance * whole + 1e-5 * Math.abs(figure.value)
}

const shown = ({ value, unit: suffix }: NonNullable<Answer['figure']>): string =>
  formatSi(toSi(value, unit(suffix)), suffix)

/** Why an answer to a raised concern does not hold; undefined where it does. */
function objection(answer: Answer, rule: ConcernRule, chain: ChainView): string | undefined {
  if (rule.answeredBy === undefined) return 'No reading settles this: change the design.'
  const measure = rule.measure?.(chain)
  if (answer.figure === undefined || measure === undefined) return undefined
  return hasMoved(answer.figure, measure)
    ? `Answered for ${shown(answer.figure)}, now ${formatSi(measure.value, measure.unit)}: answer again.`
    : undefined
}

const newest = (answers: readonly Answer[], code: string): Answer | undefined =>
  answers.filter(({ concern }) => concern === code).at(-1)

/** The concern with what the document answers it. */
export function answered(chain: ChainView, rule: ConcernRule, concern: Concern): Concern {
  const answer = newest(chain.machine.design.answers, rule.code)
  if (answer === undefined) return concern
  const { note, file, date } = answer
  const told: ConcernAnswer = { note, file, date, unfit: objection(answer, rule, chain) }
  return { ...concern, answer: told }
}

/** One sentence on each answer that does no work, and how grave the gravest is. */
function troubles(rules: readonly ConcernRule[], chain: ChainView) {
  const { answers } = chain.machine.design
  return answers.flatMap((answer, k) => {
    const { concern: code } = answer
    const told = (text: string, grave: boolean) => [{ k, text, grave }]
    const rule = rules.find((each) => each.code === code)
    if (rule === undefined) return told(`${code}: there is no such concern.`, true)
    if (rule.answeredBy === undefined) return told(`${code}: no reading settles this.`, true)
    if (answer !== newest(answers, code)) return told(`${code}: a later answer stands below it.`, false)
    if (rule.judge(chain) === undefined) return told(`${code}: not raised.`, false)
    const reason = objection(answer, rule, chain)
    return reason === undefined ? [] : told(`${code}: ${reason}`, true)
  })
}

/** The rule over answers to the given rules. */
export const idleAnswerRule = (rules: readonly ConcernRule[]): ConcernRule => ({
  code: 'idle-answer',
  title: 'An answer to a concern does no work',
  basis: `Answers in the document against the concerns that are raised: one to a concern that no reading can settle or that does not exist, and one whose figure has moved by more than ${100 * answerTolerance} % since (common practice, no source), is a warning and the concern stays open; one to a concern that is not raised, or with a later answer below it, a note. No answer is ever dropped.`,
  judge: (chain) => {
    const found = troubles(rules, chain)
    const [first] = found
    if (first === undefined) return undefined
    const grave = found.filter((each) => each.grave)
    return {
      code: 'idle-answer',
      severity: grave.length > 0 ? 'warning' : 'note',
      path: `answers[${(grave[0] ?? first).k}]`,
      what:
        grave.length > 0
          ? 'An answer does not hold, so that its concern stays open.'
          : 'An answer answers nothing as the design stands.',
      why: 'A reading answers the machine that was read: another machine, or a fault that no reading can undo, needs another answer.',
      figures: found.map(({ text }) => text).join(' '),
      remedies: [
        ...(grave.length > 0 ? ['Read again on the machine as it is now, and answer anew.'] : []),
        'Keep it if you mean to go back, or take it out.',
      ],
    }
  },
})
