/** Faults of metal parts that stand where there is no room for them. */
import { nominal } from '../units/quantity.ts'
import { atLeast, atMost } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

/** Least radius at which a part is still a part about a shaft [mm]. */
const leastRadius_mm = 0.5

export function metalPartFaults({ rotor, stator }: Design): Fault[] {
  const radius = nominal(rotor.pitchRadius_mm)
  const drum = rotor.arrangement === 'drum'
  const opposite =
    rotor.arrangement === 'two-discs'
      ? nominal(rotor.faceDistance_mm)
      : rotor.arrangement === 'disc' && rotor.opposite?.kind === 'steel'
        ? nominal(rotor.opposite.faceDistance_mm)
        : undefined
  return stator.metalParts.flatMap((part, k) => {
    const path = (name: string) => `stator.metalParts[${k}].${name}`
    const distance = nominal(part.distance_mm)
    const [near, far] =
      part.kind === 'bolt'
        ? ((half) => [distance - half, distance + half] as const)(
            nominal(part.axis === 'through' ? part.length_mm : part.diameter_mm) / 2,
          )
        : ([distance, distance + nominal(part.thickness_mm)] as const)
    const inner =
      drum && rotor.windingSide === 'inside'
        ? radius - nominal(rotor.magnet.thickness_mm) / 2 - leastRadius_mm
        : undefined
    const reach =
      part.kind === 'bolt'
        ? nominal(part.offset_mm) -
          (part.axis === 'along' ? nominal(part.length_mm) : nominal(part.diameter_mm)) / 2
        : -nominal(part.length_mm) / 2
    return [
      ...atLeast(path('distance_mm'), distance, distance - near, 'or it reaches into the magnets'),
      ...(opposite === undefined
        ? []
        : atMost(
            path('distance_mm'),
            distance,
            opposite - (far - distance),
            'or it reaches what stands opposite',
          )),
      ...(inner === undefined
        ? []
        : atMost(path('distance_mm'), distance, inner - (far - distance), 'or it reaches the shaft')),
      ...(drum
        ? []
        : atLeast(
            part.kind === 'bolt' ? path('offset_mm') : 'rotor.pitchRadius_mm',
            part.kind === 'bolt' ? nominal(part.offset_mm) : radius,
            part.kind === 'bolt'
              ? nominal(part.offset_mm) - (radius + reach) + leastRadius_mm
              : leastRadius_mm - reach,
            `or stator.metalParts[${k}] reaches over the shaft`,
          )),
    ]
  })
}
