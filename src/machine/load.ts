/** What the machine feeds: a battery, a heater, a lamp, a capacitor, or nothing. */
import { z } from 'zod'
import { batteryChemistries } from '../data/battery.ts'
import { choice, count, namesOf, quantity } from './field.ts'

const ratedVoltage_V = quantity('V', { min: 1, max: 500, symbol: 'U', help: 'Volts on its label' })
const ratedPower_W = quantity('W', {
  min: 0.05,
  max: 20_000,
  symbol: 'P',
  help: 'Watts on its label, at the volts on its label',
})

export const lampKinds = ['filament', 'LED'] as const

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
    disconnect: z
      .strictObject({
        above_V: quantity('V', {
          min: 1,
          max: 600,
          help: 'Voltage at which it takes itself off',
        }).optional(),
        below_degC: quantity('degC', {
          min: -40,
          max: 30,
          help: 'Temperature below which it refuses charge',
        }).optional(),
      })
      .optional()
      .meta({
        description:
          'A battery with electronics of its own that take it off the machine when it must not be charged',
      }),
  }),
  z.strictObject({
    kind: z.literal('resistor').meta({ description: 'A resistor whose value hardly changes' }),
    resistance_ohm: quantity('ohm', { min: 0.001, max: 1e6, symbol: 'R', help: 'Its resistance when hot' }),
  }),
  z.strictObject({
    kind: z.literal('heater').meta({ description: 'A heating element, known by its label' }),
    ratedVoltage_V,
    ratedPower_W,
    coldResistance_ohm: quantity('ohm', {
      min: 0.001,
      max: 1e6,
      symbol: 'R',
      help: 'Measured cold; left out, that of nickel-chromium wire, a little under the hot one',
    }).optional(),
  }),
  z.strictObject({
    kind: z.literal('lamp').meta({ description: 'A lamp straight behind the bridge' }),
    lamp: choice(lampKinds, {
      help: 'filament: an incandescent lamp; LED: a string of them with its resistor',
    }),
    ratedVoltage_V,
    ratedPower_W,
  }),
  z.strictObject({
    kind: z.literal('capacitor').meta({ description: 'A capacitor with something that draws on it' }),
    capacitance_F: quantity('F', { min: 1e-6, max: 10_000, symbol: 'C', help: 'Its capacitance' }),
    ratedVoltage_V: quantity('V', { min: 1, max: 1000, help: 'The most volts it may see, from its label' }),
    resistance_mohm: quantity('mohm', {
      min: 0,
      max: 100_000,
      symbol: 'R',
      help: 'Resistance inside it, in series',
    }).default(50),
    drawn_ohm: quantity('ohm', {
      min: 0.1,
      max: 1e7,
      symbol: 'R',
      help: 'Resistance of what draws on it; 100 000 for next to nothing',
    }),
  }),
  z.strictObject({ kind: z.literal('open').meta({ description: 'Nothing connected' }) }),
])
