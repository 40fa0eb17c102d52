/** Tracings laid over a picture: other states of the design, each with its letter, its dash and its colour. */
import type { ChartTable } from './chart-table.ts'
import type { PanelLine } from './panel.ts'
import type { Point } from './picture.ts'

export interface TracingLook {
  /** Names the colour. */
  readonly className: string
  readonly dash: string
}

/** So many may lie over a picture at once; dashes tell them apart without colour. */
export const tracingLooks: readonly TracingLook[] = [
  { className: 'ink-tracing-1', dash: '14 3 3 3' },
  { className: 'ink-tracing-2', dash: '5 3' },
  { className: 'ink-tracing-3', dash: '14 3 3 3 3 3' },
  { className: 'ink-tracing-4', dash: '1.5 3' },
]

/** What stands at the end of its line; the phases of a winding have letters too. */
export const tracingLabel = (letter: string): string => `tracing ${letter}`

/** A curve of a tracing, in the units of the picture that it lies over. */
export interface TracedCurve extends TracingLook {
  /** `tracing A`: at the end of its line. */
  readonly label: string
  readonly x: ArrayLike<number>
  readonly y: ArrayLike<number>
}

export const tracedLine = ({ label, className, dash, x, y }: TracedCurve): PanelLine => ({
  label,
  className,
  dash,
  points: Array.from(x, (at, k): Point => [at, y[k] ?? Number.NaN]),
  labelAt: 'end',
})

export const highestTraced = (tracings: readonly TracedCurve[]): number =>
  tracings.reduce((most, { y }) => Array.from(y).reduce((high, value) => Math.max(high, value), most), 0)

/** Beside each row of a table what a tracing has at the same place; nothing where it has no such place. */
export function withTracings(
  table: ChartTable,
  along: ArrayLike<number>,
  tracings: readonly TracedCurve[],
  { of, unit }: { readonly of: string; readonly unit: string },
): ChartTable {
  if (tracings.length === 0) return table
  const valueAt = ({ x, y }: TracedCurve, place: number | undefined) => {
    const k = Array.from(x).findIndex((at) => Math.abs(at - (place ?? Number.NaN)) < 1e-9)
    return k < 0 ? undefined : y[k]
  }
  return {
    ...table,
    columns: [...table.columns, ...tracings.map(({ label }) => ({ head: `${label}, ${of}`, unit }))],
    rows: table.rows.map((row, k) => [...row, ...tracings.map((tracing) => valueAt(tracing, along[k]))]),
  }
}

/** What lies over, for those who cannot see it; empty where nothing does. */
export const tracedText = (tracings: readonly { readonly label: string }[]): string =>
  tracings.length === 0 ? '' : ` Laid over: ${tracings.map(({ label }) => label).join(', ')}.`

/** More periods than these side by side nobody tells apart: a much faster wave ends after so many. */
const mostPeriods = 20

/** Values of one period at equal steps, repeated up to the end of another period, both in one unit of time. */
export function repeatedWave(values: ArrayLike<number>, own: number, other: number): Point[] {
  const end = Math.min(other, mostPeriods * own)
  const count = values.length
  if (count === 0 || !(own > 0) || !(end > 0)) return []
  const step = own / count
  const whole = Math.floor(end / step)
  return [
    ...Array.from({ length: whole + 1 }, (_, k): Point => [k * step, values[k % count]!]),
    // the last piece is cut where the picture ends
    ...(end - whole * step > 1e-9 * end
      ? [
          [
            end,
            values[whole % count]! +
              ((end - whole * step) / step) * (values[(whole + 1) % count]! - values[whole % count]!),
          ] as Point,
        ]
      : []),
  ]
}
