/** Pull of a drum's magnets on a steel sleeve round them, and its one-sidedness when the drum stands out of the middle. */
import type { Machine } from '../../machine/machine.ts'
import { eccentricPull } from '../../physics/magnetics/eccentric-pull.ts'
import { magneticPull } from '../../physics/magnetics/magnetic-pull.ts'
import { circleField, levelAbove, type RotorField, rotorField } from '../air-gap-field.ts'

export interface SleevePull {
  /** Sum of the radial pulls all round [N]. */
  readonly pull: number
  /** Gap over which it falls by e [m]. */
  readonly decay: number
  /** To the near side for each metre out of the middle, small offsets [N/m]. */
  readonly stiffness: number
  /** Whether the sleeve turns with the drum. */
  readonly turns: boolean
}

const samples = 96

/** Sum of the radial pulls on a sleeve as long as the magnets [N]: B²/2μ0 by the mean square round its surface. */
function radialPull(machine: Machine, field: RotorField, distance: number): number {
  const { normal } = circleField(machine, field, { distance, samples })
  const square = normal.reduce((sum, B) => sum + B * B, 0) / samples
  const area = 2 * Math.PI * levelAbove(machine, distance) * machine.rotor.magnet.length
  return magneticPull({ fluxDensity: Math.sqrt(square), area })
}

/** Step of the slope, as a share of the distance. */
const step = 0.05

/** Field and steel solved anew at two distances; undefined without a sleeve. */
export function sleevePull(machine: Machine, temperature: number): SleevePull | undefined {
  const { sleeve } = machine.rotor
  if (machine.rotor.arrangement !== 'drum' || sleeve === undefined) return undefined
  const at = (distance: number) => {
    const moved = { ...machine, rotor: { ...machine.rotor, sleeve: { ...sleeve, distance } } }
    return radialPull(moved, rotorField(moved, temperature), distance)
  }
  const h = step * sleeve.distance
  const [near, far] = [at(sleeve.distance - h), at(sleeve.distance + h)]
  if (!(near > far && far > 0)) return undefined
  const pull = Math.sqrt(near * far)
  const decay = (2 * h) / Math.log(near / far)
  return {
    pull,
    decay,
    stiffness: eccentricPull({ pull, decay, eccentricity: 1e-4 }) / 1e-4,
    turns: sleeve.turns,
  }
}
