/** Power lost without any load: bearings, and eddy currents in the strands that the magnets pass. */
import type { Machine } from '../machine/machine.ts'
import { fourierSeries } from '../numerics/fourier.ts'
import { strandEddyLossOfSeries } from '../physics/electrics/eddy-loss.ts'
import { circleField, type RotorField } from './air-gap-field.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import type { Watts } from './watts.ts'

const samples = 32

/** Flux density across the runs on the bundle's middle circle, over one pole pair: normal and tangential [T]. */
function runField(machine: Machine, field: RotorField, { distance }: ConductorShape) {
  const { normal, tangential } = circleField(machine, field, { distance, samples })
  return [normal, tangential].map((component) => fourierSeries(component, samples / 2 - 1))
}

/** Length of wire under the magnets in one turn [m]. */
function runLength(machine: Machine, shape: ConductorShape): number {
  const { winding } = machine.stator
  const { magnet, poleCount } = machine.rotor
  if (winding.kind === 'serpentine') return poleCount * Math.min(winding.runLength, magnet.length)
  return Math.min(2 * magnet.length, shape.turnLength)
}

/** Friction and strand loss at a speed [rad/s]; the copper is taken cold, where the strands lose most. */
export function noLoadDrag(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
): (speed: number) => Pick<Watts, 'friction' | 'eddy'> {
  const { wire } = machine.stator
  const area = (Math.PI * wire.diameter ** 2) / 4
  const perShape = layout.shapes.map((shape) => {
    const perVolume = strandEddyLossOfSeries({
      components: runField(machine, field, shape),
      angularFrequency: machine.rotor.polePairs,
      diameter: wire.diameter,
      resistivity: wire.resistivity,
    })
    return perVolume * area * wire.strands * shape.turns * runLength(machine, shape)
  })
  // watts at one radian per second; the loss goes with the square of the speed
  const atUnitSpeed = layout.coils.reduce((sum, { shape }) => sum + perShape[shape]!, 0)
  return (speed) => ({
    friction: machine.shaft.friction * speed,
    eddy: atUnitSpeed * speed ** 2,
  })
}
