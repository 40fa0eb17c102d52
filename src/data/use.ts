/** Things that people run from a small battery, as starting values for the list of uses. */

export interface UseRow {
  readonly name: string
  readonly power_W: number
  /** On a day of use. */
  readonly daily_h: number
  readonly source: string
  readonly where: string
}

const practice = { source: 'common-practice', where: 'a usual value, no source; read the label or a meter' }

export const usualUses: readonly UseRow[] = [
  { name: 'LED lamp, small room', power_W: 5, daily_h: 4, ...practice },
  { name: 'LED lamp, yard', power_W: 10, daily_h: 3, ...practice },
  { name: 'Phone charging', power_W: 8, daily_h: 2, ...practice },
  { name: 'Radio', power_W: 5, daily_h: 5, ...practice },
  { name: 'Laptop charging', power_W: 50, daily_h: 4, ...practice },
  { name: 'Router', power_W: 8, daily_h: 24, ...practice },
  { name: 'Electric fence', power_W: 3, daily_h: 24, ...practice },
  { name: 'Water pump, small', power_W: 60, daily_h: 1, ...practice },
  { name: 'Compressor cool box', power_W: 45, daily_h: 8, ...practice },
  { name: 'Small fan', power_W: 15, daily_h: 4, ...practice },
]
