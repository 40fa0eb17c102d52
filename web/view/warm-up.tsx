/** How the machine warms from cold in the wind looked at, and when it has settled. */
import type { WindRow } from '../../src/index.ts'
import { temperatureChart, temperatureTable } from '../../src/output/chart/temperature.ts'
import { formatNumber } from '../../src/units/format.ts'
import { windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

/** Shorter times are told in minutes, longer ones in hours [s]. */
const longInMinutes = 7200

const settledSentence = (settledAt: number | undefined): string => {
  if (settledAt === undefined) return say`It is still warming after twelve hours, or burns before.`
  return settledAt < longInMinutes
    ? say`The copper is within a twentieth of its last warmth after ${formatNumber(settledAt / 60, 2)} min.`
    : say`The copper is within a twentieth of its last warmth after ${formatNumber(settledAt / 3600, 2)} h.`
}

export function WarmUp({ row }: { readonly row: WindRow }) {
  const found = useSight('warmUp')
  const title = say`How it warms from cold`
  if (found === undefined)
    return (
      <section class="card">
        <h3>{title}</h3>
        <p class="note">
          {row.speed > 0 ? say`It is being drawn.` : say`In this wind the rotor stands still; nothing warms.`}
        </p>
      </section>
    )
  const along = { quantity: 'time', values: found.time } as const
  return (
    <ChartFrame
      name="warm-up"
      title={title}
      note={say`In a steady ${windSaid(found.wind)}. ${settledSentence(found.settledAt)}`}
      wind={found.wind}
      draw={(width) =>
        temperatureChart({ width, height: 300, along, lines: found.lines, limits: found.limits })
      }
      data={() => temperatureTable({ along, lines: found.lines })}
    />
  )
}
