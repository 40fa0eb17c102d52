/** The pages that are written from declarations: refusals, concerns, fields of the design document and of the result. */
import type { ConcernRule } from '../src/analysis/concern/concern.ts'
import type { FieldDescription } from '../src/machine/design-fields.ts'

const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ').trim()

const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`

const code = (text: string): string => (text === '' ? '' : `\`${text}\``)

export function refusalsPage(codes: Readonly<Record<string, string>>): string {
  return [
    '# Refusals',
    '',
    'Generated from `src/refusal/code.ts` by `npm run generate`; do not edit.',
    '',
    'What has no meaning is refused. The message reads *name must be condition; received value unit (code)*, for example',
    '`rotor.airGap_mm must be at least 0.3 mm; received -3 mm (below-minimum)`. The words may be improved at any time;',
    'the codes stay, so a program tests the code.',
    '',
    'A number that has a meaning but lies outside the range where a formula was verified is not refused: it is returned,',
    'and a concern is reported beside it.',
    '',
    row(['code', 'when']),
    row(['---', '---']),
    ...Object.entries(codes).map(([name, meaning]) => row([code(name), meaning])),
    '',
  ].join('\n')
}

export function concernsPage(
  rules: readonly Pick<ConcernRule, 'code' | 'title' | 'basis' | 'answeredBy'>[],
): string {
  const sorted = [...rules].sort((a, b) => (a.code < b.code ? -1 : 1))
  return [
    '# Concerns',
    '',
    'Generated from `src/analysis/concern/` by `npm run generate`; do not edit.',
    '',
    'A concern says that a number is where trouble begins: what happens, why, by how much, and what would help. It never',
    'stops anybody from editing a design. *blocking* means that the machine must not be signed off for its class,',
    '*warning* that it will disappoint or wear, *note* that it should be known. The codes stay; the words may improve.',
    '',
    '`gustloom remedies` tries what helps on the whole chain and tells the rule’s quantity before and after. What was',
    'measured is kept in `answers`: an answered concern stays in the list and no longer counts as open, until its figure',
    'has moved by more than a tenth.',
    '',
    row(['code', 'concern', 'what is asked, and where the limit comes from', 'the reading that answers it']),
    row(['---', '---', '---', '---']),
    ...sorted.map(({ code: name, title, basis, answeredBy = 'none' }) =>
      row([code(name), title, basis, answeredBy]),
    ),
    '',
  ].join('\n')
}

export function resultFieldsPage(
  fields: readonly { readonly name: string; readonly meaning: string }[],
): string {
  return [
    '# Fields of the result',
    '',
    'Generated from `src/output/result.ts` by `npm run generate`; do not edit.',
    '',
    'What `gustloom compute --json` prints: one object with these fields, in this order. A name ends in the unit of its',
    'number; `null` stands for what has no finite value, such as a wind in which the machine never starts.',
    '',
    row(['field', 'meaning']),
    row(['---', '---']),
    ...fields.map(({ name, meaning }) => row([code(name), meaning])),
    '',
  ].join('\n')
}

const numberText = (value: number): string => (Math.abs(value) >= 1e6 ? value.toExponential() : String(value))

function limitsOf({ minimum, maximum }: FieldDescription): string {
  if (minimum !== undefined && maximum !== undefined)
    return `${numberText(minimum)} to ${numberText(maximum)}`
  if (minimum !== undefined) return `at least ${numberText(minimum)}`
  return maximum === undefined ? '' : `at most ${numberText(maximum)}`
}

/** The value a field takes when it is left out, or whether it may be. */
function absenceOf(field: FieldDescription): string {
  if (field.default !== undefined) return code(JSON.stringify(field.default))
  return field.optional ? 'may be left out' : 'must be there'
}

const nounOf = (path: string): string => (/[.[]/.test(path) ? path.split(/[.[]/)[0]! : '')

export function designFieldsPage(fields: readonly FieldDescription[]): string {
  const nouns = [...new Set(fields.map(({ path }) => nounOf(path)))]
  return [
    '# Fields of the design document',
    '',
    'Generated from `src/machine/` by `npm run generate`; do not edit.',
    '',
    'A *quantity* is a bare number in the unit its name ends with, or an object `{ "value": …, "spread": …, "known": … }`',
    'that also says how wide the guess is (half-width at 90 %) and how it is known: `label`, `measured` or `guessed`. “If',
    'absent” tells what happens when a field is left out of the noun around it. “Only when” names the choice that brings',
    'the field. `[]` stands for each entry of a list.',
    '',
    ...nouns.flatMap((noun) => [
      `## ${noun === '' ? 'The document itself' : noun}`,
      '',
      row([
        'field',
        'kind',
        'meaning',
        'unit',
        'symbol',
        'limits',
        'allowed words',
        'if absent',
        'only when',
      ]),
      row(Array.from({ length: 9 }, () => '---')),
      ...fields
        .filter(({ path }) => nounOf(path) === noun)
        .map((field) =>
          row([
            code(field.path),
            field.kind,
            field.help,
            field.unit,
            field.symbol,
            limitsOf(field),
            field.words.map(code).join(', '),
            absenceOf(field),
            field.when.split(', ').map(code).join(', '),
          ]),
        ),
      '',
    ]),
  ].join('\n')
}
