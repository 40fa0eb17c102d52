/** What the machine's energy is wanted for: uses by watts and hours, what runs all day, days without wind. */
import { z } from 'zod'
import { choice, count, quantity, text } from './field.ts'

export const needSchema = z
  .strictObject({
    uses: z
      .array(
        z.strictObject({
          name: text(80, { help: 'What it is' }),
          power_W: quantity('W', {
            min: 0,
            max: 20_000,
            symbol: 'P',
            help: 'Power it takes while it runs, its adapter included',
          }),
          daily_h: quantity('h', { min: 0, max: 24, help: 'Hours in which it runs on a day of use' }),
          count: count({ min: 1, max: 1000, help: 'How many of them' }).default(1),
          months: z
            .array(z.number().int().min(1).max(12))
            .max(12)
            .meta({ description: 'Months in which it is used, 1 for January; left out, all of them' })
            .optional(),
        }),
      )
      .max(100)
      .meta({ description: 'What is to be run' })
      .default([]),
    standing_W: quantity('W', {
      min: 0,
      max: 1000,
      help: 'What charge controller, meter, inverter and the like take day and night by themselves',
    }).default(0),
    storage_d: quantity('d', {
      min: 0,
      max: 60,
      help: 'Days that the battery is to last without wind',
    }).default(3),
    batteryUse: choice(['gentle', 'full'], {
      help: 'gentle: half of a lead-acid battery, four fifths of another; full: all that its label says',
    }).default('gentle'),
  })
  .meta({ description: 'What the energy is wanted for' })
  .optional()
