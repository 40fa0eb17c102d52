/** Faults of a rotor whose magnets cannot stand where the document puts them. */
import { largestBlockWidth } from '../physics/magnetics/magnet-ring.ts'
import { nominal } from '../units/quantity.ts'
import { amount, atLeast, atMost, fault } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

export function rotorFaults({ rotor }: Design): Fault[] {
  const { poleCount, poleSequence, magnet } = rotor
  const radius = nominal(rotor.pitchRadius_mm)
  const edgeName = rotor.arrangement === 'drum' ? 'thickness_mm' : 'length_mm'
  const edge = nominal(magnet[edgeName])
  const crossing = atLeast(
    'rotor.pitchRadius_mm',
    radius,
    edge / 2,
    `half of rotor.magnet.${edgeName}, so that no magnet crosses the shaft`,
  )
  const widest =
    crossing.length > 0
      ? Number.MAX_VALUE
      : largestBlockWidth({ count: poleCount, radius: radius / 1000, radialEdge: edge / 1000 }) * 1000
  return [
    ...(poleSequence === undefined || poleSequence.length === poleCount
      ? []
      : [
          fault('rotor.poleSequence', `${poleCount} letters long, one for each pole`, poleSequence, {
            code: 'conflict',
          }),
        ]),
    ...crossing,
    ...atMost(
      'rotor.magnet.width_mm',
      nominal(magnet.width_mm),
      widest,
      `or the corners of neighbouring magnets collide at a pitch radius of ${amount(radius, 'mm')}`,
    ),
  ]
}
