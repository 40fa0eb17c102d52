/** The magnet rotor: blocks on a drum, on one disc, or on two discs that face each other. */
import { z } from 'zod'
import { magnetGrades } from '../data/magnet-grade.ts'
import { plastics } from '../data/plastic.ts'
import { choice, count, namesOf, quantity } from './field.ts'

const hallReading = z.strictObject({
  distance_mm: quantity('mm', {
    min: 0,
    max: 200,
    help: 'From the face of one loose magnet to the sensor, on its axis',
  }),
  fluxDensity_mT: quantity('mT', { min: 0.01, max: 2000, symbol: 'B', help: 'Reading of the sensor' }),
  sensorRange_mT: quantity('mT', { min: 1, max: 5000, help: 'Where the sensor stops' }).optional(),
})

export const magnetSchema = z
  .strictObject({
    length_mm: quantity('mm', {
      min: 0.5,
      max: 400,
      help: 'Edge along the shaft on a drum, along the radius on a disc',
    }),
    width_mm: quantity('mm', { min: 0.5, max: 400, help: 'Edge along the circumference' }),
    thickness_mm: quantity('mm', {
      min: 0.2,
      max: 200,
      help: 'Edge along the magnetisation, from pole face to pole face',
    }),
    grade: choice(namesOf(magnetGrades), { help: 'Grade as the shop names it' }).optional(),
    polarization_T: quantity('T', {
      min: 0.01,
      max: 1.6,
      symbol: 'J',
      help: 'Remanence of the material at 20 °C, in place of a grade; not the field at the surface',
    }).optional(),
    recoilPermeability: quantity('1', {
      min: 1,
      max: 1.5,
      symbol: 'μ_rec',
      help: 'Relative recoil permeability',
    }).default(1.05),
    hallReading: hallReading.optional(),
  })
  .superRefine((magnet, context) => {
    if ((magnet.grade === undefined) === (magnet.polarization_T === undefined))
      context.addIssue({
        code: 'custom',
        path: magnet.grade === undefined ? ['grade'] : ['polarization_T'],
        message:
          magnet.grade === undefined
            ? 'given, or polarization_T in its place'
            : 'left out where a grade is given',
        params: { code: magnet.grade === undefined ? 'missing-key' : 'conflict' },
      })
  })
  .meta({ description: 'The block magnets, all alike' })

const backIron = z.strictObject({
  kind: choice(['none', 'steel'], { help: 'Plate behind the magnets' }),
  thickness_mm: quantity('mm', { min: 0.3, max: 60, help: 'Thickness of the steel plate' }).default(6),
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
    help: 'From the shaft to the centre of each magnet block',
  }),
  magnet: magnetSchema,
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
      material: choice(namesOf(plastics), { help: 'Material of that wall or band' }).default('PETG'),
      hold_N: quantity('N', {
        min: 0,
        max: 1e6,
        help: 'Force per magnet found by test, in place of the computed one',
      }).optional(),
    })
    .default({ kind: 'glue', wall_mm: 2, material: 'PETG' }),
}

const faceDistance_mm = quantity('mm', {
  min: 0.5,
  max: 300,
  help: 'From magnet face to the face opposite: the whole air gap with the winding in it',
})

export const rotorSchema = z.discriminatedUnion('arrangement', [
  z.strictObject({
    arrangement: z
      .literal('drum')
      .meta({ description: 'Blocks round a drum, poles facing outward and inward' }),
    windingSide: choice(['outside', 'inside'], {
      help: 'Whether the winding lies outside or inside the ring of magnets',
    }),
    ...common,
  }),
  z.strictObject({
    arrangement: z.literal('disc').meta({ description: 'Blocks on one disc, poles facing along the shaft' }),
    ...common,
    backIron,
    opposite: z
      .strictObject({
        kind: choice(['none', 'steel'], { help: 'Plain plate beyond the winding' }),
        faceDistance_mm,
      })
      .optional(),
  }),
  z.strictObject({
    arrangement: z
      .literal('two-discs')
      .meta({ description: 'Two discs of blocks, unlike poles facing across the winding' }),
    ...common,
    backIron,
    faceDistance_mm,
  }),
])
