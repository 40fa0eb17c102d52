/** What of an earlier chain still holds after an edit: parts whose inputs have not changed. */
import type { Machine } from '../machine/machine.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import type { Linkage } from './flux-linkage.ts'
import type { UnjudgedChain } from './unjudged-chain.ts'

/** Parts of a chain that an edit may leave alone, the costly ones first. */
export interface Reusable {
  readonly rotor: UnjudgedChain['rotor'] | undefined
  /** Magnets and steel; what is kept of a field for the discs and the magnets' loads goes on with it. */
  readonly field: UnjudgedChain['field'] | undefined
  /** Field, wire, volts. */
  readonly magnetics:
    | Pick<UnjudgedChain, 'field' | 'layout' | 'gap' | 'wound' | 'voltage' | 'magnetLoad'>
    | undefined
  /** What turning costs but for the bearings' friction. */
  readonly drag: UnjudgedChain['drag'] | undefined
  readonly generator: Pick<UnjudgedChain, 'generator' | 'circulating' | 'drag'> | undefined
  /** What the machine does in every wind: all but its name, its purpose and how often the winds blow. */
  readonly curve: UnjudgedChain | undefined
}

/** Inputs alike, as far as the document can tell; both come from JSON, so JSON compares them. */
const alike = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** All that the magnets' field depends on: the steel answers where the winding is, whatever its turns. */
const fieldInputs = ({ rotor, stator, site }: Machine): unknown => [
  rotor,
  { ...stator.winding, turns: 0 },
  site.ambient,
]

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

/** All that the rows of the table of winds depend on. */
const curveInputs = ({ name: _, design, site, ...machine }: Machine): unknown => [
  machine,
  design.protection.actsAt_m_per_s,
  [site.ambient, site.altitude, site.airDensity, site.stormWind],
]

const nothing: Reusable = {
  rotor: undefined,
  field: undefined,
  magnetics: undefined,
  drag: undefined,
  generator: undefined,
  curve: undefined,
}

/** The parts of `previous` that a chain of `machine` may take over as they are. */
export function reusable(machine: Machine, previous: UnjudgedChain | undefined): Reusable {
  if (!previous) return nothing
  const before = previous.machine
  const magnetics = alike(magneticInputs(machine), magneticInputs(before)) ? previous : undefined
  const blades = alike(machine.blades, before.blades)
  const generator = magnetics && alike(circuitInputs(machine), circuitInputs(before)) ? previous : undefined
  return {
    rotor: blades ? previous.rotor : undefined,
    field: magnetics || alike(fieldInputs(machine), fieldInputs(before)) ? previous.field : undefined,
    magnetics,
    drag: magnetics?.drag,
    generator,
    curve: blades && generator && alike(curveInputs(machine), curveInputs(before)) ? previous : undefined,
  }
}

/** Linkages of an earlier chain with the same field, shape by shape; undefined where a shape has changed. */
export function reusableLinkages(
  { field, layout, voltage }: Pick<UnjudgedChain, 'field' | 'layout' | 'voltage'>,
  ofField: UnjudgedChain['field'],
  { shapes }: ConductorLayout,
): readonly (Linkage | undefined)[] {
  // a turn's linkage is told
  const geometry = (shape: ConductorShape | undefined) => shape && { ...shape, turns: 0 }
  return shapes.map((shape, k) =>
    field === ofField && alike(geometry(shape), geometry(layout.shapes[k])) ? voltage.linkages[k] : undefined,
  )
}

/** The earlier chain's own object where the wire lies as it did, so that it may be known by that. */
export const reusableLayout = (
  previous: UnjudgedChain | undefined,
  layout: ConductorLayout,
): ConductorLayout => (previous && alike(previous.layout, layout) ? previous.layout : layout)

/** What bears on the magnets, where neither they nor the wire's way and turns have changed. */
export const reusableMagnetLoad = (
  { field, layout, machine, magnetLoad }: Pick<UnjudgedChain, 'field' | 'layout' | 'machine' | 'magnetLoad'>,
  ofField: UnjudgedChain['field'],
  now: Pick<UnjudgedChain, 'layout' | 'machine'>,
): UnjudgedChain['magnetLoad'] | undefined =>
  field === ofField &&
  layout === now.layout &&
  alike([machine.defects, machine.stator.winding], [now.machine.defects, now.machine.stator.winding])
    ? magnetLoad
    : undefined
