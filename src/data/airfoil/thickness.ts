/** Greatest thickness of the house's sections over their chord, where it is known. */

export interface SectionThickness {
  readonly name: string
  readonly thickness: number
  readonly source: string
  readonly where: string
}

const byName = 'the last two digits of a four-digit name are the thickness in percent'
const recalled = 'thickness from memory, not opened'

export const sectionThicknesses: readonly SectionThickness[] = [
  { name: 'SD2030', thickness: 0.0856, source: 'selig2004', where: recalled },
  { name: 'NACA 6409', thickness: 0.09, source: 'selig1995', where: byName },
  { name: 'SG6043', thickness: 0.1, source: 'lyon1997', where: recalled },
  { name: 'Clark Y', thickness: 0.117, source: 'lyon1997', where: recalled },
  { name: 'S809', thickness: 0.21, source: 'hand2001', where: recalled },
  { name: 'NACA 0018', thickness: 0.18, source: 'sheldahl1981', where: byName },
  { name: 'NACA 0021', thickness: 0.21, source: 'sheldahl1981', where: byName },
]

/** Of a section by its name; undefined where the house does not know it. */
export const sectionThickness = (section: string): number | undefined =>
  sectionThicknesses.find(({ name }) => name === section)?.thickness
