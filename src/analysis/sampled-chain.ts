/** The chain without its concerns and pictures: costly parts once for many draws of the rest. */

import type { Machine } from '../machine/machine.ts'
import { sweptArea } from '../machine/swept-area.ts'
import { type RotorField, rotorField } from './air-gap-field.ts'
import { type RotorCurve, rotorCurve } from './blade-rotor.ts'
import { type Circulation, circulation } from './circulation.ts'
import type { Chain } from './compute.ts'
import { type ConductorLayout, conductorLayout } from './conductor-layout.ts'
import { dragAt, type NoLoadDrag, noLoadDrag } from './drag.ts'
import {
  fastestTabled,
  type GeneratorCurve,
  generatorOn,
  type LoadTables,
  loadTables,
} from './generator-curve.ts'
import { machineHeat } from './machine-heat.ts'
import { strengthBesideCopper, weakenedVoltage } from './magnet-strength.ts'
import { bladeMap } from './match.ts'
import { type OpenCircuitVoltage, openCircuitVoltage } from './open-circuit-voltage.ts'
import { cutInWind, type PowerCurve, powerCurve, startWind } from './power-curve.ts'
import { type Runaway, runaway } from './runaway.ts'
import { siteAirDensity } from './site-air.ts'
import { siteWind } from './site-wind.ts'
import type { Steps } from './step.ts'
import { type Assumptions, workingMotion } from './unjudged-chain.ts'
import { type WoundMachine, woundMachine } from './winding.ts'
import { energyInWinds } from './year.ts'

/** Blades, magnets, wire and the solved circuit: what the site's wind, friction and heat leave alone. */
export interface MachineState {
  readonly rotor: RotorCurve
  readonly field: RotorField
  readonly layout: ConductorLayout
  readonly wound: WoundMachine
  readonly voltage: OpenCircuitVoltage
  readonly circulating: Circulation
  readonly drag: Pick<NoLoadDrag, 'strands' | 'parts'>
  readonly load: LoadTables
  /** What the wire was laid and wound by. */
  readonly windingInputs: string
  /** The same for the blades. */
  readonly bladeInputs: string
}

/** All that the coils' resistance and inductance depend on: magnets stand where they stand, whatever their strength. */
function windingInputs({ stator, rotor, defects, site }: Machine): string {
  const weak = { ...rotor.magnet, remanence: 0, labelRemanence: 0, measured: undefined }
  const rings = rotor.rings.map((ring) =>
    ring.map((place) =>
      place.material === undefined ? place : { ...place, material: { ...place.material, remanence: 0 } },
    ),
  )
  return JSON.stringify([withoutHeat(stator), { ...rotor, magnet: weak, rings }, defects, site.ambient])
}

/** The way of the heat has nothing to say before the wind blows. */
const withoutHeat = (stator: Machine['stator']) => ({ ...stator, thermalResistance: 0, support: 0 })

/** All that a machine's costly parts depend on, told apart by text. */
export const stateInputs = (
  { stator, rotor, defects, site, blades, cable, diode, converter, load }: Machine,
  { sectionDragFactor }: Assumptions,
): string =>
  JSON.stringify([
    withoutHeat(stator),
    rotor,
    defects,
    site.ambient,
    blades,
    cable,
    diode,
    converter,
    load,
    sectionDragFactor,
  ])

/**
 * How much stronger `field` is than `base` all over; undefined where steel, a ring of unlike magnets or the delta's own
 * current keeps the volts from following the magnets in proportion.
 */
function strength(machine: Machine, field: RotorField, base: RotorField): number | undefined {
  const { alternating, rings } = machine.rotor
  const alike = alternating && rings.every((ring) => ring.every(({ material }) => material === undefined))
  if (field.iron !== undefined || !alike || machine.stator.connection === 'delta') return undefined
  return field.workingPoint.polarization / base.workingPoint.polarization
}

const bladeInputs = ({ blades }: Machine, sectionDragFactor: number): string =>
  JSON.stringify([blades, sectionDragFactor])

/** A state whose parts others may take over; each solves its own circuit. */
export type BaseState = Omit<MachineState, 'load' | 'circulating'>

/** Of a chain under the usual assumptions. */
export const baseState = ({ machine, rotor, field, layout, wound, voltage, drag }: Chain): BaseState => ({
  rotor,
  field,
  layout,
  wound,
  voltage,
  drag,
  windingInputs: windingInputs(machine),
  bladeInputs: bladeInputs(machine, 1),
})

/** The costly parts of a machine; those of `base` are taken over where nothing that they depend on has moved. */
export function* machineState(
  machine: Machine,
  { sectionDragFactor }: Assumptions,
  { stormWind, base }: { readonly stormWind: number; readonly base: BaseState },
): Steps<MachineState> {
  const inputs = windingInputs(machine)
  const blades = bladeInputs(machine, sectionDragFactor)
  const rotor = base.bladeInputs === blades ? base.rotor : rotorCurve(machine, sectionDragFactor)
  yield 0.2
  const same = base.windingInputs === inputs ? base : undefined
  const field = rotorField(machine, machine.site.ambient)
  const layout = same?.layout ?? conductorLayout(machine)
  const wound = same?.wound ?? woundMachine(machine, layout)
  yield 0.3
  const k = same === undefined ? undefined : strength(machine, field, same.field)
  const voltage =
    k === undefined || same === undefined
      ? openCircuitVoltage(machine, field, layout, wound)
      : weakenedVoltage(same.voltage, k)
  yield 0.5
  const fastest = fastestTabled(rotor, { radius: machine.blades.radius, stormWind })
  const circulating = circulation(machine, layout, wound, voltage, fastest)
  const drag =
    k === undefined || same === undefined || same.drag.parts.length > 0
      ? noLoadDrag(machine, field, layout, wound)
      : { parts: [], strands: { ...same.drag.strands, total: k ** 2 * same.drag.strands.total } }
  // the magnets' share of the copper's warmth hardly depends on how warm both are: the estimate's own serves every draw
  const { magnetShare } = machineHeat(machine, { layout, wound, working: workingMotion(machine, rotor) })
  const load = yield* loadTables(machine, voltage, fastest, strengthBesideCopper(machine, magnetShare))
  return {
    rotor,
    field,
    layout,
    wound,
    voltage,
    circulating,
    drag,
    load,
    windingInputs: inputs,
    bladeInputs: blades,
  }
}

/** What of a chain is read off for its spread. */
export interface SampledChain {
  readonly machine: Machine
  readonly voltage: OpenCircuitVoltage
  readonly generator: GeneratorCurve
  readonly curve: PowerCurve
  readonly startWind: number
  readonly cutInWind: number
  readonly runaway: Runaway
  /** A year on rising winds, and on falling ones [J]. */
  readonly energy: { readonly rising: number; readonly falling: number }
}

const yearsOf = (machine: Machine, { rising, falling }: Pick<PowerCurve, 'rising' | 'falling'>) => {
  const winds = siteWind(machine)
  const energy = (rows: PowerCurve['rising']) => energyInWinds({ rows, fallingRows: rows }, winds)
  return { rising: energy(rising), falling: energy(falling) }
}

/** The same of a whole chain. */
export const sampleOf = ({ rows, fallingRows, rowAt, ...chain }: Chain): SampledChain => {
  const curve = { rising: rows, falling: fallingRows, rowAt }
  return { ...chain, curve, energy: yearsOf(chain.machine, curve) }
}

/** The chain of a machine whose costly parts are those of `state`. */
export function sampledChain(
  machine: Machine,
  { coolingFactor }: Assumptions,
  state: MachineState,
): SampledChain {
  const { rotor, layout, wound, voltage, circulating, drag, load } = state
  const { site } = machine
  const density = siteAirDensity(site)
  const blades = bladeMap(rotor, { density, radius: machine.blades.radius, area: sweptArea(machine.blades) })
  const generator = generatorOn(machine, load, { drag: dragAt(machine, drag), circulating })
  const heat = machineHeat(machine, {
    layout,
    wound,
    working: workingMotion(machine, rotor),
    factor: coolingFactor,
  })
  const phaseArea = wound.conductorArea * layout.groups
  const parts = { machine, rotor, blades, generator, heat, phaseArea }
  const curve = powerCurve(parts)
  return {
    machine,
    voltage,
    generator,
    curve,
    startWind: startWind(parts),
    cutInWind: cutInWind(curve),
    runaway: runaway(machine, blades, voltage, generator.idlePower),
    energy: yearsOf(machine, curve),
  }
}
