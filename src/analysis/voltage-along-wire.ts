/** Where along the wire the volts arise: the parts of every coil and phase, in step with the phase. */
import type { Machine } from '../machine/machine.ts'
import type { RotorField } from './air-gap-field.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import type { WoundMachine } from './winding.ts'
import { workingShares } from './winding-defect.ts'
import { wireElements } from './wire-elements.ts'
import { type WirePart, wireParts } from './wire-part.ts'
import type { PartTotal, PhaseParts, VoltageAlongWire, WireCoil, WireElements } from './wire-reading.ts'

interface Phasor {
  readonly cos: number
  readonly sin: number
}

/** `a` that comes `lag` later. */
const delayed = ({ cos, sin }: Phasor, lag: number): Phasor => ({
  cos: cos * Math.cos(lag) - sin * Math.sin(lag),
  sin: sin * Math.cos(lag) + cos * Math.sin(lag),
})

/** Working order of all elements together, all turns and all repeats. */
function total({ cos, sin, orders, turns, repeats }: WireElements, working: number): Phasor {
  let [a, b] = [0, 0]
  for (let at = working; at < cos.length; at += orders + 1) {
    a += cos[at]!
    b += sin[at]!
  }
  return { cos: a * turns * repeats, sin: b * turns * repeats }
}

/** Part of the phase's volts that each coil's volts make: groups share as their conductances. */
function weightsOf({ coils }: ConductorLayout, { coilResistance }: WoundMachine): number[] {
  const key = ({ phase, group }: ConductorLayout['coils'][number]) => `${phase} ${group}`
  const series = new Map<string, number>()
  coils.forEach((coil, k) => {
    series.set(key(coil), (series.get(key(coil)) ?? 0) + coilResistance[k]!)
  })
  const conductance = new Map<number, number>()
  for (const [name, resistance] of series) {
    const phase = Number.parseInt(name, 10)
    conductance.set(phase, (conductance.get(phase) ?? 0) + 1 / resistance)
  }
  return coils.map((coil) => 1 / series.get(key(coil))! / conductance.get(coil.phase)!)
}

/** Below this share of what the elements raise, a phase counts as one that gives nothing. */
const nothingLeft = 1e-9

function partsOf(shapes: readonly WireElements[], coils: readonly WireCoil[], working: number): PhaseParts {
  const sums = new Map<
    WirePart,
    { volts: number; under: number; own: number; lean: number; length: number }
  >()
  let whole = 0
  let length = 0
  let raised = 0
  for (const { shape, weight, inPhase } of coils) {
    const { path, part, lean, underMagnets, cos, sin, orders, turns, repeats } = shapes[shape]!
    part.forEach((name, k) => {
      const sum = sums.get(name) ?? { volts: 0, under: 0, own: 0, lean: 0, length: 0 }
      sums.set(name, sum)
      const at = k * (orders + 1) + working
      const wires = turns * repeats
      const own = wires * (inPhase.cos * cos[at]! + inPhase.sin * sin[at]!)
      const wire = wires * (path[k + 1]! - path[k]!)
      sum.volts += weight * own
      sum.under += underMagnets[k]! * weight * own
      sum.own += own
      sum.lean += lean[k]! * wire
      sum.length += wire
      whole += weight * own
      length += wire
      raised += weight * wires * Math.hypot(cos[at]!, sin[at]!)
    })
  }
  const share = (volts: number) => (whole > nothingLeft * raised ? volts / whole : 0)
  return {
    fundamental: whole,
    parts: wireParts.flatMap((part): PartTotal[] => {
      const sum = sums.get(part)
      if (!sum) return []
      return [
        {
          part,
          volts: sum.volts,
          share: share(sum.volts),
          underShare: share(sum.under),
          length: sum.length,
          copperShare: sum.length / length,
          perMetre: sum.own / sum.length,
          lean: sum.lean / sum.length,
        },
      ]
    }),
  }
}

/** The parts of a computed chain that the volts along the wire depend on. */
export interface WoundRotor {
  readonly machine: Machine
  readonly field: RotorField
  readonly layout: ConductorLayout
  readonly wound: WoundMachine
  readonly voltage: OpenCircuitVoltage
}

/** Where along the wire of every coil and phase the volts arise. */
export function voltageAlongWire({ machine, field, layout, wound, voltage }: WoundRotor): VoltageAlongWire {
  const { base, order: working } = voltage
  const shapes = layout.shapes.map((shape) => wireElements(machine, field, shape, base))
  const totals = shapes.map((shape) => total(shape, working))
  const weights = weightsOf(layout, wound)
  const live = workingShares(
    layout.coils.map((_, k) => wound.loops.find(({ coil }) => coil === k)?.share ?? 0),
  )
  // where the stator stands askew, the elements of a square one are taken at each coil's own volts
  const scales = layout.coils.map(({ shape }, k) => {
    const { cos, sin } = totals[shape]!
    const square = live[k]! * Math.hypot(cos, sin)
    return machine.defects.tilt && square > 0 ? voltage.coils[k]!.fundamental / square : 1
  })
  const own = layout.coils.map(({ shape, angle, sense }, k) => {
    const { cos, sin } = delayed(totals[shape]!, working * base * angle)
    const part = weights[k]! * live[k]! * scales[k]! * sense
    return { cos: part * cos, sin: part * sin }
  })
  const directions = Array.from({ length: layout.phaseCount }, (_, phase): Phasor => {
    let [a, b] = [0, 0]
    layout.coils.forEach((coil, k) => {
      if (coil.phase !== phase) return
      a += own[k]!.cos
      b += own[k]!.sin
    })
    const size = Math.hypot(a, b)
    return size > 0 ? { cos: a / size, sin: b / size } : { cos: 1, sin: 0 }
  })
  const coils = layout.coils.map(({ number, shape, phase, angle, sense }, k): WireCoil => {
    // projecting the delayed element on the phase is projecting the element on the phase advanced
    const { cos, sin } = delayed(directions[phase]!, -working * base * angle)
    return {
      number,
      shape,
      phase,
      angle,
      sense,
      weight: weights[k]! * live[k]!,
      scale: scales[k]!,
      inPhase: { cos: scales[k]! * sense * cos, sin: scales[k]! * sense * sin },
    }
  })
  return {
    base,
    order: working,
    shapes,
    coils,
    phases: directions.map((_, phase) =>
      partsOf(
        shapes,
        coils.filter((coil) => coil.phase === phase),
        working,
      ),
    ),
  }
}
