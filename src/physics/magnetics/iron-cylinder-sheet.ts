/** Answer of a coaxial iron tube to one space harmonic of a magnetic potential, as a charged sheet on its surface. */
import { type ModifiedBessel, modifiedBessel } from '../../numerics/bessel.ts'

/** An iron tube as one harmonic (order m, axial wave number k) sees it. */
export interface TubeWave {
  /** R, the surface towards the magnets [m]. */
  readonly radius: number
  readonly near: ModifiedBessel
  /** At the far surface; undefined in a solid core and where the iron is ideal. */
  readonly far: ModifiedBessel | undefined
}

/** @internal Bessel functions of one harmonic at the near surface of a tube, and at a far radius above zero. */
export const tubeWave = (order: number, k: number, radius: number, farRadius: number): TubeWave => ({
  radius,
  near: modifiedBessel(order, k * radius),
  far: farRadius > 0 ? modifiedBessel(order, k * farRadius) : undefined,
})

/**
 * @internal What a tube of relative permeability μ adds to its sheet's own kernel: z = −Φ(R)/(R s), with Φ the
 * potential on the surface and s the sheet's charge that replaces the iron; 0 for ideal iron. Also the share of the
 * radial flux that enters the near surface, per charge, and of that what leaves the far surface again.
 *
 * Inside the iron Φ = I + τ K (inner tube) or K + τ I (outer), its slope at the far surface 1/μ of the air's there;
 * with Y = Φ′/Φ just outside the near surface, z = 1/(R (Y − k I′/I)) or 1/(R (k K′/K − Y)).
 */
export function tubeReluctance(
  wave: TubeWave,
  k: number,
  permeability: number,
  side: 'inner' | 'outer',
): { readonly reluctance: number; readonly entering: number; readonly leaving: number } {
  const { radius, near, far } = wave
  if (permeability === Number.POSITIVE_INFINITY) return { reluctance: 0, entering: 1, leaving: 0 }
  const inner = side === 'inner'
  const own = inner ? near.slopeI : near.slopeK
  const other = inner ? near.slopeK : near.slopeI
  let T = 0
  let farPotential = 0
  let farSlope = 0
  if (far !== undefined) {
    const ownFar = inner ? far.slopeI : far.slopeK
    const otherFar = inner ? far.slopeK : far.slopeI
    farSlope = ownFar
    const y = ownFar / permeability
    const shrink = inner ? far.lnI - near.lnI : far.lnK - near.lnK
    const grow = inner ? far.lnK - near.lnK : far.lnI - near.lnI
    const mixed = -(ownFar - y) / (otherFar - y)
    T = mixed * Math.exp(shrink - grow)
    farPotential = (Math.exp(shrink) * (1 + mixed)) / (1 + T)
  }
  const Y = (permeability * (own + T * other)) / (1 + T)
  const jump = Y - own
  return {
    reluctance: 1 / (radius * k * Math.abs(jump)),
    entering: Y / jump,
    leaving: (farSlope * farPotential) / jump,
  }
}
