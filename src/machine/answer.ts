/** Readings that a builder sets against concerns: "I measured it". */
import { z } from 'zod'
import { units } from '../units/unit.ts'
import { choice, text } from './field.ts'

const answer = z.strictObject({
  concern: text(40, { help: 'Code of the concern that it answers, as the list of concerns shows it' }),
  note: text(1000, {
    help: 'What was read, with what, by whom: enough for a stranger to judge it',
  }).min(1),
  file: text(200, { help: 'Name of the file that holds the readings' }).optional(),
  date: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/)
    .meta({ description: 'Day of the reading: year-month-day, ISO 8601' })
    .optional(),
  figure: z
    .strictObject({
      value: z.number().min(-1e15).max(1e15).meta({
        description: 'What the rule’s measure stood at when it was answered',
        minimum: -1e15,
        maximum: 1e15,
      }),
      unit: choice([...units.keys()], { help: 'Suffix of that number’s unit' }),
    })
    .optional()
    .meta({
      description: 'The computed figure that was answered; it tells when the design has moved away from it',
    }),
})

export const answersSchema = z
  .array(answer)
  .max(60)
  .meta({ description: 'Readings that answer concerns, each with what was read' })
  .default([])

export type Answer = z.output<typeof answer>
