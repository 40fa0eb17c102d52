/** Published coefficients of two sections, for the checks of this room. */
import { s809 } from '../../data/airfoil/s809.ts'
import { sd2030 } from '../../data/airfoil/sd2030.ts'

export const s809Rows = s809[0]!.rows
export const sd2030Rows = sd2030[0]!.rows

/** selig2004, SD2030 (B), clean, Re 99 958, lift run bm05094, angles rising: deg, lift. */
export const sd2030Lift = [
  [-6.08, -0.449],
  [-3.98, -0.275],
  [-1.94, -0.095],
  [0.06, 0.088],
  [2.18, 0.352],
  [4.25, 0.634],
  [6.27, 0.805],
  [8.31, 0.931],
  [10.34, 1.046],
  [12.29, 1.048],
  [14.2, 0.914],
  [15.22, 0.9],
  [16.18, 0.97],
  [17.2, 0.926],
  [18.15, 0.957],
  [19.16, 0.966],
  [20.14, 0.946],
] as const
