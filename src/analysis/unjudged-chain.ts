/** The chain of one design, wind to battery, before any rule is asked about it: what comes to be known first. */

import type { Machine } from '../machine/machine.ts'
import { sweptArea } from '../machine/swept-area.ts'
import { type GapProfile, gapProfile, type RotorField, rotorField } from './air-gap-field.ts'
import { type RotorCurve, rotorCurve } from './blade-rotor.ts'
import { type Circulation, circulation } from './circulation.ts'
import { type ConductorLayout, conductorLayout } from './conductor-layout.ts'
import { dragAt, type NoLoadDrag, noLoadDrag } from './drag.ts'
import { fastestTabled, type GeneratorCurve, generatorCurve } from './generator-curve.ts'
import type { AirMotion } from './heat-film.ts'
import type { SteelState } from './iron-response.ts'
import { type MachineHeat, machineHeat } from './machine-heat.ts'
import { type MagnetLoad, magnetLoad } from './magnet-load.ts'
import { strengthBesideCopper } from './magnet-strength.ts'
import { type BladeMap, bladeMap } from './match.ts'
import { type OpenCircuitVoltage, openCircuitVoltage } from './open-circuit-voltage.ts'
import { cutInWind, limiterWind, powerCurve, startWind, type WindRow } from './power-curve.ts'
import { type Reusable, reusable, reusableLayout, reusableLinkages, reusableMagnetLoad } from './reuse.ts'
import { type Runaway, runaway } from './runaway.ts'
import { siteAirDensity } from './site-air.ts'
import { likedWind, type StatorCooling, statorCooling } from './stator-cooling.ts'
import { type Steps, within } from './step.ts'
import { type WoundMachine, woundMachine } from './winding.ts'
import { type Year, year } from './year.ts'

/** Everything that was computed, functions included: what rules and pictures draw from. */
export interface UnjudgedChain {
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
  /** What bears on a magnet, per unit of magnetisation and current. */
  readonly magnetLoad: MagnetLoad
  readonly generator: GeneratorCurve
  /** Watts that currents inside the winding burn, at a speed. */
  readonly circulating: Circulation
  /** What turning costs with nothing connected, circulating currents aside. */
  readonly drag: NoLoadDrag
  /** Where the heat goes and what it warms. */
  readonly heat: MachineHeat
  /** The same from copper to air as one number. */
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
}

/** What the engine assumes beyond the document, so that it can be varied. */
export interface Assumptions {
  /** On the estimated thermal resistance from copper to air. */
  readonly coolingFactor: number
  /** On the least drag of the blades' sections. */
  readonly sectionDragFactor: number
}

export const usualAssumptions: Assumptions = { coolingFactor: 1, sectionDragFactor: 1 }

export interface ChainOptions {
  readonly assumptions?: Assumptions
  /** An earlier chain under the usual assumptions: what an edit has left alone is taken over from it. */
  readonly previous?: UnjudgedChain | undefined
}

/** A working day: the wind in which a limiter acts, or usually would, and the blades at their best. */
export function workingMotion(machine: Machine, rotor: RotorCurve): AirMotion {
  const wind = Math.min(limiterWind(machine), machine.site.stormWind)
  return { wind, speed: (rotor.best.tipSpeedRatio * wind) / machine.blades.radius }
}

/** Field, wire and volts, the magnets as cold as the air: what heat takes of them the generator's tables know. */
function* magneticsOf(
  machine: Machine,
  known: Reusable,
  previous: UnjudgedChain | undefined,
): Steps<Pick<UnjudgedChain, 'field' | 'layout' | 'gap' | 'wound' | 'voltage' | 'magnetLoad'>> {
  const field = known.field ?? rotorField(machine, machine.site.ambient)
  const layout = reusableLayout(previous, conductorLayout(machine))
  const gap = gapProfile(machine, field, layout.shapes[0]!.distance)
  yield 0.1
  const wound = woundMachine(machine, layout)
  yield 0.2
  const linkages = previous && reusableLinkages(previous, field, layout)
  const voltage = openCircuitVoltage(machine, field, layout, wound, linkages)
  const load =
    (previous && reusableMagnetLoad(previous, field, { layout, machine })) ??
    magnetLoad(machine, field, layout)
  return { field, layout, gap, wound, voltage, magnetLoad: load }
}

/** The generator as the load and the blades will meet it, up to somewhat past the storm's runaway. */
function* generatorOf(
  machine: Machine,
  {
    rotor,
    field,
    layout,
    wound,
    voltage,
    heat,
  }: Pick<UnjudgedChain, 'rotor' | 'field' | 'layout' | 'wound' | 'voltage' | 'heat'>,
  known: Reusable,
): Steps<Pick<UnjudgedChain, 'generator' | 'circulating' | 'drag'>> {
  const fastest = fastestTabled(rotor, { radius: machine.blades.radius, stormWind: machine.site.stormWind })
  const circulating = circulation(machine, layout, wound, voltage, fastest)
  const drag = known.drag
    ? { ...known.drag, at: dragAt(machine, known.drag) }
    : noLoadDrag(machine, field, layout, wound)
  const strength = strengthBesideCopper(machine, heat.magnetShare)
  const generator = yield* generatorCurve(machine, voltage, { drag: drag.at, circulating }, fastest, strength)
  return { generator, circulating, drag }
}

/** Step by step: yields the fraction done and returns the result. */
export function* unjudgedChain(machine: Machine, options: ChainOptions = {}): Steps<UnjudgedChain> {
  const { assumptions = usualAssumptions, previous } = options
  const dragged = assumptions.sectionDragFactor !== 1
  const same = reusable(machine, previous)
  // other blades bring other speeds, and with them another table of the generator
  const known = dragged ? { ...same, rotor: undefined, generator: undefined } : same
  if (known.curve && !dragged && assumptions.coolingFactor === 1) {
    const { curve: before } = known
    const curve = { rising: before.rows, falling: before.fallingRows, rowAt: before.rowAt }
    return { ...before, machine, year: year(machine, curve) }
  }
  const { site } = machine
  const airDensity = siteAirDensity(site)
  const rotor = known.rotor ?? rotorCurve(machine, assumptions.sectionDragFactor)
  const blades = bladeMap(rotor, {
    density: airDensity,
    radius: machine.blades.radius,
    area: sweptArea(machine.blades),
  })
  yield 0.1
  const {
    field,
    layout,
    gap,
    wound,
    voltage,
    magnetLoad: load,
  } = known.magnetics ?? (yield* within(magneticsOf(machine, known, previous), 0.1, 0.4))
  yield 0.5
  const heat = machineHeat(machine, {
    layout,
    wound,
    working: workingMotion(machine, rotor),
    factor: assumptions.coolingFactor,
  })
  const { generator, circulating, drag } =
    (previous !== undefined && previous.heat.magnetShare === heat.magnetShare
      ? known.generator
      : undefined) ??
    (yield* within(generatorOf(machine, { rotor, field, layout, wound, voltage, heat }, known), 0.5, 0.3))
  const cooling = statorCooling(heat, (speed) => likedWind(rotor, machine.blades.radius, speed))
  yield 0.85
  const phaseArea = wound.conductorArea * layout.groups
  const parts = { machine, rotor, blades, generator, heat, phaseArea }
  const curve = powerCurve(parts)
  yield 0.95
  return {
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
    magnetLoad: load,
    generator,
    circulating,
    drag,
    heat,
    cooling,
    startWind: startWind(parts),
    cutInWind: cutInWind(curve),
    rows: curve.rising,
    fallingRows: curve.falling,
    rowAt: curve.rowAt,
    runaway: runaway(machine, blades, voltage, generator.idlePower),
    year: year(machine, curve),
  }
}
