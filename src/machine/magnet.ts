/** The magnets as they are bought: shape, material, and what was measured on a loose one. */
import { z } from 'zod'
import { magnetGrades } from '../data/magnet-grade.ts'
import { choice, namesOf, quantity } from './field.ts'

const distance_mm = quantity('mm', {
  min: 0,
  max: 200,
  help: 'From the face of one loose magnet to the sensor, on its axis',
})

const reading = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('hall').meta({ description: 'Reading of a field sensor' }),
      distance_mm,
      fluxDensity_mT: quantity('mT', { min: 0.01, max: 2000, symbol: 'B', help: 'Reading of the sensor' }),
      sensorRange_mT: quantity('mT', { min: 1, max: 5000, help: 'Where the sensor stops' }).optional(),
    }),
    z.strictObject({
      kind: z.literal('pull').meta({ description: 'Force that tears the magnet off a thick steel plate' }),
      spacer_mm: quantity('mm', {
        min: 0,
        max: 50,
        help: 'Thickness of what lies between magnet and steel: card, tape, plating',
      }),
      force_N: quantity('N', { min: 0.01, max: 1e5, symbol: 'F', help: 'Force at which it lets go' }),
    }),
  ])
  .meta({ description: 'One reading on one loose magnet' })

const material = {
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
  readings: z
    .array(reading)
    .max(40)
    .meta({ description: 'What you read on loose magnets; it narrows the grade down' })
    .default([]),
}

const length_mm = quantity('mm', {
  min: 0.5,
  max: 400,
  help: 'Edge along the shaft on a drum, along the radius on a disc',
})
const thickness_mm = quantity('mm', {
  min: 0.2,
  max: 200,
  help: 'Edge along the magnetisation, from pole face to pole face',
})
const wedgeEdge = (where: string) =>
  quantity('mm', { min: 0.5, max: 400, help: `Edge along the circumference ${where}` })

export const magnetSchema = z
  .discriminatedUnion('shape', [
    z.strictObject({
      shape: z.literal('block').meta({ description: 'A block with square corners' }),
      length_mm,
      width_mm: quantity('mm', { min: 0.5, max: 400, help: 'Edge along the circumference' }),
      thickness_mm,
      ...material,
    }),
    z.strictObject({
      shape: z.literal('disc').meta({ description: 'A round disc or rod, its poles on the round faces' }),
      diameter_mm: quantity('mm', { min: 0.5, max: 400, help: 'Diameter of the round faces' }),
      thickness_mm,
      ...material,
    }),
    z.strictObject({
      shape: z.literal('arc').meta({
        description: 'A segment bent round the drum, or of a flat ring on a disc',
      }),
      length_mm,
      thickness_mm,
      span_deg: quantity('deg', {
        min: 0.5,
        max: 180,
        help: 'Angle about the shaft that the segment covers',
      }),
      magnetisation: choice(['radial', 'parallel'], {
        help: 'On a drum: every part along its own radius, or the whole piece along the middle radius',
      }).optional(),
      ...material,
    }),
    z.strictObject({
      shape: z.literal('wedge').meta({
        description: 'A block whose sides point to the shaft: narrower at its inner end',
      }),
      length_mm,
      innerWidth_mm: wedgeEdge('at the end nearer the shaft'),
      outerWidth_mm: wedgeEdge('at the end farther from the shaft'),
      thickness_mm,
      ...material,
    }),
  ])
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
  .meta({ description: 'The magnets, all alike' })
