/** Steps that carry an older document to the present version. */
import { designVersion } from './design.ts'

export type JsonObject = Readonly<Record<string, unknown>>

export interface Migration {
  /** The version that this step reads; it writes the next one. */
  readonly from: number
  readonly step: (document: JsonObject) => JsonObject
}

/** In rising order, one for every version before the present. Version 1 is the first. */
export const migrations: readonly Migration[] = []

export const oldestVersion = 1

/** The document at `target`, or the version that cannot be read. */
export function migrated(
  document: JsonObject,
  steps: readonly Migration[] = migrations,
  target: number = designVersion,
): { readonly document: JsonObject } | { readonly unknownVersion: unknown } {
  let current = document
  while (current.gustloom !== target) {
    const version = current.gustloom
    const next = steps.find(({ from }) => from === version)
    if (!next) return { unknownVersion: version }
    current = { ...next.step(current), gustloom: next.from + 1 }
  }
  return { document: current }
}
