/** Faults of a design document: every one found, each with path, condition, received value and code. */
import type { z } from 'zod'
import type { RefusalCode } from '../refusal/code.ts'
import { unitOfName, units } from '../units/unit.ts'
import { nearestKey } from './nearest-key.ts'
import { objectShape, type Schema, schemaAt, variantsOf } from './schema-walk.ts'

export interface Fault {
  /** Where, from the root: `rotor.magnet.width_mm`, `stator.winding.phases[1].offset_deg`. */
  readonly path: string
  /** What it must be, ready to stand behind "must be". */
  readonly condition: string
  readonly received: string
  readonly code: RefusalCode
  /** The nearest known key, for an unknown one. */
  readonly nearest?: string
}

/** `path must be condition; received value (code)`. */
export const faultText = ({ path, condition, received, code }: Fault): string =>
  `${path} must be ${condition}; received ${received} (${code})`

/** A key in one short line: what is no plain letter is written as JSON escapes it. */
const keyText = (key: PropertyKey): string => clipped(JSON.stringify(String(key)).slice(1, -1), 60)

export function pathText(path: readonly PropertyKey[]): string {
  let text = ''
  for (const key of path)
    text += typeof key === 'number' ? `[${key}]` : text === '' ? keyText(key) : `.${keyText(key)}`
  return text || 'the document'
}

const clipped = (text: string, longest: number) =>
  text.length > longest ? `${text.slice(0, longest)}…` : text

/** A value as a message may show it: short, in one line, never hiding that it is missing. */
export function receivedText(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (typeof value === 'string') return JSON.stringify(clipped(value, 60))
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return `an object with ${Object.keys(value).length} keys`
  return String(value)
}

function unitSymbol(path: readonly PropertyKey[]): string {
  const name = [...path]
    .reverse()
    .find((key) => typeof key === 'string' && key !== 'value' && key !== 'spread')
  if (typeof name !== 'string' || !name.includes('_')) return ''
  return units.has(name.slice(name.indexOf('_') + 1)) ? unitOfName(name).symbol : ''
}

const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    input,
  )

const kinds: Readonly<Record<string, string>> = {
  object: 'an object',
  array: 'a list',
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

function faultsOfIssue(issue: z.core.$ZodIssue, schema: Schema, input: unknown): Fault[] {
  const value = valueAt(input, issue.path)
  const symbol = unitSymbol(issue.path)
  const fault = (code: RefusalCode, condition: string): Fault[] => {
    const received = receivedText(value)
    return [
      {
        path: pathText(issue.path),
        condition,
        received: typeof value === 'number' ? received + symbol : received,
        code: value === undefined ? 'missing-key' : code,
      },
    ]
  }
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = kinds[issue.expected] ?? issue.expected
      if (typeof value === 'number' && !Number.isFinite(value)) return fault('not-finite', 'a finite number')
      return fault('wrong-type', value === undefined ? `given: ${wanted}` : wanted)
    }
    case 'too_small':
    case 'too_big': {
      const limit = issue.code === 'too_small' ? issue.minimum : issue.maximum
      const bound = issue.code === 'too_small' ? 'at least' : 'at most'
      if (issue.origin === 'array' || issue.origin === 'string') {
        const things = issue.origin === 'array' ? 'entries' : 'letters'
        return typeof value === 'string' || Array.isArray(value)
          ? fault('wrong-length', `${bound} ${limit} ${things}`)
          : []
      }
      return fault(
        issue.code === 'too_small' ? 'below-minimum' : 'above-maximum',
        `${bound} ${limit}${symbol}`,
      )
    }
    case 'not_multiple_of':
      return fault('not-a-choice', `a multiple of ${issue.divisor}`)
    case 'invalid_value':
      return fault('not-a-choice', `one of ${issue.values.map((word) => receivedText(word)).join(', ')}`)
    case 'unrecognized_keys': {
      const place = schemaAt(schema, issue.path, input)
      const known = Object.keys((place && objectShape(place)) ?? {})
      return issue.keys.map((key) => {
        const nearest = nearestKey(key, known)
        const hint = nearest === undefined ? `one of ${known.join(', ')}` : `a known key, perhaps ${nearest}`
        return {
          path: pathText([...issue.path, key]),
          condition: hint,
          received: receivedText(valueAt(input, [...issue.path, key])),
          code: 'unknown-key' as const,
          ...(nearest === undefined ? {} : { nearest }),
        }
      })
    }
    case 'invalid_union': {
      const parent = issue.path.slice(0, -1)
      const place = schemaAt(schema, parent, { ...(valueAt(input, []) as object) })
      const variants = place && variantsOf(place)
      if (issue.errors.length === 0 && variants)
        return fault(
          'not-a-choice',
          `one of ${[...variants.options.keys()].map((word) => `"${word}"`).join(', ')}`,
        )
      if (typeof value === 'number' && !Number.isFinite(value)) return fault('not-finite', 'a finite number')
      // a quantity written as an object: what is wrong stands inside it
      const inside =
        typeof value === 'object' && value !== null && !Array.isArray(value)
          ? issue.errors.find((issues) =>
              issues.every(({ path, code }) => path.length > 0 || code !== 'invalid_type'),
            )
          : undefined
      if (inside !== undefined)
        return inside.flatMap((inner) =>
          faultsOfIssue({ ...inner, path: [...issue.path, ...inner.path] }, schema, input),
        )
      return fault(
        'wrong-type',
        `a number${symbol && ` in ${symbol.trim()}`}, or an object with value, spread and known`,
      )
    }
    case 'invalid_format':
      return fault('not-a-choice', 'a text of the letters N and S only')
    case 'custom':
      return fault((issue.params?.code as RefusalCode | undefined) ?? 'conflict', issue.message)
    default:
      return fault('wrong-type', issue.message)
  }
}

/** All faults behind a failed parse, in document order as far as the parser keeps it. */
export const faultsOf = (error: z.core.$ZodError, schema: Schema, input: unknown): Fault[] =>
  error.issues.flatMap((issue) => faultsOfIssue(issue, schema, input))
