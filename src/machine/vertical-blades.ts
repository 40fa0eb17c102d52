/** Blades of an upright rotor in SI. */
import type { OwnPolar } from './machine.ts'

/** Blades of a rotor with an upright axis; R is the radius of their circle, H their height [m]. */
export type VerticalBlades =
  | {
      readonly kind: 'straight-blade'
      readonly radius: number
      readonly height: number
      readonly bladeCount: number
      readonly chord: number
      /** Positive: leading edge outward [rad] */
      readonly pitch: number
      /** Mounting from the leading edge, over the chord. */
      readonly mount: number
      readonly section: string
      readonly ownPolars: readonly OwnPolar[] | undefined
      /** Arms in all, their thickness [m], drag on it. */
      readonly struts: {
        readonly count: number
        readonly thickness: number
        readonly dragCoefficient: number
      }
    }
  | {
      readonly kind: 'drag-rotor'
      readonly radius: number
      readonly height: number
      readonly buckets: 2 | 3
      /** Overlap of a tenth to a sixth of the bucket. */
      readonly usualOverlap: boolean
      readonly storeys: 1 | 2
    }
