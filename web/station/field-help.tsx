/** What a field is, its range, and where it matters in this machine: shown when somebody asks. */
import type { FormField } from '../../src/index.ts'
import { spreadWords } from '../../src/output/spread-result.ts'
import { formatNumber } from '../../src/units/format.ts'
import { concerns, spreads } from '../store/design.ts'
import { measured } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { fieldOfGuess } from './certainty.tsx'
import { fieldId } from './label.ts'
import { numberSaying } from './number-saying.ts'

/** Shares under this are no reason to look here. */
const leastShare = 0.05

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** 10⁶, 5 × 10⁵ */
function powerText(value: number): string {
  const [digits = '', power = ''] = value.toExponential().split('e+')
  const ten = `10${[...power].map((digit) => raised[Number(digit)]).join('')}`
  return Number(digits) === 1 ? ten : shown(`${digits} × ${ten}`)
}

/** A limit of the schema, at the digits that a hand needs. */
function limitText(field: FormField, limit: number): string {
  if (Math.abs(limit) >= 1e5) return powerText(limit)
  if (field.kind === 'count' || field.kind === 'wire size') return String(limit)
  const saying = numberSaying(field)
  const said = saying.said(limit)
  const exact = saying.show(limit)
  return (said === undefined || exact.length <= 6 ? exact : shown(formatNumber(said))).replace('-', '−')
}

function limitsText(field: FormField): string {
  const { minimum, maximum, kind } = field
  if (!['quantity', 'count', 'list'].includes(kind)) return ''
  const tail = kind === 'quantity' ? numberSaying(field).unit(undefined) : ''
  const end = (limit: number) => `${limitText(field, limit)}${tail === '' ? '' : ` ${tail}`}`
  if (minimum !== undefined && maximum !== undefined)
    return say`From ${limitText(field, minimum)} to ${end(maximum)}.`
  if (minimum !== undefined) return say`At least ${end(minimum)}.`
  return maximum === undefined ? '' : say`At most ${end(maximum)}.`
}

/** Results that the guess of this field moves, the most moved first. */
function movedResults(path: string): string {
  const found = Object.entries(spreads.value ?? {})
    .map(([output, { causes }]) => ({
      title: spreadWords[output as keyof typeof spreadWords].title,
      share: causes.find((cause) => fieldOfGuess(cause.path) === path)?.share ?? 0,
    }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share)
  if (found.length === 0) return ''
  const list = found.slice(0, 4).map(({ title, share }) => `${told(title)} ${Math.round(100 * share)} %`)
  return say`Its part in how unsure they are: ${list.join(', ')}.`
}

/** Its first sentence describes the control even while nobody asks; the rest is worked out when somebody does. */
export function FieldHelp({ field, asked }: { readonly field: FormField; readonly asked: boolean }) {
  const { path, help } = field
  return (
    <div class="help" id={`${fieldId(path)}-help`} hidden={!asked}>
      <p>{told(measured(help))}</p>
      {asked ? <Where field={field} /> : null}
    </div>
  )
}

function Where({ field }: { readonly field: FormField }) {
  const { path } = field
  const limits = limitsText(field)
  const moved = movedResults(path)
  const here = concerns.value?.filter((concern) => concern.path === path) ?? []
  return (
    <>
      {limits === '' ? null : <p class="limits">{limits}</p>}
      {moved === '' ? null : <p>{moved}</p>}
      {here.map(({ code, what }) => (
        <p key={code}>{told(measured(what))}</p>
      ))}
      <p>
        {say`In the file:`} <code>{path}</code>
      </p>
    </>
  )
}
