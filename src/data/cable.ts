/** Copper cable by nominal cross-section: greatest resistance at 20 °C. */

export interface CableSize {
  readonly crossSection_mm2: number
  /** Solid or stranded, plain copper. */
  readonly rigidMaximum_ohm_per_km: number
  /** Flexible, plain copper. */
  readonly flexibleMaximum_ohm_per_km: number
  readonly source: string
  readonly where: string
}

type CableRow = readonly [area: number, rigid: number, flexible: number]

// biome-ignore format: a table
const cableRows: readonly CableRow[] = [
  [  0.5,  36.0,  39.0],
  [  0.75, 24.5,  26.0],
  [  1,    18.1,  19.5],
  [  1.5,  12.1,  13.3],
  [  2.5,   7.41,  7.98],
  [  4,     4.61,  4.95],
  [  6,     3.08,  3.30],
  [ 10,     1.83,  1.91],
  [ 16,     1.15,  1.21],
  [ 25,     0.727, 0.780],
  [ 35,     0.524, 0.554],
  [ 50,     0.387, 0.386],
  [ 70,     0.268, 0.272],
  [ 95,     0.193, 0.206],
  [120,     0.153, 0.161],
]

// The standard sets resistance, not area: 1/58 Ω·mm²/m over the nominal area lies 2–14 % below these.
export const cableSizes: readonly CableSize[] = cableRows.map(([area, rigid, flexible]) => ({
  crossSection_mm2: area,
  rigidMaximum_ohm_per_km: rigid,
  flexibleMaximum_ohm_per_km: flexible,
  source: 'iec-60228',
  where: 'classes 1 and 2, class 5; plain copper, greatest resistance at 20 °C, as transcribed',
}))
