/** The machine in SI units, grades and gauges looked up: what every computation starts from. */
import type { Design } from './design.ts'
import type { SafetyClass } from './purpose.ts'

export interface Site {
  /** Mean wind at `measuredHeight` [m/s]. */
  readonly meanWind: number
  readonly measuredHeight: number
  readonly hubHeight: number
  readonly shearExponent: number
  readonly weibullShape: number
  /** ρ [kg/m³]; undefined where it follows from altitude and temperature. */
  readonly airDensity: number | undefined
  readonly altitude: number
  /** [K] */
  readonly ambient: number
  /** [m/s] */
  readonly stormWind: number
}

interface BladeCommon {
  /** R [m] */
  readonly radius: number
  readonly hubRadius: number
  /** β [rad] */
  readonly pitch: number
  readonly section: string
  readonly bladeCount: number
}

export type Blades =
  | (BladeCommon & {
      readonly kind: 'optimum'
      readonly tipSpeedRatio: number
      readonly straightTaper: boolean
    })
  | (BladeCommon & {
      readonly kind: 'stations'
      /** [m], [m], [rad] */
      readonly stations: readonly {
        readonly radius: number
        readonly chord: number
        readonly twist: number
      }[]
    })
  | {
      readonly kind: 'table'
      readonly radius: number
      readonly bladeCount: number | undefined
      readonly points: readonly { readonly tipSpeedRatio: number; readonly powerCoefficient: number }[]
    }

export interface Magnet {
  /** Along shaft (drum) or radius (disc); along the circumference; along the magnetisation [m]. */
  readonly length: number
  readonly width: number
  readonly thickness: number
  /** Remanence at 20 °C and its half-width at 90 % [T]. */
  readonly remanence: number
  readonly remanenceSpread: number
  readonly recoilPermeability: number
  /** Reversible change of remanence with temperature [1/K]. */
  readonly temperatureCoefficient: number
  /** Highest working temperature of the grade [K]; undefined where no grade is named. */
  readonly highestTemperature: number | undefined
  /** [kg/m³] */
  readonly density: number
}

export interface Retention {
  readonly kind: 'glue' | 'pocket' | 'band'
  /** [m] */
  readonly wall: number
  /** Stress that the wall's material may carry for years [Pa]. */
  readonly allowableStress: number
  readonly material: string
  /** Temperature at which that material softens [K]. */
  readonly softening: number
  /** Force per magnet found by test [N]. */
  readonly hold: number | undefined
}

export interface Rotor {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  /** Drum only. */
  readonly windingSide: 'outside' | 'inside'
  readonly poleCount: number
  /** p */
  readonly polePairs: number
  /** To the centre of each block [m]. */
  readonly pitchRadius: number
  readonly magnet: Magnet
  /** +1 north towards the winding (outward on a drum wound outside), by position. */
  readonly sequence: readonly (1 | -1)[]
  /** True when the poles simply alternate, so that half-wave symmetry holds. */
  readonly alternating: boolean
  readonly cover: number
  readonly retention: Retention
  /** Steel behind the magnets [m], undefined for none. */
  readonly backIron: number | undefined
  /** Magnet face to the face or plate opposite [m], undefined for none. */
  readonly faceDistance: number | undefined
  /** Whether a plain steel plate stands opposite (single disc). */
  readonly oppositeSteel: boolean
}

export interface SerpentinePhase {
  /** Mechanical angle [rad]. */
  readonly offset: number
  /** Magnet face to bundle middle [m]. */
  readonly distance: number
  readonly sense: 1 | -1
}

export interface SerpentineWinding {
  readonly kind: 'serpentine'
  readonly turns: number
  readonly runLength: number
  readonly slant: number
  readonly crownHeight: number
  readonly bundleWidth: number
  readonly bundleDepth: number
  readonly phases: readonly SerpentinePhase[]
}

export type CoilHole =
  | { readonly shape: 'round'; readonly diameter: number }
  | {
      readonly shape: 'rectangular'
      readonly width: number
      readonly length: number
      readonly cornerRadius: number
    }
  | {
      readonly shape: 'wedge'
      readonly innerWidth: number
      readonly outerWidth: number
      readonly length: number
      readonly cornerRadius: number
    }

export interface CoilWinding {
  readonly kind: 'coils'
  readonly coilCount: number
  readonly phaseCount: number
  readonly turns: number
  readonly hole: CoilHole
  readonly legWidth: number
  readonly bundleDepth: number
  readonly distance: number
  readonly centreRadius: number
  readonly parallelGroups: number
  readonly reversedCoils: readonly number[]
  readonly reversedPhases: readonly number[]
}

export type Winding = SerpentineWinding | CoilWinding

export interface Wire {
  readonly diameter: number
  readonly enamelledDiameter: number
  readonly strands: number
  /** ρ at 20 °C [Ω·m], its coefficient [1/K], density [kg/m³]. */
  readonly resistivity: number
  readonly temperatureCoefficient: number
  readonly density: number
  readonly insulationClass: string
  readonly highestTemperature: number
  readonly reelLength: number | undefined
  readonly pricePerKilogram: number | undefined
}

export interface Stator {
  readonly winding: Winding
  readonly wire: Wire
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  readonly leadLength: number
  readonly jointResistance: number
  readonly support: {
    readonly name: string
    /** Temperature at which it softens or breaks down [K]. */
    readonly softening: number
    /** [W/(m·K)] */
    readonly conductivity: number
  }
  /** From a heat run [K/W]. */
  readonly thermalResistance: number | undefined
}

export interface Diode {
  readonly kind: string
  readonly threshold: number
  readonly slope: number
  readonly reverseVoltage: number | undefined
}

export type Load =
  | {
      readonly kind: 'battery'
      readonly chemistry: string
      readonly voltage: number
      readonly resistance: number
      /** [C] */
      readonly capacity: number | undefined
      /** Voltage above which it is full and below which it is empty [V]. */
      readonly band: readonly [number, number]
    }
  | { readonly kind: 'resistor'; readonly resistance: number }
  | { readonly kind: 'open' }

export interface Machine {
  readonly name: string
  readonly safetyClass: SafetyClass
  readonly site: Site
  readonly blades: Blades
  readonly protection: Design['protection']
  readonly shaft: { readonly friction: number; readonly startingFriction: number }
  readonly rotor: Rotor
  readonly stator: Stator
  readonly cable: {
    readonly length: number
    readonly area: number
    readonly place: 'before bridge' | 'after bridge'
    /** Resistance of one conductor over the route at 20 °C [Ω]. */
    readonly conductorResistance: number
  }
  readonly diode: Diode
  readonly load: Load
  /** The document behind it, defaults filled in: for the checks that ask what was said and how it is known. */
  readonly design: Design
}
