/** Where the heat is born and by which faces it leaves, in the wind looked at. */
import type { WindRow } from '../../src/index.ts'
import { heatWayChart, heatWayTable } from '../../src/output/chart/heat-way.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import { windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

/** Less is next to nothing [W]. */
const leastHeat = 1e-3

export function HeatWaysView({ row }: { readonly row: WindRow }) {
  const found = useSight('heatWays')
  const title = say`Where the heat goes at ${windSaid(row.wind)}`
  const born = found === undefined ? 0 : found.born.copper + found.born.metal
  if (found === undefined || Math.abs(found.lookedAt - row.wind) > 1e-9 || born < leastHeat)
    return (
      <section class="card">
        <h3>{title}</h3>
        <p class="note">
          {row.dcCurrent > 0 || born >= leastHeat
            ? say`It is being worked out.`
            : say`In this wind next to no heat is born.`}
        </p>
      </section>
    )
  const { ways, wind, spread } = found
  const { copper, metal, bearings } = found.born
  const metalText =
    metal >= leastHeat
      ? say`${formatSi(copper, 'W')} are born in the copper, ${formatSi(metal, 'W')} in metal near the magnets.`
      : say`${formatSi(copper, 'W')} are born in the copper.`
  const spreadText =
    spread > 0
      ? say`How much warmer than the air each part gets by them is known to ± ${formatNumber(100 * spread, 2)} %.`
      : say`The way from copper to air was measured.`
  return (
    <ChartFrame
      name="heat-way"
      title={title}
      note={[
        ...(wind < row.wind ? [say`The limiter holds the rotor: it is as in ${windSaid(wind)}.`] : []),

        metalText,
        say`Bearings turn ${formatSi(bearings, 'W')} more into heat, which warms the air alone.`,
        spreadText,
      ].join(' ')}
      wind={wind}
      draw={(width) => heatWayChart({ width, ways, wind })}
      data={() => heatWayTable({ ways })}
    />
  )
}
