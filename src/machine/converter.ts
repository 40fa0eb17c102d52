/** Electronics between bridge and battery that draw a set power at each speed and raise the voltage. */
import { z } from 'zod'
import { quantity } from './field.ts'

export const converterSchema = z
  .strictObject({
    curve: z
      .array(
        z.strictObject({
          speed_rpm: quantity('rpm', { min: 0, max: 20_000, symbol: 'n', help: 'Speed of the machine' }),
          power_W: quantity('W', {
            min: 0,
            max: 20_000,
            symbol: 'P',
            help: 'Power drawn from the bridge then',
          }),
        }),
      )
      .min(2)
      .max(60)
      .meta({ description: 'Power that the electronics draw, by speed; straight between the points' }),
    leastInput_V: quantity('V', {
      min: 0,
      max: 500,
      help: 'Volts behind the bridge below which the electronics stand still',
    }).default(4),
    greatestInput_A: quantity('A', {
      min: 0.1,
      max: 500,
      help: 'Amps at which the electronics hold their input',
    }).optional(),
    greatestInput_V: quantity('V', {
      min: 1,
      max: 2000,
      help: 'Volts that the input bears, from its sheet',
    }).optional(),
    standby_W: quantity('W', {
      min: 0,
      max: 100,
      help: 'Drawn from the battery all the time, wind or calm',
    }).default(0.3),
    efficiency: z
      .array(
        z.strictObject({
          input_V: quantity('V', { min: 0.5, max: 500, help: 'Volts at its input' }),
          input_W: quantity('W', { min: 0.1, max: 20_000, help: 'Watts into it' }),
          efficiency: quantity('1', { min: 0.05, max: 0.999, symbol: 'η', help: 'Watts out over watts in' }),
        }),
      )
      .min(3)
      .max(60)
      .meta({ description: 'Efficiency as measured or printed, at three points or more' })
      .optional(),
  })
  .optional()
  .meta({
    description: 'A boost converter between bridge and battery that follows a curve of power over speed',
  })
