/** The design document: one JSON object that holds all that a builder decides and knows. */
import { z } from 'zod'
import { answersSchema } from './answer.ts'
import { benchSchema } from './bench.ts'
import { bladeSchema } from './blade.ts'
import { bridgeSchema } from './bridge.ts'
import { cableSchema } from './cable.ts'
import { converterSchema } from './converter.ts'
import { defectsSchema } from './defect.ts'
import { text } from './field.ts'
import { loadSchema } from './load.ts'
import { designVersion } from './migration.ts'
import { needSchema } from './need.ts'
import { protectionSchema } from './protection.ts'
import { purposeSchema } from './purpose.ts'
import { rotorSchema } from './rotor.ts'
import { shaftSchema } from './shaft.ts'
import { sharingSchema } from './sharing.ts'
import { siteSchema } from './site.ts'
import { statorSchema } from './stator.ts'
import { toleranceSchema } from './tolerance.ts'
import { wiringSchema } from './wiring.ts'

export const designSchema = z.strictObject({
  gustloom: z.literal(designVersion).meta({ description: 'Version of this document’s form' }),
  name: text(120, { help: 'Name of the design' }),
  note: text(4000, { help: 'Anything a reader should know' }).optional(),
  purpose: purposeSchema,
  site: siteSchema,
  blades: bladeSchema,
  protection: protectionSchema.prefault({}),
  shaft: shaftSchema.prefault({}),
  rotor: rotorSchema,
  stator: statorSchema,
  cable: cableSchema,
  bridge: bridgeSchema.prefault({}),
  converter: converterSchema,
  load: loadSchema,
  wiring: wiringSchema.prefault({}),
  need: needSchema,
  bench: benchSchema.prefault({}),
  sharing: sharingSchema,
  tolerance: toleranceSchema.prefault({}),
  defects: defectsSchema,
  answers: answersSchema,
})

/** A design with its defaults filled in; what the person typed is kept by whoever holds the document. */
export type Design = z.output<typeof designSchema>

/** JSON Schema 2020-12 of the document, for editors and other programs. */
export function designJsonSchema(): object {
  const schema = z.toJSONSchema(designSchema, { target: 'draft-2020-12', io: 'input' })
  return { ...schema, $id: 'design.schema.json', title: 'Gustloom design document' }
}
