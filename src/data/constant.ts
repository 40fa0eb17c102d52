/** Constants of nature and of convention that the engine's callers hand down to it. */

export interface Constant {
  readonly value: number
  /** UCUM-like text of the SI unit. */
  readonly unit: string
  readonly source: string
  readonly where: string
}

export const constants = {
  vacuumPermeability: {
    value: 1.25663706212e-6,
    unit: 'N/A2',
    source: 'codata2018',
    where: 'table of recommended values, vacuum magnetic permeability',
  },
  standardGravity: {
    value: 9.80665,
    unit: 'm/s2',
    source: 'nist-sp811',
    where: 'appendix B.8, acceleration of free fall, standard',
  },
  molarGasConstant: {
    value: 8.31446261815324,
    unit: 'J/(mol.K)',
    source: 'codata2018',
    where: 'table of recommended values, molar gas constant (exact)',
  },
  dryAirGasConstant: {
    value: 287.0528,
    unit: 'J/(kg.K)',
    source: 'us-standard-atmosphere-1976',
    where: 'R* / M0 = 8314.32 / 28.9644, from memory, not opened',
  },
  stefanBoltzmann: {
    value: 5.670374419e-8,
    unit: 'W/(m2.K4)',
    source: 'codata2018',
    where: 'table of recommended values, Stefan–Boltzmann constant (exact)',
  },
  standardPressure: {
    value: 101325,
    unit: 'Pa',
    source: 'nist-sp811',
    where: 'appendix B.8, atmosphere, standard',
  },
  seaLevelAirDensity: {
    value: 1.225,
    unit: 'kg/m3',
    source: 'us-standard-atmosphere-1976',
    where: 'sea level, 288.15 K, 101325 Pa; from memory, not opened',
  },
  zeroCelsius: {
    value: 273.15,
    unit: 'K',
    source: 'si-brochure-9',
    where: 'section 2.3.1, degree Celsius',
  },
} as const satisfies Record<string, Constant>
