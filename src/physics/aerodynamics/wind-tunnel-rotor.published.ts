/** The 10 m two-blade rotor of the NASA Ames wind tunnel: blade, conditions and measured loads. */
import { s809 } from '../../data/airfoil/s809.ts'
import type { BladeRotor } from './blade-element.ts'

// hand2001, appendix A, table A-1, as transcribed in mttbrbr/single-actuator-line,
// data/turbines/phaseVI_blade.csv; the report itself was not opened.
// biome-ignore format: a table
const blade: readonly (readonly [radius_m: number, chord_m: number, twist_deg: number])[] = [
  [1.2575, 0.737,  20.040],
  [1.343,  0.728,  18.074],
  [1.510,  0.711,  14.292],
  [1.648,  0.697,  11.909],
  [1.952,  0.666,   7.979],
  [2.257,  0.636,   5.308],
  [2.562,  0.605,   3.425],
  [2.867,  0.574,   2.083],
  [3.172,  0.543,   1.150],
  [3.476,  0.512,   0.494],
  [3.781,  0.482,  -0.015],
  [4.023,  0.457,  -0.381],
  [4.391,  0.420,  -0.920],
  [4.696,  0.389,  -1.352],
  [5.000,  0.358,  -1.775],
  [5.029,  0.3551, -1.815],
]

/** hand2001, means of the measurements, zero yaw, 3° tip pitch, density 1.246 kg/m³; sequence where it is told. */
// biome-ignore format: a table
export const measuredLoads = [
  // m/s  r/min   N·m      N
  { sequence: 'H', wind:  7, rpm: 71.88, torque:  '789.9', thrust: '1132' },
  { sequence: 'S', wind:  7, rpm: 71.87, torque:  '801.3', thrust: '1150' },
  { sequence: '', wind: 10, rpm: 72.11, torque: '1291.6', thrust: '1632' },
  { sequence: '', wind: 13, rpm: 72.09, torque: '1297.2', thrust: '1987' },
  { sequence: '', wind: 15, rpm: 72.06, torque: '1269.7', thrust: '2248' },
  { sequence: '', wind: 20, rpm: 72.06, torque: '1221.5', thrust: '3095' },
  { sequence: '', wind: 25, rpm: 72.21, torque: '1580.4', thrust: '4029' },
] as const

export const tunnelDensity = 1.246

const rad = Math.PI / 180
const rows = s809[0]!.rows

/** "Tip pitch 3°": the chord of the tip stands at 3°, so 3 + 1.815 is added to every twist. */
export const tunnelRotor: BladeRotor = {
  bladeCount: 2,
  radius: 5.029,
  hubRadius: 1.2575,
  station: Float64Array.from(blade, ([r]) => r),
  chord: Float64Array.from(blade, ([, c]) => c),
  twist: Float64Array.from(blade, ([, , θ]) => θ * rad),
  pitch: (3 + 1.815) * rad,
  polar: {
    angle: Float64Array.from(rows, ([α]) => α * rad),
    lift: Float64Array.from(rows, ([, lift]) => lift),
    drag: Float64Array.from(rows, ([, , drag]) => drag),
    reynolds: 1e6,
  },
}
