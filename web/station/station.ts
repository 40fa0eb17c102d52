/** A station of the form: one noun of the design, in trade words, with starting values for what may be chosen. */
import type { Quantity } from '../../src/index.ts'
import { nominal } from '../../src/units/quantity.ts'
import { isRawObject, type Path, type RawObject, valueAt } from '../store/raw-document.ts'

/** Starting values of what a variant asks for; invented but sensible, from what is there already. */
export type Start = (document: RawObject) => RawObject

/** Brings what was kept into agreement with the new variant. */
export type Settle = (noun: RawObject, document: RawObject) => RawObject

export interface Extra {
  readonly path: Path
  readonly label: string
  readonly start: RawObject | readonly RawObject[]
  /** Whether it may be added to this document. */
  readonly fits: (document: RawObject) => boolean
}

export interface Station {
  /** Key in the document; empty for what stands beside the nouns. */
  readonly noun: string
  readonly title: string
  readonly lead: string
  readonly open: boolean
  /** By the path of the choice and its word: `blades.kind` → `optimum`. */
  readonly starts?: Readonly<Record<string, Readonly<Record<string, Start>>>>
  readonly settles?: Readonly<Record<string, Readonly<Record<string, Settle>>>>
  /** By the path of a list: a new last entry. */
  readonly entries?: Readonly<Record<string, (document: RawObject) => RawObject>>
  /** Singular of the entries of a list, by its path. */
  readonly entryNames?: Readonly<Record<string, string>>
  /** Groups that a document may have or lack. */
  readonly extras?: readonly Extra[]
}

/** The bare number at a path, or the fallback where there is none. */
export function numberAt(document: unknown, path: Path, fallback: number): number {
  const value = valueAt(document, path)
  const bare = isRawObject(value) || typeof value === 'number' ? nominal(value as Quantity) : undefined
  return typeof bare === 'number' && Number.isFinite(bare) ? bare : fallback
}

export const rounded = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toPrecision(10))
