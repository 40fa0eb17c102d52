/** Magnetisation of the plain steel that rotor discs are cut from. */

type Point = readonly [fluxDensity_T: number, fieldStrength_A_per_m: number]

// biome-ignore format: a table
const team13: readonly Point[] = [
  [0.0,     0], [0.1,   191], [0.3,   222], [0.5,   247], [0.7,   272],
  [0.9,   313], [1.0,   342], [1.1,   377], [1.2,   433], [1.3,   509],
  [1.4,   648], [1.5,   933], [1.6,  1934], [1.7,  4993], [1.8,  9423],
  [1.9, 14752], [2.0, 20996], [2.1, 28904], [2.2, 41976],
]

/** Between the points: a shape-keeping curve of H over B. Beyond the last: steel adds no more, dB/dH = μ0. */
export const mildSteel = {
  name: 'mild steel',
  fluxDensity_T: team13.map(([B]) => B),
  fieldStrength_A_per_m: team13.map(([, H]) => H),
  /** Where the curve bends: permeability falls fast above. */
  knee_T: 1.5,
  density_kg_per_m3: 7850,
  resistivity_ohm_m: 1.5e-7,
  youngsModulus_GPa: 206,
  poisson: 0.29,
  yield_MPa: 235,
  thermalConductivity_W_per_mK: 50,
  expansion_1_per_K: 12e-6,
  source: 'nakata1992',
  where:
    'B–H curve of benchmark problem 13, several transcriptions that agree; conductivity machine-conductivities, table 3; density, resistivity, modulus, yield and expansion: plain carbon steel, from memory, not opened',
} as const
