/** The Beaufort scale in metres per second, 10 m above open ground, mean of ten minutes. */

export interface BeaufortForce {
  readonly force: number
  readonly name: string
  readonly least_m_per_s: number
  /** Infinity for force 12. */
  readonly most_m_per_s: number
  /** v = 0.836 m/s × B^(3/2). */
  readonly middle_m_per_s: number
  readonly source: string
  readonly where: string
}

type BeaufortRow = readonly [name: string, least: number, most: number]

// biome-ignore format: a table
const beaufortRows: readonly BeaufortRow[] = [
  ['calm',             0.0,  0.2],
  ['light air',        0.3,  1.5],
  ['light breeze',     1.6,  3.3],
  ['gentle breeze',    3.4,  5.4],
  ['moderate breeze',  5.5,  7.9],
  ['fresh breeze',     8.0, 10.7],
  ['strong breeze',   10.8, 13.8],
  ['near gale',       13.9, 17.1],
  ['gale',            17.2, 20.7],
  ['strong gale',     20.8, 24.4],
  ['storm',           24.5, 28.4],
  ['violent storm',   28.5, 32.6],
  ['hurricane',       32.7, Number.POSITIVE_INFINITY],
]

// The formula stays within the printed band of every force except calm and force 12, which has no upper end.
export const beaufortForces: readonly BeaufortForce[] = beaufortRows.map(
  ([name, least_m_per_s, most_m_per_s], force) => ({
    force,
    name,
    least_m_per_s,
    most_m_per_s,
    middle_m_per_s: 0.836 * force ** 1.5,
    source: 'beaufort-limits',
    where: 'limits as printed; formula of simpson1906 in metric units, from memory, not opened',
  }),
)
