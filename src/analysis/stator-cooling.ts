/** Way of the heat from the copper to the air: an estimate from the machine's own geometry. */

import { coilExtent } from '../geometry/coil-outline.ts'
import type { Machine } from '../machine/machine.ts'
import { airProperties } from '../physics/heat/air-properties.ts'
import { slabConductance } from '../physics/heat/conduction.ts'
import { combinedNusselt, heatTransferCoefficient } from '../physics/heat/forced-convection.ts'
import { rayleighNumber, verticalPlateNusselt } from '../physics/heat/free-convection.ts'
import { radiationCoefficient } from '../physics/heat/radiation.ts'
import { rotatingCylinderNusselt, rotatingDiscNusselt } from '../physics/heat/rotating-convection.ts'
import { levelAbove } from './air-gap-field.ts'
import { type ConductorLayout, coilOutline } from './conductor-layout.ts'

/** Half-width at 90 % of an estimated thermal resistance, as a share: no measured home-cast stator was found. */
export const thermalSpread = 0.5

/** Printed, cast and varnished surfaces: common practice, no source. */
const emissivity = 0.9

/** Thickness of resin or plastic over the copper on each face [m]: common practice, no source. */
const coverThickness = 1e-3

/** Film temperature step for which free convection is taken [K]; it enters by its fourth root. */
const typicalStep = 40

interface Surface {
  /** Both faces together [m²]. */
  readonly area: number
  /** Along which the air rises [m]. */
  readonly height: number
  /** Radius at which the rotor sweeps the air [m]. */
  readonly radius: number
}

function windingSurface(machine: Machine, layout: ConductorLayout): Surface {
  const { winding } = machine.stator
  const drum = machine.rotor.arrangement === 'drum'
  if (winding.kind === 'serpentine') {
    const length = winding.runLength + 2 * winding.crownHeight
    const radius = drum ? levelAbove(machine, layout.shapes[0]!.distance) : machine.rotor.pitchRadius
    // the layers of the phases lie on each other: two faces, whatever their number
    return { area: 2 * 2 * Math.PI * radius * length, height: length, radius }
  }
  const outline = coilOutline(machine, winding)
  const extent = coilExtent(outline, winding.legWidth)
  const band = Math.min(winding.coilCount * extent.width, 2 * Math.PI * winding.centreRadius)
  return {
    area: 2 * band * extent.length,
    height: extent.length,
    radius: drum ? levelAbove(machine, winding.distance) : winding.centreRadius + extent.length / 2,
  }
}

/** Coefficient at the surface, free and rotor-driven convection combined, with radiation [W/(m²·K)]. */
function surfaceCoefficient(machine: Machine, surface: Surface, speed: number): number {
  const ambient = machine.site.ambient
  const film = ambient + typicalStep / 2
  const air = airProperties({ temperature: film })
  const free = verticalPlateNusselt({
    rayleigh: rayleighNumber({
      temperatureDifference: typicalStep,
      length: surface.height,
      expansion: 1 / film,
      kinematicViscosity: air.kinematicViscosity,
      diffusivity: air.diffusivity,
    }),
    prandtl: air.prandtl,
  })
  const coefficient = (nusselt: number, length: number) =>
    heatTransferCoefficient({ nusselt, conductivity: air.conductivity, length })
  const freely = coefficient(free, surface.height)
  const radiated = radiationCoefficient({ surface: ambient + typicalStep, surroundings: ambient, emissivity })
  if (speed <= 0) return freely + radiated
  const reynolds = (speed * surface.radius ** 2) / air.kinematicViscosity
  const forced =
    machine.rotor.arrangement === 'drum'
      ? coefficient(
          rotatingCylinderNusselt({ reynolds: 2 * reynolds, prandtl: air.prandtl }),
          2 * surface.radius,
        )
      : coefficient(rotatingDiscNusselt({ reynolds, prandtl: air.prandtl }), surface.radius)
  return combinedNusselt({ free: freely, forced }) + radiated
}

export interface StatorCooling {
  /** Copper to air at a speed [K/W]. */
  readonly resistance: (speed: number) => number
  /** Half-width at 90 %, as a share; 0 where a heat run gave the number. */
  readonly spread: number
}

/** `factor` scales an estimated resistance; a measured one stands. */
export function statorCooling(machine: Machine, layout: ConductorLayout, factor = 1): StatorCooling {
  const measured = machine.stator.thermalResistance
  if (measured !== undefined) return { resistance: () => measured, spread: 0 }
  const surface = windingSurface(machine, layout)
  const { conductivity } = machine.stator.support
  const cover = 1 / slabConductance({ conductivity, area: surface.area, thickness: coverThickness })
  return {
    resistance: (speed) =>
      factor * (cover + 1 / (surfaceCoefficient(machine, surface, speed) * surface.area)),
    spread: thermalSpread,
  }
}
