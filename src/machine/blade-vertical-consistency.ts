/** Faults of upright blades that their fields have together. */
import { nominal } from '../units/quantity.ts'
import { bladePolarFaults } from './blade-polar-consistency.ts'
import { atMost } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

type VerticalDesign = Extract<Design['blades'], { kind: 'straight-blade' | 'drag-rotor' }>

/** Chord over radius beyond which a blade is no longer a blade on a circle. */
const widestChord = 0.8

export function verticalBladeFaults(blades: VerticalDesign): Fault[] {
  if (blades.kind === 'drag-rotor') return []
  const radius = 500 * nominal(blades.diameter_m)
  const chord = nominal(blades.chord_mm)
  const round = (2 * Math.PI * radius) / blades.bladeCount
  return [
    ...bladePolarFaults(blades),
    ...(widestChord * radius <= round
      ? atMost('blades.chord_mm', chord, widestChord * radius, `${widestChord} of the rotor’s radius`)
      : atMost('blades.chord_mm', chord, round, 'the room of one blade on the circle')),
    ...atMost(
      'blades.strutThickness_mm',
      nominal(blades.strutThickness_mm),
      500 * nominal(blades.height_m),
      'half of the height',
    ),
  ]
}
