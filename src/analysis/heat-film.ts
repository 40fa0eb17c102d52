/** What a face gives to the air before it: film coefficients by temperature, speed and wind, with their ranges. */
import type { Machine } from '../machine/machine.ts'
import { airProperties } from '../physics/heat/air-properties.ts'
import {
  annulusNusselt,
  annulusTaylorNumber,
  annulusTaylorRange,
} from '../physics/heat/annulus-convection.ts'
import {
  crossflowCylinderNusselt,
  crossflowCylinderRange,
  flatPlateNusselt,
  flatPlateRange,
  heatTransferCoefficient,
} from '../physics/heat/forced-convection.ts'
import {
  horizontalCylinderNusselt,
  horizontalCylinderRange,
  horizontalPlateDownNusselt,
  horizontalPlateDownRange,
  rayleighNumber,
  verticalPlateNusselt,
  verticalPlateRange,
} from '../physics/heat/free-convection.ts'
import {
  rotatingCylinderNusselt,
  rotatingCylinderRange,
  rotatingDiscInflow,
  rotatingDiscNusselt,
  rotatingDiscRange,
} from '../physics/heat/rotating-convection.ts'

/** What moves the air. */
export interface AirMotion {
  /** Of the shaft [rad/s]. */
  readonly speed: number
  /** That the blades meet [m/s]. */
  readonly wind: number
}

/** One published correlation for one face. `X` is what it depends on. */
export interface Correlation<X> {
  /** As the page tells it. */
  readonly name: string
  /** [W/(m²·K)] */
  readonly coefficient: (x: X) => number
  /** Number that its range is told in, and that range. */
  readonly symbol: string
  readonly number: (x: X) => number
  readonly range: readonly [number, number]
}

/** Air that rises by itself, by how much warmer the face is [K]; air that is moved. They add as cubes. */
export interface Film {
  readonly free: Correlation<number> | undefined
  readonly forced: readonly Correlation<AirMotion>[]
}

/**
 * Part of the wind that still passes the machine behind its hub: the blades have slowed it, the nose parts it. A
 * guess, no source.
 */
export const windShare = 0.5

/** Warmth of a face over the air at which properties of the film are taken [K]. */
export const typicalStep = 40

/** Air across a gap that is drawn closed [m]: that it rubs is another concern's matter. */
export const leastGap = 3e-4

/** Wakes up every correlation for the air of one site. */
export interface SiteFilms {
  /** A standing wall of a height, a lying one of area over perimeter, a lying cylinder of a diameter [m]. */
  readonly wall: (height: number) => Correlation<number>
  readonly underside: (areaOverPerimeter: number) => Correlation<number>
  readonly lyingCylinder: (diameter: number) => Correlation<number>
  /** Layers of still air on one side of the middle of a gap [m]. */
  readonly stillGap: (gap: number) => Correlation<number>
  /** A face that turns: a disc of a radius, a cylinder of a diameter [m]. */
  readonly disc: (radius: number) => Correlation<AirMotion>
  readonly turningCylinder: (diameter: number) => Correlation<AirMotion>
  /** One side of the middle of a ring of air whose inner wall turns [m]. */
  readonly vortices: (innerRadius: number, gap: number) => Correlation<AirMotion>
  /** In the wind: along a face of a length, across a cylinder of a diameter [m]. */
  readonly windAlong: (length: number) => Correlation<AirMotion>
  readonly windAcross: (diameter: number) => Correlation<AirMotion>
  /** Heat that air drawn through the gap before a disc of a radius [m] carries per kelvin [W/K]. */
  readonly drawnThrough: (radius: number) => (motion: AirMotion) => number
}

export function siteFilms({ site }: Pick<Machine, 'site'>): SiteFilms {
  const temperature = site.ambient + typicalStep / 2
  const air = airProperties({ temperature })
  const { kinematicViscosity: ν, prandtl, conductivity } = air
  const over = (nusselt: number, length: number) => heatTransferCoefficient({ nusselt, conductivity, length })
  const rising = (
    name: string,
    nusselt: (number: { readonly rayleigh: number; readonly prandtl: number }) => number,
    length: number,
    range: readonly [number, number],
  ): Correlation<number> => {
    const number = (temperatureDifference: number) =>
      rayleighNumber({
        temperatureDifference,
        length,
        expansion: 1 / temperature,
        kinematicViscosity: ν,
        diffusivity: air.diffusivity,
      })
    return {
      name,
      symbol: 'Ra',
      number,
      range,
      coefficient: tabulated((ΔT) => over(nusselt({ rayleigh: number(ΔT), prandtl }), length)),
    }
  }
  const moved = (
    name: string,
    reynolds: (motion: AirMotion) => number,
    nusselt: (number: { readonly reynolds: number; readonly prandtl: number }) => number,
    { length, range }: { readonly length: number; readonly range: readonly [number, number] },
  ): Correlation<AirMotion> => ({
    name,
    symbol: 'Re',
    number: reynolds,
    range,
    coefficient: (motion) => {
      const number = reynolds(motion)
      return number > 0 ? over(nusselt({ reynolds: number, prandtl }), length) : 0
    },
  })
  const passing = (length: number) => (motion: AirMotion) => (windShare * motion.wind * length) / ν
  return {
    wall: (height) => rising('free, standing wall', verticalPlateNusselt, height, verticalPlateRange),
    underside: (length) =>
      rising('free, lying face', horizontalPlateDownNusselt, length, horizontalPlateDownRange),
    lyingCylinder: (diameter) =>
      rising('free, lying cylinder', horizontalCylinderNusselt, diameter, horizontalCylinderRange),
    stillGap: (gap) => {
      // Nu = 2 over twice the gap from wall to wall: twice that from a wall to the middle
      const coefficient = (annulusNusselt(0) * conductivity) / Math.max(gap, leastGap)
      return {
        name: 'still layers across the gap',
        symbol: 'Ta',
        number: () => 0,
        range: [0, annulusTaylorRange[0]],
        coefficient: () => coefficient,
      }
    },
    disc: (radius) =>
      moved('turning disc', ({ speed }) => (speed * radius ** 2) / ν, rotatingDiscNusselt, {
        length: radius,
        range: rotatingDiscRange,
      }),
    turningCylinder: (diameter) =>
      moved('turning cylinder', ({ speed }) => (speed * diameter ** 2) / (2 * ν), rotatingCylinderNusselt, {
        length: diameter,
        range: rotatingCylinderRange,
      }),
    vortices: (innerRadius, gap) => {
      const width = Math.max(gap, leastGap)
      const number = ({ speed }: AirMotion) =>
        annulusTaylorNumber({ speed, innerRadius, width, kinematicViscosity: ν })
      return {
        name: 'vortices in the ring of air',
        symbol: 'Ta',
        number,
        range: [0, annulusTaylorRange[1]],
        coefficient: (motion) => {
          const Nu = annulusNusselt(number(motion))
          // what exceeds the still layers, so that the cubes of both add up to it
          return Nu > 2 ? (Math.cbrt(Nu ** 3 - 8) * conductivity) / width : 0
        },
      }
    },
    windAlong: (length) =>
      moved('wind along a face', passing(length), flatPlateNusselt, { length, range: flatPlateRange }),
    windAcross: (diameter) =>
      moved('wind across a cylinder', passing(diameter), crossflowCylinderNusselt, {
        length: diameter,
        range: crossflowCylinderRange,
      }),
    drawnThrough: (radius) => {
      const perVolume = air.density * air.heatCapacity
      return ({ speed }) => perVolume * rotatingDiscInflow({ speed, radius, kinematicViscosity: ν })
    },
  }
}

/** Roots of the fourth order of the warmth [K] up to which free coefficients are tabulated, straight between. */
const greatestRoot = 4.5
const tableSteps = 36

/** Free convection goes nearly with the fourth root of the warmth, so a coarse table over that root serves. */
function tabulated(coefficient: (difference: number) => number): (difference: number) => number {
  const table = Float64Array.from({ length: tableSteps + 1 }, (_, k) =>
    coefficient(((k * greatestRoot) / tableSteps) ** 4),
  )
  return (difference) => {
    const x = (Math.sqrt(Math.sqrt(Math.abs(difference))) * tableSteps) / greatestRoot
    const k = Math.min(Math.floor(x), tableSteps - 1)
    return table[k]! + (x - k) * (table[k + 1]! - table[k]!)
  }
}
