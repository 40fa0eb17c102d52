/** Reads a section's polar from pasted text: columns of angle, lift and drag, one Reynolds number or several. */
import { type BladePolars, mostPolarRows, mostPolars } from './blade-polar.ts'

/** What is wrong with a line, and what to do about it. */
export interface PolarTextFault {
  /** From 1; 0 for the text as a whole. */
  readonly line: number
  readonly what: string
  readonly remedy: string
}

/** A line or a column that was read and not used. */
export interface PolarTextNote {
  readonly line: number
  readonly what: string
}

export type PolarText =
  | { readonly ok: true; readonly polars: BladePolars; readonly notes: readonly PolarTextNote[] }
  | { readonly ok: false; readonly faults: readonly PolarTextFault[] }

/** The longest text read: a polar is a page, not a book. */
const longestText = 1_000_000

type Column = 'angle' | 'lift' | 'drag' | 'reynolds' | undefined

const columnWords: readonly (readonly [RegExp, Column])[] = [
  [/^(alpha|alfa|aoa|angle|angle_deg|α|a)(\[?\(?(deg|°|degrees)\)?\]?)?$/i, 'angle'],
  [/^(cl|c_l|ca|lift|lift_coefficient)$/i, 'lift'],
  [/^(cd|c_d|cw|drag|drag_coefficient)$/i, 'drag'],
  [/^(re|reynolds|reynolds_number)$/i, 'reynolds'],
]

const usualColumns: readonly Column[] = ['angle', 'lift', 'drag']

const isComment = (line: string): boolean => /^(#|!|%|\/\/|;|\*)/.test(line)

/** How the file writes its numbers: whether a comma is a decimal sign. */
function decimalComma(lines: readonly string[]): boolean {
  const rows = lines.filter((line) => /^[-+]?[\d.,]/.test(line) && !/[A-Za-z]{3}/.test(line))
  const commas = rows.filter((line) => line.includes(','))
  // with a point anywhere, or nothing else between the numbers, a comma can only stand between numbers
  if (commas.length === 0 || rows.some((line) => line.includes('.'))) return false
  return commas.every((line) => /\d,\d/.test(line) && /[;\s]/.test(line) && !/,\s/.test(line))
}

const split = (line: string, comma: boolean): string[] =>
  line.split(comma ? /[;\s|]+/ : /[;,\s|/]+/).filter((word) => word !== '')

function numberOf(word: string, comma: boolean): number | undefined {
  const text = (comma ? word.replace(',', '.') : word).replace('−', '-')
  if (!/^[-+]?(\d+\.?\d*|\.\d+)([eEdD][-+]?\d+)?$/.test(text)) return undefined
  const value = Number(text.replace(/[dD]/, 'e'))
  return Number.isFinite(value) ? value : undefined
}

/** A Reynolds number told in words, such as “Re = 0.100 e 6” or “Reynolds number: 100 000”; undefined without one. */
function reynoldsIn(line: string, comma: boolean): number | undefined {
  const found =
    /\b(?:re|reynolds)\b[^0-9]*?(\d[\d., ’']*)(?:\s*[x×*]\s*10\s*\^?\s*(\d+)|\s*e\s*\+?\s*(\d+)|\s*(k|thousand|million|m)\b)?/i.exec(
      line,
    )
  if (found === null) return undefined
  const [, digits = '', ten, power, word] = found
  let text = digits.trim().replace(/[’' ]/g, '').replace(/[.,]$/, '')
  // 100,000 and 1.000.000 are grouped, 0,1 is a decimal comma
  if (/^\d{1,3}(,\d{3})+$/.test(text) || /^\d{1,3}(\.\d{3}){2,}$/.test(text)) text = text.replace(/[.,]/g, '')
  else if (comma || !text.includes('.')) text = text.replace(',', '.')
  else text = text.replace(/,/g, '')
  const factor = word === undefined ? 1 : /^(k|thousand)$/i.test(word) ? 1e3 : 1e6
  const value = Number(text) * 10 ** Number(ten ?? power ?? 0) * factor
  return Number.isFinite(value) ? value : undefined
}

interface Row {
  readonly line: number
  readonly angle: number
  readonly lift: number
  readonly drag: number
}

interface Reading {
  readonly blocks: Map<number, Row[]>
  readonly faults: PolarTextFault[]
  readonly notes: PolarTextNote[]
}

/** Bounds of the document's fields, so that a fault names the line. */
const bounds = { angle: [-180, 180], lift: [-4, 4], drag: [1e-5, 4] } as const

function boundFault(line: number, row: Row): PolarTextFault | undefined {
  for (const name of ['angle', 'lift', 'drag'] as const) {
    const [low, high] = bounds[name]
    if (row[name] < low || row[name] > high)
      return {
        line,
        what: `${name} ${row[name]} is outside ${low} … ${high}`,
        remedy:
          name === 'drag' && row.drag <= 0
            ? 'drag is above zero; leave the row out if it was not measured'
            : 'check the order of the columns: angle in degrees, lift, drag, or name them in a header line',
      }
  }
  return undefined
}

/** Columns that a header line names, undefined where it is no such line. */
function columnsOf(words: readonly string[]): readonly Column[] | undefined {
  const columns = words.map((word) => columnWords.find(([pattern]) => pattern.test(word))?.[1])
  return usualColumns.every((name) => columns.includes(name)) ? columns : undefined
}

function read(lines: readonly string[], told: number | undefined): Reading {
  const comma = decimalComma(lines)
  const reading: Reading = { blocks: new Map(), faults: [], notes: [] }
  const { blocks, faults, notes } = reading
  let reynolds = told
  let columns: readonly Column[] | undefined
  const wide = new Set<readonly Column[]>()
  /** A text line above may say what a lone number is. */
  let announced: 'reynolds' | 'other' | undefined
  const note = (line: number, what: string) => notes.push({ line, what })
  const take = (line: number, value: number) => {
    if (value >= 1000 && value <= 1e8) reynolds = value
    else
      faults.push({
        line,
        what: `Reynolds number ${value} is outside 1000 … 100 000 000`,
        remedy: 'write it in full, such as Re = 100000',
      })
  }
  lines.forEach((raw, index) => {
    const line = index + 1
    const bare = raw.trim()
    if (bare === '') return
    const words = split(bare, comma)
    const values = words.map((word) => numberOf(word, comma))
    const numbers = values.filter((value) => value !== undefined).length
    if (isComment(bare) || numbers === 0 || values[0] === undefined) {
      const text = bare.replace(/^(#|!|%|\/\/|;|\*)+\s*/, '')
      const named = columnsOf(split(text, comma))
      const number = /^number of/i.test(text) ? undefined : reynoldsIn(text, comma)
      announced = undefined
      if (named !== undefined) {
        columns = named
        named.forEach((name, k) => {
          if (name === undefined) note(line, `column ${k + 1} (${split(text, comma)[k]}) not used`)
        })
      } else if (number !== undefined) take(line, number)
      else {
        announced = /\b(re|reynolds)\b/i.test(text) && !/^number of/i.test(text) ? 'reynolds' : 'other'
        if (announced === 'other' && !/^[-=_\s|:]*$/.test(text)) note(line, `“${text.slice(0, 60)}” not used`)
      }
      return
    }
    if (numbers === 1 && words.length === 1 && announced !== undefined) {
      if (announced === 'reynolds') take(line, values[0]!)
      else note(line, `${bare} not used`)
      announced = undefined
      return
    }
    announced = undefined
    const wrong = values.indexOf(undefined)
    if (wrong >= 0) {
      faults.push({
        line,
        what: `“${words[wrong]}” is not a number`,
        remedy: 'mend it, or put # before the line to leave it out',
      })
      return
    }
    const order: readonly Column[] =
      columns ?? (words.length === 4 && values[3]! >= 1000 ? [...usualColumns, 'reynolds'] : usualColumns)
    if (words.length < 3 || (columns === undefined && words.length > order.length)) {
      faults.push({
        line,
        what: `${words.length} number${words.length === 1 ? '' : 's'} in the line`,
        remedy:
          words.length < 3
            ? 'a row needs angle, lift and drag'
            : 'name the columns in a line above, such as: angle lift drag; or use semicolons between numbers with decimal commas',
      })
      return
    }
    if (columns !== undefined && words.length > columns.length && !wide.has(columns)) {
      wide.add(columns)
      note(line, `numbers past the ${columns.length} named columns not used, here and below`)
    }
    const valueIn = (name: Column) => {
      const k = order.indexOf(name)
      return k < 0 ? undefined : values[k]
    }
    const [angle, lift, drag] = [valueIn('angle'), valueIn('lift'), valueIn('drag')]
    if (angle === undefined || lift === undefined || drag === undefined) {
      faults.push({ line, what: 'fewer numbers than columns', remedy: 'a row needs angle, lift and drag' })
      return
    }
    const own = valueIn('reynolds')
    if (own !== undefined) take(line, own)
    const row = { line, angle, lift, drag }
    const fault = boundFault(line, row)
    if (fault) {
      faults.push(fault)
      return
    }
    if (reynolds === undefined) {
      faults.push({
        line,
        what: 'a row before any Reynolds number',
        remedy: 'write a line such as Re = 100000 above it',
      })
      return
    }
    const rows = blocks.get(reynolds) ?? []
    rows.push(row)
    blocks.set(reynolds, rows)
  })
  return reading
}

/** Rows in rising angle; a note where they were not, a fault where an angle comes twice. */
function ordered(reynolds: number, rows: readonly Row[], { faults, notes }: Reading): Row[] {
  const sorted = [...rows].sort((a, b) => a.angle - b.angle)
  if (sorted.some((row, k) => row !== rows[k]))
    notes.push({ line: rows[0]!.line, what: `rows at Reynolds number ${reynolds} put in rising angle` })
  sorted.forEach((row, k) => {
    const before = sorted[k - 1]
    if (before && row.angle - before.angle < 1e-3)
      faults.push({
        line: Math.max(row.line, before.line),
        what: `angle ${row.angle}° comes again, first in line ${Math.min(row.line, before.line)}, at Reynolds number ${reynolds}`,
        remedy: 'keep one of the two; of a sweep up and down keep the way up',
      })
  })
  if (rows.length < 2 || rows.length > mostPolarRows)
    faults.push({
      line: rows[0]!.line,
      what: `${rows.length} row${rows.length === 1 ? '' : 's'} at Reynolds number ${reynolds}`,
      remedy: `give from 2 to ${mostPolarRows} angles for each Reynolds number`,
    })
  return sorted
}

/**
 * The polars in a text: rows of angle in degrees, lift, drag and perhaps Reynolds number, separated by spaces, commas,
 * semicolons or tabs; a header may name the columns; Reynolds numbers stand in lines of their own or in `told`.
 * Whatever is read and not used comes back as a note, whatever cannot be read as a fault with its line.
 */
export function parsePolarText(text: string, told?: number): PolarText {
  const whole = (what: string, remedy: string): PolarText => ({
    ok: false,
    faults: [{ line: 0, what, remedy }],
  })
  if (text.length > longestText) return whole('the text is over a million characters', 'paste the polar only')
  const reading = read(text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/), told)
  const polars = [...reading.blocks]
    .sort(([one], [other]) => one - other)
    .map(([reynolds, rows]) => ({
      reynolds,
      rows: ordered(reynolds, rows, reading).map(({ angle, lift, drag }) => ({
        angle_deg: angle,
        lift,
        drag,
      })),
    }))
  if (reading.faults.length > 0) return { ok: false, faults: reading.faults }
  if (polars.length === 0) return whole('no row of numbers', 'paste lines of angle in degrees, lift and drag')
  if (polars.length > mostPolars)
    return whole(`${polars.length} Reynolds numbers`, `keep at most ${mostPolars} of them`)
  return { ok: true, polars, notes: reading.notes }
}
