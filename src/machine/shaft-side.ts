/** What carries and guides the rotor, in SI: bearings, shaft, and a printed disc or drum behind the magnets. */

/** Two bearings, the front one at 0, the rear one `spacing` behind; forward, towards the blades, counts [m]. */
export interface Bearings {
  readonly spacing: number
  readonly bladeOverhang: number
  readonly magnetOverhang: number
  readonly bore: number | undefined
  /** C and C0 of one bearing, from its sheet [N]. */
  readonly dynamicRating: number | undefined
  readonly staticRating: number | undefined
  readonly axialPlay: number | undefined
}

export interface Shaft {
  readonly friction: number
  readonly startingFriction: number
  /** J of all that turns [kg·m²]; undefined where it must be estimated. */
  readonly inertia: number | undefined
  /** Of the steel shaft [m]; undefined where it is not said. */
  readonly diameter: number | undefined
  readonly bore: number
  readonly bearings: Bearings | undefined
  readonly key: { readonly width: number; readonly height: number; readonly length: number } | undefined
  /** G, speed of the centre of mass [m/s]; undefined where no target is said. */
  readonly balanceGrade: number | undefined
}

/** A printed disc or drum behind the magnets. */
export interface Carrier {
  readonly material: string
  /** [m] */
  readonly thickness: number
  /** Young's modulus at room temperature [Pa] and where it softens [K]. */
  readonly modulus: number
  readonly softening: number
  /** Linear expansion [1/K]. */
  readonly expansion: number
}
