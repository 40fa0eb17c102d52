/** Reads a design document from text or from an object, and tells every fault in it. */
import { consistencyFaults } from './consistency.ts'
import { type Design, designSchema } from './design.ts'
import { deepestDocument, depthOf, longestDocument } from './document-bound.ts'
import { type Fault, faultsOf, receivedText } from './fault.ts'
import { designVersion, type JsonObject, migrated } from './migration.ts'

export type Parsed =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly faults: readonly Fault[] }

const refused = (fault: Fault): Parsed => ({ ok: false, faults: [fault] })

/** A design from an object as JSON gives it. */
export function parseDesign(input: unknown): Parsed {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return refused({
      path: 'the document',
      condition: 'an object',
      received: receivedText(input),
      code: 'wrong-type',
    })
  if (depthOf(input) > deepestDocument)
    return refused({
      path: 'the document',
      condition: `nested at most ${deepestDocument} deep`,
      received: 'a deeper one',
      code: 'too-deep',
    })
  const current = migrated(input as JsonObject)
  if ('unknownVersion' in current)
    return refused({
      path: 'gustloom',
      condition: `the version number ${designVersion} of this form`,
      received: receivedText(current.unknownVersion),
      code: current.unknownVersion === undefined ? 'missing-key' : 'unknown-version',
    })
  const result = designSchema.safeParse(current.document)
  if (!result.success) return { ok: false, faults: faultsOf(result.error, designSchema, current.document) }
  const faults = consistencyFaults(result.data)
  return faults.length > 0 ? { ok: false, faults } : { ok: true, design: result.data }
}

/** A design from JSON text. */
export function parseDesignText(text: string): Parsed {
  if (text.length > longestDocument)
    return refused({
      path: 'the document',
      condition: `at most ${longestDocument} characters long`,
      received: `${text.length} characters`,
      code: 'too-large',
    })
  let input: unknown
  try {
    // some editors put a byte-order mark before the text
    input = JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text)
  } catch (error) {
    return refused({
      path: 'the document',
      condition: `JSON (${(error as Error).message.replace(/\s+/g, ' ').slice(0, 120)})`,
      received: receivedText(text.slice(0, 40)),
      code: 'not-json',
    })
  }
  return parseDesign(input)
}
