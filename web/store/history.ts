/** Undo and redo of a document: every state of the session, typing in one field drawn together into one step. */

export interface Step<State> {
  readonly state: State
  /** What led to it, for the words beside the button: `Turns`, `Example opened`. */
  readonly what: string
}

export interface History<State> {
  readonly past: readonly Step<State>[]
  readonly present: Step<State>
  /** The nearest first. */
  readonly future: readonly Step<State>[]
  /** Steps with the same mark that follow each other closely are one step. */
  readonly mark: string | undefined
  /** When the present state was last changed [ms]. */
  readonly at: number
}

/** Typing in one field within this time of the last key is one step [ms]. */
const together = 1500

export const historyOf = <State>(state: State, what: string): History<State> => ({
  past: [],
  present: { state, what },
  future: [],
  mark: undefined,
  at: Number.NEGATIVE_INFINITY,
})

export interface Change<State> {
  readonly state: State
  readonly what: string
  /** Names the field that is typed in; undefined for a change that stands alone. */
  readonly mark?: string | undefined
  /** [ms] */
  readonly at: number
}

/** The history after a change; what had been undone is gone then. */
export function changed<State>(
  history: History<State>,
  { state, what, mark, at }: Change<State>,
): History<State> {
  if (state === history.present.state) return history
  const joins = mark !== undefined && mark === history.mark && at - history.at < together
  return {
    past: joins ? history.past : [...history.past, history.present],
    present: { state, what },
    future: [],
    mark,
    at,
  }
}

/** One step back; the same history where there is none. */
export function undone<State>(history: History<State>): History<State> {
  const last = history.past.at(-1)
  if (last === undefined) return history
  return {
    past: history.past.slice(0, -1),
    present: last,
    future: [history.present, ...history.future],
    mark: undefined,
    at: Number.NEGATIVE_INFINITY,
  }
}

/** One step forth again; the same history where there is none. */
export function redone<State>(history: History<State>): History<State> {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return {
    past: [...history.past, history.present],
    present: next,
    future,
    mark: undefined,
    at: Number.NEGATIVE_INFINITY,
  }
}
