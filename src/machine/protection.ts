/** What keeps the rotor from running away. */
import { z } from 'zod'
import { choice, flag, quantity } from './field.ts'

export const protectionSchema = z.strictObject({
  mechanical: choice(['none', 'furling tail', 'pitching blades', 'friction brake'], {
    help: 'A limiter that works without any electrical part',
  }).default('none'),
  actsAt_m_per_s: quantity('m_per_s', {
    min: 3,
    max: 40,
    help: 'Wind above which the mechanical limiter holds the power',
  }).optional(),
  electrical: choice(['none', 'shorting switch', 'dump load'], {
    help: 'A limiter that needs the winding and its connections to be whole',
  }).default('none'),
  short: z
    .strictObject({
      place: choice(['at the machine', 'after the bridge'], {
        help: 'Where the switch shorts: the leads of the winding, or plus and minus behind the bridge',
      }).default('at the machine'),
      order: choice(['short, then disconnect', 'disconnect, then short'], {
        help: 'What the switch does first with the load; between the two steps of the second the rotor runs free',
      }).default('short, then disconnect'),
      actsAt_rpm: quantity('rpm', {
        min: 1,
        max: 20_000,
        symbol: 'n',
        help: 'Speed at which it closes by itself; left out, somebody must close it',
      }).optional(),
    })
    .optional()
    .meta({ description: 'The shorting switch' }),
  dump: z
    .strictObject({
      resistance_ohm: quantity('ohm', { min: 0.01, max: 1000, symbol: 'R', help: 'Its resistance when hot' }),
      power_W: quantity('W', { min: 1, max: 50_000, symbol: 'P', help: 'Watts it may burn for hours' }),
      on_V: quantity('V', { min: 1, max: 600, symbol: 'U', help: 'Volts at which it is switched on' }),
      off_V: quantity('V', {
        min: 1,
        max: 600,
        symbol: 'U',
        help: 'Volts at which it is switched off again',
      }),
      place: choice(['at the battery', 'behind the bridge'], {
        help: 'at the battery: behind its fuse and its disconnect, lost with them; behind the bridge: it stays with the machine',
      }).default('behind the bridge'),
      withoutPower: choice(['on', 'off'], {
        help: 'State of its switch when its controller has no power or fails',
      }).default('off'),
      ownFuse: flag({ help: 'It has a fuse of its own, not the battery’s' }).default(true),
    })
    .optional()
    .meta({ description: 'The dump load and what switches it' }),
})
