/** The blade sections of the house: every polar, by the name of its section. */
import { clarkY } from './clark-y.ts'
import { flatPlate } from './flat-plate.ts'
import { goe417a } from './goe417a.ts'
import { naca0018 } from './naca0018.ts'
import { naca0021 } from './naca0021.ts'
import { naca6409 } from './naca6409.ts'
import type { AirfoilPolar } from './polar.ts'
import { s809 } from './s809.ts'
import { sd2030 } from './sd2030.ts'
import { sg6043 } from './sg6043.ts'

export type { AirfoilPolar } from './polar.ts'

/** Names to choose from; the first is the default for small rotors. */
export const sectionNames = [
  'SD2030',
  'NACA 6409',
  'SG6043',
  'Clark Y',
  'GOE 417a',
  'flat plate',
  'S809',
  'NACA 0018',
  'NACA 0021',
] as const

export type SectionName = (typeof sectionNames)[number]

/** The polars of each section, Reynolds number rising. */
export const sections: Readonly<Record<SectionName, readonly AirfoilPolar[]>> = {
  SD2030: sd2030,
  'NACA 6409': naca6409,
  SG6043: sg6043,
  'Clark Y': clarkY,
  'GOE 417a': goe417a,
  'flat plate': flatPlate,
  S809: s809,
  'NACA 0018': naca0018,
  'NACA 0021': naca0021,
}
