/** The field that the winding meets. */
import { gapFieldChart, gapFieldTable } from '../../src/output/chart/gap-field.ts'
import { formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

const inSteel = {
  behind: (field: string) => say`In the steel behind the magnets: ${field}.`,
  opposite: (field: string) => say`In the steel opposite: ${field}.`,
  sleeve: (field: string) => say`In the steel of the sleeve: ${field}.`,
} as const

export function GapField({ snapshot: { gap, steel } }: { readonly snapshot: Snapshot }) {
  const iron = steel.map(({ place, fluxDensity }) => inSteel[place](formatSi(fluxDensity, 'T'))).join(' ')
  return (
    <ChartFrame
      name="gap"
      title={say`Field in the gap`}
      note={`${say`In the middle of the first layer of wire: ${formatSi(gap.poleCentre, 'mT')} over the middle of a magnet, fundamental ${formatSi(gap.fundamental, 'mT')}.`} ${iron}`}
      draw={(width) => gapFieldChart({ width, height: 270, angle: gap.angle, normal: gap.normal })}
      data={() => gapFieldTable(gap)}
    />
  )
}
