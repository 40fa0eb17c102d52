/** From a document to its open-circuit volts, without the rest of the chain. */
import { gapProfile, rotorField } from '../../src/analysis/air-gap-field.ts'
import { conductorLayout } from '../../src/analysis/conductor-layout.ts'
import { openCircuitVoltage } from '../../src/analysis/open-circuit-voltage.ts'
import { woundMachine } from '../../src/analysis/winding.ts'
import { resolveDesign } from '../../src/machine/resolve.ts'
import { designOf } from '../example.ts'

export function openCircuit(document: unknown, temperature = 293.15) {
  const machine = resolveDesign(designOf(document))
  const layout = conductorLayout(machine)
  const field = rotorField(machine, temperature)
  const wound = woundMachine(machine, layout)
  const gap = gapProfile(machine, field, layout.shapes[0]!.distance)
  return { machine, layout, field, wound, gap, voltage: openCircuitVoltage(machine, field, layout, wound) }
}
