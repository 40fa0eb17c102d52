/** Area that the blades sweep, seen from the wind. */
import type { Blades } from './machine.ts'

/** A circle for an axis along the wind, height times diameter for an upright one [m²]. */
export const sweptArea = (blades: Blades): number =>
  'height' in blades ? 2 * blades.radius * blades.height : Math.PI * blades.radius ** 2
