/** What of a design the pull between its faces rests on, to tell whether an edit touched it. */
import { type RawObject, valueAt } from './raw-document.ts'

/**
 * The rotor without what holds its magnets; the winding, in whose middle the steel’s share of the field is taken; magnets
 * that are amiss; and the air, which sets their strength.
 */
export function pullGround(document: RawObject): string {
  const { retention, ...rotor } = (valueAt(document, ['rotor']) ?? {}) as RawObject
  return JSON.stringify([
    rotor,
    valueAt(document, ['stator', 'winding']),
    valueAt(document, ['defects']),
    valueAt(document, ['site', 'ambient_degC']),
  ])
}
