/** How much plastics and resins grow with the damp of the air, and how much of their stiffness years under load leave. */

export interface PlasticSwelling {
  readonly name: string
  /** Growth of a length from dry to years outdoors. */
  readonly growth_percent: number
  readonly source: string
  readonly where: string
}

const fromMemory = 'from memory, not opened: from the water that such plastics take up in damp air'

/** Half-width of a growth, as a share. */
export const swellingSpread = {
  spread_1: 0.6,
  source: 'common-practice',
  where: 'common practice, no source',
} as const

export const plasticSwellings: readonly PlasticSwelling[] = [
  { name: 'PLA', growth_percent: 0.15, source: 'common-practice', where: fromMemory },
  { name: 'PETG', growth_percent: 0.05, source: 'common-practice', where: fromMemory },
  { name: 'ABS', growth_percent: 0.1, source: 'common-practice', where: fromMemory },
  { name: 'ASA', growth_percent: 0.1, source: 'common-practice', where: fromMemory },
  { name: 'PC', growth_percent: 0.06, source: 'common-practice', where: fromMemory },
  { name: 'nylon', growth_percent: 0.8, source: 'common-practice', where: fromMemory },
  { name: 'polyester', growth_percent: 0.1, source: 'common-practice', where: fromMemory },
  { name: 'vinyl ester', growth_percent: 0.08, source: 'common-practice', where: fromMemory },
  { name: 'epoxy', growth_percent: 0.15, source: 'common-practice', where: fromMemory },
  { name: 'glass fibre in epoxy', growth_percent: 0.02, source: 'common-practice', where: fromMemory },
  { name: 'epoxy, silica filled', growth_percent: 0.08, source: 'common-practice', where: fromMemory },
]

/** Share of its stiffness that a plastic under steady load has after years, well below its softening point. */
export const creepShare = {
  share_1: 0.4,
  spread_1: 0.2,
  source: 'common-practice',
  where: 'common practice, no source',
} as const
