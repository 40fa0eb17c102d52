/** Rectangular enamelled copper wire: sizes, edges and enamel. */

export interface StripEdge {
  /** Last thickness of the row. */
  readonly thickestThickness_mm: number
  /** Radius of the edges; undefined where it is a share of the thickness. */
  readonly radius_mm: number | undefined
  readonly radiusShare: number | undefined
  readonly source: string
  readonly where: string
}

const edgeSource = {
  source: 'iec-60317-0-2',
  where: 'table of corner radii by nominal thickness; from memory, not opened',
} as const

export const stripEdges: readonly StripEdge[] = [
  { thickestThickness_mm: 1.0, radius_mm: undefined, radiusShare: 0.5, ...edgeSource },
  { thickestThickness_mm: 1.6, radius_mm: 0.5, radiusShare: undefined, ...edgeSource },
  { thickestThickness_mm: 2.24, radius_mm: 0.65, radiusShare: undefined, ...edgeSource },
  { thickestThickness_mm: 3.55, radius_mm: 0.8, radiusShare: undefined, ...edgeSource },
  { thickestThickness_mm: 5.6, radius_mm: 1.0, radiusShare: undefined, ...edgeSource },
]

export interface StripEnamel {
  readonly grade: 1 | 2
  /** What the enamel adds to width and to thickness. */
  readonly leastIncrease_mm: number
  readonly greatestIncrease_mm: number
  readonly source: string
  readonly where: string
}

export const stripEnamels: readonly StripEnamel[] = [
  {
    grade: 1,
    leastIncrease_mm: 0.06,
    greatestIncrease_mm: 0.11,
    source: 'iec-60317-0-2',
    where: 'table of increases due to the insulation, grade 1; from memory, not opened',
  },
  {
    grade: 2,
    leastIncrease_mm: 0.12,
    greatestIncrease_mm: 0.17,
    source: 'iec-60317-0-2',
    where: 'table of increases due to the insulation, grade 2; from memory, not opened',
  },
]

/** Thicknesses that strip is drawn in, R 20 series. */
export const stripThicknesses = {
  thickness_mm: [
    0.8, 0.9, 1.0, 1.12, 1.25, 1.4, 1.6, 1.8, 2.0, 2.24, 2.5, 2.8, 3.15, 3.55, 4.0, 4.5, 5.0, 5.6,
  ],
  source: 'iec-60317-0-2',
  where: 'nominal thicknesses 0.80 to 5.60 mm, R 20; from memory, not opened',
} as const
