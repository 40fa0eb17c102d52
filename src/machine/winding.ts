/** The winding: a serpentine for each phase, or coils, side by side or overlapped. */
import { z } from 'zod'
import { holeSchema } from './coil-shape/index.ts'
import { choice, count, quantity } from './field.ts'

const turns = count({
  min: 1,
  max: 20_000,
  symbol: 'N',
  help: 'Turns of one coil, or times the wave goes round',
})
const bundleWidth_mm = quantity('mm', {
  min: 0.05,
  max: 200,
  help: 'Width of the bundle of wires, across the run and along the surface',
})
const bundleDepth_mm = quantity('mm', {
  min: 0.05,
  max: 200,
  help: 'Depth of the bundle of wires, away from the magnets',
})
const distance_mm = quantity('mm', {
  min: 0.05,
  max: 300,
  help: 'From the magnet faces to the middle of the bundle; of layers or levels, to that of the nearest',
})

export const crownShapes = ['half-ellipse', 'rounded corners'] as const

const serpentine = z.strictObject({
  kind: z.literal('serpentine').meta({ description: 'One wave of wire per phase, a run under every pole' }),
  turns,
  runLength_mm: quantity('mm', { min: 1, max: 500, help: 'Length of a run between its crowns' }),
  slant_deg: quantity('deg', {
    min: -60,
    max: 60,
    help: 'Angle about the shaft from one end of a run to the other; the next run slants back',
  }).default(0),
  crownHeight_mm: quantity('mm', {
    min: 0.5,
    max: 200,
    help: 'How far a crown bulges past the ends of the runs',
  }),
  crown: choice(crownShapes, {
    help: 'Form of a crown: half an ellipse, or straight with rounded corners',
  }).default('half-ellipse'),
  cornerRadius_mm: quantity('mm', {
    min: 0,
    max: 200,
    help: 'Radius of the rounded corners of a crown; left out, as large as they fit',
  }).optional(),
  bundleWidth_mm,
  bundleDepth_mm,
  layers: count({
    min: 1,
    max: 8,
    help: 'Layers that the turns of a phase are spread over, in series, each a bundle of its own',
  }).default(1),
  layerPitch_mm: quantity('mm', {
    min: 0.05,
    max: 100,
    help: 'From layer to layer of a phase, away from the magnets; left out, the depth of the bundle',
  }).optional(),
  phases: z
    .array(
      z.strictObject({
        offset_deg: quantity('deg', {
          min: -360,
          max: 360,
          help: 'Angle about the shaft (mechanical) from the first phase',
        }),
        distance_mm,
        crownLift_mm: quantity('mm', {
          min: 0,
          max: 100,
          help: 'How far the crowns leave the level of the runs, away from the magnets, to pass over other phases',
        }).default(0),
        sense: choice(['forward', 'reversed'], { help: 'Reversed swaps start and finish' }).default(
          'forward',
        ),
      }),
    )
    .min(1)
    .max(3)
    .meta({ description: 'The phases, each with its own place' }),
})

const legWidth_mm = quantity('mm', { min: 0.2, max: 150, help: 'Width of one leg of the coil' })

const coils = z.strictObject({
  kind: z.literal('coils').meta({ description: 'Coils all round, side by side or overlapped' }),
  coilCount: count({ min: 1, max: 180, symbol: 'Q', help: 'Number of coils' }),
  phaseCount: count({ min: 1, max: 3, symbol: 'm', help: 'Number of phases' }),
  turns,
  hole: holeSchema,
  legWidth_mm,
  bundleDepth_mm,
  distance_mm,
  offset_deg: quantity('deg', {
    min: -360,
    max: 360,
    help: 'Angle about the shaft (mechanical) at which the first coil stands',
  }).default(0),
  centreRadius_mm: quantity('mm', {
    min: 1,
    max: 1500,
    help: 'From the shaft to the middle of the coil on a disc; left out, the pitch radius of the magnets',
  }).optional(),
  parallelGroups: count({
    min: 1,
    max: 60,
    help: 'Groups in parallel in a phase; the coils of each group are in series',
  }).default(1),
  groupCoils: z
    .array(z.number().int().min(1).max(180))
    .min(2)
    .max(60)
    .meta({
      description:
        'Coils of each group of a phase where the groups are unlike; it takes the place of the number of groups',
    })
    .optional(),
  reversedCoils: z
    .array(z.number().int().min(1).max(180))
    .max(180)
    .meta({
      description: 'Coils, counted from 1, whose start and finish are swapped against the wiring table',
    })
    .default([]),
  reversedPhases: z
    .array(z.number().int().min(1).max(3))
    .max(3)
    .meta({ description: 'Phases, counted from 1, whose start and finish are swapped' })
    .default([]),
})

export const windingSchema = z.discriminatedUnion('kind', [serpentine, coils])
