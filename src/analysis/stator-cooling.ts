/** Way of the heat from the copper to the air: an estimate from the machine's own geometry, face by face. */
import type { Machine } from '../machine/machine.ts'
import { airProperties } from '../physics/heat/air-properties.ts'
import { annulusNusselt, annulusTaylorNumber } from '../physics/heat/annulus-convection.ts'
import { combinedNusselt, heatTransferCoefficient } from '../physics/heat/forced-convection.ts'
import {
  horizontalCylinderNusselt,
  rayleighNumber,
  verticalPlateNusselt,
} from '../physics/heat/free-convection.ts'
import { radiationCoefficient, radiationExchangeFactor } from '../physics/heat/radiation.ts'
import { rotatingDiscNusselt } from '../physics/heat/rotating-convection.ts'
import { levelAbove } from './air-gap-field.ts'
import { drawnGap } from './concern/gap-stack.ts'
import { type ConductorLayout, coilFormOf } from './conductor-layout.ts'

/** Half-width at 90 % of an estimated thermal resistance, as a share: no measured home-cast stator was found. */
export const thermalSpread = 0.5

/** Printed, cast and varnished surfaces: common practice, no source. */
const emissivity = 0.9

/** Thickness of resin or plastic over the copper on each face [m]: common practice, no source. */
const coverThickness = 1e-3

/** Least air across which a gap is taken to conduct [m]: a gap drawn closed is another concern's matter. */
const leastGap = 3e-4

/** Film temperature step for which free convection is taken [K]; it enters by its fourth root. */
const typicalStep = 40

/**
 * What a face of the winding looks at. still: the open air. disc: a magnet disc that turns before it. drum: the
 * magnet drum across a narrow ring of air. plate: steel that may stand still.
 */
type Opposite =
  | { readonly kind: 'still' }
  | { readonly kind: 'disc' | 'drum' | 'plate'; readonly gap: number }

interface Face {
  /** [m²] */
  readonly area: number
  /** Along which the air rises on a face in still air [m]; a drum's is its diameter. */
  readonly height: number
  /** Radius of a ring of air before it [m]; on a disc unused. */
  readonly radius: number
  readonly opposite: Opposite
}

/** Length of the winding along the shaft (drum) or the radius (disc), and the share of the circle it covers. */
function windingBand(machine: Machine): { readonly length: number; readonly width: number } {
  const { winding } = machine.stator
  // the layers of a serpentine's phases lie on each other: two faces all round, whatever their number
  if (winding.kind === 'serpentine')
    return { length: winding.runLength + 2 * winding.crownHeight, width: Number.POSITIVE_INFINITY }
  const { extent } = coilFormOf(machine, winding)
  return { length: extent.length, width: winding.coilCount * extent.width }
}

/** The face towards the (lower) magnets and the one away from them. */
function windingFaces(machine: Machine, layout: ConductorLayout): readonly [near: Face, far: Face] {
  const { rotor, stator } = machine
  const { length, width } = windingBand(machine)
  const drawn = drawnGap(machine)
  const air = (gap: number) => Math.max(gap - coverThickness, leastGap)
  const distances = layout.shapes.map(({ distance }) => distance)
  const half = stator.winding.bundleDepth / 2
  if (rotor.arrangement === 'drum') {
    const face = (distance: number, opposite: Opposite): Face => {
      const radius = Math.max(levelAbove(machine, distance), leastGap)
      return { area: Math.min(width, 2 * Math.PI * radius) * length, height: 2 * radius, radius, opposite }
    }
    return [
      face(Math.min(...distances) - half, { kind: 'drum', gap: air(drawn.inner) }),
      face(Math.max(...distances) + half, { kind: 'still' }),
    ]
  }
  const radius = stator.winding.kind === 'coils' ? stator.winding.centreRadius : rotor.pitchRadius
  const area = Math.min(width, 2 * Math.PI * radius) * length
  const face = (opposite: Opposite): Face => ({ area, height: length, radius, opposite })
  const beyond = drawn.outer === undefined ? undefined : air(drawn.outer)
  return [
    face({ kind: 'disc', gap: air(drawn.inner) }),
    face(
      rotor.arrangement === 'two-discs' && beyond !== undefined
        ? { kind: 'disc', gap: beyond }
        : rotor.opposite !== undefined && beyond !== undefined
          ? { kind: 'plate', gap: beyond }
          : { kind: 'still' },
    ),
  ]
}

/**
 * Coefficient of a face against the air of the site, by speed [W/(m²·K)].
 *
 * A face in still air: free convection and radiation. A face before a rotor: across the gap into the rotor, taken
 * as of one temperature, and from the rotor's other side, of like area, into still air. Discs also pump air
 * through their gap, which is open at the rim: the coefficient of a free turning disc, known there within a third
 * to a half. Wind over the case is left out, on the safe side.
 */
function faceCoefficient(machine: Machine, face: Face): (speed: number) => number {
  const { ambient } = machine.site
  const film = ambient + typicalStep / 2
  const air = airProperties({ temperature: film })
  const coefficient = (nusselt: number, length: number) =>
    heatTransferCoefficient({ nusselt, conductivity: air.conductivity, length })
  const shone = (factor: number) =>
    radiationCoefficient({ surface: ambient + typicalStep, surroundings: ambient, emissivity: factor })
  const rayleigh = rayleighNumber({
    temperatureDifference: typicalStep,
    length: face.height,
    expansion: 1 / film,
    kinematicViscosity: air.kinematicViscosity,
    diffusivity: air.diffusivity,
  })
  // a drum lies across the shaft's direction, a disc stands
  const nusselt = machine.rotor.arrangement === 'drum' ? horizontalCylinderNusselt : verticalPlateNusselt
  const still = coefficient(nusselt({ rayleigh, prandtl: air.prandtl }), face.height) + shone(emissivity)
  const { opposite } = face
  if (opposite.kind === 'still') return () => still
  const { gap } = opposite
  const across = shone(radiationExchangeFactor({ first: emissivity, second: emissivity }))
  const through = (number: number) => 1 / (1 / (coefficient(number, 2 * gap) + across) + 1 / still)
  if (opposite.kind === 'plate') return () => through(annulusNusselt(0))
  if (opposite.kind === 'drum') {
    // vortices form only where the inner wall turns
    const vortices = machine.rotor.windingSide === 'outside'
    const innerRadius = Math.max(face.radius - gap, gap)
    return (speed) => {
      const number = { speed, innerRadius, width: gap, kinematicViscosity: air.kinematicViscosity }
      return through(annulusNusselt(vortices ? annulusTaylorNumber(number) : 0))
    }
  }
  const quiet = through(annulusNusselt(0))
  const radius = machine.rotor.pitchRadius + machine.rotor.magnet.length / 2
  return (speed) => {
    const reynolds = (speed * radius ** 2) / air.kinematicViscosity
    const pumped = coefficient(rotatingDiscNusselt({ reynolds, prandtl: air.prandtl }), radius)
    return combinedNusselt({ free: quiet, forced: pumped })
  }
}

export interface StatorCooling {
  /** Copper to air at a speed [K/W]. */
  readonly resistance: (speed: number) => number
  /** Half-width at 90 %, as a share; 0 where a heat run gave the number. */
  readonly spread: number
}

/** Both faces side by side, each behind its cover. `factor` scales an estimated resistance; a measured one stands. */
export function statorCooling(machine: Machine, layout: ConductorLayout, factor = 1): StatorCooling {
  const measured = machine.stator.thermalResistance
  if (measured !== undefined) return { resistance: () => measured, spread: 0 }
  const cover = coverThickness / machine.stator.support.conductivity
  const faces = windingFaces(machine, layout).map((face) => ({
    area: face.area,
    coefficient: faceCoefficient(machine, face),
  }))
  return {
    resistance: (speed) => {
      const turning = Math.max(speed, 0)
      let conductance = 0
      for (const { area, coefficient } of faces) conductance += area / (cover + 1 / coefficient(turning))
      return factor / conductance
    },
    spread: thermalSpread,
  }
}
