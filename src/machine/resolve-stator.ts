/** The stator of a design in SI: wire, what holds it, and how it is connected. */
import { conductors } from '../data/conductor.ts'
import { insulationClasses } from '../data/insulation-class.ts'
import { plastics } from '../data/plastic.ts'
import { resins } from '../data/resin.ts'
import { nominal } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'
import type { Design } from './design.ts'
import type { Rotor, Stator } from './machine.ts'
import { resolveWinding } from './resolve-winding.ts'
import { celsius, row, si, siOr } from './si.ts'
import { enamelledDiameter_mm, gauge } from './wire-size.ts'

export function resolveStator(design: Design['stator'], rotor: Rotor): Stator {
  const { wire } = design
  const diameter_mm = typeof wire.size === 'string' ? gauge(wire.size)! : nominal(wire.size)
  const copper = row(conductors, 'copper')
  const insulation = row(insulationClasses, wire.insulationClass)
  const plastic = plastics.find(({ name }) => name === design.support)
  const resin = resins.find(({ name }) => name === design.support)
  return {
    winding: resolveWinding(design.winding, rotor),
    wire: {
      diameter: toSi(diameter_mm, unit('mm')),
      enamelledDiameter: toSi(enamelledDiameter_mm(diameter_mm, wire.enamelGrade as 1 | 2), unit('mm')),
      strands: wire.strands,
      resistivity: copper.resistivity_ohm_mm2_per_m * 1e-6,
      temperatureCoefficient: copper.temperatureCoefficient_1_per_K,
      density: copper.density_kg_per_m3,
      insulationClass: insulation.name,
      highestTemperature: celsius(insulation.limit_degC),
      reelLength: siOr(wire.reelLength_m, 'm'),
      pricePerKilogram: wire.price_per_kg === undefined ? undefined : nominal(wire.price_per_kg),
    },
    connection: design.connection,
    leadLength: si(design.leadLength_m, 'm'),
    jointResistance: si(design.jointResistance_mohm, 'mohm'),
    support: {
      name: design.support,
      softening: celsius(plastic?.softening_degC ?? resin!.softening_degC),
      conductivity: plastic?.thermalConductivity_W_per_mK ?? resin!.thermalConductivity_W_per_mK,
    },
    thermalResistance: siOr(design.thermalResistance_K_per_W, 'K_per_W'),
  }
}
