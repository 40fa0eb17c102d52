/** A wind logger's file, read, and the design set into its wind. */
import type { WindImportOptions } from '../../src/index.ts'
import { type RecordReport, recordReport } from '../record.ts'
import { type JobSteps, job } from './job.ts'

export interface RecordAsked {
  readonly file: File
  readonly options: WindImportOptions
  /** The raw text of the design. */
  readonly text: string
}

/** Loggers write UTF-8 or, with a mark in front, UTF-16. */
async function contents(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe
  return new TextDecoder(wide ? 'utf-16le' : 'utf-8').decode(bytes)
}

function* read(name: string, found: string, { options, text }: RecordAsked): JobSteps<RecordReport> {
  const made = yield* recordReport(name, found, options, text)
  if (typeof made === 'string') throw new RangeError(made)
  return made
}

export const record = job({
  name: 'record',
  steps: async (asked: RecordAsked) => read(asked.file.name, await contents(asked.file), asked),
})
