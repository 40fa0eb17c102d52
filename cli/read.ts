/** Reads a document from a file, or from standard input for "-". */
import { createReadStream } from 'node:fs'
import { type Fault, type Parsed, parseDesignText } from '../src/index.ts'
import { longestDocument } from '../src/machine/document-bound.ts'

/** Bytes after which any text is longer than a document may be: no letter takes more than four. */
const enough = 4 * longestDocument

/** The text of a stream, or so much of it that the parser will call it too large: some streams never end. */
async function textOf(stream: AsyncIterable<unknown>): Promise<string> {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of stream) {
    parts.push(part as Buffer)
    length += (part as Buffer).length
    if (length > enough) break
  }
  return Buffer.concat(parts).toString('utf8')
}

/** The text of a file, or of standard input for "-"; an unreadable file is a fault. */
export async function readText(file: string): Promise<string | Fault> {
  try {
    return await textOf(file === '-' ? process.stdin : createReadStream(file))
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? 'unknown reason'
    return { path: 'file', condition: 'readable', received: `${file} (${reason})`, code: 'not-json' }
  }
}

/** What the file holds as a design, or the faults that keep it from being one. */
export async function readDesign(file: string): Promise<Parsed> {
  const text = await readText(file)
  return typeof text === 'string' ? parseDesignText(text) : { ok: false, faults: [text] }
}
