/** The NACA 6409, thin and strongly arched, in the wind tunnel at Reynolds numbers from 61 000 to 200 000. */
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: measured values that happen to be near one
import type { AirfoilPolar } from './polar.ts'

const source = 'selig1995'
const where = (run: string) =>
  `NACA 6409, builder Halsey, clean, drag run ${run}, as in the data file n6409.drg (neel542/airfoil-research, data/uiuc_lsat/vol1/N6409.DRG, commit ac3425d); no drag measured past stall; the printed book was not opened`

// biome-ignore format: a table
export const naca6409: readonly AirfoilPolar[] = [
  {
    name: 'NACA 6409',
    reynolds: 61000,
    spread: { lift: 0.06, dragShare: 0.2 },
    source,
    where: where('AB00187'),
    rows: [
      //  deg     lift    drag
      [ -2.80, -0.004, 0.0623],
      [ -1.13,  0.238, 0.0373],
      [  0.26,  0.452, 0.0363],
      [  2.09,  0.650, 0.0367],
      [  3.33,  0.774, 0.0399],
      [  5.00,  0.923, 0.0468],
    ],
  },
  {
    name: 'NACA 6409',
    reynolds: 100700,
    spread: { lift: 0.04, dragShare: 0.25 },
    source,
    where: where('AB00189'),
    rows: [
      //  deg     lift    drag
      [ -2.68,  0.194, 0.0378],
      [ -1.00,  0.433, 0.0228],
      [  0.26,  0.563, 0.0200],
      [  1.98,  0.728, 0.0188],
      [  3.34,  0.861, 0.0197],
      [  5.09,  1.017, 0.0213],
      [  6.47,  1.145, 0.0219],
      [  8.12,  1.285, 0.0227],
      [  9.73,  1.410, 0.0252],
    ],
  },
  {
    name: 'NACA 6409',
    reynolds: 200600,
    spread: { lift: 0.03, dragShare: 0.2 },
    source,
    where: where('AB00191'),
    rows: [
      //  deg     lift    drag
      [ -2.89,  0.282, 0.0186],
      [ -1.37,  0.435, 0.0143],
      [  0.22,  0.601, 0.0136],
      [  1.67,  0.745, 0.0125],
      [  3.34,  0.908, 0.0134],
      [  4.97,  1.070, 0.0142],
      [  6.97,  1.258, 0.0160],
      [  8.11,  1.352, 0.0174],
      [ 10.13,  1.457, 0.0211],
      [ 11.33,  1.440, 0.0277],
    ],
  },
]
