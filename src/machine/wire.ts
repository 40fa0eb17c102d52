/** The wire as it is bought: size, enamel, strands, reels and price. */
import { z } from 'zod'
import { insulationClasses } from '../data/insulation-class.ts'
import { choice, count, namesOf, quantity } from './field.ts'
import { wireSizeSchema } from './wire-size.ts'

export const wireSchema = z.strictObject({
  size: wireSizeSchema,
  enamelGrade: count({ min: 1, max: 2, help: 'Thickness of the enamel: grade 1 or grade 2' }).default(1),
  strands: count({ min: 1, max: 200, help: 'Wires in hand, in parallel along every turn' }).default(1),
  insulationClass: choice(namesOf(insulationClasses), { help: 'Thermal class of the enamel' }).default('F'),
  reelLength_m: quantity('m', {
    min: 0.1,
    max: 1e6,
    help: 'Wire left on the reels that you own',
  }).optional(),
  price_per_kg: quantity('1', {
    min: 0,
    max: 1e6,
    help: 'Price of a kilogram of wire, in your money',
  }).optional(),
})
