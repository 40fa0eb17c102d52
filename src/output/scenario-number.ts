/** Numbers of scenarios without their units, as they stand under a head. */
import { formatSi } from '../units/format.ts'

const bare = (text: string): string => text.replace(/\s*(rpm|°C|m\/s|N|V|A|%)$/, '').trimEnd()
export const bareNumber = (value: number, unit: string): string => bare(formatSi(value, unit, 3))
/** Hotter than this the winding has burnt and the number says no more [K]. */
export const burnt = 873.15
export const copperText = (kelvin: number): string =>
  kelvin >= burnt ? 'above 600' : bareNumber(kelvin, 'degC')
