/** Current that copper cables carry for hours, by nominal cross-section. */

export interface CableCurrent {
  readonly crossSection_mm2: number
  /** Three loaded conductors in one cable with PVC insulation, in conduit on a wall, air at 30 °C and at 40 °C. */
  readonly at30degC_A: number
  readonly at40degC_A: number
  readonly source: string
  readonly where: string
}

type CurrentRow = readonly [area: number, at30: number, at40: number]

// biome-ignore format: a table
const currentRows: readonly CurrentRow[] = [
  [  1.5,  15,  13],
  [  2.5,  20,  17],
  [  4,    27,  23],
  [  6,    34,  30],
  [ 10,    46,  40],
  [ 16,    62,  54],
  [ 25,    80,  70],
  [ 35,    99,  86],
  [ 50,   118, 103],
  [ 70,   149, 130],
  [ 95,   179, 156],
  [120,   206, 179],
]

// Conduit holds the heat in, so that most other ways of laying a cable bear more; bundles of cables bear less.
export const cableCurrents: readonly CableCurrent[] = currentRows.map(([area, at30, at40]) => ({
  crossSection_mm2: area,
  at30degC_A: at30,
  at40degC_A: at40,
  source: 'iec-60364-5-52',
  where:
    'method B2, PVC (conductor at 70 °C), three loaded copper conductors; the standard not opened, as transcribed',
}))
