/** Reads a document from a file, or from standard input for "-". */
import { readFile } from 'node:fs/promises'
import { type Parsed, parseDesignText } from '../src/index.ts'

async function standardInput(): Promise<string> {
  const parts: Buffer[] = []
  for await (const part of process.stdin) parts.push(part as Buffer)
  return Buffer.concat(parts).toString('utf8')
}

/** What the file holds as a design, or the faults that keep it from being one; an unreadable file is a fault too. */
export async function readDesign(file: string): Promise<Parsed> {
  let text: string
  try {
    text = file === '-' ? await standardInput() : await readFile(file, 'utf8')
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? 'unknown reason'
    return {
      ok: false,
      faults: [{ path: 'file', condition: 'readable', received: `${file} (${reason})`, code: 'not-json' }],
    }
  }
  return parseDesignText(text)
}
