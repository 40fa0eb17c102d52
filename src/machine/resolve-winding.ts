/** The winding of a design in SI. */
import { coilHole } from './coil-shape/index.ts'
import type { Design } from './design.ts'
import type { Rotor, Winding } from './machine.ts'
import { si, siOr } from './si.ts'

export function resolveWinding(design: Design['stator']['winding'], rotor: Rotor): Winding {
  const bundleDepth = si(design.bundleDepth_mm, 'mm')
  if (design.kind === 'serpentine')
    return {
      kind: 'serpentine',
      turns: design.turns,
      runLength: si(design.runLength_mm, 'mm'),
      // a slant of just the pole pitch must not exceed it by the last bit
      slant: Math.min(si(design.slant_deg, 'deg'), Math.PI / rotor.polePairs),
      crownHeight: si(design.crownHeight_mm, 'mm'),
      crown: design.crown,
      cornerRadius: siOr(design.cornerRadius_mm, 'mm'),
      bundleWidth: si(design.bundleWidth_mm, 'mm'),
      bundleDepth,
      layers: design.layers,
      layerPitch: siOr(design.layerPitch_mm, 'mm') ?? bundleDepth,
      phases: design.phases.map((phase) => ({
        offset: si(phase.offset_deg, 'deg'),
        distance: si(phase.distance_mm, 'mm'),
        crownLift: si(phase.crownLift_mm, 'mm'),
        sense: phase.sense === 'reversed' ? -1 : 1,
      })),
    }
  return {
    kind: 'coils',
    coilCount: design.coilCount,
    phaseCount: design.phaseCount,
    turns: design.turns,
    hole: coilHole(design.hole, rotor.poleCount),
    legWidth: si(design.legWidth_mm, 'mm'),
    bundleDepth,
    distance: si(design.distance_mm, 'mm'),
    offset: si(design.offset_deg, 'deg'),
    centreRadius: siOr(design.centreRadius_mm, 'mm') ?? rotor.pitchRadius,
    parallelGroups: design.groupCoils?.length ?? design.parallelGroups,
    groupCoils: design.groupCoils,
    reversedCoils: design.reversedCoils,
    reversedPhases: design.reversedPhases,
  }
}
