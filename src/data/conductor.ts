/** Metals that carry the current, as their standards give them at 20 °C. */

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
    source: 'common-practice',
    where:
      'conductor aluminium after IEC 60889 (0.028264 Ω·mm²/m, 0.00403 /K, 2703 kg/m³, 23e-6 /K) and pure aluminium; from memory, not opened',
  },
]
