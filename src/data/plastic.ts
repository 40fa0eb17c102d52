/** Plastics that formers, rotors and housings are printed from. */

export interface Plastic {
  readonly name: string
  /** Where stiffness goes: glass transition, or for nylon the softening under load. */
  readonly softening_degC: number
  /** Half of the range between the sources. */
  readonly softeningSpread_K: number
  readonly density_kg_per_m3: number
  readonly thermalConductivity_W_per_mK: number
  readonly tensileStrength_MPa: number
  /** Strength between the layers as a share of the strength along them. */
  readonly acrossLayers_1: number
  readonly youngsModulus_GPa: number
  readonly expansion_1_per_K: number
  /** hobby: a table of a hobby page; use as a warning, not as a limit to sign for. */
  readonly quality: 'hobby' | 'range over sources'
  readonly source: string
  readonly where: string
}

/** How far below the softening point a part under load should stay. */
export const plasticMargin = {
  margin_K: 15,
  source: 'common-practice',
  where: 'common practice, no source',
} as const

const fromMemory =
  'conductivity, modulus, expansion and strength where not named: from memory, not opened; typical of solid material, a print with few walls bears less'

export const plastics: readonly Plastic[] = [
  {
    name: 'PLA',
    softening_degC: 60,
    softeningSpread_K: 5,
    density_kg_per_m3: 1240,
    thermalConductivity_W_per_mK: 0.13,
    tensileStrength_MPa: 57,
    acrossLayers_1: 0.7,
    youngsModulus_GPa: 3.5,
    expansion_1_per_K: 68e-6,
    quality: 'range over sources',
    source: 'additive-tools',
    where: `PLA: Tg 55–65 °C, 1.22–1.26 g/cm³, 50–65 MPa flat, 35–45 MPa upright; ${fromMemory}`,
  },
  {
    name: 'PETG',
    softening_degC: 80,
    softeningSpread_K: 5,
    density_kg_per_m3: 1270,
    thermalConductivity_W_per_mK: 0.2,
    tensileStrength_MPa: 50,
    acrossLayers_1: 0.6,
    youngsModulus_GPa: 2.1,
    expansion_1_per_K: 60e-6,
    quality: 'range over sources',
    source: 'additive-tools',
    where: `PETG: Tg 75–85 °C, 1.25–1.29 g/cm³, 44–56 MPa flat, 25–38 MPa upright; ${fromMemory}`,
  },
  {
    name: 'ABS',
    softening_degC: 100,
    softeningSpread_K: 8,
    density_kg_per_m3: 1050,
    thermalConductivity_W_per_mK: 0.17,
    tensileStrength_MPa: 38,
    acrossLayers_1: 0.5,
    youngsModulus_GPa: 2.2,
    expansion_1_per_K: 90e-6,
    quality: 'range over sources',
    source: 'omnexus-glass-transition',
    where: `ABS: 90–102 °C, high-impact 95–110 °C; 100 °C also printed-plastic-transitions; ${fromMemory}`,
  },
  {
    name: 'ASA',
    softening_degC: 100,
    softeningSpread_K: 8,
    density_kg_per_m3: 1070,
    thermalConductivity_W_per_mK: 0.17,
    tensileStrength_MPa: 40,
    acrossLayers_1: 0.5,
    youngsModulus_GPa: 2.0,
    expansion_1_per_K: 95e-6,
    quality: 'hobby',
    source: 'common-practice',
    where: `common practice, no source; ${fromMemory}`,
  },
  {
    name: 'PC',
    softening_degC: 145,
    softeningSpread_K: 10,
    density_kg_per_m3: 1200,
    thermalConductivity_W_per_mK: 0.2,
    tensileStrength_MPa: 60,
    acrossLayers_1: 0.6,
    youngsModulus_GPa: 2.3,
    expansion_1_per_K: 68e-6,
    quality: 'hobby',
    source: 'printed-plastic-transitions',
    where: `PC 150 °C as transcribed; blends for printing lie lower; ${fromMemory}`,
  },
  {
    name: 'nylon',
    softening_degC: 60,
    softeningSpread_K: 10,
    density_kg_per_m3: 1130,
    thermalConductivity_W_per_mK: 0.25,
    tensileStrength_MPa: 60,
    acrossLayers_1: 0.6,
    youngsModulus_GPa: 1.5,
    expansion_1_per_K: 90e-6,
    quality: 'hobby',
    source: 'printed-plastic-transitions',
    where: `nylon 6,6: 50 °C in one copy, 70 °C in another; part-crystalline, so it keeps some stiffness above; ${fromMemory}`,
  },
]
