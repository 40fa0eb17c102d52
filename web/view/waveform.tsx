/** One period of volts and amps at the wind looked at. */
import type { WindRow } from '../../src/index.ts'
import { waveformChart, waveformTable } from '../../src/output/chart/waveform.ts'
import { formatSi } from '../../src/units/format.ts'
import type { WindSnapshot } from '../snapshot.ts'
import { windSaid } from '../store/measure.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { rpmText } from './row-words.ts'
import { tracedWaves } from './traced.ts'

export function Waveform({ detail, row }: { readonly detail: WindSnapshot; readonly row: WindRow }) {
  const title = say`Volts and amps over one period`
  if (detail.frequency === 0)
    return (
      <section class="card">
        <h3>{title}</h3>
        <p class="note">
          {say`At ${windSaid(row.wind)} the rotor stands still; there is no period to draw.`}
        </p>
      </section>
    )
  const tracings = tracedWaves(row.wind)
  return (
    <ChartFrame
      name="waveform"
      title={title}
      note={say`At ${windSaid(row.wind)}: ${rpmText(row.speed)}, ${formatSi(detail.frequency, 'Hz')}. Raised are the volts that the magnets give each phase; between the lines stands what current and bridge leave of them.`}
      wind={row.wind}
      draw={(width) => waveformChart({ width, ...detail, tracings })}
      data={() => waveformTable(detail)}
    />
  )
}
