/** Cuts delimited text into records: quoted cells, any line end, the line at which each record begins. */

export const separators = ['\t', ';', '|', ',', ' '] as const
export type Separator = (typeof separators)[number]

export interface TextRecord {
  /** Counted from 1. */
  readonly line: number
  /** The lines as they stand, without their end. */
  readonly text: string
  /** Lines it reaches over: more than 1 where a quoted cell holds a line end. */
  readonly lines: number
}

/** A quote that is not closed within so many lines is a letter like any other. */
const longestQuote = 20

const quotesIn = (text: string): number => {
  let count = 0
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count++
  return count
}

export interface RecordReader {
  /** The next record, or nothing at the end. */
  readonly next: () => TextRecord | undefined
  /** Share of the text read. */
  readonly fraction: () => number
}

/** Record by record; a byte-order mark is left out. */
export function recordReader(text: string): RecordReader {
  const end = text.includes('\n') ? '\n' : '\r'
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0
  let line = 0
  const takeLine = (from: number): { readonly line: string; readonly next: number } => {
    const stop = text.indexOf(end, from)
    const last = stop < 0 ? text.length : stop
    const bare = end === '\n' && last > from && text.charCodeAt(last - 1) === 13 ? last - 1 : last
    return { line: text.slice(from, bare), next: stop < 0 ? text.length : stop + 1 }
  }
  const next = (): TextRecord | undefined => {
    if (at >= text.length) return undefined
    const first = takeLine(at)
    const number = line + 1
    let record = first.line
    let lines = 1
    let after = first.next
    if (record.includes('"') && quotesIn(record) % 2 === 1) {
      let longer = record
      let ahead = first.next
      for (let more = 1; more < longestQuote && ahead < text.length; more++) {
        const further = takeLine(ahead)
        longer += `\n${further.line}`
        ahead = further.next
        if (quotesIn(further.line) % 2 === 1) {
          record = longer
          lines = more + 1
          after = ahead
          break
        }
      }
    }
    at = after
    line += lines
    return { line: number, text: record, lines }
  }
  return { next, fraction: () => (text.length === 0 ? 1 : at / text.length) }
}

function quotedCells(text: string, separator: Separator): string[] {
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const letter = text[i]!
    if (quoted) {
      if (letter !== '"') cell += letter
      else if (text[i + 1] === '"') {
        cell += '"'
        i++
      } else quoted = false
    } else if (letter === '"' && cell.trim() === '') {
      cell = ''
      quoted = true
    } else if (letter === separator) {
      if (separator !== ' ' || cell !== '') cells.push(cell)
      cell = ''
    } else cell += letter
  }
  if (separator !== ' ' || cell !== '') cells.push(cell)
  return cells.map((each) => each.trim())
}

/** The cells of a record, quotes taken off, space around them too; a run of spaces separates once. */
export function cellsOf(text: string, separator: Separator): string[] {
  if (text.includes('"')) return quotedCells(text, separator)
  if (separator === ' ') {
    const trimmed = text.trim()
    return trimmed === '' ? [] : trimmed.split(/ +/)
  }
  const cells = text.split(separator)
  for (let i = 0; i < cells.length; i++) cells[i] = cells[i]!.trim()
  return cells
}
