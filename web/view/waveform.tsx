/** One period of volts and amps at the wind looked at. */
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { waveformChart } from '../../src/output/chart/waveform.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { WindSnapshot } from '../snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { rpmText } from './row-words.ts'

export function Waveform({ detail, row }: { readonly detail: WindSnapshot; readonly row: WindRow }) {
  if (detail.frequency === 0)
    return (
      <section class="card">
        <h3>Volts and amps over one period</h3>
        <p class="note">At {shortNumber(row.wind)} m/s the rotor stands still; there is no period to draw.</p>
      </section>
    )
  const { emf, phaseCurrent, dcCurrent, frequency } = detail
  const samples = Array.from(dcCurrent, (_, k) => k).filter((k) => k % 6 === 0)
  const columns: Column<number>[] = [
    { head: 'time', unit: 'ms', cell: (k) => formatNumber((1000 * k) / dcCurrent.length / frequency) },
    ...emf.map((values, n) => ({
      head: `volts ${n + 1}`,
      unit: 'V',
      cell: (k: number) => formatNumber(values[k]!),
    })),
    ...phaseCurrent.map((values, n) => ({
      head: `amps ${n + 1}`,
      unit: 'A',
      cell: (k: number) => formatNumber(values[k]!),
    })),
    { head: 'direct amps', unit: 'A', cell: (k) => formatNumber(dcCurrent[k]!) },
  ]
  return (
    <ChartFrame
      name="waveform"
      title="Volts and amps over one period"
      note={`At ${shortNumber(row.wind)} m/s: ${rpmText(row.speed)}, ${formatSi(frequency, 'Hz')}. Volts are those the magnets raise in each phase.`}
      draw={(width) => waveformChart({ width, emf, phaseCurrent, dcCurrent, frequency })}
      table={() => <DataTable caption="One period, every sixth sample" rows={samples} columns={columns} />}
    />
  )
}
