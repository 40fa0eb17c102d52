/** Resins that coils and magnets are cast in. */

export interface Resin {
  readonly name: string
  /** Where a hand casting, cured at room temperature, begins to soften. */
  readonly softening_degC: number
  readonly softeningSpread_K: number
  readonly density_kg_per_m3: number
  readonly thermalConductivity_W_per_mK: number
  readonly thermalConductivitySpread_W_per_mK: number
  readonly heatCapacity_J_per_kgK: number
  readonly expansion_1_per_K: number
  /** How deep one pour may be before it cooks itself. */
  readonly deepestPour_mm: number
  readonly source: string
  readonly where: string
}

const guess = 'depth of pour: common practice, no source; values not named: from memory, not opened'

export const resins: readonly Resin[] = [
  {
    name: 'polyester',
    softening_degC: 67,
    softeningSpread_K: 10,
    density_kg_per_m3: 1200,
    thermalConductivity_W_per_mK: 0.2,
    thermalConductivitySpread_W_per_mK: 0.05,
    heatCapacity_J_per_kgK: 1500,
    expansion_1_per_K: 100e-6,
    deepestPour_mm: 15,
    source: 'polyester-casting',
    where: `heat distortion 67.3 °C of the pure casting; density 1.17–1.26 g/cm³ and 1.26–2.30 J/(g·K) netzsch-up, whose 0.3–0.7 W/(m·K) is of moulding compounds; ${guess}`,
  },
  {
    name: 'vinyl ester',
    softening_degC: 100,
    softeningSpread_K: 15,
    density_kg_per_m3: 1140,
    thermalConductivity_W_per_mK: 0.19,
    thermalConductivitySpread_W_per_mK: 0.05,
    heatCapacity_J_per_kgK: 1500,
    expansion_1_per_K: 65e-6,
    deepestPour_mm: 10,
    source: 'resin-temperature',
    where: `use up to 90–150 °C after hot cure, low end taken and 10 K added; ${guess}`,
  },
  {
    name: 'epoxy',
    softening_degC: 55,
    softeningSpread_K: 10,
    density_kg_per_m3: 1150,
    thermalConductivity_W_per_mK: 0.19,
    thermalConductivitySpread_W_per_mK: 0.04,
    heatCapacity_J_per_kgK: 1400,
    expansion_1_per_K: 65e-6,
    deepestPour_mm: 20,
    source: 'machine-conductivities',
    where: `conductivity of unfilled epoxy, table 3; softening of a room-temperature cure: common practice, no source (80 °C and more after heating); ${guess}`,
  },
  {
    name: 'epoxy, silica filled',
    softening_degC: 60,
    softeningSpread_K: 12,
    density_kg_per_m3: 1600,
    thermalConductivity_W_per_mK: 0.5,
    thermalConductivitySpread_W_per_mK: 0.25,
    heatCapacity_J_per_kgK: 1200,
    expansion_1_per_K: 40e-6,
    deepestPour_mm: 40,
    source: 'machine-conductivities',
    where: `0.3 W/(m·K) lightly filled to above 1 with special filler, table 3; ${guess}`,
  },
]
