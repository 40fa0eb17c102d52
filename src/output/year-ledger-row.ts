/** The year's ledger as rows: where what the wind held has gone, in the order in which it flows. */
import { type Watts, wattColumns } from '../analysis/watts.ts'
import type { YearLedger } from '../analysis/year.ts'

export interface LedgerRow {
  readonly cause: 'past the blades' | 'held' | keyof Watts
  readonly label: string
  /** [J] */
  readonly energy: number
  readonly kind: 'not taken' | 'lost' | 'useful'
}

const labels: Readonly<Record<keyof Watts, string>> = {
  friction: 'bearings and seals',
  eddy: 'eddies in the strands',
  parts: 'eddies in metal parts',
  winding: 'copper of the winding',
  cable: 'cable',
  diodes: 'diodes of the bridge',
  converter: 'converter',
  battery: 'inside the battery',
  useful: 'stored or used',
}

/** Causes that cost nothing are left out; the rest sum to what the wind held. */
export function ledgerRows({ pastBlades, held, parts }: YearLedger): LedgerRow[] {
  const rows: LedgerRow[] = [
    { cause: 'past the blades', label: 'goes on past the blades', energy: pastBlades, kind: 'not taken' },
    { cause: 'held', label: 'held back by the limiter', energy: held, kind: 'not taken' },
    ...wattColumns.map(
      (cause): LedgerRow => ({
        cause,
        label: labels[cause],
        energy: parts[cause],
        kind: cause === 'useful' ? 'useful' : 'lost',
      }),
    ),
  ]
  return rows.filter(({ energy, kind }) => energy > 0 || kind === 'useful')
}
