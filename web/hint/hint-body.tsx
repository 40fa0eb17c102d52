/** What an open hint tells: of a number its way, its inputs, formulas and sources; of a word its meaning. */
import { say } from '../text/say.ts'
import { FigureBody } from './figure-body.tsx'
import { glossary } from './glossary.ts'
import { closeHint, type HintSubject, turnHint } from './open-hint.ts'
import type { TermKey } from './term-key.ts'

/** Where a term comes from, as far as that could be verified. */
export const termSource = (key: TermKey): string => {
  const { clause } = glossary[key]
  return clause === undefined
    ? say`Common practice, no source.`
    : say`Defined in ${clause}; the words here are ours.`
}

function TermBody({ of, back }: { readonly of: TermKey; readonly back: HintSubject | undefined }) {
  const { name, says } = glossary[of]
  return (
    <>
      <h3>{name()}</h3>
      <p>{says()}</p>
      <p class="hint-source">{termSource(of)}</p>
      {back ? (
        <button type="button" class="quiet" onClick={() => turnHint(back)}>
          {say`Back`}
        </button>
      ) : null}
    </>
  )
}

export function HintBody({
  subject,
  back,
}: {
  readonly subject: HintSubject
  /** What was told before a word in it was asked for. */
  readonly back: HintSubject | undefined
}) {
  return (
    <>
      <button type="button" class="hint-close quiet" onClick={closeHint}>
        {say`Close`}
      </button>
      {subject.kind === 'figure' ? (
        <FigureBody of={subject.key} />
      ) : (
        <TermBody of={subject.key} back={back} />
      )}
    </>
  )
}
