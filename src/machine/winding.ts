/** The winding: one serpentine per phase, or concentrated coils. */
import { z } from 'zod'
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
  help: 'From the magnet faces to the middle of the bundle',
})

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
  bundleWidth_mm,
  bundleDepth_mm,
  phases: z
    .array(
      z.strictObject({
        offset_deg: quantity('deg', {
          min: -360,
          max: 360,
          help: 'Angle about the shaft (mechanical) from the first phase',
        }),
        distance_mm,
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
const hole = {
  round: z.strictObject({
    shape: z.literal('round'),
    holeDiameter_mm: quantity('mm', { min: 0.5, max: 400, help: 'Diameter of the hole' }),
  }),
  rectangular: z.strictObject({
    shape: z.literal('rectangular'),
    holeWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the circumference' }),
    holeLength_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the shaft or the radius' }),
    cornerRadius_mm: quantity('mm', { min: 0, max: 100, help: 'Radius of the corners of the hole' }).default(
      2,
    ),
  }),
  wedge: z.strictObject({
    shape: z.literal('wedge'),
    holeInnerWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Width of the hole at its inner end' }),
    holeOuterWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Width of the hole at its outer end' }),
    holeLength_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the radius' }),
    cornerRadius_mm: quantity('mm', { min: 0, max: 100, help: 'Radius of the corners of the hole' }).default(
      2,
    ),
  }),
}

const coils = z.strictObject({
  kind: z.literal('coils').meta({ description: 'Concentrated coils side by side' }),
  coilCount: count({ min: 1, max: 180, symbol: 'Q', help: 'Number of coils' }),
  phaseCount: count({ min: 1, max: 3, symbol: 'm', help: 'Number of phases' }),
  turns,
  hole: z.discriminatedUnion('shape', [hole.round, hole.rectangular, hole.wedge]),
  legWidth_mm,
  bundleDepth_mm,
  distance_mm,
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
