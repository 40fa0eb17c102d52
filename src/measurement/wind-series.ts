/** A clean record of the wind in rising order of time, whatever file it came from. */

/** Values that not every row has. */
export interface SeriesColumn {
  readonly value: Float64Array
  /** 1 where the value is there; the value is 0 where it is not. */
  readonly known: Uint8Array
}

export const extraColumns = ['gust', 'deviation', 'direction', 'temperature', 'pressure'] as const
export type ExtraColumn = (typeof extraColumns)[number]

export interface WindSeries {
  /** On an even clock that begins as the logger's own [s since 1970-01-01 00:00]. */
  readonly time: Float64Array
  /** [m/s] */
  readonly wind: Float64Array
  /** Gust and deviation [m/s], direction the wind comes from [rad], temperature [K], pressure [Pa]. */
  readonly extra: Readonly<Partial<Record<ExtraColumn, SeriesColumn>>>
  /** Usual distance of two readings [s]. */
  readonly step: number
}
