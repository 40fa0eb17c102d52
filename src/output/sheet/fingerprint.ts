/** A short mark by which two versions of a design are told apart on paper. */
import type { Design } from '../../machine/design.ts'
import { sha256 } from '../../numerics/sha-256.ts'

/** The same text for the same design, in whatever order its keys were written. */
function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(canonical)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, each]) => each !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => [key, canonical(each)]),
  )
}

/** Twelve hexadecimal digits of SHA-256 over the design with its defaults filled in, in groups of four. */
export function fingerprint(design: Design): string {
  const digits = sha256(JSON.stringify(canonical(design)))
  return [0, 4, 8].map((at) => digits.slice(at, at + 4)).join(' ')
}
