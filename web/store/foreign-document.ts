/** What comes in from outside as a design, by file or by link: taken as hostile, refused in a sentence or passed on. */
import { deepestDocument, depthOf, longestDocument } from '../../src/machine/document-bound.ts'
import { designVersion, migrated } from '../../src/machine/migration.ts'
import { say } from '../text/say.ts'
import { isRawObject, type RawObject } from './raw-document.ts'

export type Foreign =
  | { readonly kind: 'document'; readonly document: RawObject }
  /** In a sentence for the page. */
  | { readonly kind: 'refused'; readonly reason: string }

export const refused = (reason: string): Foreign => ({ kind: 'refused', reason })

/** Names that reach into the prototype of objects; no field is called so. */
const prototypeNames = new Set(['__proto__', 'constructor', 'prototype'])

/** The first name of this kind anywhere inside, found without recursion. */
function prototypeName(value: unknown): string | undefined {
  const queue: unknown[] = [value]
  for (let item = queue.pop(); item !== undefined; item = queue.pop()) {
    if (typeof item !== 'object' || item === null) continue
    if (!Array.isArray(item)) {
      const found = Object.keys(item).find((key) => prototypeNames.has(key))
      if (found !== undefined) return found
    }
    for (const inner of Object.values(item)) if (inner !== null && inner !== undefined) queue.push(inner)
  }
  return undefined
}

const kindOf = (value: unknown): string =>
  value === null
    ? say`nothing`
    : Array.isArray(value)
      ? say`a list`
      : typeof value === 'number'
        ? say`a number`
        : typeof value === 'boolean'
          ? say`yes or no`
          : say`a text`

/** What is told of a value that may be anything: short, and never a whole document. */
const told = (value: unknown): string =>
  typeof value === 'number' || typeof value === 'string' ? String(value).slice(0, 40) : kindOf(value)

/** A design from a value as JSON gives it; `name` is what the sentence calls it. */
export function foreignObject(value: unknown, name: string): Foreign {
  if (!isRawObject(value))
    return refused(say`${name} must be an object; received ${kindOf(value)} (wrong-type)`)
  if (depthOf(value) > deepestDocument)
    return refused(
      say`${name} must be nested at most ${deepestDocument} deep; received a deeper one (too-deep)`,
    )
  const reaching = prototypeName(value)
  if (reaching !== undefined)
    return refused(say`${name} must be made of the fields of a design; received “${reaching}” (unknown-key)`)
  const current = migrated(value)
  if ('unknownVersion' in current)
    return refused(
      current.unknownVersion === undefined
        ? say`“gustloom” in ${name} must be the version number ${designVersion} or an older one; received nothing (missing-key)`
        : say`“gustloom” in ${name} must be the version number ${designVersion} or an older one; received ${told(current.unknownVersion)} (unknown-version)`,
    )
  return { kind: 'document', document: current.document }
}

/** What JSON text says, or the refusal; not yet looked at as a design. */
export function foreignJson(
  text: string,
  name: string,
  longest: number,
): { readonly kind: 'value'; readonly value: unknown } | Extract<Foreign, { kind: 'refused' }> {
  if (text.length > longest)
    return {
      kind: 'refused',
      reason: say`${name} must be at most ${longest} characters long; received ${text.length} characters (too-large)`,
    }
  try {
    // some editors put a byte-order mark before the text
    return { kind: 'value', value: JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text) }
  } catch (error) {
    const reason = error instanceof Error ? error.message.replace(/\s+/g, ' ').slice(0, 120) : ''
    return { kind: 'refused', reason: say`${name} must be JSON; received another text, ${reason} (not-json)` }
  }
}

/** A design from text. */
export function foreignDocument(text: string, name: string): Foreign {
  const read = foreignJson(text, name, longestDocument)
  return read.kind === 'refused' ? read : foreignObject(read.value, name)
}

/** Why a file is not even read; undefined where it may be. */
export const tooLargeFile = (file: { readonly size: number }, name: string): string | undefined =>
  file.size > 4 * longestDocument
    ? say`${name} must be at most ${4 * longestDocument} bytes long; received ${file.size} bytes (too-large)`
    : undefined
