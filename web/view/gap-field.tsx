/** The field that the winding meets. */
import { gapFieldChart } from '../../src/output/chart/gap-field.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'

const places = { behind: 'behind the magnets', opposite: 'opposite', sleeve: 'of the sleeve' } as const

export function GapField({ snapshot: { gap, steel } }: { readonly snapshot: Snapshot }) {
  const iron = steel
    .map(({ place, fluxDensity }) => ` In the steel ${places[place]}: ${formatSi(fluxDensity, 'T')}.`)
    .join('')
  const rows = Array.from(gap.angle, (angle, k) => ({ angle, B: gap.normal[k]! }))
  return (
    <ChartFrame
      name="gap"
      title="Field in the gap"
      note={`In the middle of the first layer of wire: ${formatSi(gap.poleCentre, 'mT')} over the middle of a magnet, fundamental ${formatSi(gap.fundamental, 'mT')}.${iron}`}
      draw={(width) => gapFieldChart({ width, height: 270, angle: gap.angle, normal: gap.normal })}
      table={() => (
        <DataTable
          caption="Flux density over one pair of poles"
          rows={rows}
          columns={[
            {
              head: 'electrical angle',
              unit: '°',
              cell: ({ angle }) => formatNumber((angle * 180) / Math.PI, 4),
            },
            { head: 'flux density', unit: 'mT', cell: ({ B }) => formatNumber(1000 * B) },
          ]}
        />
      )}
    />
  )
}
