/** Sizes of enamelled round copper wire: metric, American gauge, British gauge. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: diameters, not constants of mathematics

export interface EnamelledWire {
  readonly conductorDiameter_mm: number
  readonly conductorTolerance_mm: number
  readonly grade1MinimumIncrease_mm: number
  readonly grade1MaximumOuter_mm: number
  readonly grade2MinimumIncrease_mm: number
  readonly grade2MaximumOuter_mm: number
  readonly source: string
  readonly where: string
}

type EnamelRow = readonly [
  d: number,
  tolerance: number,
  least1: number,
  most1: number,
  least2: number,
  most2: number,
]

/*
 * Outer diameters are the greatest that the standard allows. A coil former must take these; a typical
 * wire lies half-way between conductorDiameter + minimumIncrease and maximumOuter.
 *
 * Sizes between two rows: the standard gives them the increase of the next larger row (maximumOuter − d of
 * that row), never wrong to the unsafe side. The straight line in d between the two neighbours' increases
 * reproduces every maker's row that was at hand (nine sizes of 0.079–0.404 mm) within 0.001 mm, and
 * stays at most 0.003 mm below the rule of the standard.
 */
// biome-ignore format: a table
const enamelRows: readonly EnamelRow[] = [
  //  d     ±      least1 most1  least2 most2
  [0.071, 0.003, 0.007, 0.084, 0.012, 0.091],
  [0.080, 0.003, 0.007, 0.094, 0.014, 0.101],
  [0.090, 0.003, 0.008, 0.105, 0.015, 0.113],
  [0.100, 0.003, 0.008, 0.117, 0.016, 0.125],
  [0.112, 0.003, 0.009, 0.130, 0.017, 0.139],
  [0.125, 0.003, 0.010, 0.144, 0.019, 0.154],
  [0.140, 0.003, 0.011, 0.160, 0.021, 0.171],
  [0.160, 0.003, 0.012, 0.182, 0.023, 0.194],
  [0.180, 0.003, 0.013, 0.204, 0.025, 0.217],
  [0.200, 0.003, 0.014, 0.226, 0.027, 0.239],
  [0.224, 0.003, 0.015, 0.252, 0.029, 0.266],
  [0.250, 0.004, 0.017, 0.281, 0.032, 0.297],
  [0.280, 0.004, 0.018, 0.312, 0.033, 0.329],
  [0.315, 0.004, 0.019, 0.349, 0.035, 0.367],
  [0.355, 0.004, 0.020, 0.392, 0.038, 0.411],
  [0.400, 0.005, 0.021, 0.439, 0.040, 0.459],
  [0.450, 0.005, 0.022, 0.491, 0.042, 0.513],
  [0.500, 0.005, 0.024, 0.544, 0.045, 0.566],
  [0.560, 0.006, 0.025, 0.606, 0.047, 0.630],
  [0.630, 0.006, 0.027, 0.679, 0.050, 0.704],
  [0.710, 0.007, 0.028, 0.762, 0.053, 0.789],
  [0.800, 0.008, 0.030, 0.855, 0.056, 0.884],
  [0.900, 0.009, 0.032, 0.959, 0.060, 0.989],
  [1.000, 0.010, 0.034, 1.062, 0.063, 1.094],
  [1.120, 0.011, 0.034, 1.184, 0.065, 1.217],
  [1.250, 0.013, 0.035, 1.316, 0.067, 1.349],
  [1.400, 0.014, 0.036, 1.468, 0.069, 1.502],
  [1.600, 0.016, 0.038, 1.670, 0.071, 1.706],
  [1.800, 0.018, 0.039, 1.872, 0.073, 1.909],
  [2.000, 0.020, 0.040, 2.074, 0.075, 2.112],
  [2.240, 0.022, 0.041, 2.316, 0.077, 2.355],
  [2.500, 0.025, 0.042, 2.578, 0.079, 2.618],
  [2.800, 0.028, 0.043, 2.880, 0.081, 2.922],
  [3.150, 0.032, 0.045, 3.233, 0.084, 3.276],
]

export const enamelledWires: readonly EnamelledWire[] = enamelRows.map(
  ([d, tolerance, least1, most1, least2, most2]) => ({
    conductorDiameter_mm: d,
    conductorTolerance_mm: tolerance,
    grade1MinimumIncrease_mm: least1,
    grade1MaximumOuter_mm: most1,
    grade2MinimumIncrease_mm: least2,
    grade2MaximumOuter_mm: most2,
    source: 'iec-60317-0-1',
    where:
      'table 1, from memory, not opened; from 0.090 mm up confirmed row by row by the SWG sizes of is-13730-0-1, which take the increase of the next larger row',
  }),
)

/** Nominal sizes that shops sell besides the table's rows (R 40 series). */
export const intermediateMetricSizes = {
  conductorDiameter_mm: [
    0.236, 0.265, 0.3, 0.335, 0.375, 0.425, 0.475, 0.53, 0.6, 0.67, 0.75, 0.85, 0.95, 1.06, 1.18, 1.32, 1.5,
    1.7, 1.9, 2.12, 2.36, 2.65, 3.0,
  ],
  source: 'iec-60317-0-1',
  where: 'annex A, intermediate nominal diameters (R 40); from memory, not opened',
} as const

export interface GaugeSize {
  readonly gauge: number
  readonly diameter_mm: number
  readonly source: string
  readonly where: string
}

/** Diameter of a whole or half AWG size: 0.005 in at 36, 0.46 in at −3 (4/0). */
export const awgDiameter_mm = (gauge: number): number => 0.127 * 92 ** ((36 - gauge) / 39)

const wholeNumbers = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i)

/** AWG 4 to 40, by the formula of the standard. */
export const awgSizes: readonly GaugeSize[] = wholeNumbers(4, 40).map((gauge) => ({
  gauge,
  diameter_mm: awgDiameter_mm(gauge),
  source: 'astm-b258',
  where: 'd = 0.127 mm × 92^((36 − n)/39)',
}))

// biome-ignore format: a table, thousandths of an inch from No. 4 on
const swgThousandths = [
  232, 212, 192, 176, 160, 144, 128, 116, 104, 92, 80, 72, 64, 56, 48, 40, 36, 32, 28, 24, 22, 20, 18,
  16.4, 14.8, 13.6, 12.4, 11.6, 10.8, 10, 9.2, 8.4, 7.6, 6.8, 6, 5.2, 4.8, 4.4, 4, 3.6, 3.2, 2.8,
]

/** SWG 4 to 45; the inch is 25.4 mm exactly. */
export const swgSizes: readonly GaugeSize[] = swgThousandths.map((thousandths, i) => ({
  gauge: 4 + i,
  diameter_mm: (thousandths * 25.4) / 1000,
  source: 'bs-3737',
  where:
    'diameters in inches, 4–29 as transcribed (the transcription rounds 14.8 up to 14.9), 30–45 from memory; millimetres confirmed by the SWG column of is-13730-0-1',
}))
