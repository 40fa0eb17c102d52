/** The magnet rotor: magnets on a drum, on one disc, or on two discs that face each other, and their iron. */
import { z } from 'zod'
import { bands } from '../data/band.ts'
import { plastics } from '../data/plastic.ts'
import { choice, count, namesOf, quantity } from './field.ts'
import { magnetSchema } from './magnet.ts'

const radius_mm = (what: string) =>
  quantity('mm', { min: 0, max: 2000, help: `${what}; left out, the plate reaches past the magnets` })

const plate = {
  thickness_mm: quantity('mm', { min: 0.3, max: 60, help: 'Thickness of the steel' }).default(6),
  innerRadius_mm: radius_mm('Radius of the hole in the plate').optional(),
  outerRadius_mm: radius_mm('Radius of the plate’s rim').optional(),
}

const backIron = z.strictObject({
  kind: choice(['none', 'steel'], { help: 'Plate behind the magnets' }),
  ...plate,
})

const common = {
  poleCount: count({
    min: 2,
    max: 120,
    symbol: '2p',
    help: 'Number of magnets round one ring, an even number',
  }).multipleOf(2),
  pitchRadius_mm: quantity('mm', {
    min: 2,
    max: 1500,
    symbol: 'R',
    help: 'From the shaft to the centre of each magnet',
  }),
  magnet: magnetSchema,
  piecesPerPole: count({
    min: 1,
    max: 4,
    help: 'Magnets per pole set end to end: 1 as usual; 2 to 4 turn their magnetisation step by step, strong towards the winding',
  }).default(1),
  poleSequence: z
    .string()
    .regex(/^[NS]+$/)
    .max(120)
    .meta({
      description:
        'Poles as walked round with a compass, one letter a magnet; left out, they alternate N S N S',
    })
    .optional(),
  cover_mm: quantity('mm', { min: 0, max: 20, help: 'Plastic, band or resin over the magnet faces' }).default(
    0,
  ),
  retention: z
    .strictObject({
      kind: choice(['glue', 'pocket', 'band'], { help: 'What holds a magnet if the glue fails' }),
      wall_mm: quantity('mm', {
        min: 0.1,
        max: 50,
        help: 'Thickness of the wall or band that carries the magnet',
      }).default(2),
      material: choice(namesOf([...plastics, ...bands]), { help: 'Material of that wall or band' }).default(
        'PETG',
      ),
      hold_N: quantity('N', {
        min: 0,
        max: 1e6,
        help: 'Force per magnet found by test, in place of the computed one',
      }).optional(),
    })
    .default({ kind: 'glue', wall_mm: 2, material: 'PETG' }),
  hubRadius_mm: quantity('mm', {
    min: 0.5,
    max: 1500,
    help: 'Radius up to which a hub or flange clamps the disc that carries the magnets',
  }).optional(),
  carrier: z
    .strictObject({
      material: choice(namesOf(plastics), { help: 'Material of the disc or drum behind the magnets' }),
      thickness_mm: quantity('mm', { min: 0.5, max: 100, help: 'Thickness of it behind the magnets' }),
    })
    .optional()
    .meta({ description: 'A printed disc or drum that carries the magnets where no steel does' }),
}

const faceDistance_mm = quantity('mm', {
  min: 0.5,
  max: 300,
  help: 'From magnet face to the face opposite: the whole air gap with the winding in it',
})

const ring = z.strictObject({
  kind: choice(['none', 'steel'], { help: 'Ring behind the magnets, on their side away from the winding' }),
  thickness_mm: quantity('mm', { min: 0.3, max: 60, help: 'Thickness of the steel' }).default(6),
})

const sleeve = z.strictObject({
  distance_mm: quantity('mm', {
    min: 0.5,
    max: 300,
    help: 'From the magnet faces to the steel beyond the winding',
  }),
  thickness_mm: quantity('mm', { min: 0.3, max: 60, help: 'Thickness of the steel' }).default(3),
  motion: choice(['turns', 'stands'], { help: 'Whether the sleeve turns with the magnets or stands still' }),
})

export const rotorSchema = z.discriminatedUnion('arrangement', [
  z.strictObject({
    arrangement: z
      .literal('drum')
      .meta({ description: 'Magnets round a drum, poles facing outward and inward' }),
    windingSide: choice(['outside', 'inside'], {
      help: 'Whether the winding lies outside or inside the ring of magnets',
    }),
    ...common,
    backIron: ring.optional(),
    sleeve: sleeve.optional(),
  }),
  z.strictObject({
    arrangement: z.literal('disc').meta({ description: 'Magnets on one disc, poles facing along the shaft' }),
    ...common,
    backIron,
    opposite: z
      .strictObject({
        kind: choice(['none', 'steel'], { help: 'Plain plate beyond the winding' }),
        faceDistance_mm,
        ...plate,
      })
      .optional(),
  }),
  z.strictObject({
    arrangement: z
      .literal('two-discs')
      .meta({ description: 'Two discs of magnets, unlike poles facing across the winding' }),
    ...common,
    backIron,
    faceDistance_mm,
  }),
])
