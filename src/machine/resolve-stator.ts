/** The stator of a design in SI: wire, what holds it, and how it is connected. */
import { plastics } from '../data/plastic.ts'
import { resins } from '../data/resin.ts'
import type { Design } from './design.ts'
import type { Rotor, Stator } from './machine.ts'
import { resolveMetalPart } from './resolve-metal-part.ts'
import { resolveWinding } from './resolve-winding.ts'
import { resolveWire } from './resolve-wire.ts'
import { celsius, si, siOr } from './si.ts'

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
    },
    thermalResistance: siOr(design.thermalResistance_K_per_W, 'K_per_W'),
    metalParts: design.metalParts.map(resolveMetalPart),
  }
}
