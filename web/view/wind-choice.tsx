/** The slider that chooses the wind, drawn under the site's year of wind. */
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { windDistributionChart } from '../../src/output/chart/wind-distribution.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow } from '../store/design.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'

/** Half the knob of the slider [px], as in the style sheet. */
const knob = 13

export function WindChoice({ snapshot, index }: { readonly snapshot: Snapshot; readonly index: number }) {
  const { rows, year, hours } = snapshot
  const row = rows[index]!
  const first = rows[0]!.wind
  const last = rows.at(-1)!.wind
  const step = rows.length > 1 ? rows[1]!.wind - first : 0.5
  const drawn = rows.map((each: WindRow, k) => ({
    wind: each.wind,
    hours: hours[k]!,
    energy: year.byWind[k]!,
  }))
  return (
    <ChartFrame
      name="wind"
      title="Wind of the site over a year"
      note={`${formatSi(year.energy, 'kWh')} a year. Move the slider to look at another wind.`}
      draw={(width) =>
        windDistributionChart({
          width,
          height: 170,
          wind: drawn.map(({ wind }) => wind),
          hours,
          energy: year.byWind,
          chosenWind: row.wind,
          meanWind: year.meanWind,
          border: knob,
        })
      }
      table={() => (
        <DataTable
          caption="Wind and energy of a year"
          rows={drawn}
          chosen={index}
          columns={[
            { head: 'wind', unit: 'm/s', cell: ({ wind }) => shortNumber(wind) },
            { head: 'time', unit: 'h/year', cell: (each) => formatNumber(each.hours) },
            {
              head: 'energy',
              unit: 'kWh',
              cell: ({ energy }) => formatSi(energy, 'kWh').replace(' kWh', ''),
            },
          ]}
        />
      )}
    >
      <div class="slider">
        <input
          id="wind"
          type="range"
          aria-label="Wind, m/s"
          min={first}
          max={last}
          step={step}
          value={row.wind}
          aria-valuetext={`${shortNumber(row.wind)} metres per second`}
          onInput={(event) => {
            const wind = Number(event.currentTarget.value)
            lookAtRow(Math.round((wind - first) / step))
          }}
        />
      </div>
    </ChartFrame>
  )
}
