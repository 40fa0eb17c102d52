/** The wire as it is bought: round or strip, enamel, strands, reels and price. */
import { z } from 'zod'
import { insulationClasses } from '../data/insulation-class.ts'
import { choice, count, namesOf, quantity } from './field.ts'
import { wireSizeSchema } from './wire-size.ts'

const stripSchema = z
  .strictObject({
    width_mm: quantity('mm', { min: 0.3, max: 20, help: 'Wider side of the bare strip' }),
    thickness_mm: quantity('mm', { min: 0.1, max: 10, help: 'Thinner side of the bare strip' }),
    edgeRadius_mm: quantity('mm', {
      min: 0,
      max: 5,
      help: 'Radius of its edges; left out, that of the standard for the thickness',
    }).optional(),
    lies: choice(['flat', 'on edge'], {
      help: 'Flat: its wide side faces the magnets; on edge: its thin side does',
    }).default('flat'),
  })
  .meta({ description: 'Rectangular wire, in place of a round size' })

export const wireSchema = z
  .strictObject({
    size: wireSizeSchema.optional(),
    strip: stripSchema.optional(),
    enamelGrade: count({ min: 1, max: 2, help: 'Thickness of the enamel: grade 1 or grade 2' }).default(1),
    strands: count({ min: 1, max: 200, help: 'Wires in hand, in parallel along every turn' }).default(1),
    insulationClass: choice(namesOf(insulationClasses), { help: 'Thermal class of the enamel' }).default('F'),
    reelLength_m: quantity('m', {
      min: 0.1,
      max: 1e6,
      help: 'Wire left on the reels that you own',
    }).optional(),
    reelMass_g: quantity('g', {
      min: 0.1,
      max: 1e8,
      help: 'Weight of the wire left on the reels that you own, without the reels; in place of its length',
    }).optional(),
    price_per_kg: quantity('1', {
      min: 0,
      max: 1e6,
      help: 'Price of a kilogram of wire, in your money',
    }).optional(),
  })
  .superRefine((wire, context) => {
    if ((wire.size === undefined) === (wire.strip === undefined))
      context.addIssue({
        code: 'custom',
        path: wire.size === undefined ? ['size'] : ['strip'],
        message:
          wire.size === undefined ? 'given, or strip in its place' : 'left out where a round size is given',
        params: { code: wire.size === undefined ? 'missing-key' : 'conflict' },
      })
    if (wire.reelLength_m !== undefined && wire.reelMass_g !== undefined)
      context.addIssue({
        code: 'custom',
        path: ['reelMass_g'],
        message: 'left out where reelLength_m is given',
        params: { code: 'conflict' },
      })
  })
