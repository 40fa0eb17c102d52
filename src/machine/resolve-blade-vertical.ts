/** Blades of an upright rotor in SI. */
import { strutShapes } from '../data/strut.ts'
import { nominal } from '../units/quantity.ts'
import { ownPolars, ownSection } from './blade-polar.ts'
import type { Design } from './design.ts'

import { row, si } from './si.ts'
import type { VerticalBlades } from './vertical-blades.ts'

type VerticalDesign = Extract<Design['blades'], { kind: 'straight-blade' | 'drag-rotor' }>

export function resolveVerticalBlades(design: VerticalDesign): VerticalBlades {
  const radius = si(design.diameter_m, 'm') / 2
  const height = si(design.height_m, 'm')
  if (design.kind === 'drag-rotor')
    return {
      kind: 'drag-rotor',
      radius,
      height,
      buckets: design.bucketCount === 'two' ? 2 : 3,
      usualOverlap: design.overlap === 'a tenth to a sixth',
      storeys: design.storeys === 'one' ? 1 : 2,
    }
  return {
    kind: 'straight-blade',
    radius,
    height,
    bladeCount: design.bladeCount,
    chord: si(design.chord_mm, 'mm'),
    pitch: si(design.pitch_deg, 'deg'),
    mount: nominal(design.mountAt),
    section: design.section,
    ownPolars: design.section === ownSection ? ownPolars(design.polar) : undefined,
    struts: {
      count: design.strutsPerBlade * design.bladeCount,
      thickness: si(design.strutThickness_mm, 'mm'),
      dragCoefficient: row(strutShapes, design.strutShape).dragCoefficient,
    },
  }
}
