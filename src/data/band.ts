/** What bands that hold magnets are wound of, strong along their thread. */
import type { Plastic } from './plastic.ts'

/** Strength and stiffness along the thread; a band never pulls across it. */
export type Band = Omit<Plastic, 'quality'>

export const bands: readonly Band[] = [
  {
    name: 'glass fibre in epoxy',
    softening_degC: 60,
    softeningSpread_K: 10,
    density_kg_per_m3: 1800,
    thermalConductivity_W_per_mK: 0.4,
    tensileStrength_MPa: 400,
    acrossLayers_1: 1,
    youngsModulus_GPa: 30,
    expansion_1_per_K: 9e-6,
    source: 'common-practice',
    where:
      'from memory, not opened: threads wound wet by hand fill about four tenths; sheets of pressed ones say 800 MPa and more; softening is that of a resin cured in the cold',
  },
]
