/** The Göttingen 417a, a thin plate bent to an arch, in the wind tunnel at Reynolds numbers from 59 000 to 298 000: it stands for bent sheet and for blades cut from pipe. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one
import type { AirfoilPolar } from './polar.ts'

const source = 'lyon1997'
const where = (note: string) =>
  `Goe 417a, builder M. Fox, clean, drag runs, as in the data file GOE417A.DRG (neel542/airfoil-research, data/uiuc_lsat/vol3, commit b72b37b); the printed book was not opened; spread: of lift, drag run against lift run of the same table; of drag, along the span of the model; ${note}`

// biome-ignore format: a table
export const goe417a: readonly AirfoilPolar[] = [
  {
    name: 'GOE 417a',
    reynolds: 59300,
    spread: { lift: 0.07, dragShare: 0.25 },
    source,
    where: where('run PG01725'),
    rows: [
      //  deg     lift    drag
      [ -2.25, -0.230, 0.0773],
      [ -0.67, -0.066, 0.0607],
      [  0.87,  0.178, 0.0457],
      [  2.49,  0.479, 0.0360],
      [  3.95,  0.710, 0.0364],
      [  5.62,  0.984, 0.0285],
      [  7.10,  1.131, 0.0213],
      [  8.65,  1.238, 0.0226],
      [ 10.17,  1.337, 0.0283],
      [ 11.76,  1.398, 0.0412],
    ],
  },
  {
    name: 'GOE 417a',
    reynolds: 99500,
    spread: { lift: 0.07, dragShare: 0.25 },
    source,
    where: where('run PG01126'),
    rows: [
      //  deg     lift    drag
      [ -3.77, -0.332, 0.0720],
      [ -2.20, -0.220, 0.0608],
      [ -0.63,  0.066, 0.0450],
      [  0.87,  0.341, 0.0362],
      [  2.43,  0.598, 0.0296],
      [  4.05,  0.819, 0.0241],
      [  5.54,  0.943, 0.0191],
      [  7.06,  1.076, 0.0166],
      [  8.62,  1.211, 0.0202],
      [ 10.13,  1.304, 0.0311],
      [ 11.65,  1.371, 0.0441],
    ],
  },
  {
    name: 'GOE 417a',
    reynolds: 198500,
    spread: { lift: 0.05, dragShare: 0.15 },
    source,
    where: where('run CL01128'),
    rows: [
      //  deg     lift    drag
      [ -3.73, -0.289, 0.0672],
      [ -2.24, -0.027, 0.0454],
      [ -0.69,  0.283, 0.0314],
      [  0.94,  0.568, 0.0209],
      [  2.57,  0.759, 0.0162],
      [  4.09,  0.923, 0.0137],
      [  5.64,  1.067, 0.0140],
      [  7.14,  1.185, 0.0163],
      [  8.66,  1.272, 0.0237],
      [ 10.21,  1.345, 0.0320],
      [ 11.64,  1.387, 0.0448],
    ],
  },
  {
    name: 'GOE 417a',
    reynolds: 297500,
    spread: { lift: 0.05, dragShare: 0.15 },
    source,
    where: where('run CL01130'),
    rows: [
      //  deg     lift    drag
      [ -3.73, -0.127, 0.0556],
      [ -2.15,  0.101, 0.0394],
      [ -0.39,  0.409, 0.0252],
      [  0.94,  0.590, 0.0185],
      [  2.50,  0.778, 0.0143],
      [  4.02,  0.939, 0.0123],
      [  5.54,  1.075, 0.0129],
      [  7.15,  1.199, 0.0159],
      [  8.71,  1.291, 0.0225],
      [ 10.30,  1.370, 0.0303],
      [ 11.69,  1.408, 0.0436],
    ],
  },
]
