/** The whole chain of one design, wind to battery, as plain data that a page or a terminal can show. */
import type { Design } from '../machine/design.ts'
import type { Machine } from '../machine/machine.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { sweptArea } from '../machine/swept-area.ts'
import { airDensityAtAltitude } from '../physics/aerodynamics/air-density.ts'
import { type GapProfile, gapProfile, type RotorField, rotorField } from './air-gap-field.ts'
import { type RotorCurve, rotorCurve } from './blade-rotor.ts'
import { type Circulation, circulation } from './circulation.ts'
import { type Concern, concernsOf } from './concerns.ts'
import { type ConductorLayout, conductorLayout } from './conductor-layout.ts'
import { type NoLoadDrag, noLoadDrag } from './drag.ts'
import { type GeneratorCurve, generatorCurve } from './generator-curve.ts'
import type { SteelState } from './iron-response.ts'
import { type BladeMap, bladeMap } from './match.ts'
import { type OpenCircuitVoltage, openCircuitVoltage } from './open-circuit-voltage.ts'
import { cutInWind, powerCurve, startWind, type WindRow } from './power-curve.ts'
import { reusable } from './reuse.ts'
import { type Runaway, runaway } from './runaway.ts'
import { type StatorCooling, statorCooling } from './stator-cooling.ts'
import { finished, type Steps, within } from './step.ts'
import { type WoundMachine, woundMachine } from './winding.ts'
import { type Year, year } from './year.ts'

/** Everything that was computed, functions included: what rules and pictures draw from. */
export interface Chain {
  readonly machine: Machine
  /** ρ at the site [kg/m³]. */
  readonly airDensity: number
  readonly rotor: RotorCurve
  readonly blades: BladeMap
  readonly field: RotorField
  /** In the middle of the first layer of the winding. */
  readonly gap: GapProfile
  /** How the steel behind the magnets and beyond the winding fares. */
  readonly steel: readonly SteelState[]
  readonly layout: ConductorLayout
  readonly wound: WoundMachine
  readonly voltage: OpenCircuitVoltage
  readonly generator: GeneratorCurve
  /** Watts that currents inside the winding burn, at a speed. */
  readonly circulating: Circulation
  /** What turning costs with nothing connected, circulating currents aside. */
  readonly drag: NoLoadDrag
  readonly cooling: StatorCooling
  /** Wind that starts the rotor from rest, and wind in which current begins [m/s]; infinite where never. */
  readonly startWind: number
  readonly cutInWind: number
  /** Wind by wind as it rises, and as it falls again: a machine with two states keeps the one it is in. */
  readonly rows: readonly WindRow[]
  readonly fallingRows: readonly WindRow[]
  /** Any wind up to the storm, met on a rising wind. */
  readonly rowAt: (wind: number) => WindRow
  readonly runaway: Runaway
  readonly year: Year
  readonly concerns: readonly Concern[]
}

/** What the engine assumes beyond the document, so that it can be varied. */
export interface Assumptions {
  /** On the estimated thermal resistance from copper to air. */
  readonly coolingFactor: number
}

export const usualAssumptions: Assumptions = { coolingFactor: 1 }

export interface ChainOptions {
  readonly assumptions?: Assumptions
  /** An earlier chain: what an edit has left alone is taken over from it. */
  readonly previous?: Chain | undefined
}

/** Field, wire and volts. The magnets are taken at the temperature of the air: they sit in the wind of their turning. */
function* magneticsOf(
  machine: Machine,
): Steps<Pick<Chain, 'field' | 'layout' | 'gap' | 'wound' | 'voltage'>> {
  const field = rotorField(machine, machine.site.ambient)
  const layout = conductorLayout(machine)
  const gap = gapProfile(machine, field, layout.shapes[0]!.distance)
  yield 0.1
  const wound = woundMachine(machine, layout)
  yield 0.2
  const voltage = openCircuitVoltage(machine, field, layout, wound)
  return { field, layout, gap, wound, voltage }
}

/** The generator as the load and the blades will meet it, up to somewhat past the storm's runaway. */
function* generatorOf(
  machine: Machine,
  { rotor, field, layout, wound, voltage }: Pick<Chain, 'rotor' | 'field' | 'layout' | 'wound' | 'voltage'>,
): Steps<Pick<Chain, 'generator' | 'circulating' | 'drag'>> {
  const fastest = (rotor.runaway * 1.05 * machine.site.stormWind) / machine.blades.radius
  const circulating = circulation(machine, layout, wound, voltage, fastest)
  const drag = noLoadDrag(machine, field, layout, wound)
  const generator = yield* generatorCurve(machine, voltage, { drag: drag.at, circulating }, fastest)
  return { generator, circulating, drag }
}

/** The chain, step by step: yields the fraction done and returns the result. */
export function* chainOf(machine: Machine, options: ChainOptions = {}): Steps<Chain> {
  const { assumptions = usualAssumptions, previous } = options
  const known = reusable(machine, previous)
  const { site } = machine
  const airDensity =
    site.airDensity ?? airDensityAtAltitude({ altitude: site.altitude, temperature: site.ambient })
  const rotor = known.rotor ?? rotorCurve(machine)
  const blades = bladeMap(rotor, {
    density: airDensity,
    radius: machine.blades.radius,
    area: sweptArea(machine.blades),
  })
  yield 0.1
  const { field, layout, gap, wound, voltage } =
    known.magnetics ?? (yield* within(magneticsOf(machine), 0.1, 0.4))
  yield 0.5
  const { generator, circulating, drag } =
    known.generator ??
    (yield* within(generatorOf(machine, { rotor, field, layout, wound, voltage }), 0.5, 0.3))
  const cooling = statorCooling(machine, layout, assumptions.coolingFactor)
  yield 0.85
  const phaseArea = wound.conductorArea * layout.groups
  const parts = { machine, rotor, blades, generator, cooling, phaseArea }
  const curve = powerCurve(parts)
  const bare = {
    machine,
    airDensity,
    rotor,
    blades,
    field,
    gap,
    steel: field.iron?.steel ?? [],
    layout,
    wound,
    voltage,
    generator,
    circulating,
    drag,
    cooling,
    startWind: startWind(parts),
    cutInWind: cutInWind(curve),
    rows: curve.rising,
    fallingRows: curve.falling,
    rowAt: curve.rowAt,
    runaway: runaway(machine, blades, voltage, generator.idlePower),
    year: year(machine, curve),
  }
  yield 0.95
  return { ...bare, concerns: concernsOf(bare) }
}

/** The chain of a design in one go. */
export const computeDesign = (design: Design): Chain => finished(chainOf(resolveDesign(design)))
