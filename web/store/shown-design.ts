/** A design as a person meets it outside the form: its name, its size, the file it makes. */
import { say } from '../text/say.ts'
import { documentText, type RawObject } from './raw-document.ts'

export const nameOf = (document: RawObject): string => {
  const { name } = document
  return typeof name === 'string' && name.trim() !== '' ? name.slice(0, 120) : say`A design without a name`
}

export const designFile = (document: RawObject): Blob =>
  new Blob([documentText(document)], { type: 'application/json' })

/** [bytes] of the design as it is kept. */
export const sizeOf = (document: RawObject): number =>
  new TextEncoder().encode(JSON.stringify(document)).length

const steps = [
  [1e9, 'GB'],
  [1e6, 'MB'],
  [1e3, 'kB'],
] as const

/** Bytes as people read them. */
export function bytesText(bytes: number): string {
  const [size, unit] = steps.find(([least]) => bytes >= 0.99995 * least) ?? [1, 'B']
  return size === 1 ? `${bytes} B` : `${(bytes / size).toFixed(1)} ${unit}`
}
