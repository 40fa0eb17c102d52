/** Faults of a strip whose sides cannot stand together. */
import { nominal } from '../units/quantity.ts'
import { atMost } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

export function wireFaults({ stator }: Design): Fault[] {
  const { strip } = stator.wire
  if (strip === undefined) return []
  const width = nominal(strip.width_mm)
  const thickness = nominal(strip.thickness_mm)
  return [
    ...atMost('stator.wire.strip.thickness_mm', thickness, width, 'the width, as it is the thinner side'),
    ...(strip.edgeRadius_mm === undefined
      ? []
      : atMost(
          'stator.wire.strip.edgeRadius_mm',
          nominal(strip.edgeRadius_mm),
          Math.min(width, thickness) / 2,
          'half the thickness',
        )),
  ]
}
