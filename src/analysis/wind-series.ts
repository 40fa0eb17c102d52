/** A wind as somebody logged it: readings at times, from rows of text. */
import { refuse, requireFinite, requireNotNegative } from '../refusal/require.ts'

/** A wind read at times that rise, straight between the readings. */
export interface WindSeries {
  /** [s] */
  readonly times: Float64Array
  /** [m/s] */
  readonly winds: Float64Array
}

/** Longest series that is read. */
const longestWindSeries = 200_000

/** A number with a decimal point or a decimal comma; NaN for anything else. */
const numberOf = (cell: string): number => (cell === '' ? Number.NaN : Number(cell.replace(',', '.')))

/** A row as two cells: parted by semicolon, tab or blanks, or by a comma where no other sign parts them. */
function cellsOf(line: string): readonly string[] {
  const strong = line.split(/[;\t]/)
  const cells =
    strong.length > 1 ? strong : line.split(/\s+/).length > 1 ? line.split(/\s+/) : line.split(',')
  return cells.map((cell) => cell.trim())
}

/**
 * Reads rows of seconds and metres per second, parted by semicolon, tab, blanks or comma, with a decimal point or comma;
 * blank lines, lines that begin with # and one line of heads are passed over.
 */
export function windSeries(text: string): WindSeries {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
  const first = lines.length > 0 && Number.isNaN(numberOf(cellsOf(lines[0]!)[0]!)) ? 1 : 0
  const n = lines.length - first
  if (n < 2)
    refuse({ name: 'wind series', condition: 'at least 2 rows long', value: n, code: 'wrong-length' })
  if (n > longestWindSeries)
    refuse({
      name: 'wind series',
      condition: `at most ${longestWindSeries} rows long`,
      value: n,
      code: 'wrong-length',
    })
  const times = new Float64Array(n)
  const winds = new Float64Array(n)
  for (let k = 0; k < n; k++) {
    const [t, v] = cellsOf(lines[first + k]!).map(numberOf)
    const row = `row ${first + k + 1} of the wind series`
    requireFinite(`time in ${row}`, t ?? Number.NaN, 's')
    requireNotNegative(`wind in ${row}`, v ?? Number.NaN, 'm/s')
    if (k > 0 && !(t! > times[k - 1]!))
      refuse({
        name: `time in ${row}`,
        condition: 'above the one before',
        value: t,
        unit: 's',
        code: 'not-increasing',
      })
    times[k] = t!
    winds[k] = v!
  }
  return { times, winds }
}
