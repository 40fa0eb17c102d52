/** Example designs, changed and rewired at will, as far as the volts along their wire need them. */
import { rotorField } from '../src/analysis/air-gap-field.ts'
import { type ConductorLayout, conductorLayout } from '../src/analysis/conductor-layout.ts'
import { openCircuitVoltage } from '../src/analysis/open-circuit-voltage.ts'
import type { WoundRotor } from '../src/analysis/voltage-along-wire.ts'
import { woundMachine } from '../src/analysis/winding.ts'
import { resolveDesign } from '../src/machine/resolve.ts'
import { designOf, exampleDocument } from './example.ts'

export type Change = (document: ReturnType<typeof exampleDocument>) => void

export function woundRotor(
  name: string,
  change: Change = () => {},
  rewire: (layout: ConductorLayout) => ConductorLayout = (layout) => layout,
): WoundRotor {
  const document = exampleDocument(name)
  change(document)
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine)
  const layout = rewire(conductorLayout(machine))
  const wound = woundMachine(machine, layout)
  return { machine, field, layout, wound, voltage: openCircuitVoltage(machine, field, layout, wound) }
}
