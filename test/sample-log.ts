/** A made-up record of the wind, and the same written as any logger might write it, for checks of its import. */

export interface LogRow {
  /** On the clock that is written down [s since 1970]. */
  readonly clock: number
  /** [m/s], [m/s], [°] */
  readonly wind: number
  readonly gust: number
  readonly direction: number
}

/** Numbers from 0 to 1 that look random and are the same each time. */
export function drawn(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0 || 1
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    state >>>= 0
    return state / 2 ** 32
  }
}

/** Winds that wander, to hundredths, no two rows alike for long. */
export function logRows(
  count: number,
  { from = Date.UTC(2024, 0, 5) / 1000, step = 600, seed = 7 } = {},
): LogRow[] {
  const draw = drawn(seed)
  let level = 5
  return Array.from({ length: count }, (_, k) => {
    level = Math.max(0.5, level + 0.15 * (5 - level) + 1.6 * (draw() - 0.5))
    const wind = Math.round(100 * level) / 100
    return {
      clock: from + k * step,
      wind,
      gust: Math.round(100 * (wind + 1 + 3 * draw())) / 100,
      direction: Math.floor(360 * draw()),
    }
  })
}

const two = (value: number): string => String(value).padStart(2, '0')

const dateForms = {
  iso: (d: Date) => `${d.getUTCFullYear()}-${two(d.getUTCMonth() + 1)}-${two(d.getUTCDate())}`,
  'day first': (d: Date) => `${two(d.getUTCDate())}.${two(d.getUTCMonth() + 1)}.${d.getUTCFullYear()}`,
  'month first': (d: Date) => `${d.getUTCMonth() + 1}/${d.getUTCDate()}/${d.getUTCFullYear()}`,
  named: (d: Date) =>
    `${d.getUTCDate()}-${['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][d.getUTCMonth()]}-${d.getUTCFullYear()}`,
} as const
export type DateForm = keyof typeof dateForms
export const dateFormNames = Object.keys(dateForms) as DateForm[]

const clockOf = (d: Date, twelve: boolean): string => {
  const minutes = `${two(d.getUTCMinutes())}:${two(d.getUTCSeconds())}`
  const hour = d.getUTCHours()
  return twelve ? `${hour % 12 || 12}:${minutes} ${hour < 12 ? 'AM' : 'PM'}` : `${two(hour)}:${minutes}`
}

export interface LogForm {
  readonly separator: ',' | ';' | '\t' | '|'
  readonly decimal: '.' | ','
  readonly dates: DateForm
  readonly twelve: boolean
  readonly splitTime: boolean
  readonly quoted: boolean
  readonly bom: boolean
  readonly end: '\n' | '\r\n'
  /** Order of the columns of wind, gust and direction. */
  readonly order: readonly ('wind' | 'gust' | 'direction')[]
  readonly units: 'in the head' | 'in a row' | 'behind the number'
  readonly unit: 'm/s' | 'km/h' | 'mph' | 'kn'
}

export const plainForm: LogForm = {
  separator: ',',
  decimal: '.',
  dates: 'iso',
  twelve: false,
  splitTime: false,
  quoted: false,
  bom: false,
  end: '\n',
  order: ['wind', 'gust', 'direction'],
  units: 'in the head',
  unit: 'm/s',
}

const factors = { 'm/s': 1, 'km/h': 3.6, mph: 3600 / 1609.344, kn: 3600 / 1852 } as const
const heads = { wind: 'Wind speed', gust: 'Gust', direction: 'Wind direction' } as const

/** The rows as a file. */
export function logText(rows: readonly LogRow[], form: LogForm = plainForm): string {
  const { separator, decimal, dates, twelve, splitTime, quoted, order, units, unit } = form
  // a decimal comma between commas must be quoted
  const mustQuote = quoted || (separator === ',' && decimal === ',')
  const cell = (text: string) => (mustQuote ? `"${text}"` : text)
  const number = (value: number, tail = '') =>
    cell(String(Number(value.toFixed(6))).replace('.', decimal) + (units === 'behind the number' ? tail : ''))
  const line = (cells: readonly string[]) => cells.join(separator)
  const time = splitTime ? ['Date', 'Time'] : ['Timestamp']
  const speedHead = (name: 'wind' | 'gust' | 'direction') =>
    units === 'in the head' ? `${heads[name]} (${name === 'direction' ? 'deg' : unit})` : heads[name]
  const lines = ['# written by nobody', line([...time, ...order.map(speedHead)].map(cell))]
  if (units === 'in a row')
    lines.push(
      line([...time.map(() => ''), ...order.map((name) => (name === 'direction' ? '°' : unit))].map(cell)),
    )
  for (const row of rows) {
    const d = new Date(row.clock * 1000)
    const [date, clock] = [dateForms[dates](d), clockOf(d, twelve)]
    const stamp = splitTime ? [cell(date), cell(clock)] : [cell(`${date} ${clock}`)]
    lines.push(
      line([
        ...stamp,
        ...order.map((name) =>
          name === 'direction' ? number(row.direction) : number(row[name] * factors[unit], ` ${unit}`),
        ),
      ]),
    )
  }
  return `${form.bom ? '\ufeff' : ''}${lines.join(form.end)}${form.end}`
}
