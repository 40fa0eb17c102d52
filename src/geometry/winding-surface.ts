/** The surface a winding lies on: the mantle of a drum, or the flat of a disc. */
import { requireFinite, requirePositive } from '../refusal/require.ts'

/** Runs lie along z; `z` is the middle of the winding. Outward normal: away from the axis. */
export interface DrumSurface {
  readonly kind: 'drum'
  readonly radius: number
  readonly z: number
}
/** Runs lie along the radius; `z` is the plane of the winding. Outward normal: +z. */
export interface DiscSurface {
  readonly kind: 'disc'
  readonly meanRadius: number
  readonly z: number
}
export type WindingSurface = DrumSurface | DiscSurface

export function requireWindingSurface(surface: WindingSurface): void {
  if (surface.kind === 'drum') requirePositive('surface.radius', surface.radius, 'm')
  else requirePositive('surface.meanRadius', surface.meanRadius, 'm')
  requireFinite('surface.z', surface.z, 'm')
}
