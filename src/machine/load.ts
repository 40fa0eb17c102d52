/** What the machine feeds: a battery, a resistor, or nothing. */
import { z } from 'zod'
import { batteryChemistries } from '../data/battery.ts'
import { choice, count, namesOf, quantity } from './field.ts'

export const loadSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('battery').meta({ description: 'A battery that holds its voltage' }),
    chemistry: choice(namesOf(batteryChemistries), { help: 'Chemistry of the cells' }),
    voltage_V: quantity('V', {
      min: 1,
      max: 500,
      symbol: 'U',
      help: 'Voltage of the battery at rest as it stands, not the figure on its label',
    }),
    cells: count({
      min: 1,
      max: 400,
      help: 'Cells in series; left out, they are counted from the voltage, which is a guess for a full or an empty battery',
    }).optional(),
    resistance_mohm: quantity('mohm', {
      min: 0,
      max: 10_000,
      symbol: 'R',
      help: 'Internal resistance with its connections',
    }).default(20),
    capacity_Ah: quantity('Ah', { min: 0.05, max: 10_000, help: 'Charge it holds' }).optional(),
  }),
  z.strictObject({
    kind: z.literal('resistor').meta({ description: 'A resistor or heater behind the bridge' }),
    resistance_ohm: quantity('ohm', { min: 0.001, max: 1e6, symbol: 'R', help: 'Its resistance when hot' }),
  }),
  z.strictObject({ kind: z.literal('open').meta({ description: 'Nothing connected' }) }),
])
