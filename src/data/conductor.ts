/** Metals that carry the current, or that the moving field meets, at 20 °C. */

export interface Conductor {
  readonly name: string
  /** The temperature that resistivity and coefficient refer to. */
  readonly reference_degC: number
  /** Ω·mm²/m at 20 °C, which is 1e-6 Ω·m. */
  readonly resistivity_ohm_mm2_per_m: number
  /** At constant mass, referred to 20 °C. */
  readonly temperatureCoefficient_1_per_K: number
  readonly density_kg_per_m3: number
  readonly heatCapacity_J_per_kgK: number
  readonly thermalConductivity_W_per_mK: number
  readonly expansion_1_per_K: number
  /** 1 for all but steel. */
  readonly relativePermeability: number
  readonly source: string
  readonly where: string
}

export const conductors: readonly Conductor[] = [
  {
    name: 'copper',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 1 / 58,
    temperatureCoefficient_1_per_K: 0.00393,
    density_kg_per_m3: 8890,
    heatCapacity_J_per_kgK: 385,
    thermalConductivity_W_per_mK: 385,
    expansion_1_per_K: 17e-6,
    relativePermeability: 1,
    source: 'iec-60028',
    where:
      'annealed copper at 20 °C: 1/58 Ω·mm²/m, 0.00393 /K, 8890 kg/m³, 17e-6 /K, as transcribed; heat capacity 385 J/(kg·K) from memory, not opened; conductivity machine-conductivities, table 3',
  },
  {
    name: 'aluminium',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 0.028264,
    temperatureCoefficient_1_per_K: 0.00403,
    density_kg_per_m3: 2703,
    heatCapacity_J_per_kgK: 897,
    thermalConductivity_W_per_mK: 237,
    expansion_1_per_K: 23e-6,
    relativePermeability: 1,
    source: 'common-practice',
    where:
      'conductor aluminium after IEC 60889 (0.028264 Ω·mm²/m, 0.00403 /K, 2703 kg/m³, 23e-6 /K) and pure aluminium; from memory, not opened',
  },
  {
    name: 'aluminium alloy',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 0.04,
    temperatureCoefficient_1_per_K: 0.003,
    density_kg_per_m3: 2700,
    heatCapacity_J_per_kgK: 897,
    thermalConductivity_W_per_mK: 167,
    expansion_1_per_K: 23.5e-6,
    relativePermeability: 1,
    source: 'common-practice',
    where:
      'wrought Al-Mg-Si plate (6061 and 6082, hardened: 0.037 to 0.043 Ω·mm²/m); from memory, not opened',
  },
  {
    name: 'brass',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 0.065,
    temperatureCoefficient_1_per_K: 0.0017,
    density_kg_per_m3: 8440,
    heatCapacity_J_per_kgK: 380,
    thermalConductivity_W_per_mK: 120,
    expansion_1_per_K: 20.5e-6,
    relativePermeability: 1,
    source: 'common-practice',
    where: 'screws and bars of brass with 37 to 40 % zinc (0.062 to 0.071 Ω·mm²/m); from memory, not opened',
  },
  {
    name: 'stainless steel',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 1 / 1.4,
    temperatureCoefficient_1_per_K: 0.001,
    density_kg_per_m3: 7900,
    heatCapacity_J_per_kgK: 500,
    thermalConductivity_W_per_mK: 15,
    expansion_1_per_K: 16.5e-6,
    relativePermeability: 1,
    source: 'mitchell2004',
    where:
      'appendix 8, stainless steel 301: 0.14e7 S/m, as quoted by others; the rest of an austenitic steel (A2, A4) from memory, not opened; cold-worked it is slightly magnetic',
  },
  {
    name: 'mild steel',
    reference_degC: 20,
    resistivity_ohm_mm2_per_m: 0.14,
    temperatureCoefficient_1_per_K: 0.005,
    density_kg_per_m3: 7850,
    heatCapacity_J_per_kgK: 470,
    thermalConductivity_W_per_mK: 50,
    expansion_1_per_K: 12e-6,
    relativePermeability: 300,
    source: 'common-practice',
    where:
      'low-carbon steel, 0.12 to 0.17 Ω·mm²/m; relative permeability of a part that the magnets half saturate, 100 to 1000; from memory, not opened',
  },
]
