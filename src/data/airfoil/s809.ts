/** The S809, a section for large blades, in the wind tunnel at a Reynolds number of a million. */
import type { AirfoilPolar } from './polar.ts'

// biome-ignore format: a table
export const s809: readonly AirfoilPolar[] = [
  {
    name: 'S809',
    reynolds: 1e6,
    spread: { lift: 0.02, dragShare: 0.1 },
    source: 'hand2001',
    where:
      'tables A-7 and A-8, wind tunnel of the Ohio State University, through the transcription mttbrbr/single-actuator-line, data/turbines; −10.2° left out (0.075 out of line); spread: a guess, no source; the primary was not opened',
    rows: [
      // deg    lift   drag
      [ -4.1, -0.40, 0.013],
      [ -2.1, -0.16, 0.009],
      [  0.0,  0.07, 0.009],
      [  2.1,  0.30, 0.009],
      [  4.1,  0.55, 0.009],
      [  6.1,  0.79, 0.009],
      [  8.2,  0.90, 0.017],
      [ 10.1,  0.94, 0.049],
      [ 11.2,  0.93, 0.052],
      [ 12.2,  0.97, 0.064],
      [ 13.3,  1.00, 0.070],
      [ 14.2,  1.02, 0.083],
      [ 15.2,  1.03, 0.108],
      [ 16.2,  1.01, 0.143],
      [ 17.2,  0.95, 0.170],
      [ 18.1,  0.90, 0.185],
      [ 20.0,  0.67, 0.321],
      [ 22.1,  0.70, 0.370],
      [ 24.0,  0.77, 0.435],
      [ 26.1,  0.91, 0.536],
    ],
  },
]
