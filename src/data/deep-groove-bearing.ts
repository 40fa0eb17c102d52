/** Single-row deep-groove ball bearings of the light series, by their bore: for makers who have no sheet. */

export interface DeepGrooveBearing {
  readonly name: string
  readonly bore_mm: number
  readonly outer_mm: number
  readonly width_mm: number
  readonly dynamicRating_N: number
  readonly staticRating_N: number
  /** f0 */
  readonly geometryFactor_1: number
  readonly source: string
  readonly where: string
}

/** Ratings differ from sheet to sheet by about this share. */
export const ratingSpread = {
  spread_1: 0.1,
  source: 'common-practice',
  where: 'common practice, no source',
} as const

const opened = 'bore, width, ratings and f0 as a sheet prints them'
const memory = 'dimensions after ISO 15, dimension series 10; ratings and f0 from memory, not opened'

// biome-ignore format: a table
const rows: readonly [number, number, number, number, number, number, string, string][] = [
  [10, 26,  8,  4550,  1960, 12.4, 'bearing-sheet', opened],
  [12, 28,  8,  5100,  2390, 13.2, 'bearing-sheet', opened],
  [15, 32,  9,  5600,  2830, 13.9, 'common-practice', memory],
  [17, 35, 10,  6000,  3250, 14.4, 'common-practice', memory],
  [20, 42, 12,  9400,  5000, 13.9, 'common-practice', memory],
  [25, 47, 12, 10100,  5850, 14.5, 'common-practice', memory],
  [30, 55, 13, 13200,  8300, 14.8, 'common-practice', memory],
  [35, 62, 14, 16000, 10300, 14.8, 'common-practice', memory],
  [40, 68, 15, 16800, 11500, 15.3, 'common-practice', memory],
]

export const deepGrooveBearings: readonly DeepGrooveBearing[] = rows.map(
  ([bore_mm, outer_mm, width_mm, dynamicRating_N, staticRating_N, geometryFactor_1, source, where]) => ({
    name: `light series, bore ${bore_mm} mm`,
    bore_mm,
    outer_mm,
    width_mm,
    dynamicRating_N,
    staticRating_N,
    geometryFactor_1,
    source,
    where,
  }),
)
