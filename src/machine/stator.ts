/** The stator: winding, wire, connection and what holds them. */
import { z } from 'zod'
import { plastics } from '../data/plastic.ts'
import { resins } from '../data/resin.ts'
import { choice, count, namesOf, quantity } from './field.ts'
import { metalPartSchema } from './metal-part.ts'
import { windingSchema } from './winding.ts'
import { wireSchema } from './wire.ts'

export const connections = ['star', 'delta', 'separate', 'single'] as const

export const statorSchema = z.strictObject({
  winding: windingSchema,
  wire: wireSchema,
  connection: choice(connections, {
    help: 'star, delta, separate (one bridge per phase) or single (one phase)',
  }),
  leadLength_m: quantity('m', {
    min: 0,
    max: 20,
    help: 'Wire of each phase outside the winding: both leads together',
  }).default(0.3),
  jointResistance_mohm: quantity('mohm', {
    min: 0,
    max: 10_000,
    help: 'Joints of each phase, all together',
  }).default(0),
  support: choice(namesOf([...plastics, ...resins]), {
    help: 'What the wire is cast in or wound on',
  }).default('PETG'),
  thermalResistance_K_per_W: quantity('K_per_W', {
    min: 0.001,
    max: 1000,
    symbol: 'R_θ',
    help: 'Copper to air, from a heat run; left out, it is estimated from the geometry, ± 50 %',
  }).optional(),
  mounting: z
    .strictObject({
      radius_mm: quantity('mm', {
        min: 5,
        max: 2000,
        help: 'From the shaft to the studs or screws that hold the stator',
      }),
      count: count({ min: 1, max: 36, help: 'How many of them' }),
    })
    .optional()
    .meta({ description: 'What holds the stator against being turned' }),
  metalParts: z
    .array(metalPartSchema)
    .max(20)
    .meta({ description: 'Metal that stands still near the magnets, on the side of the winding' })
    .default([]),
})
