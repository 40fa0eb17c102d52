/** What of an earlier chain still holds after an edit: parts whose inputs have not changed. */
import type { Machine } from '../machine/machine.ts'
import type { Chain } from './compute.ts'

/** Parts of a chain that an edit may leave alone, the costly ones first. */
export interface Reusable {
  readonly rotor: Chain['rotor'] | undefined
  /** Field, wire, volts. */
  readonly magnetics: Pick<Chain, 'field' | 'layout' | 'gap' | 'wound' | 'voltage' | 'magnetLoad'> | undefined
  readonly generator: Pick<Chain, 'generator' | 'circulating' | 'drag'> | undefined
}

/** Inputs alike, as far as the document can tell; both come from JSON, so JSON compares them. */
const alike = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** All that the volts depend on. */
const magneticInputs = ({ rotor, stator, site, load, diode, defects }: Machine): unknown => [
  rotor,
  { ...defects, diodeFaults: [] },
  { ...stator, thermalResistance: 0, support: 0 },
  site.ambient,
  // the lines of a closed delta are told at the speed that reaches the load's volts
  stator.connection === 'delta' ? [load, diode] : [],
]

const circuitInputs = ({ cable, diode, converter, load, shaft, site, blades, defects }: Machine): unknown => [
  defects.diodeFaults,
  cable,
  diode,
  converter,
  load,
  shaft,
  site.stormWind,
  blades,
]

const nothing: Reusable = { rotor: undefined, magnetics: undefined, generator: undefined }

/** The parts of `previous` that a chain of `machine` may take over as they are. */
export function reusable(machine: Machine, previous: Chain | undefined): Reusable {
  if (!previous) return nothing
  const before = previous.machine
  const magnetics = alike(magneticInputs(machine), magneticInputs(before)) ? previous : undefined
  return {
    rotor: alike(machine.blades, before.blades) ? previous.rotor : undefined,
    magnetics,
    generator: magnetics && alike(circuitInputs(machine), circuitInputs(before)) ? previous : undefined,
  }
}
