/** A metal part of a design in SI. */
import { conductors } from '../data/conductor.ts'
import type { Design } from './design.ts'
import type { MetalPart } from './machine.ts'
import { row, si } from './si.ts'

export function resolveMetalPart(part: Design['stator']['metalParts'][number]): MetalPart {
  const metal = row(conductors, part.material)
  const common = {
    material: metal.name,
    resistivity: metal.resistivity_ohm_mm2_per_m * 1e-6,
    relativePermeability: metal.relativePermeability,
  }
  if (part.kind === 'bolt')
    return {
      ...common,
      kind: 'bolt',
      diameter: si(part.diameter_mm, 'mm'),
      length: si(part.length_mm, 'mm'),
      axis: part.axis,
      distance: si(part.distance_mm, 'mm'),
      offset: si(part.offset_mm, 'mm'),
      count: part.count,
    }
  return {
    ...common,
    kind: part.kind,
    thickness: si(part.thickness_mm, 'mm'),
    distance: si(part.distance_mm, 'mm'),
    length: si(part.length_mm, 'mm'),
    covers: part.kind === 'ring' ? 2 * Math.PI : si(part.covers_deg, 'deg'),
  }
}
