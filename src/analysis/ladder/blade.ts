/** Ladders of the blades: size, number, chord, pitch, and the tip-speed ratio that they are shaped for. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { inSteps, valueChange } from '../remedy/change.ts'
import { sizeChanges } from '../remedy/size-change.ts'
import { type Ladder, put, valueLadder } from './ladder.ts'

const sized = (design: Design, ratios: readonly number[]): Ladder =>
  ratios
    .map((ratio) => sizeChanges(design, ratio))
    .filter(([first]) => first!.to !== nominal(design.blades.diameter_m))

/** Up to half as large again: beyond, mast and thrust are another design. Common practice, no source. */
export const largerRotor = (design: Design): Ladder => sized(design, [1.05, 1.1, 1.15, 1.2, 1.25, 1.35, 1.5])

export const smallerRotor = (design: Design): Ladder => sized(design, [0.95, 0.9, 0.85, 0.8, 0.75, 0.7])

/** Blades shaped to turn ever slower. */
export function slowerBlades({ blades }: Design): Ladder {
  if (blades.kind !== 'optimum') return []
  const now = nominal(blades.tipSpeedRatio)
  return valueLadder(
    ['blades', 'tipSpeedRatio'],
    blades.tipSpeedRatio,
    [0.5, 1, 1.5, 2, 2.5, 3].map((less) => inSteps(now - less, 0.01)).filter((ratio) => ratio >= 1),
  )
}

export function moreBlades({ blades }: Design): Ladder {
  if (blades.kind === 'table' || blades.kind === 'drag-rotor') return []
  const now = blades.bladeCount
  return [1, 2, 3].map((more) => [put(['blades', 'bladeCount'], now, now + more)])
}

export function fewerBlades({ blades }: Design): Ladder {
  if (blades.kind !== 'optimum') return []
  const now = blades.bladeCount
  return [1, 2, 3]
    .filter((less) => now - less >= 2)
    .map((less) => [put(['blades', 'bladeCount'], now, now - less)])
}

/** The leading edges turned ever farther into the wind, or outward on an upright rotor. */
export function coarserPitch({ blades }: Design): Ladder {
  if (!('pitch_deg' in blades)) return []
  const now = nominal(blades.pitch_deg)
  return valueLadder(
    ['blades', 'pitch_deg'],
    blades.pitch_deg,
    [1, 2, 3, 4, 6, 8].map((more) => inSteps(now + more, 0.1)),
  )
}

/** Blades as drawn, their chords ever wider. */
export function widerChord({ blades }: Design): Ladder {
  const factors = [1.1, 1.2, 1.35, 1.5, 1.75, 2]
  if (blades.kind === 'straight-blade')
    return factors.map((factor) => [
      valueChange(['blades', 'chord_mm'], blades.chord_mm, inSteps(factor * nominal(blades.chord_mm), 1)),
    ])
  if (blades.kind !== 'stations') return []
  return factors.map((factor) =>
    blades.stations.map(({ chord_mm }, k) =>
      valueChange(['blades', 'stations', k, 'chord_mm'], chord_mm, inSteps(factor * nominal(chord_mm), 0.5)),
    ),
  )
}

/** Half drums that start from more positions. */
export function evenDrums({ blades }: Design): Ladder {
  if (blades.kind !== 'drag-rotor') return []
  return [
    ...(blades.storeys === 'one' ? [[put(['blades', 'storeys'], blades.storeys, 'two')]] : []),
    ...(blades.bucketCount === 'two' ? [[put(['blades', 'bucketCount'], blades.bucketCount, 'three')]] : []),
  ]
}
