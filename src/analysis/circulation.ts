/** Power that currents burn which never reach the load: between unlike branches, round a delta, in shorted turns or diodes. */
import type { Machine } from '../machine/machine.ts'
import { seriesScaled } from '../numerics/fourier.ts'
import { monotoneCubic } from '../numerics/interpolate.ts'
import { branchCirculation, deltaCirculation } from '../physics/winding/circulation.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { loadPoint } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import { loopLosses } from './turn-loop.ts'
import type { WoundMachine } from './winding.ts'

export interface Circulation {
  /** Between parallel branches of the phases, at any load [W]. */
  readonly branches: (speed: number) => number
  /** Round a closed delta with nothing connected; with a load the rectifier's own solution holds it [W]. */
  readonly delta: (speed: number) => number
  /** In turns closed on themselves with nothing connected; with a load the load's own solution holds it [W]. */
  readonly loops: (speed: number) => number
  /** Through a shorted diode with nothing behind the bridge; with a load the load's own solution holds it [W]. */
  readonly bridge: (speed: number) => number
}

const none = () => 0

/** Where resistances are told [K]. */
const coldCopper = 293.15

/** Branches whose EMFs differ by less than this share drive nothing worth counting. */
const leastMismatch = 1e-6

/** Closer together at low speed, where reactance has not yet set in. */
const nodes = 12

/** A loss that starts with the square of the speed, from a few solutions up to `fastest`. */
function tabulated(loss: (speed: number) => number, fastest: number): (speed: number) => number {
  const speeds = Float64Array.from({ length: nodes }, (_, k) => fastest * ((k + 1) / nodes) ** 2)
  const perSquare = monotoneCubic(
    speeds,
    speeds.map((speed) => loss(speed) / speed ** 2),
  )
  return (speed) => perSquare(speed) * speed ** 2
}

/** Coils of each parallel branch of a phase, in the branches' own order. */
const branchCoils = ({ coils, groups }: ConductorLayout, phase: number) =>
  Array.from({ length: groups }, (_, group) =>
    coils.flatMap((coil, index) =>
      coil.phase === phase && coil.group === group ? [{ index, sense: coil.sense }] : [],
    ),
  ).filter((members) => members.length > 0)

/** What a shorted diode lets the phases drive through each other, the bridge on the machine and nothing behind it [W]. */
export function shortedDiodeLoss(machine: Machine, voltage: OpenCircuitVoltage): (speed: number) => number {
  if (!machine.defects.diodeFaults.some(({ kind }) => kind === 'shorted')) return none
  const sound: Machine = { ...machine, defects: { ...machine.defects, diodeFaults: [] } }
  const shaft = (seen: Machine, speed: number) =>
    loadPoint(seen, voltage, { speed, copperTemperature: coldCopper, load: { kind: 'open' } }).power.shaft
  return (speed) => (speed > 0 ? Math.max(0, shaft(machine, speed) - shaft(sound, speed)) : 0)
}

/** Cold copper, where the currents are largest; `fastest` bounds the speeds that will be asked for. */
export function circulation(
  machine: Machine,
  layout: ConductorLayout,
  wound: WoundMachine,
  voltage: OpenCircuitVoltage,
  fastest: number,
): Circulation {
  const { base, phases } = voltage
  const { coilInductance } = wound
  const unlike = phases.flatMap(({ branches, branchMismatch }, phase) => {
    if (branchMismatch <= leastMismatch) return []
    const members = branchCoils(layout, phase)
    const inductance = members.map((a) =>
      members.map((b) =>
        a.reduce(
          (sum, i) =>
            sum + b.reduce((part, j) => part + i.sense * j.sense * coilInductance[i.index]![j.index]!, 0),
          0,
        ),
      ),
    )
    return [{ branches, inductance }]
  })
  const branchLoss = (speed: number) =>
    unlike.reduce(
      (sum, { branches, inductance }) =>
        sum +
        branchCirculation({
          emf: branches.map(({ emf }) => seriesScaled(emf, speed)),
          resistance: branches.map(({ resistance }) => resistance),
          inductance,
          angularFrequency: base * speed,
        }).loss,
      0,
    )
  const deltaLoss = (speed: number) =>
    deltaCirculation({
      emf: phases.map(({ emf }) => seriesScaled(emf, speed)),
      resistance: phases.map(({ resistance }) => resistance),
      inductance: voltage.inductance,
      angularFrequency: base * speed,
    }).loss
  const shorted = shortedDiodeLoss(machine, voltage)
  const loopLoss = (speed: number) =>
    loopLosses(voltage, { speed, copperRatio: 1 }).reduce((sum, loss) => sum + loss, 0)
  return {
    branches: unlike.length > 0 ? tabulated(branchLoss, fastest) : none,
    delta:
      machine.stator.connection === 'delta' && phases.length === 3 ? tabulated(deltaLoss, fastest) : none,
    loops: voltage.loops.length > 0 ? loopLoss : none,
    bridge: shorted === none ? none : tabulated(shorted, fastest),
  }
}
