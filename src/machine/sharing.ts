/** What is handed on to strangers with the design, and whether it tells more than it should. */
import { z } from 'zod'
import { choice, text } from './field.ts'

export const sharingSchema = z
  .strictObject({
    files: z
      .array(
        z.strictObject({
          name: text(200, { help: 'Name of the file' }),
          kind: choice(['photo', 'video', 'sound', 'logger file', 'drawing', 'other'], {
            help: 'What it holds',
          }),
          placeData: choice(['stripped', 'still in it', 'none by nature', 'not said'], {
            help: 'Whether place and time of recording, written into it by camera or telephone, were taken out',
          }).default('not said'),
        }),
      )
      .max(500)
      .meta({ description: 'Files that go with the design' })
      .default([]),
  })
  .optional()
  .meta({ description: 'What is handed on with the design' })
