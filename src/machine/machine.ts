/** The machine in SI units, grades and gauges looked up: what every computation starts from. */

import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'
import type { StrandSection } from '../physics/electrics/strand-section.ts'
import type { CoilHole } from './coil-shape/index.ts'
import type { Design } from './design.ts'
import type { MeasuredPolarization } from './magnet-measurement.ts'
import type { Tolerances } from './resolve-tolerance.ts'
import type { SafetyClass } from './safety-class.ts'
import type { Carrier, Shaft } from './shaft-side.ts'
import type { Converter, Diode, Load, Protection, Wiring } from './supply-side.ts'
import type { VerticalBlades } from './vertical-blades.ts'

export interface Site {
  /** Mean wind at `measuredHeight` [m/s]. */
  readonly meanWind: number
  readonly measuredHeight: number
  readonly hubHeight: number
  readonly shearExponent: number
  readonly weibullShape: number
  /** Averaging time of the readings [s]; undefined where it is not said. */
  readonly averaging: number | undefined
  /** σ/v̄ within ten minutes; undefined where it is not known. */
  readonly turbulenceIntensity: number | undefined
  /** Mean wind by month at `measuredHeight`, January first [m/s]; undefined where months are not known. */
  readonly monthlyMean: readonly number[] | undefined
  /** Measured frequencies: width of the bins [m/s] and what each counts; undefined for the Weibull distribution. */
  readonly windHistogram: { readonly binWidth: number; readonly count: readonly number[] } | undefined
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
  /** The maker's own section, Reynolds numbers and angles [rad] rising; undefined for one of the house. */
  readonly ownPolars: readonly OwnPolar[] | undefined
  readonly bladeCount: number
  /** Of one blade, weighed [kg]. */
  readonly mass?: number | undefined
}

/** Lift and drag of one section at one Reynolds number, as the document tells them. */
export interface OwnPolar {
  readonly reynolds: number
  /** [rad], [1], [1] */
  readonly rows: readonly { readonly angle: number; readonly lift: number; readonly drag: number }[]
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
      readonly mass?: number | undefined
      readonly points: readonly { readonly tipSpeedRatio: number; readonly powerCoefficient: number }[]
    }
  | VerticalBlades

/** What the edges alone do not tell of a magnet. */
export type MagnetShape =
  | { readonly kind: 'block' }
  /** Round, its axis along the magnetisation. */
  | { readonly kind: 'disc' }
  /** Angle covered [rad]; on a drum every part magnetised along its radius, or all along the middle one. */
  | { readonly kind: 'arc'; readonly span: number; readonly parallel: boolean }
  /** Edges along the circumference at the ends nearer and farther from the shaft [m]. */
  | { readonly kind: 'wedge'; readonly innerWidth: number; readonly outerWidth: number }

export interface MagnetMaterial {
  /** Remanence at 20 °C and its half-width at 90 % [T]. */
  readonly remanence: number
  readonly remanenceSpread: number
  readonly recoilPermeability: number
  /** Reversible change of remanence with temperature [1/K]. */
  readonly temperatureCoefficient: number
}

export interface Magnet extends MagnetMaterial {
  readonly shape: MagnetShape
  /** Largest edges along shaft (drum) or radius (disc), along the circumference, along the magnetisation [m]. */
  readonly length: number
  readonly width: number
  readonly thickness: number
  /** [m³] */
  readonly volume: number
  /** What the readings on loose magnets make of the label; the remanence is theirs then. */
  readonly measured: MeasuredPolarization | undefined
  /** Remanence at 20 °C that grade or document give [T]. */
  readonly labelRemanence: number
  /** Grade, undefined where only a remanence is known. */
  readonly grade: string | undefined
  /** Highest working temperature of the grade [K]; undefined where no grade is named. */
  readonly highestTemperature: number | undefined
  /** [kg/m³] */
  readonly density: number
}

/** One place of a ring: the magnet there as it is. */
export interface MagnetPlace {
  /** +1 north towards the winding (outward on a drum wound outside). */
  readonly sense: 1 | -1
  /** Remanence over that of its material; 0 for a missing magnet. */
  readonly strength: number
  /** Beside its place, about the shaft [rad]. */
  readonly shift: number
  /** Undefined where it is the rotor's own. */
  readonly material: MagnetMaterial | undefined
}

/** Steel behind the magnets or beyond the winding. */
export interface Iron {
  readonly thickness: number
  /** Name of the steel. */
  readonly steel: string
  /** Of a plate [m]; undefined where it reaches past the magnets. */
  readonly innerRadius: number | undefined
  readonly outerRadius: number | undefined
}

export interface Retention {
  readonly kind: 'glue' | 'pocket' | 'band'
  /** [m] */
  readonly wall: number
  /** Stress that the wall's material may carry for years [Pa]. */
  readonly allowableStress: number
  readonly material: string
  /** [kg/m³] and [Pa] */
  readonly density: number
  readonly modulus: number
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
  /** To the centre of each magnet [m]. */
  readonly pitchRadius: number
  readonly magnet: Magnet
  /** Magnets set end to end in a pole, their magnetisation turned step by step; 1 as usual. */
  readonly piecesPerPole: number
  /** Place by place, one ring, or two for two discs. */
  readonly rings: readonly (readonly MagnetPlace[])[]
  /** Senses of the first ring, by position. */
  readonly sequence: readonly (1 | -1)[]
  /** True when the magnets are alike and simply alternate, so that half-wave symmetry holds. */
  readonly alternating: boolean
  readonly cover: number
  readonly retention: Retention
  /** Steel behind the magnets, undefined for none. */
  readonly backIron: Iron | undefined
  /** Magnet face to the face or plate opposite [m], undefined for none. */
  readonly faceDistance: number | undefined
  /** Plain steel plate opposite a single disc, `faceDistance` from its magnets. */
  readonly opposite: Iron | undefined
  /** Radius up to which a hub clamps the discs [m]; undefined where it is not said. */
  readonly hubRadius: number | undefined
  /** Plastic or wood that carries the magnets where no steel does; undefined where it is not said. */
  readonly carrier: Carrier | undefined
  /** Drum only: steel beyond the winding, `distance` from the magnet faces [m]. */
  readonly sleeve: (Iron & { readonly distance: number; readonly turns: boolean }) | undefined
}

export interface SerpentinePhase {
  /** Mechanical angle [rad]. */
  readonly offset: number
  /** Magnet face to bundle middle [m]. */
  readonly distance: number
  /** Of the crowns off the level of the runs, away from the magnets [m]. */
  readonly crownLift: number
  readonly sense: 1 | -1
}

export interface SerpentineWinding {
  readonly kind: 'serpentine'
  readonly turns: number
  readonly runLength: number
  readonly slant: number
  readonly crownHeight: number
  readonly crown: 'half-ellipse' | 'rounded corners'
  /** Of a crown's rounded corners; undefined for as large as they fit. */
  readonly cornerRadius: number | undefined
  readonly bundleWidth: number
  /** Of one layer [m]. */
  readonly bundleDepth: number
  /** Of each phase, in series, the first at the phase's distance. */
  readonly layers: number
  readonly layerPitch: number
  readonly phases: readonly SerpentinePhase[]
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
  /** Of the first coil about the shaft [rad]. */
  readonly offset: number
  readonly centreRadius: number
  readonly parallelGroups: number
  /** Coils of each group of a phase; undefined where the groups are alike. */
  readonly groupCoils: readonly number[] | undefined
  readonly reversedCoils: readonly number[]
  readonly reversedPhases: readonly number[]
}

export type Winding = SerpentineWinding | CoilWinding

export type WireShape =
  | { readonly kind: 'round'; readonly diameter: number; readonly outerDiameter: number }
  | {
      readonly kind: 'strip'
      readonly width: number
      readonly thickness: number
      readonly edgeRadius: number
      readonly outerWidth: number
      readonly outerThickness: number
      /** The thin side faces the magnets. */
      readonly edgewise: boolean
    }

export interface Wire {
  readonly shape: WireShape
  /** Metal of one strand. */
  readonly section: StrandSection
  /** Of the bare round wire; of a strip that of round wire with as much copper [m]. */
  readonly diameter: number
  readonly strands: number
  /** ρ at 20 °C [Ω·m], its coefficient [1/K], density [kg/m³]. */
  readonly resistivity: number
  readonly temperatureCoefficient: number
  readonly density: number
  /** Copper and enamel of one strand [kg/m]. */
  readonly massPerLength: number
  readonly insulationClass: string
  readonly highestTemperature: number
  readonly reelLength: number | undefined
  readonly pricePerKilogram: number | undefined
}

interface MetalPartCommon {
  readonly material: string
  /** ρ at 20 °C [Ω·m] */
  readonly resistivity: number
  readonly relativePermeability: number
}

/** Metal that stands still near the magnets, on the side of the winding. */
export type MetalPart =
  | (MetalPartCommon & {
      /** A plate, or one that goes all round as a ring. */
      readonly kind: 'plate' | 'ring'
      readonly thickness: number
      /** Magnet faces to its near side [m]. */
      readonly distance: number
      /** Along the magnets' length, their middles together [m]. */
      readonly length: number
      /** Angle about the shaft that it covers [rad]. */
      readonly covers: number
    })
  | (MetalPartCommon & {
      readonly kind: 'bolt'
      readonly diameter: number
      readonly length: number
      readonly axis: 'through' | 'along'
      /** Magnet faces to its middle, and its middle beside that of the magnets' length [m]. */
      readonly distance: number
      readonly offset: number
      readonly count: number
    })

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
    /** [kg/m³] and [J/(kg·K)] */
    readonly density: number
    readonly heatCapacity: number
    /** A resin between the wires; a plastic only carries them and leaves air there. */
    readonly cast: boolean
  }
  /** From a heat run [K/W]. */
  readonly thermalResistance: number | undefined
  /** Studs or screws that hold it: their circle's radius [m] and their number; undefined where it is not said. */
  readonly mounting: { readonly radius: number; readonly count: number } | undefined
  readonly metalParts: readonly MetalPart[]
}

/** What is wrong with the winding on purpose; nothing in a sound machine. */
export interface WindingDefects {
  /** Coils, counted from 1, with so many of their turns closed on themselves. */
  readonly shortedTurns: readonly { readonly coil: number; readonly turns: number }[]
  /** Phases, counted from 1, with so many strands in hand broken. */
  readonly openStrands: readonly { readonly phase: number; readonly strands: number }[]
  readonly reversedCoils: readonly number[]
  readonly reversedPhases: readonly number[]
  readonly swappedPhases: readonly (readonly [number, number])[]
  /** Diodes that never conduct, or conduct both ways. */
  readonly diodeFaults: readonly DiodeFault[]
  /** Stator out of square: half the difference of the gaps [m] and the angle of the narrow side [rad]. */
  readonly tilt: { readonly amplitude: number; readonly angle: number } | undefined
}

export interface Machine {
  readonly name: string
  readonly safetyClass: SafetyClass
  readonly site: Site
  readonly blades: Blades
  readonly protection: Protection
  readonly shaft: Shaft
  readonly rotor: Rotor
  readonly stator: Stator
  readonly cable: {
    readonly length: number
    readonly area: number
    readonly place: 'before bridge' | 'after bridge'
    /** Resistance of one conductor over the route at 20 °C [Ω]. */
    readonly conductorResistance: number
    /** Put into the direct-current line on purpose [Ω]. */
    readonly seriesResistance: number
  }
  readonly diode: Diode
  readonly converter: Converter | undefined
  readonly load: Load
  readonly wiring: Wiring
  readonly defects: WindingDefects
  readonly tolerances: Tolerances
  /** The document behind it, defaults filled in: for the checks that ask what was said and how it is known. */
  readonly design: Design
}
