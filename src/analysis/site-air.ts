/** Density of the air at a site: as the document says, else by altitude and temperature. */
import type { Site } from '../machine/machine.ts'
import { airDensityAtAltitude } from '../physics/aerodynamics/air-density.ts'

/** ρ [kg/m³]. */
export const siteAirDensity = ({ airDensity, altitude, ambient }: Site): number =>
  airDensity ?? airDensityAtAltitude({ altitude, temperature: ambient })
