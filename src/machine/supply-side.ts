/** What stands behind the winding, in SI: bridge, converter, load, the limiters that are switched, and the wiring. */
import type { ConverterLoss } from '../physics/electrics/converter.ts'
import type { Design } from './design.ts'

export interface Diode {
  readonly kind: string
  readonly threshold: number
  readonly slope: number
  readonly reverseVoltage: number | undefined
  /** Drawn by what switches a synchronous bridge [W]. */
  readonly drive: number
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
      /** Cells in series. */
      readonly cells: number
      /** At rest by state of charge, rising from 0 to 1 [V]. */
      readonly rest: readonly { readonly charge: number; readonly voltage: number }[]
      /** Where its own electronics take it off: above [V], below [K]; undefined where it has none. */
      readonly disconnect: { readonly above: number; readonly below: number } | undefined
    }
  | { readonly kind: 'resistor'; readonly resistance: number }
  | {
      readonly kind: 'heater'
      /** At 20 °C, and at the power on its label [Ω]. */
      readonly cold: number
      readonly hot: number
      readonly ratedPower: number
    }
  | {
      readonly kind: 'lamp'
      readonly lamp: 'filament' | 'LED'
      readonly ratedVoltage: number
      readonly ratedPower: number
    }
  | {
      readonly kind: 'capacitor'
      /** [F], [V], in series [Ω], of what draws on it [Ω]. */
      readonly capacitance: number
      readonly ratedVoltage: number
      readonly resistance: number
      readonly drawn: number
    }
  | { readonly kind: 'open' }

/** Electronics that draw power by speed and pass it on to the battery. */
export interface Converter {
  /** Ω [rad/s] and power drawn [W], Ω rising. */
  readonly curve: readonly { readonly speed: number; readonly power: number }[]
  /** [V], [A], [W] */
  readonly leastInput: number
  readonly greatestInputCurrent: number
  /** That its input bears [V]; undefined where not said. */
  readonly greatestInputVoltage: number | undefined
  readonly standby: number
  readonly loss: ConverterLoss
}

/** The limiters that people or electronics switch, as the document states them. */
export interface Protection {
  readonly mechanical: Design['protection']['mechanical']
  readonly electrical: Design['protection']['electrical']
  /** Wind at which the mechanical limiter acts [m/s]; undefined where not said. */
  readonly actsAt: number | undefined
  readonly short: {
    readonly place: 'at the machine' | 'after the bridge'
    readonly order: 'short, then disconnect' | 'disconnect, then short'
    /** [rad/s]; undefined where somebody must close it. */
    readonly actsAt: number | undefined
  }
  readonly dump:
    | {
        readonly resistance: number
        readonly power: number
        /** Switched at [V]. */
        readonly on: number
        readonly off: number
        readonly place: 'at the battery' | 'behind the bridge'
        readonly withoutPower: 'on' | 'off'
        readonly ownFuse: boolean
      }
    | undefined
}

export interface Wiring {
  /** [A]; undefined where none is known. */
  readonly fuse: number | undefined
  readonly fusePlace: Design['wiring']['fusePlace']
  readonly switchKind: Design['wiring']['switchKind']
  /** [V] */
  readonly switchVoltage: number | undefined
  readonly surroundings: Design['wiring']['surroundings']
  readonly earthing: Design['wiring']['earthing']
}
