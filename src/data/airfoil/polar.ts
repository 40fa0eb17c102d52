/** What a table of section coefficients looks like: one section, one Reynolds number. */

export interface AirfoilPolar {
  readonly name: string
  /** On the chord. [1] */
  readonly reynolds: number
  /** Reading error or scatter: half-width of lift [1], and of drag as a share of it [1]. */
  readonly spread: { readonly lift: number; readonly dragShare: number }
  readonly source: string
  readonly where: string
  readonly rows: readonly (readonly [angle_deg: number, lift: number, drag: number])[]
}
