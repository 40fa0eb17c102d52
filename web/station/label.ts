/** The plain words of a field's key: `meanWind_m_per_s` → "Mean wind". */
import { units } from '../../src/units/unit.ts'
import type { Key, Path } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'

function bare(key: string): string {
  const at = key.indexOf('_')
  return at > 0 && units.has(key.slice(at + 1)) ? key.slice(0, at) : key
}

/** In English, as the catalogues of the other languages know it. */
export function plainWords(key: Key): string {
  const text = bare(String(key))
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll('_', ' ')
    .toLowerCase()
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** In the language of the page. */
export const words = (key: Key): string => told(plainWords(key))

export const labelOf = (keys: Path): string => words(keys.at(-1) ?? '')

/** Identifier of the field's control on the page. */
export const fieldId = (path: string): string => `field-${path.replace(/[^A-Za-z0-9]+/g, '-')}`
