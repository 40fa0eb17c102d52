/** Rows of a symmetric section round the whole circle, from its rows up to the stall. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one
import type { AirfoilPolar } from './polar.ts'

type Row = AirfoilPolar['rows'][number]

/** Past 30° all sections of the report share these values, at every Reynolds number (sheldahl1981). */
// biome-ignore format: a table
const pastStall: readonly Row[] = [
  //deg   lift    drag
  [ 30,  0.855,  0.570],
  [ 35,  0.980,  0.745],
  [ 40,  1.035,  0.920],
  [ 45,  1.050,  1.075],
  [ 50,  1.020,  1.215],
  [ 55,  0.955,  1.345],
  [ 60,  0.875,  1.470],
  [ 65,  0.760,  1.575],
  [ 70,  0.630,  1.665],
  [ 75,  0.500,  1.735],
  [ 80,  0.365,  1.780],
  [ 85,  0.230,  1.800],
  [ 90,  0.090,  1.800],
  [ 95, -0.050,  1.780],
  [100, -0.185,  1.750],
  [105, -0.320,  1.700],
  [110, -0.450,  1.635],
  [115, -0.575,  1.555],
  [120, -0.670,  1.465],
  [125, -0.760,  1.350],
  [130, -0.850,  1.225],
  [135, -0.930,  1.085],
  [140, -0.980,  0.925],
  [145, -0.900,  0.755],
  [150, -0.770,  0.575],
  [155, -0.670,  0.420],
  [160, -0.635,  0.320],
  [165, -0.680,  0.230],
  [170, -0.850,  0.140],
  [175, -0.660,  0.055],
  [180,  0.000,  0.025],
]

/** Lift turned over and drag kept for the angles below zero; `attached` begins at zero and ends below 30°. */
export function symmetricRows(attached: readonly Row[]): readonly Row[] {
  const positive = [...attached, ...pastStall]
  const negative = positive
    .filter(([angle]) => angle > 0)
    .map(([angle, lift, drag]): Row => [-angle, -lift, drag])
    .reverse()
  return [...negative, ...positive]
}
