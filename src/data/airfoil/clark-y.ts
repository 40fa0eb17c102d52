/** The Clark Y, a thick section flat underneath and easy to carve, in the wind tunnel at Reynolds numbers from 61 000 to 400 000. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one
import type { AirfoilPolar } from './polar.ts'

const source = 'lyon1997'
const where = (note: string) =>
  `Clark-Y (B), builder J. Robertson, clean, drag runs, as in the data file CLARKYB.DRG (neel542/airfoil-research, data/uiuc_lsat/vol3, commit b72b37b); the printed book was not opened; spread: of lift, drag run against lift run of the same table; of drag, along the span of the model; ${note}`

// biome-ignore format: a table
export const clarkY: readonly AirfoilPolar[] = [
  {
    name: 'Clark Y',
    reynolds: 60700,
    spread: { lift: 0.06, dragShare: 0.15 },
    source,
    where: where('runs PG01709 and, at Re 59 500, PG01710'),
    rows: [
      //  deg     lift    drag
      [ -2.07, -0.084, 0.0265],
      [ -0.45,  0.076, 0.0232],
      [  1.02,  0.222, 0.0295],
      [  2.54,  0.389, 0.0333],
      [  4.16,  0.604, 0.0339],
      [  5.71,  0.744, 0.0357],
      [  7.19,  0.884, 0.0389],
      [  8.74,  1.016, 0.0390],
      [ 10.26,  1.127, 0.0349],
      [ 11.31,  1.169, 0.0355],
      [ 12.80,  1.221, 0.0374],
    ],
  },
  {
    name: 'Clark Y',
    reynolds: 100000,
    spread: { lift: 0.06, dragShare: 0.15 },
    source,
    where: where('runs PG01712 and, at Re 99 000, PG01713'),
    rows: [
      //  deg     lift    drag
      [ -3.07, -0.125, 0.0249],
      [ -1.42,  0.070, 0.0220],
      [  0.01,  0.235, 0.0229],
      [  1.64,  0.436, 0.0240],
      [  3.17,  0.605, 0.0225],
      [  4.64,  0.759, 0.0206],
      [  6.20,  0.907, 0.0193],
      [  7.72,  1.033, 0.0207],
      [  9.29,  1.152, 0.0255],
      [ 12.30,  1.299, 0.0326],
    ],
  },
  {
    name: 'Clark Y',
    reynolds: 200000,
    spread: { lift: 0.03, dragShare: 0.1 },
    source,
    where: where('run PG01715'),
    rows: [
      //  deg     lift    drag
      [ -4.64, -0.177, 0.0213],
      [ -2.92,  0.038, 0.0156],
      [ -1.57,  0.166, 0.0132],
      [  0.10,  0.338, 0.0105],
      [  1.74,  0.526, 0.0111],
      [  3.11,  0.654, 0.0115],
      [  4.76,  0.810, 0.0125],
      [  6.24,  0.944, 0.0147],
      [  7.78,  1.073, 0.0170],
      [  9.30,  1.197, 0.0192],
      [ 10.78,  1.290, 0.0225],
      [ 12.35,  1.309, 0.0349],
    ],
  },
  {
    name: 'Clark Y',
    reynolds: 299800,
    spread: { lift: 0.03, dragShare: 0.1 },
    source,
    where: where('run PG01717'),
    rows: [
      //  deg     lift    drag
      [ -4.56, -0.111, 0.0156],
      [ -2.97,  0.032, 0.0124],
      [ -1.44,  0.177, 0.0102],
      [  0.14,  0.348, 0.0088],
      [  1.71,  0.541, 0.0090],
      [  3.28,  0.694, 0.0097],
      [  4.95,  0.846, 0.0108],
      [  6.28,  0.963, 0.0125],
      [  7.87,  1.104, 0.0148],
      [  9.26,  1.219, 0.0168],
      [ 10.77,  1.304, 0.0212],
      [ 12.32,  1.334, 0.0316],
    ],
  },
  {
    name: 'Clark Y',
    reynolds: 399900,
    spread: { lift: 0.03, dragShare: 0.1 },
    source,
    where: where('run PG01719'),
    rows: [
      //  deg     lift    drag
      [ -4.70, -0.132, 0.0142],
      [ -3.00,  0.027, 0.0111],
      [ -1.48,  0.181, 0.0095],
      [  0.10,  0.337, 0.0074],
      [  1.69,  0.550, 0.0079],
      [  3.21,  0.696, 0.0086],
      [  4.78,  0.836, 0.0098],
      [  6.51,  0.990, 0.0116],
      [  8.06,  1.129, 0.0138],
      [  9.56,  1.245, 0.0165],
      [ 10.96,  1.303, 0.0223],
      [ 12.39,  1.332, 0.0307],
    ],
  },
]
