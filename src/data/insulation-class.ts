/** Thermal classes of electrical insulation. */

export interface InsulationClass {
  /** Letter of the class, or its number where it has none. */
  readonly name: string
  /** Recommended greatest continuous temperature of the insulation, which is that of the hot spot. */
  readonly limit_degC: number
  readonly source: string
  readonly where: string
}

// The class of a wire's enamel is not the class of the whole insulation: resin, tape and former count too.
export const insulationClasses: readonly InsulationClass[] = [
  {
    name: 'Y',
    limit_degC: 90,
    source: 'iec-60085',
    where: 'table of thermal classes; from memory, not opened',
  },
  { name: 'A', limit_degC: 105, source: 'iec-60085', where: 'table of thermal classes, as transcribed' },
  {
    name: 'E',
    limit_degC: 120,
    source: 'iec-60085',
    where: 'table of thermal classes; from memory, not opened',
  },
  { name: 'B', limit_degC: 130, source: 'iec-60085', where: 'table of thermal classes, as transcribed' },
  { name: 'F', limit_degC: 155, source: 'iec-60085', where: 'table of thermal classes, as transcribed' },
  { name: 'H', limit_degC: 180, source: 'iec-60085', where: 'table of thermal classes, as transcribed' },
  {
    name: 'N',
    limit_degC: 200,
    source: 'iec-60085',
    where: 'table of thermal classes; from memory, not opened',
  },
  {
    name: 'R',
    limit_degC: 220,
    source: 'iec-60085',
    where: 'table of thermal classes; from memory, not opened',
  },
  {
    name: '250',
    limit_degC: 250,
    source: 'iec-60085',
    where: 'table of thermal classes; from memory, not opened',
  },
]
