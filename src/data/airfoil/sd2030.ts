/** The SD2030, a thin section for small wind rotors, in the wind tunnel at Reynolds numbers from 100 000 to 500 000. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one
import type { AirfoilPolar } from './polar.ts'

const source = 'selig2004'
const file =
  'appendix B, SD2030 (B), clean, drag runs, as in the data file sd2030_c.drg (neel542/airfoil-research, data/uiuc_lsat/vol4/sd2030_c_drg.txt, commit ac3425d); the printed report was not opened'
/** Scatter: lift of the drag run against the lift run of the same day; drag along the span of the model. */
const where = (note: string) => `${file}; ${note}`

// biome-ignore format: a table
export const sd2030: readonly AirfoilPolar[] = [
  {
    name: 'SD2030',
    reynolds: 100002,
    spread: { lift: 0.06, dragShare: 0.15 },
    source,
    where: where(
      'run bm05077, rows −4.95°…11.39° equal to a second transcription made from the text of the report (same collection, data/multifoil_experimental_NREL.csv); last two rows: lift from the lift run bm05094 at 12.29° and 13.23°, drag from the drag run bm05133 at Re 204 098, 12.41° and 13.39°, as no drag was measured in the stall at this Reynolds number',
    ),
    rows: [
      //  deg     lift    drag
      [ -6.02, -0.414, 0.0531],
      [ -4.95, -0.339, 0.0321],
      [ -3.98, -0.262, 0.0238],
      [ -2.99, -0.170, 0.0189],
      [ -1.90, -0.074, 0.0136],
      [ -0.93,  0.011, 0.0138],
      [  0.11,  0.122, 0.0154],
      [  1.14,  0.231, 0.0163],
      [  2.17,  0.403, 0.0188],
      [  3.17,  0.574, 0.0171],
      [  4.26,  0.693, 0.0154],
      [  5.29,  0.784, 0.0147],
      [  6.32,  0.873, 0.0170],
      [  7.33,  0.945, 0.0215],
      [  8.34,  1.000, 0.0269],
      [  9.36,  1.051, 0.0351],
      [ 10.34,  1.090, 0.0437],
      [ 11.39,  1.105, 0.0679],
      [ 12.29,  1.048, 0.1847],
      [ 13.23,  0.959, 0.2214],
    ],
  },
  {
    name: 'SD2030',
    reynolds: 199829,
    spread: { lift: 0.04, dragShare: 0.12 },
    source,
    where: where('run bm05079; last two rows: run bm05133 at Re 204 098'),
    rows: [
      //  deg     lift    drag
      [ -6.04, -0.447, 0.0550],
      [ -4.98, -0.336, 0.0286],
      [ -3.95, -0.235, 0.0194],
      [ -2.98, -0.126, 0.0163],
      [ -1.87,  0.006, 0.0131],
      [ -0.88,  0.115, 0.0116],
      [  0.15,  0.252, 0.0118],
      [  1.17,  0.391, 0.0111],
      [  2.23,  0.499, 0.0104],
      [  3.21,  0.593, 0.0099],
      [  4.22,  0.690, 0.0096],
      [  5.26,  0.784, 0.0113],
      [  6.30,  0.869, 0.0142],
      [  7.34,  0.945, 0.0178],
      [  8.35,  1.012, 0.0221],
      [  9.34,  1.070, 0.0278],
      [ 10.37,  1.112, 0.0344],
      [ 11.38,  1.138, 0.0472],
      [ 12.41,  1.072, 0.1847],
      [ 13.39,  0.996, 0.2214],
    ],
  },
  {
    name: 'SD2030',
    reynolds: 349889,
    spread: { lift: 0.03, dragShare: 0.12 },
    source,
    where: where('run bm05081; last two rows: run bm05134 at Re 355 456'),
    rows: [
      //  deg     lift    drag
      [ -6.53, -0.486, 0.0698],
      [ -5.48, -0.361, 0.0371],
      [ -4.50, -0.246, 0.0186],
      [ -3.44, -0.115, 0.0142],
      [ -2.44,  0.024, 0.0105],
      [ -1.36,  0.140, 0.0085],
      [ -0.35,  0.229, 0.0075],
      [  0.67,  0.332, 0.0081],
      [  1.68,  0.444, 0.0071],
      [  2.72,  0.552, 0.0070],
      [  3.74,  0.661, 0.0074],
      [  4.85,  0.757, 0.0094],
      [  5.81,  0.843, 0.0117],
      [  6.83,  0.930, 0.0144],
      [  7.78,  1.003, 0.0170],
      [  8.85,  1.075, 0.0212],
      [  9.87,  1.129, 0.0271],
      [ 10.90,  1.167, 0.0392],
      [ 11.87,  1.152, 0.1079],
      [ 12.88,  1.094, 0.1997],
    ],
  },
  {
    name: 'SD2030',
    reynolds: 499053,
    spread: { lift: 0.03, dragShare: 0.15 },
    source,
    where: where('run bm05083; last row: run bm05135 at Re 501 810'),
    rows: [
      //  deg     lift    drag
      [ -6.00, -0.368, 0.0445],
      [ -4.93, -0.238, 0.0164],
      [ -3.95, -0.122, 0.0119],
      [ -2.91, -0.009, 0.0105],
      [ -1.88,  0.099, 0.0090],
      [ -0.86,  0.186, 0.0064],
      [  0.20,  0.291, 0.0058],
      [  1.16,  0.410, 0.0053],
      [  2.23,  0.525, 0.0057],
      [  3.24,  0.628, 0.0064],
      [  4.28,  0.725, 0.0084],
      [  5.28,  0.814, 0.0103],
      [  6.30,  0.909, 0.0125],
      [  7.34,  0.993, 0.0149],
      [  8.36,  1.068, 0.0178],
      [  9.39,  1.134, 0.0220],
      [ 10.42,  1.176, 0.0273],
      [ 11.40,  1.199, 0.0356],
      [ 12.40,  1.205, 0.0594],
    ],
  },
]
