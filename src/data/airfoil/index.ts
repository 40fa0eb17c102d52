/** The blade sections of the house: every polar, by the name of its section. */
import { naca6409 } from './naca6409.ts'
import type { AirfoilPolar } from './polar.ts'
import { s809 } from './s809.ts'
import { sd2030 } from './sd2030.ts'

export type { AirfoilPolar } from './polar.ts'

/** Names to choose from; the first is the default for small rotors. */
export const sectionNames = ['SD2030', 'NACA 6409', 'S809'] as const

export type SectionName = (typeof sectionNames)[number]

/** The polars of each section, Reynolds number rising. */
export const sections: Readonly<Record<SectionName, readonly AirfoilPolar[]>> = {
  SD2030: sd2030,
  'NACA 6409': naca6409,
  S809: s809,
}
