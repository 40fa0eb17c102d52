/** What stands behind a claim, and the words that it may be given for it. */
import { z } from 'zod'
import { choice, count, flag, quantity, text } from './field.ts'

/** From the weakest to the strongest. */
export const evidenceLevels = [
  'idea',
  'calculated',
  'bench-indicated',
  'bench-measured',
  'field-measured',
  'replicated',
] as const
export type EvidenceLevel = (typeof evidenceLevels)[number]

export const evidenceSchema = z
  .strictObject({
    calculation: text(200, { help: 'Version of the model and the document it was computed from' }).optional(),
    instrument: text(200, { help: 'What it was read with' }).optional(),
    rawFile: text(200, { help: 'Name of the file of readings as they came' }).optional(),
    runs: count({ min: 0, max: 1000, help: 'Runs on the bench, each from rest' }).default(0),
    predicted: flag({
      help: 'A reading that was kept back was predicted, and came out within the prediction’s spread',
    }).default(false),
    field_h: quantity('h', {
      min: 0,
      max: 100_000,
      help: 'Hours of averaged readings in the wind, sorted into bins of wind speed',
    }).optional(),
    exclusions: flag({ help: 'What was left out is listed, with the reason' }).default(false),
    stateLog: flag({
      help: 'It is logged when the machine was furled, braked, or its battery full',
    }).default(false),
    otherBuilders: count({
      min: 0,
      max: 1000,
      help: 'Others who built it with their own magnets and filled in the same sheet',
    }).default(0),
    builderSpread: choice(['stated', 'not stated'], {
      help: 'Whether the spread from builder to builder is stated',
    }).default('not stated'),
  })
  .optional()
  .meta({ description: 'What stands behind the claim' })
