/** The hint of one number: how it comes about, from what, by which formulas, and whose guess it hangs on most. */
import { fieldOfGuess } from '../station/certainty.tsx'
import { words } from '../station/label.ts'
import { document, form, row, snapshot, spreadProgress, spreads } from '../store/design.ts'
import { enter } from '../store/room.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { showField } from '../view/show-field.ts'
import { figureInputs, shownFields } from './figure-input.ts'
import methodTexts from './figure-method.json'
import { type FigureKey, type MethodName, methodsFor } from './figure-method.ts'
import { figureWords } from './figure-words.ts'
import { Formula } from './formula.tsx'
import { formulaLetters } from './formula-letter.ts'
import { glossary } from './glossary.ts'
import { closeHint, turnHint } from './open-hint.ts'

interface MethodText {
  readonly sentence: string
  readonly formula: string
  readonly holds: string
  readonly accuracy: string
  readonly work: string
  readonly where: string
}

const texts: Readonly<Record<MethodName, MethodText>> = methodTexts

/** The work keeps its own language; the place in it is told. */
const sourceText = ({ work, where }: MethodText): string =>
  work === '' ? say`Derived: ${told(where)}.` : say`Source: ${work}; ${told(where)}.`

function MethodView({ of, open }: { readonly of: MethodName; readonly open: boolean }) {
  const text = texts[of]
  if (!text) return null
  return (
    <details class="hint-method" open={open}>
      <summary>{told(text.sentence)}</summary>
      <Formula text={text.formula} />
      <dl class="letters">
        {formulaLetters[of]?.().map(([letter, meaning]) => (
          <div key={letter}>
            <dt>
              <Formula text={letter} />
            </dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <p>{say`Holds: ${told(text.holds)}`}</p>
      <p>{say`Accuracy: ${told(text.accuracy)}`}</p>
      <p class="hint-source">{sourceText(text)}</p>
    </details>
  )
}

function Inputs({ of }: { readonly of: FigureKey }) {
  const result = snapshot.value
  const here = result?.rows[row.value]
  const earlier =
    result && here
      ? (figureInputs[of].figures?.({ snapshot: result, row: here, index: row.value }) ?? [])
      : []
  return (
    <dl class="hint-inputs">
      {shownFields(of, form.value, document.value).map(({ path, name, text }) => (
        <div key={path}>
          <dt>
            <button type="button" onClick={() => go(() => showField(path))}>
              {name}
            </button>
          </dt>
          <dd data-path={path}>{text}</dd>
        </div>
      ))}
      {earlier.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}

/** The hint closes before the page goes elsewhere, so that the keyboard goes there too. */
function go(elsewhere: () => void): void {
  closeHint()
  elsewhere()
}

function guessText(of: FigureKey): string {
  const { output } = figureInputs[of]
  if (output === undefined) return say`No spread is worked out for this number by itself.`
  const spread = spreads.value?.[output]
  if (spread === undefined)
    return spreadProgress.value === undefined
      ? say`Its spread has not been worked out yet.`
      : say`Its spread is being worked out.`
  const [cause] = spread.causes
  if (cause === undefined) return say`No guess of this design moves it.`
  const share = Math.round(100 * cause.share)
  const name = words(cause.path.split('.').at(-1) ?? '')
  return of === 'copperTemperature'
    ? say`In the wind for which the machine is told, ${share} % of its spread is from “${name}”.`
    : say`The spread is ${share} % from “${name}”.`
}

function Guess({ of }: { readonly of: FigureKey }) {
  const { output } = figureInputs[of]
  const cause = output === undefined ? undefined : spreads.value?.[output].causes[0]
  const path = cause && fieldOfGuess(cause.path)
  // an assumption of the engine has no field
  const there = path !== undefined && form.value.some((field) => field.path === path)
  return (
    <>
      <p>{guessText(of)}</p>
      <div class="hint-ways">
        {there ? (
          <button type="button" onClick={() => go(() => showField(path))}>
            {say`Go to that guess`}
          </button>
        ) : null}
        {output === undefined ? null : (
          <button type="button" onClick={() => go(() => enter('sure'))}>
            {say`What to measure`}
          </button>
        )}
      </div>
    </>
  )
}

export function FigureBody({ of }: { readonly of: FigureKey }) {
  const { title, how, terms } = figureWords[of]
  const methods = methodsFor(of, document.value)
  const first = methods[0] === undefined ? undefined : texts[methods[0]]
  return (
    <>
      <h3>{title()}</h3>
      <p>{how()}</p>
      {first ? <Formula text={first.formula} /> : null}
      <h4>{say`From these`}</h4>
      <Inputs of={of} />
      <h4>{say`How sure it is`}</h4>
      <Guess of={of} />
      <h4>{say`By these formulas`}</h4>
      {methods.length === 0 ? (
        <p>{say`The coefficients of this rotor are measured ones, read from a table.`}</p>
      ) : (
        methods.map((method, k) => <MethodView key={method} of={method} open={k === 0} />)
      )}
      <h4>{say`Words in it`}</h4>
      <p class="hint-words">
        {terms.map((term) => (
          <button key={term} type="button" class="term" onClick={() => turnHint({ kind: 'term', key: term })}>
            {shown(glossary[term].name())}
          </button>
        ))}
      </p>
    </>
  )
}
