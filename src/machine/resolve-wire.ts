/** The wire of a design in SI: its metal, what it measures over the enamel, and what is left on the reels. */
import { conductors } from '../data/conductor.ts'
import { insulationClasses } from '../data/insulation-class.ts'
import { gauge } from '../data/wire-gauge.ts'
import { roundSection, stripSection } from '../physics/electrics/strand-section.ts'
import { nominal } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'
import type { Design } from './design.ts'
import type { Wire, WireShape } from './machine.ts'
import { celsius, row, si, siOr } from './si.ts'
import { enamelledDiameter_mm } from './wire-size.ts'
import { stripEdgeRadius_mm, stripEnamel_mm } from './wire-strip.ts'

/** Density of the enamel [kg/m³]: polyester and polyamide-imide, from memory; it is a hundredth of the wire's weight. */
const enamelDensity = 1400

function shapeOf(wire: Design['stator']['wire']): WireShape {
  const grade = wire.enamelGrade as 1 | 2
  const mm = (value: number) => toSi(value, unit('mm'))
  const { strip } = wire
  if (strip === undefined) {
    // the document has a size where it has no strip
    const size = wire.size!
    const diameter_mm = typeof size === 'string' ? gauge(size)! : nominal(size)
    return {
      kind: 'round',
      diameter: mm(diameter_mm),
      outerDiameter: mm(enamelledDiameter_mm(diameter_mm, grade)),
    }
  }
  const thickness_mm = nominal(strip.thickness_mm)
  const radius_mm =
    strip.edgeRadius_mm === undefined ? stripEdgeRadius_mm(thickness_mm) : nominal(strip.edgeRadius_mm)
  return {
    kind: 'strip',
    width: si(strip.width_mm, 'mm'),
    thickness: si(strip.thickness_mm, 'mm'),
    edgeRadius: mm(Math.min(radius_mm, thickness_mm / 2)),
    outerWidth: si(strip.width_mm, 'mm') + mm(stripEnamel_mm(grade)),
    outerThickness: si(strip.thickness_mm, 'mm') + mm(stripEnamel_mm(grade)),
    edgewise: strip.lies === 'on edge',
  }
}

/** Enamel around a metre of the wire [m²]. */
function enamelArea(shape: WireShape): number {
  if (shape.kind === 'round') return (Math.PI / 4) * (shape.outerDiameter ** 2 - shape.diameter ** 2)
  const around = 2 * (shape.width + shape.thickness) - (8 - 2 * Math.PI) * shape.edgeRadius
  return (around * (shape.outerThickness - shape.thickness)) / 2
}

export function resolveWire(wire: Design['stator']['wire']): Wire {
  const copper = row(conductors, 'copper')
  const insulation = row(insulationClasses, wire.insulationClass)
  const shape = shapeOf(wire)
  const section =
    shape.kind === 'round'
      ? roundSection(shape.diameter)
      : stripSection({ ...shape, cornerRadius: shape.edgeRadius })
  const massPerLength = section.area * copper.density_kg_per_m3 + enamelArea(shape) * enamelDensity
  const reelMass = siOr(wire.reelMass_g, 'g')
  return {
    shape,
    section,
    diameter: 2 * Math.sqrt(section.area / Math.PI),
    strands: wire.strands,
    resistivity: copper.resistivity_ohm_mm2_per_m * 1e-6,
    temperatureCoefficient: copper.temperatureCoefficient_1_per_K,
    density: copper.density_kg_per_m3,
    massPerLength,
    insulationClass: insulation.name,
    highestTemperature: celsius(insulation.limit_degC),
    reelLength: reelMass === undefined ? siOr(wire.reelLength_m, 'm') : reelMass / massPerLength,
    pricePerKilogram: wire.price_per_kg === undefined ? undefined : nominal(wire.price_per_kg),
  }
}
