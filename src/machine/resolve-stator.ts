/** The stator of a design in SI: wire, what holds it, and how it is connected. */
import { plastics } from '../data/plastic.ts'
import { resins } from '../data/resin.ts'
import type { Design } from './design.ts'
import type { Rotor, Stator } from './machine.ts'
import { resolveMetalPart } from './resolve-metal-part.ts'
import { resolveWinding } from './resolve-winding.ts'
import { resolveWire } from './resolve-wire.ts'
import { celsius, si, siOr } from './si.ts'

/** Specific heat of printing plastics [J/(kg·K)], 1.2 to 1.9 kJ: from memory, not opened. */
const plasticHeat = 1500

export function resolveStator(design: Design['stator'], rotor: Rotor): Stator {
  const plastic = plastics.find(({ name }) => name === design.support)
  const resin = resins.find(({ name }) => name === design.support)
  return {
    winding: resolveWinding(design.winding, rotor),
    wire: resolveWire(design.wire),
    connection: design.connection,
    leadLength: si(design.leadLength_m, 'm'),
    jointResistance: si(design.jointResistance_mohm, 'mohm'),
    support: {
      name: design.support,
      softening: celsius(plastic?.softening_degC ?? resin!.softening_degC),
      conductivity: plastic?.thermalConductivity_W_per_mK ?? resin!.thermalConductivity_W_per_mK,
      density: plastic?.density_kg_per_m3 ?? resin!.density_kg_per_m3,
      heatCapacity: resin?.heatCapacity_J_per_kgK ?? plasticHeat,
      cast: resin !== undefined,
    },
    thermalResistance: siOr(design.thermalResistance_K_per_W, 'K_per_W'),
    mounting:
      design.mounting === undefined
        ? undefined
        : { radius: si(design.mounting.radius_mm, 'mm'), count: design.mounting.count },
    metalParts: design.metalParts.map(resolveMetalPart),
  }
}
